"""Seeded noise on arrays of points (N, 3), in millimetres: gradient noise, its sums, and cells."""
import numpy as np


def _hash(x, y, z, seed):
    """One well-mixed 32-bit number a lattice point."""
    h = (x.astype(np.uint32) * np.uint32(374761393)) ^ (y.astype(np.uint32) * np.uint32(668265263))
    h ^= (z.astype(np.uint32) * np.uint32(2147483647)) ^ np.uint32((seed * 1274126177 + 12345) & 0xFFFFFFFF)
    h ^= h >> np.uint32(13)
    h *= np.uint32(1274126177)
    h ^= h >> np.uint32(16)
    h *= np.uint32(2246822519)
    return h ^ (h >> np.uint32(15))


def gradient(points, seed=0):
    """Gradient noise, about -1 to 1."""
    base = np.floor(points).astype(np.int64)
    f = points - base
    w = f * f * f * (f * (f * 6 - 15) + 10)
    total = np.zeros(len(points))
    for corner in range(8):
        offset = np.array([corner & 1, corner >> 1 & 1, corner >> 2 & 1])
        c = base + offset
        h = _hash(c[:, 0], c[:, 1], c[:, 2], seed)
        g = np.stack([(h & 1023) / 511.5 - 1, (h >> np.uint32(10) & 1023) / 511.5 - 1, (h >> np.uint32(20) & 1023) / 511.5 - 1], 1)
        weight = np.prod(np.where(offset, w, 1 - w), axis=1)
        total += weight * np.sum(g * (f - offset), axis=1)
    return total * 1.25


def fbm(points, scale, octaves=4, seed=0, gain=0.5):
    """Summed noise, about -1 to 1; `scale` is features a millimetre."""
    total, amount, weight = np.zeros(len(points)), 1.0, 0.0
    for octave in range(octaves):
        total += amount * gradient(points * scale * 2.03 ** octave + octave * 17.7, seed + octave)
        weight += amount
        amount *= gain
    return total / weight * 1.4


def billow(points, scale, octaves=4, seed=0, gain=0.55):
    """Rounded lumps with sharp valleys, about 0 to 1."""
    total, amount, weight = np.zeros(len(points)), 1.0, 0.0
    for octave in range(octaves):
        total += amount * (1 - np.abs(gradient(points * scale * 2.1 ** octave + octave * 9.1, seed + octave)))
        weight += amount
        amount *= gain
    return (total / weight - 0.5) * 2


def cells(points, scale, seed=0):
    """Distance to the nearest of randomly scattered grains, 0 at a grain's middle, about 1 between grains."""
    p = points * scale
    base = np.floor(p).astype(np.int64)
    nearest = np.full(len(p), 9.0)
    for dx in (-1, 0, 1):
        for dy in (-1, 0, 1):
            for dz in (-1, 0, 1):
                c = base + [dx, dy, dz]
                h = _hash(c[:, 0], c[:, 1], c[:, 2], seed)
                at = c + np.stack([(h & 1023), (h >> np.uint32(10) & 1023), (h >> np.uint32(20) & 1023)], 1) / 1023.0
                nearest = np.minimum(nearest, np.sum((p - at) ** 2, axis=1))
    return np.sqrt(nearest)


def smoothstep(low, high, x):
    t = np.clip((x - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)
