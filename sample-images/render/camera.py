"""A phone held by hand: every shot stands a little elsewhere. Blender takes our millimetres for metres, hence the f-number."""
import math

import bpy
from mathutils import Matrix, Vector

LENS = 60.0


def camera(plug, shot, chance, portrait=False):
    """Places the scene's camera for a shot of `plug` (already posed) or of a plug well."""
    jitter = lambda amount: chance.uniform(-amount, amount)
    data = bpy.data.cameras.new("camera")
    data.lens, data.sensor_width = LENS, 36.0 if not portrait else 27.0
    data.sensor_fit = "HORIZONTAL"
    data.clip_start, data.clip_end = 0.5, 5000
    pose = plug.matrix_world.to_3x3()
    spot = lambda x, y, z: plug.matrix_world @ Vector((x, y, z))
    axis = pose @ Vector((0, 0, 1))
    up = Vector((0, 0, 1))
    if shot == "end-on":
        away, entrance = 61 + jitter(5), 1.8
        if abs(axis.z) > 0.9:
            # Standing: from above and from the side away from the strap.
            turn = plug["strap_angle"] + plug.rotation_euler.z + math.pi + jitter(1.1)
            lean = math.radians(27 + jitter(6))
            view = Vector((math.sin(lean) * math.cos(turn), math.sin(lean) * math.sin(turn), math.cos(lean)))
        else:
            # Lying: from above its axis, a little to the left or right.
            view = Matrix.Rotation(jitter(0.26), 3, "Z") @ axis
            side = up.cross(view).normalized()
            view = Matrix.Rotation(-math.radians(27 + jitter(5)), 3, side) @ view
        target, focus = spot(jitter(0.8), jitter(0.8), -4), spot(0, 0, 1.2)
    elif shot == "side":
        away, entrance = 104 + jitter(6), 2.0
        view = _from_side(axis, up, 50 + jitter(7), jitter(0.2) + 0.15)
        target, focus = spot(0, 0, -13 + jitter(1.5)), spot(0, 0, -2) + view * 5
    elif shot == "whole":
        away, entrance = 178 + jitter(8), 2.2
        view = _from_side(axis, up, 52 + jitter(6), jitter(0.15))
        target, focus = spot(0, 0, -33 + jitter(2)), spot(0, 0, -36) + view * 5
    else:
        away, entrance = 112 + jitter(5), 1.1
        lean, turn = math.radians(8 + jitter(2)), jitter(3)
        view = Vector((math.sin(lean) * math.cos(turn), math.sin(lean) * math.sin(turn), math.cos(lean)))
        target, focus = Vector((jitter(1.5), jitter(1.5), -10)), Vector((0, 0, -40))
    thing = bpy.data.objects.new("camera", data)
    bpy.context.collection.objects.link(thing)
    thing.location = target + view * away
    thing.rotation_euler = (-view).to_track_quat("-Z", "Y").to_euler()
    thing.rotation_euler.rotate_axis("Z", jitter(0.09))
    data.dof.use_dof = True
    data.dof.focus_distance = (thing.location - focus).dot(view)
    data.dof.aperture_fstop = LENS / 1000 / entrance
    data.dof.aperture_blades = 0
    bpy.context.scene.camera = thing


def _from_side(axis, up, elevation, swing):
    side = up.cross(axis).normalized()
    view = Matrix.Rotation(swing, 3, "Z") @ side
    tilt = math.radians(elevation)
    return (view * math.cos(tilt) + up * math.sin(tilt)).normalized()
