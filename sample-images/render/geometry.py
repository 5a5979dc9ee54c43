"""Meshes of a spark plug and its surroundings, in millimetres, firing end up (z = 0 is the shell rim)."""
import math
import random

import bpy
from mathutils import Vector, noise


def mesh_object(name, vertices, faces, material, smooth=True):
    mesh = bpy.data.meshes.new(name)
    mesh.from_pydata(vertices, [], faces)
    mesh.update()
    if smooth:
        mesh.polygons.foreach_set("use_smooth", [True] * len(mesh.polygons))
    thing = bpy.data.objects.new(name, mesh)
    mesh.materials.append(material)
    bpy.context.collection.objects.link(thing)
    return thing


def turned(name, profile, material, around=128, relief=0.0, relief_scale=1.0, seed=0, sharp=35):
    """A lathe part from (radius, z) points; `relief` pushes the surface out by noise, for crust and soot."""
    dense = []
    for (r0, z0), (r1, z1) in zip(profile, profile[1:]):
        steps = max(1, int(math.hypot(r1 - r0, z1 - z0) / 0.25)) if relief else 1
        dense += [(r0 + (r1 - r0) * i / steps, z0 + (z1 - z0) * i / steps) for i in range(steps)]
    dense.append(profile[-1])
    vertices, faces = [], []
    for radius, z in dense:
        for k in range(around):
            angle = 2 * math.pi * k / around
            x, y = math.cos(angle), math.sin(angle)
            push = 0.0
            if relief:
                at = Vector((x * radius + seed * 7.3, y * radius, z)) * relief_scale
                push = relief * (max(0.0, noise.noise(at)) + 0.45 * max(0.0, noise.noise(at * 3.1)) + 0.25 * noise.noise(at * 8.0))
            vertices.append((x * (radius + push), y * (radius + push), z + push * 0.3))
    for i in range(len(dense) - 1):
        for k in range(around):
            j = (k + 1) % around
            faces.append((i * around + k, i * around + j, (i + 1) * around + j, (i + 1) * around + k))
    thing = mesh_object(name, vertices, faces, material)
    thing.data.use_auto_smooth = True
    thing.data.auto_smooth_angle = math.radians(sharp)
    return thing


def thread(name, major, minor, pitch, top, bottom, material, around=120):
    """A real helix: the radius follows the distance along the pitch, crests and roots slightly rounded."""
    rows = int((top - bottom) / pitch * 16)
    vertices, faces = [], []
    for i in range(rows + 1):
        z = top - (top - bottom) * i / rows
        fade = min(1.0, (top - z) / 1.2, (z - bottom) / 0.6)
        for k in range(around):
            angle = 2 * math.pi * k / around
            phase = (z / pitch - k / around) % 1.0
            height = min(1.0, max(0.0, abs(phase - 0.5) * 2 * 1.25 - 0.12))
            radius = minor + (major - minor) * height * max(0.0, fade)
            vertices.append((radius * math.cos(angle), radius * math.sin(angle), z))
    for i in range(rows):
        for k in range(around):
            j = (k + 1) % around
            faces.append((i * around + k, i * around + j, (i + 1) * around + j, (i + 1) * around + k))
    thing = mesh_object(name, vertices, faces, material)
    thing.data.use_auto_smooth = True
    thing.data.auto_smooth_angle = math.radians(40)
    return thing


def hexagon(name, across_flats, top, bottom, material):
    """The wrench hex with chamfered corners."""
    corner = across_flats / math.sqrt(3)
    vertices, faces = [], []
    rings = [(0.9, top), (1.0, top - 0.8), (1.0, bottom + 0.8), (0.92, bottom)]
    for scale, z in rings:
        for k in range(6):
            angle = math.pi / 3 * k
            vertices.append((corner * scale * math.cos(angle), corner * scale * math.sin(angle), z))
    for i in range(len(rings) - 1):
        for k in range(6):
            j = (k + 1) % 6
            faces.append((i * 6 + k, i * 6 + j, (i + 1) * 6 + j, (i + 1) * 6 + k))
    faces.append(tuple(range(6)))
    faces.append(tuple(range(18, 24)))
    thing = mesh_object(name, vertices, faces, material, smooth=False)
    bevel = thing.modifiers.new("bevel", "BEVEL")
    bevel.width = 0.35
    bevel.segments = 3
    return thing


