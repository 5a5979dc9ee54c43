"""What the plugs lie on: cardboard, painted planks, a steel bench, shop cloth, paper towel. Surface at z = 0, millimetres."""
import bpy
import numpy as np

from materials import Graph
from mesh import grid_object
from noise import fbm, smoothstep


def _sheet(material, height=None, near=70.0, far=900.0, steps=260):
    """A square that is fine near the middle and coarse far away; `height(points)` lifts it."""
    u = np.linspace(-1, 1, steps)
    axis = np.sign(u) * (near * np.abs(u) + (far - near) * np.abs(u) ** 7)
    x, y = np.meshgrid(axis, axis, indexing="ij")
    points = np.stack([x, y, np.zeros_like(x)], 2)
    if height:
        points[..., 2] = height(points.reshape(-1, 3)).reshape(steps, steps)
    return grid_object("surface", points, material, closed=False, sharp=None)


def cardboard(seed):
    g = Graph("cardboard")
    fibre = g.noise(1.1, stretch=(0.25, 1.6), offset=seed)
    cloud = g.noise(0.035, offset=seed + 1)
    flute = g.math("SINE", g.math("MULTIPLY", _axis(g, "Y"), 2 * np.pi / 7.2))
    colour = g.mix(g.step(fibre, 0.3, 0.75), (0.40, 0.262, 0.15), (0.30, 0.185, 0.10))
    colour = g.mix(g.math("MULTIPLY", g.step(cloud, 0.4, 0.75), 0.35), colour, (0.22, 0.13, 0.07))
    stain = g.step(g.noise(0.03, offset=seed + 3), 0.62, 0.80)
    colour = g.mix(g.math("MULTIPLY", stain, 0.55), colour, (0.10, 0.055, 0.027))
    flecks = g.step(g.soft_noise(0.9, stretch=(0.5, 1.4), offset=seed + 5), 0.71, 0.76)
    g.put(g.shader.inputs["Base Color"], g.mix(g.math("MULTIPLY", flecks, 0.5), colour, (0.15, 0.09, 0.05)))
    g.put(g.shader.inputs["Roughness"], g.mix(stain, 0.85, 0.6))
    g.links.new(g.bump(fibre, 0.05, g.bump(flute, 0.05)), g.shader.inputs["Normal"])
    return _sheet(g.material, lambda p: 0.5 * fbm(p, 0.012, 2, seed))


def _axis(g, name):
    split = g.nodes.new("ShaderNodeSeparateXYZ")
    g.links.new(g.where, split.inputs["Vector"])
    return split.outputs[name]


def planks(seed):
    """Weathered grey paint on boards, chipped down to the wood here and there."""
    g = Graph("planks")
    grain = g.noise(0.6, stretch=(0.06, 1.6), offset=seed)
    cloud = g.noise(0.05, stretch=(0.4, 1), offset=seed + 1)
    chip = g.step(g.math("MULTIPLY_ADD", grain, 0.5, g.noise(0.10, stretch=(0.35, 1), offset=seed + 2)), 0.875, 0.895)
    paint = g.mix(g.step(cloud, 0.3, 0.7), (0.30, 0.33, 0.34), (0.40, 0.425, 0.43))
    paint = g.mix(g.math("MULTIPLY", g.step(grain, 0.58, 0.72), 0.6), paint, (0.17, 0.175, 0.17))
    wood = g.mix(grain, (0.30, 0.22, 0.15), (0.14, 0.10, 0.07))
    g.put(g.shader.inputs["Base Color"], g.mix(chip, paint, wood))
    g.put(g.shader.inputs["Roughness"], g.mix(chip, 0.5, 0.85))
    lowered = g.math("MULTIPLY_ADD", chip, -0.35, g.math("MULTIPLY", grain, 0.45))
    g.links.new(g.bump(lowered, 0.6), g.shader.inputs["Normal"])

    def height(p):
        edge = np.abs((p[:, 1] - 23 + 400 * 92) % 92 - 46)
        return -4.5 * smoothstep(44.2, 45.6, edge) + 0.25 * fbm(p * [0.15, 1, 1], 0.08, 3, seed)

    return _sheet(g.material, height, steps=420)


