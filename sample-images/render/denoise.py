"""An edge-aware a-trous filter on the light that falls on a surface: its colour is divided out and put back, so texture stays."""
import numpy as np


def _shift(a, dy, dx):
    return np.roll(a, (dy, dx), (0, 1))


def _fireflies(image):
    """Single pixels far brighter than all around them are brought down."""
    light = image.mean(2)
    around = np.stack([_shift(light, dy, dx) for dy in (-1, 0, 1) for dx in (-1, 0, 1) if dy or dx])
    limit = np.sort(around, 0)[-2] * 1.6 + 1e-3
    return image * np.minimum(1, limit / np.maximum(light, 1e-6))[..., None]


def denoise(image, albedo, normal, levels=3, strength=0.3):
    base = albedo + 0.03
    light = (_fireflies(image) / base).astype(np.float32)
    normal = normal.astype(np.float32)
    kernel = {-1: 0.25, 0: 0.5, 1: 0.25}
    for level in range(levels):
        step = 2 ** level
        tone = np.log(light.mean(2) + 0.01)
        total, weights = np.zeros_like(light), np.zeros(tone.shape, np.float32)
        for y, ky in kernel.items():
            for x, kx in kernel.items():
                dy, dx = y * step, x * step
                apart = ((tone - _shift(tone, dy, dx)) / (strength / (1 + 0.5 * level))) ** 2
                apart += np.sum((normal - _shift(normal, dy, dx)) ** 2, 2) * 12
                apart += np.sum((base - _shift(base, dy, dx)) ** 2, 2) * 60
                w = ky * kx * np.exp(-apart)
                total += _shift(light, dy, dx) * w[..., None]
                weights += w
        light = total / weights[..., None]
    return light * base
