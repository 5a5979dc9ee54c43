"""A plug tube seen from above, coil boot removed, the plug's terminal at the bottom; dry or with a pool of oil."""
import bpy
import numpy as np

from coat import NOTHING, Coat
from deposits import lay
from materials import Graph, coated
from mesh import grid_object, lathe
from noise import fbm, smoothstep

OIL_FILM = Coat(a=(0.11, 0.05, 0.014), b=(0.04, 0.018, 0.006), cover=0.6, patchy=0.5, scale=0.09, thick=0.0, rough=0.2, bump=0.02, wet=1.0,
                ragged=0.15, grain=3.0)
DUST = Coat(a=(0.17, 0.14, 0.11), b=(0.09, 0.07, 0.055), cover=0.22, patchy=0.5, scale=0.05, thick=0.0, rough=0.9, bump=0.05, root=0.0)
RUBBER = dict(colour=(0.02, 0.02, 0.021), metal=0.0, rough=0.55)
MACHINED = dict(colour=(0.62, 0.62, 0.625), metal=1.0, rough=0.3, turned=True)
CAST = dict(colour=(0.48, 0.485, 0.49), metal=1.0, rough=0.5)
POOL = -73.0


def build_well(plug, oil, seed):
    """`plug` is hung terminal up, its terminal 47 mm down the tube."""
    plug.rotation_euler = (np.pi, 0, seed)
    plug.location = (0.4, -0.3, -117)
    film = OIL_FILM if oil else DUST
    wall = lathe([(15.2, -1.5), (14.5, -2.6), (14.2, -4), (14.2, -96), (12.5, -98), (0.1, -98)], 240, 0.8)
    drip = 0.25 * fbm(np.stack([wall[..., 0].ravel() * 3, wall[..., 1].ravel() * 3, wall[..., 2].ravel() * 0.25], 1), 0.12, 3, seed).reshape(wall.shape[:2])
    points, coat = lay(wall, film, seed, -1, bias=(0.5 * smoothstep(-40, -72, wall[..., 2]) + drip if oil else drip - 0.1))
    grid_object("tube", points, coated("tube", MACHINED, film, seed), coat)
    lip = lathe([(15.3, -1.2), (14.7, -0.2), (15.0, 0.7), (15.9, 1.1), (16.9, 0.8), (17.3, 0.1), (17.4, -0.6)], 240, 0.2)
    points, coat = lay(lip, film.but(cover=0.75) if oil else NOTHING, seed + 1, 1)
    grid_object("seal", points, coated("seal", RUBBER, film if oil else NOTHING, seed + 1), coat)
    land = lathe([(17.3, -0.4), (17.6, -0.15), (23.5, -0.15), (24.2, -0.5), (24.6, -2.8), (26, -3.6), (30, -3.9), (120, -4.2)], 240, 0.5)
    rough = fbm(land.reshape(-1, 3), 0.9, 3, seed).reshape(land.shape[:2]) * smoothstep(24.3, 25.5, np.hypot(land[..., 0], land[..., 1]))
    land[..., 2] += 0.16 * rough
    near = smoothstep(27, 17.5, np.hypot(land[..., 0], land[..., 1]))
    points, coat = lay(land, film, seed + 2, 1, bias=0.75 * near - 0.75 if oil else 0.1 - 0.2 * near)
    grid_object("cover", points, coated("cover", CAST, film, seed + 2), coat)
    if oil:
        _pool(seed)


def _pool(seed):
    """Old engine oil: brown-black, mirror-like, drawn up at the wall."""
    g = Graph("oil")
    g.put(g.shader.inputs["Base Color"], (0.022, 0.009, 0.002))
    g.shader.inputs["Roughness"].default_value = 0.04
    g.shader.inputs["Specular"].default_value = 0.55
    points = lathe([(14.25, POOL + 1.3), (13.9, POOL + 0.5), (13.2, POOL + 0.1), (12, POOL), (7, POOL), (6.3, POOL + 0.1), (5.9, POOL + 0.5), (5.6, POOL + 1.1), (4.5, POOL + 1.1)], 160, 0.4)
    points[..., 2] += 0.06 * fbm(points.reshape(-1, 3), 0.2, 2, seed).reshape(points.shape[:2])
    grid_object("pool", points, g.material, sharp=None)