def strap(name, angle, gap, tip, material, width=2.7, thick=1.4, relief=0.0, seed=0):
    """The ground strap: from its weld on the rim, up, round a bend and over the centre electrode."""
    reach, bend = 5.85, 2.2
    top = tip + gap + thick / 2
    path = [(reach, -0.4), (reach, top - bend)]
    for i in range(1, 13):
        a = math.pi / 2 * i / 12
        path.append((reach - bend * (1 - math.cos(a)), top - bend + bend * math.sin(a)))
    path.append((-1.3, top + 0.05))
    dense = []
    for (x0, z0), (x1, z1) in zip(path, path[1:]):
        n = max(1, int(math.hypot(x1 - x0, z1 - z0) / 0.3))
        dense += [(x0 + (x1 - x0) * i / n, z0 + (z1 - z0) * i / n) for i in range(n)]
    dense.append(path[-1])
    across = 10
    loop = []
    for side in range(across):
        loop.append((-width / 2 + width * side / (across - 1), thick / 2))
    for side in range(across):
        loop.append((width / 2 - width * side / (across - 1), -thick / 2))
    vertices, faces = [], []
    for i, (x, z) in enumerate(dense):
        x1, z1 = dense[min(i + 1, len(dense) - 1)]
        x0, z0 = dense[max(i - 1, 0)]
        length = math.hypot(x1 - x0, z1 - z0) or 1
        nx, nz = -(z1 - z0) / length, (x1 - x0) / length
        for y, t in loop:
            push = relief * max(0, noise.noise(Vector((x + seed, y * 1.7, z)) * 1.6)) if relief else 0
            vertices.append((x - nx * (t + math.copysign(push, t)), y, z - nz * (t + math.copysign(push, t))))
    n = len(loop)
    for i in range(len(dense) - 1):
        for k in range(n):
            j = (k + 1) % n
            faces.append((i * n + k, i * n + j, (i + 1) * n + j, (i + 1) * n + k))
    faces.append(tuple(range(n)))
    faces.append(tuple(range((len(dense) - 1) * n, len(dense) * n)))
    thing = mesh_object(name, vertices, faces, material)
    bevel = thing.modifiers.new("bevel", "BEVEL")
    bevel.width = 0.22
    bevel.segments = 3
    bevel.limit_method = "ANGLE"
    thing.data.use_auto_smooth = True
    thing.data.auto_smooth_angle = math.radians(40)
    thing.rotation_euler = (0, 0, angle)
    return thing


