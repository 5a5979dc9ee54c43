"""The steel shell: rim and bore, rolled M14 x 1.25 thread, gasket, collar, hex and crimp. Millimetres, rim at z = 0."""
import numpy as np

from mesh import lathe

RIM_OUTER, RIM_INNER = 6.15, 4.72
THREAD_TOP, THREAD_END = -0.7, -17.6


def rim_and_bore():
    """Down in the bore, over the rim, to the start of the thread."""
    return lathe([(4.25, -13.5), (4.45, -9), (4.6, -4), (4.68, -0.25), (4.8, 0), (5.95, 0), (6.15, -0.12), (6.32, -0.5), (6.3, -1.0)], 360, 0.1)


def thread(pitch=1.25, major=6.98, minor=6.2, around=180):
    """A real helix with a flat crest and a rounded root; it runs out at both ends."""
    rows = int((THREAD_TOP - THREAD_END) / pitch * 22)
    z = np.linspace(THREAD_TOP, THREAD_END, rows)[:, None]
    angle = np.arange(around)[None, :] * 2 * np.pi / around
    phase = (z / pitch - angle / (2 * np.pi)) % 1.0
    flank = np.clip(np.abs(phase - 0.5) * 2 * 1.3 - 0.14, 0, 1)
    flank = np.where(flank < 0.15, flank * flank / 0.15, flank)
    fade = np.clip(np.minimum((THREAD_TOP - z) / 1.3, (z - THREAD_END) / 0.5), 0, 1)
    radius = minor + (major - minor) * flank * fade
    return np.stack([radius * np.cos(angle), radius * np.sin(angle), np.repeat(z, around, 1)], 2)


def neck():
    """The relief between thread and seat, and the seat itself."""
    return lathe([(6.2, -17.5), (6.05, -17.8), (6.05, -18.7), (6.4, -19.0), (9.3, -19.0)], 128, 0.2)


def gasket(crushed):
    """The folded sealing ring: round when new, flattened once it has been tightened."""
    h, out = (1.25, 9.75) if crushed else (1.9, 9.5)
    top, low = -19.0 + h, -19.0
    m = (top + low) / 2
    return lathe([(7.1, low), (6.8, m), (7.1, top - 0.1), (7.6, top), (out - 0.5, top), (out - 0.12, top - 0.2), (out, m),
                  (out - 0.12, low + 0.15), (out - 0.5, low)], 200, 0.15)


def collar():
    """From the seat to the buckled groove below the hex."""
    return lathe([(9.2, -19.0), (9.45, -19.3), (9.45, -22.6), (9.2, -22.9), (8.1, -23.1), (7.9, -23.5), (8.0, -24.3), (8.3, -24.6)], 200, 0.25)


def hexagon(across_flats=16.0, top=-24.4, bottom=-33.4):
    """The wrench hex, its corners turned off at 30 degrees and a little rounded."""
    around = 360
    angle = np.arange(around) * 2 * np.pi / around
    flat = across_flats / 2 / np.cos((angle + np.pi / 6) % (np.pi / 3) - np.pi / 6)
    flat = np.minimum(flat, across_flats / np.sqrt(3) - 0.18)
    rows = []
    for z, limit in [(top, 7.4), (top, 7.95), (top - 0.75, 9.3), (bottom + 0.75, 9.3), (bottom, 7.95), (bottom, 7.2)]:
        r = np.minimum(flat, limit)
        rows.append(np.stack([r * np.cos(angle), r * np.sin(angle), np.full(around, z)], 1))
    dense = []
    for a, b in zip(rows, rows[1:]):
        n = max(1, int(np.abs(b - a).max() / 0.4))
        dense += [a + (b - a) * i / n for i in range(n)]
    return np.array(dense + [rows[-1]])


def crimp():
    """The edge rolled over the insulator's shoulder."""
    return lathe([(7.6, -33.3), (7.7, -34.6), (7.5, -35.4), (7.0, -36.0), (6.3, -36.25), (5.8, -36.1), (5.6, -35.7)], 160, 0.2)
