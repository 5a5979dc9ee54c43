"""What stands in the fire: insulator nose, centre electrode, ground strap and its weld. Millimetres, rim at z = 0."""
import numpy as np

from mesh import lathe, resample

NOSE_TOP = 1.7
TIP = 2.9


def nose():
    """A tapered ceramic cone with a rounded shoulder and a flat land around the electrode."""
    return lathe([(4.2, -13.5), (3.75, -8.5), (3.05, -2.5), (2.72, 0.0), (2.58, 0.9), (2.46, 1.28), (2.25, 1.53), (1.95, 1.66),
                  (1.6, NOSE_TOP), (1.3, NOSE_TOP), (1.26, NOSE_TOP - 0.25)], 260, 0.09)


def electrode(wear):
    """`wear` 0 (sharp edge) to 1 (dome)."""
    edge = 0.06 + 0.55 * wear
    line = [(1.22, NOSE_TOP - 0.3), (1.22, TIP - edge)]
    line += [(1.22 - edge * (1 - np.cos(a)), TIP - edge + edge * np.sin(a)) for a in np.linspace(0.2, np.pi / 2, 7)]
    return lathe(line + [(0.01, TIP + 0.08 * wear)], 120, 0.09)


def strap(gap, wear, width=2.6, thick=1.35):
    """Grid (along, around) of the strap; row 0 at the weld. Also the share of the way along, for heat."""
    reach, bend, top = 5.42, 2.0, TIP + gap + thick / 2
    path = [(reach, -0.1), (reach, top - bend)]
    path += [(reach - bend * (1 - np.cos(a)), top - bend + bend * np.sin(a)) for a in np.linspace(0.1, np.pi / 2, 14)]
    path = resample(path + [(-1.15, top + 0.04)], 0.1)
    tangent = np.gradient(path, axis=0)
    tangent /= np.linalg.norm(tangent, axis=1, keepdims=True)
    side = np.stack([-tangent[:, 1], tangent[:, 0]], 1)
    rows = []
    # The corners of the drawn wire are rounded, its cut end is not quite square.
    n, total = 88, len(path)
    angle = np.arange(n) * 2 * np.pi / n
    power = 0.28
    y = np.sign(np.cos(angle)) * np.abs(np.cos(angle)) ** power * width / 2
    t = np.sign(np.sin(angle)) * np.abs(np.sin(angle)) ** power * thick / 2
    for i in range(total):
        left = (total - 1 - i) * 0.1
        shrink = 1 - 0.12 * np.clip(1 - left / 0.25, 0, 1) ** 2
        # Sparks eat a shallow hollow into the side that faces the centre electrode.
        hollow = np.where(t > 0, wear * 0.28 * np.exp(-(path[i, 0] / 1.3) ** 2), 0)
        depth = t * shrink - hollow
        rows.append(np.stack([path[i, 0] + side[i, 0] * depth, y * shrink, path[i, 1] + side[i, 1] * depth], 1))
    rows = np.array(rows)
    cap = rows[-1].mean(0)
    for s in (0.8, 0.4, 0.02):
        rows = np.concatenate([rows, (cap + (rows[total - 1] - cap) * s + [-0.05 * (1 - s), 0, 0])[None]])
    along = np.repeat(np.minimum(np.arange(len(rows)) / (total - 1), 1)[:, None], n, 1)
    return rows, along


def weld(seed):
    """The squeezed-out bead around the strap's foot."""
    a = np.arange(64) * 2 * np.pi / 64
    rows = []
    lump = 1 + 0.12 * np.sin(3 * a + seed) + 0.08 * np.sin(7 * a + 2 * seed)
    for s, z in [(1.28, -0.1), (1.25, 0.1), (1.12, 0.26), (0.9, 0.36), (0.7, 0.5)]:
        x = 5.42 + np.sign(np.cos(a)) * np.abs(np.cos(a)) ** 0.6 * 0.78 * s * lump
        y = np.sign(np.sin(a)) * np.abs(np.sin(a)) ** 0.6 * 1.5 * s * lump
        rows.append(np.stack([x, y, np.full(64, z)], 1))
    return np.array(rows)
