"""Shaders: a base (metal, oxidised alloy, glazed or bare ceramic) under a coat whose place comes with the mesh."""
import bpy

from grain import CYCLES, grain_image


class Graph:
    """A few short words for building one material's nodes."""

    def __init__(self, name):
        self.material = bpy.data.materials.new(name)
        self.material.use_nodes = True
        self.nodes = self.material.node_tree.nodes
        self.links = self.material.node_tree.links
        self.shader = self.nodes["Principled BSDF"]
        self.where = self.nodes.new("ShaderNodeTexCoord").outputs["UV"]

    def put(self, socket, value):
        if isinstance(value, bpy.types.NodeSocket):
            self.links.new(value, socket)
        elif isinstance(value, tuple):
            socket.default_value = (*value, 1) if len(value) == 3 and socket.type == "RGBA" else value
        else:
            socket.default_value = (value,) * 3 + (1,) if socket.type == "RGBA" else value

    def grain(self, scale, stretch=(1, 1), offset=0.0):
        """(rough, soft, rough) noise values, about 0.5 plus or minus 0.3; `scale` is features a millimetre."""
        move = self.nodes.new("ShaderNodeMapping")
        move.inputs["Scale"].default_value = (stretch[0] * scale / CYCLES, stretch[1] * scale / CYCLES, 1)
        move.inputs["Location"].default_value = (offset * 0.371, offset * 0.617, 0)
        self.links.new(self.where, move.inputs["Vector"])
        texture = self.nodes.new("ShaderNodeTexImage")
        texture.image = grain_image()
        self.links.new(move.outputs["Vector"], texture.inputs["Vector"])
        split = self.nodes.new("ShaderNodeSeparateColor")
        self.links.new(texture.outputs["Color"], split.inputs["Color"])
        return split.outputs["Red"], split.outputs["Green"], split.outputs["Blue"]

    def noise(self, scale, stretch=(1, 1), offset=0.0):
        return self.grain(scale, stretch, offset)[0]

    def soft_noise(self, scale, stretch=(1, 1), offset=0.0):
        return self.grain(scale, stretch, offset)[1]

    def math(self, operation, *values):
        node = self.nodes.new("ShaderNodeMath")
        node.operation = operation
        for socket, value in zip(node.inputs, values):
            self.put(socket, value)
        return node.outputs["Value"]

    def step(self, value, low, high, to_low=0.0, to_high=1.0):
        node = self.nodes.new("ShaderNodeMapRange")
        node.interpolation_type = "SMOOTHSTEP"
        for socket, given in zip(node.inputs, (value, low, high, to_low, to_high)):
            self.put(socket, given)
        return node.outputs["Result"]

    def mix(self, mask, a, b, blend="MIX"):
        node = self.nodes.new("ShaderNodeMixRGB")
        node.blend_type = blend
        self.put(node.inputs["Fac"], mask)
        self.put(node.inputs["Color1"], a)
        self.put(node.inputs["Color2"], b)
        return node.outputs["Color"]

    def ramp(self, value, stops):
        node = self.nodes.new("ShaderNodeValToRGB")
        elements = node.color_ramp.elements
        while len(elements) < len(stops):
            elements.new(0.5)
        for element, (at, colour) in zip(elements, stops):
            element.position, element.color = at, (*colour, 1)
        self.put(node.inputs["Fac"], value)
        return node.outputs["Color"]

    def bump(self, height, distance, below=None):
        node = self.nodes.new("ShaderNodeBump")
        node.inputs["Strength"].default_value = 1.0
        self.put(node.inputs["Distance"], distance)
        self.put(node.inputs["Height"], height)
        if below is not None:
            self.links.new(below, node.inputs["Normal"])
        return node.outputs["Normal"]

    def coat(self):
        node = self.nodes.new("ShaderNodeAttribute")
        node.attribute_name = "coat"
        split = self.nodes.new("ShaderNodeSeparateColor")
        self.links.new(node.outputs["Color"], split.inputs["Color"])
        return split.outputs["Red"], split.outputs["Green"], split.outputs["Blue"], node.outputs["Alpha"]


