"""Renders the pictures that are missing. Run: blender -b -P render.py -- [--size 1280] [--samples 40] [--only TEXT] [--out DIR]"""
import argparse
import math
import os
import random
import sys

import bpy

here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, here)
import conditions as c  # noqa: E402
import geometry as g  # noqa: E402
import materials as m  # noqa: E402
import scenes  # noqa: E402
from shots import all_shots, file_name  # noqa: E402


# Stops, as a phone would set them for each light.
EXPOSURE = {"shop": -1.1, "harbour": -0.9, "generator": -1.5, "van": -0.5, "bus": 0.1}


def set_up(size, samples, scene_name):
    bpy.ops.wm.read_factory_settings(use_empty=True)
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    scene.cycles.device = "CPU"
    scene.cycles.samples = samples
    scene.cycles.use_adaptive_sampling = True
    scene.cycles.adaptive_threshold = 0.03
    scene.cycles.max_bounces = 5
    scene.cycles.diffuse_bounces = 2
    scene.cycles.glossy_bounces = 3
    scene.cycles.caustics_reflective = False
    scene.cycles.caustics_refractive = False
    scene.cycles.sample_clamp_indirect = 6
    # Debian's Blender is built without a denoiser: what noise is left is that of a phone.
    scene.cycles.use_denoising = False
    scene.render.resolution_x, scene.render.resolution_y = size, size * 3 // 4
    scene.view_settings.view_transform = "Filmic"
    scene.view_settings.look = "Medium High Contrast"
    scene.view_settings.exposure = EXPOSURE[scene_name]
    scene.render.image_settings.file_format = "PNG"
    return scene


def build(shot, seed):
    chance = random.Random(seed)
    details = shot["details"]
    plug_materials = c.plug_materials(shot["condition"], seed, details.get("outer_oil", 0.0))
    scene_seed = len(shot["job"])
    strap_angle = 0.0
    if shot["shot"] == "well":
        oil = details.get("well_oil", False)
        plug_materials.update(aluminium=m.aluminium(0.3 if oil else 0.0), oil=m.oil_pool())
        g.build_well(plug_materials, oil)
        scenes._world((0.8, 0.88, 1.0), 0.2)
        scenes._light("AREA", (-25, 30, 230), 3.2e5, (0.95, 0.97, 1.0), 22, target=(0, 0, -60))
        scenes._light("AREA", (150, -100, 160), 0.9e5, (1.0, 0.8, 0.6), 60)
    elif shot["shot"] == "end-on":
        plug = g.build_plug(plug_materials["look"], seed, plug_materials)
        plug.rotation_euler = (chance.uniform(-0.03, 0.03), chance.uniform(-0.03, 0.03), 0)
        strap_angle = plug["strap_angle"]
        scenes.SCENES[shot["scene"]](-21.5, scene_seed)
    else:
        plug = g.build_plug(plug_materials["look"], seed, plug_materials)
        # Lying on its hex, firing end to the left.
        plug.rotation_euler = (0, math.radians(-92), chance.uniform(-0.12, 0.12))
        scenes.SCENES[shot["scene"]](-9.4, scene_seed)
    scenes.camera(shot["shot"], chance, strap_angle)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--size", type=int, default=1280)
    parser.add_argument("--samples", type=int, default=40)
    parser.add_argument("--only", default="")
    parser.add_argument("--out", default=os.path.join(here, "work"))
    options = parser.parse_args(sys.argv[sys.argv.index("--") + 1:] if "--" in sys.argv else [])
    for number, shot in enumerate(all_shots()):
        name = file_name(shot).replace(".jpg", ".png")
        target = os.path.join(options.out, name)
        if options.only not in name or os.path.exists(target):
            continue
        scene = set_up(options.size, options.samples, shot["scene"])
        build(shot, 100 + number)
        scene.cycles.seed = number
        os.makedirs(os.path.dirname(target), exist_ok=True)
        scene.render.filepath = target
        bpy.ops.render.render(write_still=True)
        print("rendered", name, flush=True)


main()