def bench(seed):
    """Steel that has had tools thrown on it for years."""
    g = Graph("bench")
    colour = g.mix(g.step(g.noise(0.05, offset=seed), 0.3, 0.7), (0.27, 0.27, 0.27), (0.17, 0.168, 0.165))
    rust = g.step(g.noise(0.045, offset=seed + 2), 0.60, 0.85)
    colour = g.mix(g.math("MULTIPLY", rust, 0.6), colour, (0.11, 0.06, 0.035))
    marks = None
    for turn, stretch in enumerate([(0.02, 1.3), (0.35, 0.9), (0.05, 0.5)]):
        one = g.step(g.soft_noise(0.9, stretch=stretch, offset=seed + 5 + turn), 0.72, 0.77)
        marks = one if marks is None else g.math("MAXIMUM", marks, one)
    g.put(g.shader.inputs["Base Color"], g.mix(g.math("MULTIPLY", marks, 0.4), colour, (0.45, 0.5, 0.5)))
    g.put(g.shader.inputs["Metallic"], g.math("SUBTRACT", 0.85, g.math("MULTIPLY", rust, 0.75)))
    smear = g.noise(0.3, stretch=(0.2, 1), offset=seed + 9)
    g.put(g.shader.inputs["Roughness"], g.step(smear, 0.3, 0.7, 0.42, 0.62))
    g.links.new(g.bump(g.math("MULTIPLY_ADD", marks, -0.4, smear), 0.05), g.shader.inputs["Normal"])
    return _sheet(g.material, lambda p: 0.25 * fbm(p, 0.02, 2, seed))


def cloth(seed):
    """Blue shop cloth: plain weave, soft wrinkles, old oil marks."""
    g = Graph("cloth")
    turn = 2 * np.pi / 0.62
    wobble = g.math("MULTIPLY", g.soft_noise(0.9, offset=seed), 1.6)
    warp = g.math("SINE", g.math("MULTIPLY_ADD", _axis(g, "X"), turn, wobble))
    weft = g.math("SINE", g.math("MULTIPLY_ADD", _axis(g, "Y"), turn, wobble))
    weave = g.math("MULTIPLY", warp, weft)
    fuzz = g.noise(5, offset=seed + 2)
    colour = g.mix(g.step(weave, -0.9, 0.9), (0.022, 0.05, 0.13), (0.052, 0.105, 0.235))
    colour = g.mix(g.math("MULTIPLY", g.step(fuzz, 0.55, 0.75), 0.5), colour, (0.11, 0.17, 0.34))
    stain = g.step(g.noise(0.035, offset=seed + 4), 0.60, 0.85)
    g.put(g.shader.inputs["Base Color"], g.mix(g.math("MULTIPLY", stain, 0.6), colour, (0.015, 0.017, 0.03)))
    g.shader.inputs["Roughness"].default_value = 1.0
    g.shader.inputs["Specular"].default_value = 0.1
    g.shader.inputs["Sheen"].default_value = 0.4
    g.links.new(g.bump(g.math("MULTIPLY_ADD", fuzz, 0.6, weave), 0.09), g.shader.inputs["Normal"])

    def height(p):
        folds = 1 - np.abs(fbm(p, 0.012, 2, seed)) * 2.2
        return 7.0 * folds.clip(0) ** 3 * smoothstep(12, 45, np.hypot(p[:, 0] + 15, p[:, 1])) + 0.5 * fbm(p, 0.06, 2, seed + 3)

    return _sheet(g.material, height, steps=360)


def towel(seed):
    """White two-ply paper, embossed with dots, with a smudge or two."""
    g = Graph("towel")
    fibre = g.noise(1.6, offset=seed)
    smudge = g.step(g.noise(0.05, offset=seed + 2), 0.60, 0.75)
    colour = g.mix(fibre, (0.80, 0.79, 0.765), (0.70, 0.69, 0.66))
    g.put(g.shader.inputs["Base Color"], g.mix(g.math("MULTIPLY", smudge, 0.45), colour, (0.09, 0.08, 0.07)))
    g.shader.inputs["Roughness"].default_value = 1.0
    g.shader.inputs["Specular"].default_value = 0.1
    g.links.new(g.bump(fibre, 0.12), g.shader.inputs["Normal"])

    def height(p):
        a, b = (p[:, 0] + p[:, 1]) / 1.414, (p[:, 0] - p[:, 1]) / 1.414
        dots = smoothstep(0.35, 0.95, np.cos(a * 2 * np.pi / 4.6) * np.cos(b * 2 * np.pi / 4.6))
        return -0.45 * dots + 1.6 * fbm(p, 0.018, 3, seed) * smoothstep(8, 40, np.hypot(p[:, 0], p[:, 1])) + 0.08 * fbm(p, 0.5, 2, seed)

    return _sheet(g.material, height, near=90, steps=420)


SURFACES = {"shop": cardboard, "harbour": planks, "generator": bench, "van": cloth, "bus": towel}
