"""What a phone does after the shutter: exposure, white balance, tone curve, sharpening, vignetting and sensor noise."""
import numpy as np

# White-balance gains and exposure bias (stops) of each place: tungsten is only partly taken out, as phones leave it.
LOOK = {
    "shop": ((1.03, 0.985, 1.05), 0.05),
    "harbour": ((1.02, 1.0, 0.985), 0.05),
    "generator": ((1.0, 1.0, 0.985), 0.1),
    "van": ((1.03, 1.0, 0.97), -0.5),
    "bus": ((0.82, 1.0, 1.36), 0.85),
    "tube": ((1.0, 1.0, 1.02), -0.2),
}


def _blur(a, sigma):
    r = max(1, int(sigma * 2.5 + 0.5))
    k = np.exp(-0.5 * (np.arange(-r, r + 1) / sigma) ** 2)
    k /= k.sum()
    for axis in (0, 1):
        padded = np.pad(a, [(r, r) if i == axis else (0, 0) for i in range(a.ndim)], "edge")
        a = sum(w * np.take(padded, range(i, i + a.shape[axis]), axis) for i, w in enumerate(k))
    return a


def develop(image, place, seed):
    """Linear light in, 8-bit sRGB out."""
    chance = np.random.default_rng(seed)
    h, w = image.shape[:2]
    gains, bias = LOOK[place]
    image = image * np.asarray(gains) * (1 + chance.normal(0, 0.012, 3))
    y, x = np.mgrid[0:h, 0:w]
    r2 = ((x - w / 2) ** 2 + (y - h / 2) ** 2) / (w * w / 4 + h * h / 4)
    middle = np.exp(-1.2 * r2)
    light = image @ [0.2126, 0.7152, 0.0722]
    key = np.exp((np.log(light + 0.004) * middle).sum() / middle.sum())
    # Exposed for the middle, but not so far that what is white there burns out.
    gain = min(0.18 / key * 2 ** (bias + chance.normal(0, 0.08)), 1.35 / np.percentile(light[middle > 0.5], 98.5))
    image = image * gain
    image = image * (1 - 0.30 * r2 ** 1.3)[..., None]
    image = image * (1 + image / 16) / (1 + 0.75 * image) * 1.12
    grey = (image @ [0.2126, 0.7152, 0.0722])[..., None]
    image = np.clip(grey + (image - grey) * 1.1, 0, 1)
    image = np.where(image <= 0.0031308, image * 12.92, 1.055 * np.maximum(image, 1e-6) ** (1 / 2.4) - 0.055)
    image = image + 0.055 * np.sin((image - 0.5) * 2 * np.pi) * 0.9
    scale = w / 1440 if w > h else h / 1440
    image = _blur(image, 0.55 * scale + 0.1)
    image = image + 0.45 * (image - _blur(image, 1.3 * scale + 0.2))
    shade = 1.15 - np.clip(image.mean(2, keepdims=True), 0, 1)
    grain = chance.normal(0, 1, (h, w, 1)) * 0.75 + _blur(chance.normal(0, 1, (h, w, 1)), 0.8) * 1.2
    colour = _blur(chance.normal(0, 1, (h, w, 3)), 1.6) * 2.0
    image = image + shade * (0.0085 * grain + 0.006 * (colour - colour.mean(2, keepdims=True)))
    return (np.clip(image, 0, 1) * 255 + 0.5).astype(np.uint8)
