"""Procedural materials: metal, porcelain, and deposits laid over them by noise."""
import bpy


def _new(name):
    material = bpy.data.materials.new(name)
    material.use_nodes = True
    nodes = material.node_tree.nodes
    return material, nodes, material.node_tree.links, nodes["Principled BSDF"]


def _noise(nodes, links, scale, detail=8, rough=0.6, offset=0.0):
    where = nodes.new("ShaderNodeTexCoord")
    move = nodes.new("ShaderNodeMapping")
    move.inputs["Location"].default_value = (offset * 13.7, offset * 5.1, offset * 3.3)
    links.new(where.outputs["Object"], move.inputs["Vector"])
    texture = nodes.new("ShaderNodeTexNoise")
    texture.inputs["Scale"].default_value = scale
    texture.inputs["Detail"].default_value = detail
    texture.inputs["Roughness"].default_value = rough
    links.new(move.outputs["Vector"], texture.inputs["Vector"])
    return texture, move


def _ramp(nodes, links, source, low, high):
    ramp = nodes.new("ShaderNodeValToRGB")
    ramp.color_ramp.elements[0].position = max(0.0, low)
    ramp.color_ramp.elements[1].position = min(1.0, max(high, low + 0.01))
    links.new(source, ramp.inputs["Fac"])
    return ramp.outputs["Color"]


def _mix(nodes, links, mask, a, b):
    mix = nodes.new("ShaderNodeMixRGB")
    links.new(mask, mix.inputs["Fac"])
    for socket, value in (("Color1", a), ("Color2", b)):
        if isinstance(value, (tuple, list)):
            mix.inputs[socket].default_value = (*value, 1)
        else:
            links.new(value, mix.inputs[socket])
    return mix.outputs["Color"]


def _bump(nodes, links, shader, height, strength, distance=0.3):
    bump = nodes.new("ShaderNodeBump")
    bump.inputs["Strength"].default_value = strength
    bump.inputs["Distance"].default_value = distance
    links.new(height, bump.inputs["Height"])
    links.new(bump.outputs["Normal"], shader.inputs["Normal"])


def coated(name, base, base_metal, base_rough, coat, coverage, seed, coat_rough=0.9, wet=0.0, bump=0.3, scale=0.35,
           spread=0.25, second=None, one_side=0.0):
    """`base` shows where `coat` does not cover it (`coverage` 0 to 1); `wet` lays a glossy film over the coat."""
    material, nodes, links, shader = _new(name)
    big, move = _noise(nodes, links, scale, offset=seed)
    fine, _ = _noise(nodes, links, scale * 9, detail=10, rough=0.7, offset=seed + 0.5)
    field = big.outputs["Fac"]
    if one_side:
        split = nodes.new("ShaderNodeSeparateXYZ")
        links.new(move.outputs["Vector"], split.inputs["Vector"])
        lean = nodes.new("ShaderNodeMath")
        lean.operation = "MULTIPLY_ADD"
        lean.inputs[1].default_value = one_side * 0.06
        links.new(split.outputs["X"], lean.inputs[0])
        links.new(field, lean.inputs[2])
        field = lean.outputs["Value"]
    middle = 0.75 - 0.5 * coverage
    mask = _ramp(nodes, links, field, middle - spread / 2, middle + spread / 2)
    tone = _ramp(nodes, links, fine.outputs["Fac"], 0.3, 0.75)
    other = second or tuple(min(1, value * 1.35 + 0.01) for value in coat)
    coat_colour = _mix(nodes, links, tone, coat, other)
    links.new(_mix(nodes, links, mask, base, coat_colour), shader.inputs["Base Color"])
    rough = _mix(nodes, links, mask, (base_rough,) * 3, (coat_rough,) * 3)
    links.new(rough, shader.inputs["Roughness"])
    metal = _mix(nodes, links, mask, (base_metal,) * 3, (0.0,) * 3)
    links.new(metal, shader.inputs["Metallic"])
    shader.inputs["Clearcoat"].default_value = wet
    shader.inputs["Clearcoat Roughness"].default_value = 0.04
    _bump(nodes, links, shader, fine.outputs["Fac"], bump)
    return material


def steel(name, seed, tint=(0.52, 0.51, 0.5), dirt=(0.16, 0.1, 0.06), dirty=0.3, rough=0.34):
    return coated(name, tint, 1.0, rough, dirt, dirty, seed, coat_rough=0.7, bump=0.12, scale=0.22, spread=0.4)


def porcelain(name, seed, oil=0.0):
    """Upper insulator: glazed white; `oil` runs an amber film over it."""
    return coated(name, (0.83, 0.82, 0.79), 0.0, 0.16, (0.16, 0.075, 0.02), oil, seed, coat_rough=0.12,
                  wet=1.0 if oil else 0.6, bump=0.05, scale=0.09, spread=0.3)


def oil_pool():
    material, nodes, links, shader = _new("oil")
    shader.inputs["Base Color"].default_value = (0.035, 0.014, 0.003, 1)
    shader.inputs["Roughness"].default_value = 0.03
    shader.inputs["Specular"].default_value = 0.6
    ripple, _ = _noise(nodes, links, 0.05, detail=2)
    _bump(nodes, links, shader, ripple.outputs["Fac"], 0.15, 1.0)
    return material


def aluminium(oil=0.0):
    material = coated("aluminium", (0.72, 0.72, 0.73), 1.0, 0.3, (0.1, 0.05, 0.015), oil, 3, coat_rough=0.12,
                      wet=0.8 if oil else 0.0, bump=0.05, scale=0.035, spread=0.35)
    nodes, links = material.node_tree.nodes, material.node_tree.links
    rings = nodes.new("ShaderNodeTexWave")
    rings.bands_direction = "Z"
    rings.inputs["Scale"].default_value = 1.6
    rings.inputs["Distortion"].default_value = 0.6
    where = nodes.new("ShaderNodeTexCoord")
    links.new(where.outputs["Object"], rings.inputs["Vector"])
    _bump(nodes, links, nodes["Principled BSDF"], rings.outputs["Fac"], 0.12, 0.2)
    return material


def plain(name, colour, second, rough, scale, bump, stretch=(1, 1, 1), metal=0.0, weave=0.0):
    """A background: two tones by noise, stretched for grain or brushing, with an optional weave."""
    material, nodes, links, shader = _new(name)
    texture, move = _noise(nodes, links, scale, detail=10, rough=0.65)
    move.inputs["Scale"].default_value = stretch
    tone = _ramp(nodes, links, texture.outputs["Fac"], 0.35, 0.7)
    links.new(_mix(nodes, links, tone, colour, second), shader.inputs["Base Color"])
    shader.inputs["Roughness"].default_value = rough
    shader.inputs["Metallic"].default_value = metal
    height = texture.outputs["Fac"]
    if weave:
        where = nodes.new("ShaderNodeTexCoord")
        waves = []
        for direction in ("X", "Y"):
            wave = nodes.new("ShaderNodeTexWave")
            wave.bands_direction = direction
            wave.inputs["Scale"].default_value = weave
            wave.inputs["Distortion"].default_value = 1.5
            links.new(where.outputs["Object"], wave.inputs["Vector"])
            waves.append(wave.outputs["Fac"])
        both = nodes.new("ShaderNodeMath")
        both.operation = "MULTIPLY"
        links.new(waves[0], both.inputs[0])
        links.new(waves[1], both.inputs[1])
        height = both.outputs["Value"]
    _bump(nodes, links, shader, height, bump, 0.6)
    return material
