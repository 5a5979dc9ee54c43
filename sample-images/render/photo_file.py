"""Writes the JPEG with its Exif: capture time with fraction and offset, orientation, and what it is."""
from PIL import Image, ImageCms

ORIENTATION, DESCRIPTION, SOFTWARE, DETAILS = 0x0112, 0x010E, 0x0131, 0x8769
TAKEN, TAKEN_OFFSET, TAKEN_FRACTION, COLOUR_SPACE = 0x9003, 0x9011, 0x9291, 0xA001
# How upright pixels are turned before they are stored, for the tag to turn them back.
STORED = {6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}


def save_photo(pixels, path, when, orientation, quality):
    picture = Image.fromarray(pixels)
    if orientation in STORED:
        picture = picture.transpose(STORED[orientation])
    offset = when.strftime("%z")
    exif = Image.Exif()
    exif[DESCRIPTION] = "Rendered picture, not a photograph; invented scenario"
    exif[SOFTWARE] = "Plugtray sample render"
    exif[ORIENTATION] = orientation
    exif[DETAILS] = {TAKEN: when.strftime("%Y:%m:%d %H:%M:%S"), TAKEN_OFFSET: f"{offset[:3]}:{offset[3:]}",
                     TAKEN_FRACTION: f"{when.microsecond // 1000:03d}", COLOUR_SPACE: 1}
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    picture.save(path, "JPEG", quality=quality, exif=exif, icc_profile=profile, optimize=True)
