#!/bin/sh
# Makes every picture that is missing under ../photos, and ../truth.json. Needs Debian's blender, python3-numpy and python3-pil.
set -eu
cd "$(dirname "$0")"
export PYTHONDONTWRITEBYTECODE=1
blender -b -P render_all.py -- "$@"
python3 truth.py
