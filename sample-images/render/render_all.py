"""Makes the pictures that are missing. Run: blender -b -P render_all.py -- [--width N] [--samples N] [--only TEXT ...] [--out DIR]"""
import argparse
import os
import sys
import tempfile
import time

import bpy
import numpy as np

here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, here)
from denoise import denoise  # noqa: E402
from develop import develop  # noqa: E402
from photo_file import save_photo  # noqa: E402
from scene import build, settings  # noqa: E402
from shots import all_shots  # noqa: E402


def _load(folder, name):
    image = bpy.data.images.load(os.path.join(folder, f"{name}0001.exr"))
    width, height = image.size
    values = np.empty(width * height * 4, np.float32)
    image.pixels.foreach_get(values)
    return values.reshape(height, width, 4)[::-1, :, :3]


def take(shot, path, width, samples, quality):
    with tempfile.TemporaryDirectory() as folder:
        settings(shot, width, samples, folder)
        build(shot)
        built = time.time()
        bpy.ops.render.render()
        rendered = time.time()
        image = denoise(*(_load(folder, name) for name in ("image", "albedo", "normal")))
        place = "tube" if shot["shot"] == "well" else shot["place"]
        pixels = develop(image, place, shot["shot_seed"])
    os.makedirs(os.path.dirname(path), exist_ok=True)
    # Whole or not at all: a picture that exists is not made again.
    save_photo(pixels, path + ".part", shot["when"], shot["orientation"], quality)
    os.replace(path + ".part", path)
    return rendered - built, time.time() - rendered


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--width", type=int, default=1280)
    parser.add_argument("--samples", type=int, default=10)
    parser.add_argument("--quality", type=int, default=88)
    parser.add_argument("--only", nargs="*", default=[""])
    parser.add_argument("--out", default=os.path.join(here, "..", "photos"))
    options = parser.parse_args(sys.argv[sys.argv.index("--") + 1:] if "--" in sys.argv else [])
    for shot in all_shots():
        path = os.path.join(options.out, shot["key"] + ".jpg")
        if os.path.exists(path) or not any(text in shot["key"] for text in options.only):
            continue
        seconds, after = take(shot, path, options.width, options.samples, options.quality)
        print(f"made {shot['key']}: render {seconds:.0f} s, develop {after:.0f} s, {os.path.getsize(path) // 1024} KiB", flush=True)


main()