def build_plug(look, seed, materials):
    """One plug as an empty with parts; `look` is a row of conditions.py. Returns the empty, to be placed and turned."""
    chance = random.Random(seed)
    relief = look["relief"]
    angle = chance.uniform(0, 2 * math.pi)
    tip = 2.9
    parts = [
        turned("bore", [(4.3, -13), (4.9, -9), (5.0, -0.5), (5.25, 0), (6.35, 0), (6.6, -0.35), (6.6, -1.4)], materials["rim"],
               relief=relief * 0.6, relief_scale=1.1, seed=seed),
        thread("thread", 6.95, 6.1, 1.25, -1.2, -18.6, materials["thread"]),
        turned("seat", [(6.1, -18.4), (7.3, -18.8), (9.0, -19.2), (9.0, -20.6)], materials["shell"]),
        turned("gasket", [(7.2, -17.3), (9.6, -17.3), (9.9, -17.8), (9.9, -18.6), (9.6, -19.1), (7.2, -19.1)], materials["gasket"]),
        turned("collar", [(9.0, -20.4), (9.4, -21.0), (9.4, -23.4), (8.8, -24)], materials["shell"]),
        hexagon("hex", 16, -24, -32, materials["shell"]),
        turned("crimp", [(8.3, -31.4), (8.2, -32.4), (7.8, -33.8), (7.0, -34.6), (6.2, -34.8)], materials["shell"]),
        turned("upper", upper_insulator(), materials["upper"]),
        turned("terminal", [(2.6, -60), (2.6, -61), (3.9, -61.4), (3.9, -64), (2.2, -65.2), (2.2, -67), (3.3, -68), (3.1, -71), (0.01, -71.5)],
               materials["shell"]),
        turned("nose", [(4.15, -13), (3.7, -8), (3.05, -2.5), (2.5, 0.5), (2.35, 1.2), (2.15, 1.55), (1.8, 1.66), (1.25, 1.66)], materials["nose"],
               relief=relief, relief_scale=1.0, seed=seed + 1),
        turned("electrode", [(1.22, 1.2), (1.22, tip - 0.15 - look["wear"]), (1.05 - look["wear"] * 0.6, tip), (0.01, tip + look["wear"] * 0.3)],
               materials["electrode"], relief=relief * 0.35, seed=seed + 2),
        strap("strap", angle, 1.0 + look["wear"] * 0.8 + chance.uniform(-0.06, 0.06), tip, materials["strap"],
              relief=relief * 0.6, seed=seed),
    ]
    whole = bpy.data.objects.new("plug", None)
    whole["strap_angle"] = angle
    bpy.context.collection.objects.link(whole)
    for part in parts:
        part.parent = whole
    return whole


def upper_insulator():
    """Ribbed porcelain from the crimp to the terminal."""
    profile = [(6.0, -34.5), (5.6, -36), (5.5, -40)]
    for rib in range(5):
        z = -42 - rib * 3.2
        profile += [(4.7, z), (5.3, z - 0.7), (5.3, z - 1.6), (4.7, z - 2.3)]
    return profile + [(4.4, -58), (4.1, -60), (2.5, -60.3)]


def surface(z, size, material, relief=0.0, relief_scale=0.05, seed=0, planks=0):
    """What the plugs stand in or lie on; `planks` cuts it into boards of that width."""
    steps = 160
    vertices, faces = [], []
    for i in range(steps + 1):
        for k in range(steps + 1):
            x, y = -size + 2 * size * i / steps, -size + 2 * size * k / steps
            height = relief * noise.noise(Vector((x, y, seed)) * relief_scale) if relief else 0
            if planks:
                edge = abs((x + planks / 2) % planks - planks / 2)
                height -= max(0.0, 1.6 - edge) * 2.2
            vertices.append((x, y, z + height))
    for i in range(steps):
        for k in range(steps):
            a = i * (steps + 1) + k
            faces.append((a, a + steps + 1, a + steps + 2, a + 1))
    return mesh_object("surface", vertices, faces, material)


def build_well(materials, oil):
    """A plug tube seen from above with the plug in place at its bottom; `oil` adds a pool around the hex."""
    turned("tube", [(30, 8), (30, 0), (16, 0), (14.6, -1.2), (14.0, -2.5), (14.0, -95), (9.5, -96)], materials["aluminium"], around=200)
    plug = build_plug(materials["look"], materials["seed"], materials)
    plug.rotation_euler = (math.pi, 0, 0)
    plug.location = (0, 0, -118)
    turned("floor", [(14.2, -94.5), (0.01, -94.5)], materials["aluminium"], around=200)
    if oil:
        turned("pool", [(14.1, -83.2), (13.4, -83.9), (12, -84.1), (0.01, -84.1)], materials["oil"], around=200)
    return plug
