"""Turns rendered PNGs into the demo photos: a touch of lens softness, JPEG, Exif with capture time, some turned as phones do."""
import datetime
import os
import sys

from PIL import Image, ImageFilter

here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, here)
from shots import all_shots, file_name  # noqa: E402

ORIENTATION, DESCRIPTION, SOFTWARE, EXIF_IFD = 0x0112, 0x010E, 0x0131, 0x8769
TIME_ORIGINAL, OFFSET_ORIGINAL, SUBSEC_ORIGINAL = 0x9003, 0x9011, 0x9291


def finish(source, target, taken, turned):
    picture = Image.open(source).convert("RGB")
    # Single bright pixels are leftovers of path tracing, not of a lens.
    picture = Image.blend(picture, picture.filter(ImageFilter.MedianFilter(3)), 0.75)
    exif = Image.Exif()
    exif[DESCRIPTION] = "Rendered picture, not a photograph; invented scenario"
    exif[SOFTWARE] = "Plugtray sample render"
    if turned:
        # Stored on its side; orientation 6 says: turn a quarter clockwise to see it upright.
        picture = picture.transpose(Image.Transpose.ROTATE_90)
        exif[ORIENTATION] = 6
    # Given as a whole: a change of what get_ifd() hands out is not saved.
    exif[EXIF_IFD] = {
        TIME_ORIGINAL: taken.strftime("%Y:%m:%d %H:%M:%S"),
        SUBSEC_ORIGINAL: f"{taken.microsecond // 1000:03d}",
        OFFSET_ORIGINAL: "+00:00",
    }
    os.makedirs(os.path.dirname(target), exist_ok=True)
    picture.save(target, quality=86, exif=exif, optimize=True)


def main():
    for number, shot in enumerate(all_shots()):
        name = file_name(shot)
        source = os.path.join(here, "work", name.replace(".jpg", ".png"))
        if not os.path.exists(source):
            print("not rendered yet:", name)
            continue
        start = datetime.datetime.strptime(shot["date"], "%Y-%m-%d %H:%M:%S")
        later = datetime.timedelta(seconds=(shot["cylinder"] - 1) * 11 + number % 3, milliseconds=number * 137 % 1000)
        taken = start + (later if shot["shot"] == "end-on" else datetime.timedelta(milliseconds=number * 137 % 1000))
        finish(source, os.path.join(here, "..", "photos", name), taken, number % 9 == 4)


main()
