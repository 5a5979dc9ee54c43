"""Lights and backgrounds: one set for each place where plugs are photographed."""
import math

import bpy

import geometry as g
import materials as m


def _light(kind, location, energy, colour, size=10.0, size_y=None, target=(0, 0, 0)):
    data = bpy.data.lights.new("light", kind)
    data.energy = energy
    data.color = colour
    if kind == "AREA":
        data.shape = "RECTANGLE"
        data.size = size
        data.size_y = size_y or size
    else:
        data.shadow_soft_size = size
    thing = bpy.data.objects.new("light", data)
    thing.location = location
    direction = [t - l for t, l in zip(target, location)]
    thing.rotation_euler = __import__("mathutils").Vector(direction).to_track_quat("-Z", "Y").to_euler()
    bpy.context.collection.objects.link(thing)


def _world(colour, strength):
    world = bpy.data.worlds.new("world")
    world.use_nodes = True
    world.node_tree.nodes["Background"].inputs["Color"].default_value = (*colour, 1)
    world.node_tree.nodes["Background"].inputs["Strength"].default_value = strength
    bpy.context.scene.world = world


def shop(z, seed):
    _world((0.8, 0.9, 0.85), 0.25)
    _light("AREA", (-160, 60, 320), 2.6e6, (0.93, 1.0, 0.9), 30, 400)
    _light("AREA", (190, -40, 320), 2.0e6, (0.93, 1.0, 0.9), 30, 400)
    g.surface(z, 160, m.plain("card", (0.36, 0.225, 0.12), (0.44, 0.29, 0.165), 0.9, 0.12, 0.25, (1, 6, 1)), 1.2, 0.015, seed)


def harbour(z, seed):
    _world((0.72, 0.82, 1.0), 1.15)
    _light("AREA", (0, 0, 400), 2.2e6, (0.85, 0.92, 1.0), 500)
    g.surface(z, 160, m.plain("planks", (0.3, 0.32, 0.33), (0.42, 0.44, 0.45), 0.6, 0.16, 0.5, (6, 0.5, 1)), 0.4, 0.05, seed, planks=48)


def generator(z, seed):
    _world((0.6, 0.7, 0.9), 0.08)
    _light("AREA", (120, -150, 260), 4.2e6, (0.9, 0.95, 1.0), 14)
    _light("AREA", (-200, 150, 200), 1.3e6, (1.0, 0.93, 0.85), 120)
    g.surface(z, 160, m.plain("bench", (0.23, 0.235, 0.24), (0.36, 0.36, 0.36), 0.58, 0.1, 0.2, (9, 0.6, 1), metal=0.9), 0.3, 0.03, seed)


def van(z, seed):
    _world((0.7, 0.8, 1.0), 0.22)
    _light("AREA", (-320, 120, 180), 4.0e6, (0.78, 0.88, 1.0), 220)
    _light("POINT", (150, -120, 220), 7.0e5, (1.0, 0.66, 0.36), 14)
    g.surface(z, 160, m.plain("cloth", (0.035, 0.09, 0.26), (0.06, 0.13, 0.33), 0.95, 0.2, 0.7, weave=1.1), 5.5, 0.018, seed)


def bus(z, seed):
    _world((1.0, 0.85, 0.7), 0.18)
    _light("POINT", (-90, -120, 240), 2.2e6, (1.0, 0.67, 0.38), 22)
    _light("AREA", (220, 160, 200), 3.0e5, (1.0, 0.8, 0.6), 160)
    g.surface(z, 160, m.plain("towel", (0.78, 0.77, 0.74), (0.86, 0.85, 0.82), 0.95, 0.5, 0.55, weave=0.32), 2.2, 0.02, seed)


SCENES = {"shop": shop, "harbour": harbour, "generator": generator, "van": van, "bus": bus}


def camera(kind, chance, strap_angle=0.0):
    """Hand-held: every shot stands a little elsewhere, end-on with the strap on the far side. Millimetres; the
    f-number is scaled, since Blender takes a unit for a metre."""
    scene = bpy.context.scene
    data = bpy.data.cameras.new("camera")
    data.lens = 60
    data.sensor_width = 36
    data.clip_start, data.clip_end = 1, 5000
    thing = bpy.data.objects.new("camera", data)
    bpy.context.collection.objects.link(thing)
    scene.camera = thing
    jitter = lambda amount: chance.uniform(-amount, amount)
    if kind == "end-on":
        lean, turn, away = math.radians(27 + jitter(5)), strap_angle + math.pi + jitter(0.7), 50 + jitter(4)
        target, focus = (jitter(1.2), jitter(1.2), -2.0), (0, 0, 1.6)
        data.dof.aperture_fstop = 0.03
    elif kind == "side":
        lean, turn, away = math.radians(33 + jitter(4)), math.radians(-90) + jitter(0.1), 78 + jitter(5)
        target, focus = (11 + jitter(1.5), jitter(1.5), 0.0), (2, 0, 5)
        data.dof.aperture_fstop = 0.03
    elif kind == "whole":
        lean, turn, away = math.radians(28 + jitter(4)), math.radians(-90) + jitter(0.12), 172 + jitter(6)
        target, focus = (36 + jitter(2), jitter(2), 0.0), (30, 0, 5)
        data.dof.aperture_fstop = 0.03
    else:
        lean, turn, away = math.radians(7 + jitter(1.5)), jitter(0.6), 105 + jitter(5)
        target, focus = (jitter(1), jitter(1), -8.0), (0, 0, -46)
        data.dof.aperture_fstop = 0.05
    vector = __import__("mathutils").Vector
    at = vector(target)
    offset = vector((math.sin(lean) * math.cos(turn), math.sin(lean) * math.sin(turn), math.cos(lean))) * away
    thing.location = at + offset
    thing.rotation_euler = (-offset).to_track_quat("-Z", "Y").to_euler()
    thing.rotation_euler.rotate_axis("Z", jitter(0.12))
    data.dof.use_dof = True
    data.dof.focus_distance = (thing.location - vector(focus)).length
