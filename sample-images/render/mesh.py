"""Grids of points turned into Blender meshes; every point carries its coat (cover, tone, wet, heat)."""
import math

import bpy
import numpy as np


def resample(profile, step):
    """A polyline with no piece longer than `step`; its own corners stay."""
    profile = np.asarray(profile, float)
    out = [profile[0]]
    for a, b in zip(profile, profile[1:]):
        n = max(1, math.ceil(np.linalg.norm(b - a) / step))
        out += [a + (b - a) * i / n for i in range(1, n + 1)]
    return np.array(out)


def lathe(profile, around, step=0.1):
    """(rows, around, 3) points of a turned part from (radius, z) pairs."""
    line = resample(profile, step)
    angle = np.arange(around) * 2 * np.pi / around
    x = line[:, :1] * np.cos(angle)
    y = line[:, :1] * np.sin(angle)
    return np.stack([x, y, np.repeat(line[:, 1:], around, 1)], 2)


def normals(points):
    """Outward normals of a grid that closes on itself across its columns."""
    across = np.roll(points, -1, 1) - np.roll(points, 1, 1)
    along = np.gradient(points, axis=0)
    n = np.cross(across, -along)
    length = np.linalg.norm(n, axis=2, keepdims=True)
    return n / np.maximum(length, 1e-9)


def _arc_lengths(points, closed):
    """Where each face corner lies, in millimetres around and along the part: the flat map for fine texture."""
    wrapped = np.concatenate([points, points[:, :1]], 1) if closed else points
    around = np.concatenate([[0], np.linalg.norm(np.diff(wrapped, axis=1), axis=2).mean(0).cumsum()])
    along = np.concatenate([[0], np.linalg.norm(np.diff(points, axis=0), axis=2).mean(1).cumsum()])
    u, v = np.meshgrid(around, along)
    uv = np.stack([u, v], 2)
    return np.stack([uv[:-1, :-1], uv[:-1, 1:], uv[1:, 1:], uv[1:, :-1]], 2)[:, :, ::-1].reshape(-1, 2)


def grid_object(name, points, material, coat=None, closed=True, sharp=35.0, caps=()):
    """Mesh of a grid. `caps`: rows (0, -1) that get an end face. `sharp` in degrees, None for smooth throughout."""
    rows, columns = points.shape[:2]
    index = np.arange(rows * columns).reshape(rows, columns)
    right = np.roll(index, -1, 1) if closed else index[:, 1:]
    left = index if closed else index[:, :-1]
    faces = np.stack([left[:-1], right[:-1], right[1:], left[1:]], 2).reshape(-1, 4)[:, ::-1].tolist()
    for row in caps:
        loop = index[row].tolist()
        faces.append(loop if row == 0 else loop[::-1])
    mesh = bpy.data.meshes.new(name)
    mesh.from_pydata(points.reshape(-1, 3).tolist(), [], faces)
    mesh.polygons.foreach_set("use_smooth", [True] * len(mesh.polygons))
    if sharp is not None:
        mesh.use_auto_smooth = True
        mesh.auto_smooth_angle = math.radians(sharp)
    layer = mesh.attributes.new("coat", "FLOAT_COLOR", "POINT")
    values = np.zeros((rows * columns, 4), np.float32) if coat is None else coat.reshape(-1, 4).astype(np.float32)
    layer.data.foreach_set("color", values.ravel())
    mesh.uv_layers.new(name="mm")
    uv = np.zeros((len(mesh.loops), 2), np.float32)
    quads = _arc_lengths(points, closed)
    uv[: len(quads)] = quads
    mesh.uv_layers["mm"].data.foreach_set("uv", uv.ravel())
    mesh.materials.append(material)
    mesh.update()
    thing = bpy.data.objects.new(name, mesh)
    bpy.context.collection.objects.link(thing)
    return thing