# Oxide colours on a hot nickel alloy, cool end first.
HEAT = [(0.0, (0.36, 0.345, 0.325)), (0.3, (0.34, 0.27, 0.19)), (0.5, (0.24, 0.17, 0.17)), (0.7, (0.17, 0.19, 0.25)), (1.0, (0.27, 0.28, 0.28))]


def coated(name, base, coat, seed):
    """`base`: colour, metal, rough, and optionally glaze, glow (subsurface), turned (tool marks) or heat."""
    g = Graph(name)
    cover, tone, wet, heat = g.coat()
    fine, flecks, scratch = g.grain(coat.grain, offset=seed)
    mask = g.step(g.math("MULTIPLY_ADD", g.math("SUBTRACT", fine, 0.5), coat.ragged * 2, cover), 0.36, 0.64)
    colour = g.mix(g.step(g.math("MULTIPLY_ADD", g.math("SUBTRACT", fine, 0.5), 0.9, tone), 0.05, 0.95), coat.a, coat.b)
    if coat.speck:
        colour = g.mix(g.step(flecks, 0.74 - 0.16 * coat.speck, 0.8 - 0.14 * coat.speck), colour, coat.specks)
    colour = g.mix(g.math("MULTIPLY", wet, 0.45), colour, (0.0, 0.0, 0.0))

    under = base["colour"]
    if base.get("heat"):
        under = g.ramp(g.math("MULTIPLY_ADD", g.math("SUBTRACT", flecks, 0.5), 0.25, heat), HEAT)
    if base.get("turned"):
        scratch = g.noise(9, (0.12, 1.8), seed + 0.3)
    if base["metal"]:
        under = g.mix(g.step(scratch, 0.35, 0.75, 0.0, 0.3), under, (0.12, 0.115, 0.11))
    g.put(g.shader.inputs["Base Color"], g.mix(mask, under, colour))
    g.put(g.shader.inputs["Metallic"], g.math("MULTIPLY", g.math("SUBTRACT", 1.0, mask), base["metal"]))
    bare = g.step(scratch, 0.25, 0.8, base["rough"] - 0.06, base["rough"] + 0.12)
    rough = g.mix(mask, bare, coat.rough)
    g.put(g.shader.inputs["Roughness"], g.mix(wet, rough, 0.45) if coat.wet else rough)
    if coat.wet:
        g.put(g.shader.inputs["Specular"], g.math("MULTIPLY_ADD", mask, -0.35, 0.5))
    if coat.wet or base.get("glaze"):
        gloss = g.math("MAXIMUM", wet, g.math("MULTIPLY", g.math("SUBTRACT", 1.0, mask), base.get("glaze", 0.0)))
        g.put(g.shader.inputs["Clearcoat"], gloss)
        g.shader.inputs["Clearcoat Roughness"].default_value = 0.06
    if base.get("glow"):
        g.put(g.shader.inputs["Subsurface"], g.math("MULTIPLY", g.math("SUBTRACT", 1.0, mask), base["glow"]))
        g.shader.inputs["Subsurface Radius"].default_value = (0.5, 0.4, 0.3)
        g.put(g.shader.inputs["Subsurface Color"], base["colour"])
    # A film of oil lies smooth over what is rough below: the clear coat keeps the unbumped normal.
    if coat.cover:
        g.links.new(g.bump(fine, g.math("MULTIPLY", mask, coat.bump * 0.35)), g.shader.inputs["Normal"])
    elif base["metal"]:
        g.links.new(g.bump(scratch, 0.015), g.shader.inputs["Normal"])
    g.links.new(g.nodes.new("ShaderNodeNewGeometry").outputs["Normal"], g.shader.inputs["Clearcoat Normal"])
    return g.material


def ceramic(glaze=0.3, glow=0.25):
    return dict(colour=(0.8, 0.785, 0.75), metal=0.0, rough=0.3, glaze=glaze, glow=glow)


def plated(rough):
    return dict(colour=(0.56, 0.55, 0.53), metal=1.0, rough=rough, turned=True)


def alloy(rough=0.42, heat=False):
    return dict(colour=(0.46, 0.44, 0.41), metal=1.0, rough=rough, heat=heat)
