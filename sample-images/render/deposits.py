"""Lays a coat over the points of a part: pushes them outwards and returns cover, tone, wetness and heat for the shader."""
import numpy as np

from mesh import normals
from noise import billow, cells, fbm, smoothstep


def _height(kind, p, seed):
    """0 to about 1: the relief of a texture."""
    if kind == "fluff":
        return 0.65 * billow(p, 0.9, 4, seed, 0.62).clip(0) + 0.35 * (1 - cells(p, 2.6, seed + 3)).clip(0)
    if kind == "crust":
        grains = 0.55 * (1 - cells(p, 1.3, seed)).clip(0) + 0.3 * (1 - cells(p, 3.1, seed + 1)).clip(0)
        return grains + 0.25 * fbm(p, 4.0, 3, seed + 2).clip(-0.4)
    if kind == "clots":
        return smoothstep(0.0, 0.7, fbm(p, 0.5, 1, seed)) + 0.3 * smoothstep(0.15, 0.7, fbm(p, 1.1, 1, seed + 2))
    if kind == "powder":
        return 0.5 + 0.5 * fbm(p, 2.4, 5, seed, 0.65)
    return 0.5 + 0.3 * fbm(p, 0.8, 3, seed)


def lay(points, coat, seed, outward=1, bias=0.0, darker=0.0, heat=0.0, edge=1.0):
    """(moved points, coat values). `bias` adds cover, `darker` shifts the tone, `edge` scales thickness; numbers or grids."""
    shape = points.shape[:2]
    p = points.reshape(-1, 3)
    grid = lambda x: x.reshape(shape)
    cover = np.full(shape, coat.cover) + coat.patchy * grid(fbm(p, coat.scale, 3, seed))
    if coat.side:
        facing = seed * 2.399
        radius = np.maximum(np.hypot(points[..., 0], points[..., 1]), 0.5)
        cover = cover + coat.side * (points[..., 0] * np.cos(facing) + points[..., 1] * np.sin(facing)) / radius
    cover = np.clip(cover + (bias if coat.cover else 0), 0, 1)
    tone = np.clip(0.35 + coat.tone + coat.tone_range * grid(fbm(p, 0.55, 4, seed + 21)) + coat.root * darker, 0, 1)
    if coat.thick:
        relief = coat.thick * smoothstep(0.15, 0.7, cover) * grid(_height(coat.kind, p, seed + 41)) * edge
        points = points + normals(points) * (outward * relief)[..., None]
    wet = coat.wet * smoothstep(-0.75, 0.05, grid(fbm(p, 0.5, 3, seed + 61)))
    heat = np.broadcast_to(heat, shape)
    return points, np.stack([cover, tone, wet * smoothstep(0.2, 0.6, cover), heat], 2)
