// Where one looks at a photo: zoom against "fits the frame" and the point of the picture in the middle of the frame.
// Relative numbers, so that two photos of different size can be locked to the same view.

export type View = {
  /** 1 fits the whole picture into the frame. */
  zoom: number
  /** Point of the picture at the middle of the frame, 0 to 1 from left and top. */
  x: number
  y: number
}
export type Size = { width: number; height: number }
export type Point = { x: number; y: number }

export const fitView: View = { zoom: 1, x: 0.5, y: 0.5 }

const maxZoom = 64

/** CSS pixels per picture pixel when the whole picture just fits the frame. */
export function fitScale(picture: Size, frame: Size): number {
  if (picture.width === 0 || picture.height === 0) return 1
  return Math.min(frame.width / picture.width, frame.height / picture.height)
}

/** Keeps the picture in the frame: centred along an axis where it is smaller, never past its edge where larger. */
export function clampView(view: View, picture: Size, frame: Size): View {
  const zoom = Math.min(maxZoom, Math.max(1, view.zoom))
  const scale = fitScale(picture, frame) * zoom
  const along = (centre: number, length: number, room: number) => {
    const half = room / 2 / (length * scale)
    return half >= 0.5 ? 0.5 : Math.min(1 - half, Math.max(half, centre))
  }
  return {
    zoom,
    x: along(view.x, picture.width, frame.width),
    y: along(view.y, picture.height, frame.height),
  }
}

/** Zooms so that the picture point under `at` (frame pixels from the top left) stays where it is. */
export function zoomAt(view: View, factor: number, at: Point, picture: Size, frame: Size): View {
  const before = fitScale(picture, frame) * view.zoom
  const zoom = Math.min(maxZoom, Math.max(1, view.zoom * factor))
  const after = fitScale(picture, frame) * zoom
  const shift = (offset: number, length: number) => (offset / length) * (1 / before - 1 / after)
  return clampView(
    {
      zoom,
      x: view.x + shift(at.x - frame.width / 2, picture.width),
      y: view.y + shift(at.y - frame.height / 2, picture.height),
    },
    picture,
    frame,
  )
}

/** Moves the picture by frame pixels, as a hand would drag it. */
export function panBy(view: View, by: Point, picture: Size, frame: Size): View {
  const scale = fitScale(picture, frame) * view.zoom
  return clampView(
    { ...view, x: view.x - by.x / (picture.width * scale), y: view.y - by.y / (picture.height * scale) },
    picture,
    frame,
  )
}

/** The zoom at which one picture pixel is one device pixel; never below "fits the frame". */
export function oneToOneZoom(picture: Size, frame: Size, pixelRatio: number): number {
  return Math.min(maxZoom, Math.max(1, 1 / pixelRatio / fitScale(picture, frame)))
}

/** Device pixels per picture pixel in percent, for the read-out. */
export function percentShown(view: View, picture: Size, frame: Size, pixelRatio: number): number {
  return Math.round(fitScale(picture, frame) * view.zoom * pixelRatio * 100)
}

/** Top left corner and size of the picture inside the frame, in frame pixels. */
export function placement(view: View, picture: Size, frame: Size): { left: number; top: number } & Size {
  const scale = fitScale(picture, frame) * view.zoom
  const width = picture.width * scale
  const height = picture.height * scale
  return { left: frame.width / 2 - view.x * width, top: frame.height / 2 - view.y * height, width, height }
}
