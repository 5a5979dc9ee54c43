"""Noise as one picture that tiles, with a different noise in each channel: looking values up costs a renderer far less than working them out."""
import bpy
import numpy as np

SIZE, CYCLES = 1024, 32


def _field(seed, falloff, lowest, highest):
    """Gaussian noise with a power-law spectrum, frequencies in cycles a tile; mean 0.5, spread about that of summed gradient noise."""
    chance = np.random.default_rng(seed)
    spectrum = np.fft.fft2(chance.normal(size=(SIZE, SIZE)))
    f = np.hypot(*np.meshgrid(np.fft.fftfreq(SIZE) * SIZE, np.fft.fftfreq(SIZE) * SIZE))
    band = np.where((f > lowest) & (f < highest), (np.maximum(f, 1) / CYCLES) ** -falloff, 0)
    field = np.fft.ifft2(spectrum * band).real
    return 0.5 + 0.125 * field / field.std()


_made = []


def grain_image():
    """Red: rough noise. Green: soft noise, twice as large. Blue: another rough one."""
    image = bpy.data.images.get("grain")
    if image:
        return image
    if not _made:
        values = np.ones((SIZE, SIZE, 4), np.float32)
        for channel, (seed, falloff, low, high) in enumerate([(5, 1.55, 14, 460), (6, 2.2, 7, 60), (7, 1.55, 14, 460)]):
            values[..., channel] = _field(seed, falloff, low, high).clip(0, 1)
        _made.append(values.ravel())
    image = bpy.data.images.new("grain", SIZE, SIZE, is_data=True)
    image.pixels.foreach_set(_made[0])
    image.pack()
    return image
