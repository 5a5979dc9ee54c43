// How large a picture may be. The header is only a claim, so every limit is checked before pixels are decoded.

export const megabyte = 1024 * 1024
export const maxPhotoBytes = 64 * megabyte
export const maxPixels = 210e6
/** HEIC is decoded whole, in WebAssembly memory: about 10 bytes a pixel at the peak. */
export const maxHeicPixels = 64e6
/** For what cannot be read row by row (progressive JPEG, interlaced PNG, WebP, AVIF, turned pictures). */
export const maxBytesHeldWhole = 640 * megabyte
export const maxChannels = 5
export const decodeSeconds = 20
/** Above this a picture counts as more than one turn of the decoders. */
export const pixelsPerTurn = 48e6
