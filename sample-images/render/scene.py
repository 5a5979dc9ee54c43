"""One shot as a scene: the plug posed in its place, light, background, camera and render settings."""
import math
import random

import bpy
from mathutils import Matrix, Vector

from backgrounds import SURFACES
from camera import camera
from lights import LIGHTS
from plug import build_plug
from well import build_well

GASKET_RADIUS, GASKET_AT, TERMINAL_RADIUS, TERMINAL_AT = 9.75, -18.3, 3.2, -67.0


def _stand(plug, chance):
    """Pushed through a hole punched in the cardboard, down to the gasket."""
    plug.matrix_world = Matrix.Translation((0, 0, 19.1)) @ Matrix.Rotation(chance.uniform(-0.04, 0.04), 4, "X") @ Matrix.Rotation(chance.uniform(-0.04, 0.04), 4, "Y")


def _lie(plug, chance, sink):
    """On its gasket ring and its terminal, so that the firing end points a little up; rolled as it happened to stop."""
    tilt = math.atan((GASKET_RADIUS - TERMINAL_RADIUS) / (GASKET_AT - TERMINAL_AT))
    axis = Vector((math.cos(tilt), 0, math.sin(tilt)))
    # The strap is turned to the side away from the camera, or it would hide the nose.
    roll = -plug["strap_angle"]
    turn = axis.to_track_quat("Z", "X").to_matrix().to_4x4()
    plug.matrix_world = turn @ Matrix.Rotation(roll, 4, "Z")
    # Which way the track quaternion turned X is read off, so that roll 0 means: strap up.
    x = plug.matrix_world.to_3x3() @ Vector((math.cos(plug["strap_angle"]), math.sin(plug["strap_angle"]), 0))
    upward = Vector((-math.sin(tilt), 0, math.cos(tilt)))
    off = math.atan2(axis.dot(x.cross(upward)), x.dot(upward))
    plug.matrix_world = turn @ Matrix.Rotation(roll + off + math.pi + chance.uniform(-0.9, 0.9), 4, "Z")
    low = (plug.matrix_world @ Vector((0, 0, GASKET_AT))).z - GASKET_RADIUS * math.cos(tilt)
    heading = Matrix.Rotation(chance.uniform(-0.5, 0.5), 4, "Z")
    plug.matrix_world = Matrix.Translation((0, 0, -low - sink)) @ heading @ plug.matrix_world


def build(shot):
    chance = random.Random(shot["shot_seed"])
    plug = build_plug(shot["look"], shot["plug_seed"], outer_oil=shot["outer_oil"])
    if shot["shot"] == "well":
        build_well(plug, shot["outer_oil"], shot["plug_seed"] % 100)
        LIGHTS["tube"]()
    else:
        surface = SURFACES[shot["place"]](shot["shot_seed"] % 97)
        if shot["place"] == "shop" and shot["shot"] == "end-on":
            _stand(plug, chance)
        else:
            _lie(plug, chance, 0.8 if shot["place"] in ("van", "bus") else 0.0)
            # The plug's middle, not its end, lies in the middle of the surface.
            surface.location.x = chance.uniform(-25, 5)
        LIGHTS[shot["place"]]()
    bpy.context.view_layer.update()
    camera(plug, shot["shot"], chance, shot["portrait"])


def settings(shot, width, samples, folder):
    """Cycles on the processor, few bounces, and the passes that the denoiser needs as EXR files in `folder`."""
    bpy.ops.wm.read_factory_settings(use_empty=True)
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    cycles = scene.cycles
    cycles.device, cycles.samples, cycles.seed = "CPU", samples, shot["shot_seed"]
    cycles.use_adaptive_sampling, cycles.adaptive_threshold, cycles.adaptive_min_samples = True, 0.07, max(6, samples // 3)
    cycles.use_denoising = False
    cycles.max_bounces, cycles.diffuse_bounces, cycles.glossy_bounces, cycles.transmission_bounces = 3, 1, 2, 0
    cycles.caustics_reflective = cycles.caustics_refractive = False
    cycles.sample_clamp_indirect, cycles.blur_glossy = 4.0, 0.5
    layer = bpy.context.view_layer
    layer.use_pass_z = True
    layer.cycles.denoising_store_passes = True
    height = width * 3 // 4
    scene.render.resolution_x, scene.render.resolution_y = (height, width) if shot["portrait"] else (width, height)
    scene.use_nodes = True
    tree = scene.node_tree
    tree.nodes.clear()
    source = tree.nodes.new("CompositorNodeRLayers")
    out = tree.nodes.new("CompositorNodeOutputFile")
    out.base_path = folder
    out.format.file_format, out.format.color_depth, out.format.exr_codec = "OPEN_EXR", "32", "NONE"
    out.file_slots.clear()
    for slot, socket in (("image", "Image"), ("albedo", "Denoising Albedo"), ("normal", "Denoising Normal")):
        out.file_slots.new(slot)
        tree.links.new(source.outputs[socket], out.inputs[slot])
