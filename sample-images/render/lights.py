"""Light for each place: colours and shapes as they would be there. Millimetres, so the watts are large."""
import bpy
from mathutils import Vector


def light(kind, location, watts, colour, size=10.0, size_y=None, target=(0, 0, 0)):
    data = bpy.data.lights.new("light", kind)
    data.energy, data.color = watts, colour
    if kind == "AREA":
        data.shape, data.size, data.size_y = "RECTANGLE", size, size_y or size
    else:
        data.shadow_soft_size = size
    thing = bpy.data.objects.new("light", data)
    thing.location = location
    thing.rotation_euler = (Vector(target) - Vector(location)).to_track_quat("-Z", "Y").to_euler()
    bpy.context.collection.objects.link(thing)


def surroundings(floor, wall, ceiling, strength):
    """A room, or the open, as metal would mirror it: three colours from below to above, a little uneven."""
    world = bpy.data.worlds.new("world")
    world.use_nodes = True
    nodes, links = world.node_tree.nodes, world.node_tree.links
    where = nodes.new("ShaderNodeTexCoord")
    split = nodes.new("ShaderNodeSeparateXYZ")
    links.new(where.outputs["Generated"], split.inputs["Vector"])
    uneven = nodes.new("ShaderNodeTexNoise")
    uneven.inputs["Scale"].default_value = 2.2
    uneven.inputs["Detail"].default_value = 1
    links.new(where.outputs["Generated"], uneven.inputs["Vector"])
    add = nodes.new("ShaderNodeMath")
    add.operation = "MULTIPLY_ADD"
    add.inputs[1].default_value = 0.9
    links.new(uneven.outputs["Fac"], add.inputs[0])
    links.new(split.outputs["Z"], add.inputs[2])
    ramp = nodes.new("ShaderNodeValToRGB")
    ramp.color_ramp.elements.new(0.5)
    for element, (at, colour) in zip(ramp.color_ramp.elements, [(0.1, floor), (0.45, wall), (0.95, ceiling)]):
        element.position, element.color = at, (*colour, 1)
    links.new(add.outputs["Value"], ramp.inputs["Fac"])
    links.new(ramp.outputs["Color"], nodes["Background"].inputs["Color"])
    nodes["Background"].inputs["Strength"].default_value = strength
    world.cycles.sampling_method = "NONE"
    bpy.context.scene.world = world


def shop():
    surroundings((0.05, 0.045, 0.04), (0.30, 0.31, 0.29), (0.5, 0.53, 0.5), 0.5)
    light("AREA", (-420, 250, 900), 8.5e6, (0.92, 1.0, 0.90), 45, 1300)
    light("AREA", (460, 100, 900), 6.5e6, (0.92, 1.0, 0.90), 45, 1300)


def harbour():
    surroundings((0.16, 0.17, 0.17), (0.60, 0.66, 0.72), (0.95, 1.0, 1.06), 1.0)
    light("AREA", (200, 100, 900), 9.0e6, (0.93, 0.97, 1.0), 800)


def generator():
    surroundings((0.04, 0.04, 0.045), (0.12, 0.125, 0.14), (0.2, 0.2, 0.22), 0.35)
    light("AREA", (150, 330, 330), 7.0e6, (0.92, 0.97, 1.0), 60, 90)
    light("AREA", (500, -400, 400), 2.0e6, (1.0, 0.92, 0.82), 300)


def van():
    surroundings((0.06, 0.055, 0.05), (0.24, 0.25, 0.27), (0.34, 0.33, 0.32), 0.5)
    light("AREA", (100, 700, 420), 1.1e7, (0.80, 0.90, 1.0), 500, 380)
    light("POINT", (160, -330, 420), 2.3e6, (1.0, 0.70, 0.40), 30)


def bus():
    surroundings((0.08, 0.06, 0.04), (0.30, 0.23, 0.16), (0.36, 0.28, 0.2), 0.45)
    light("POINT", (60, 260, 380), 4.5e6, (1.0, 0.70, 0.42), 45)
    light("AREA", (400, -500, 500), 2.0e6, (1.0, 0.82, 0.62), 400)


def tube():
    """The lamp of the phone, close to its lens, and what daylight falls into the engine bay."""
    surroundings((0.05, 0.05, 0.05), (0.25, 0.27, 0.3), (0.5, 0.55, 0.62), 0.55)
    light("AREA", (-260, 160, 420), 2.2e6, (0.85, 0.93, 1.0), 260)
    light("POINT", (14, 8, 150), 6.0e5, (1.0, 0.95, 0.88), 6)


LIGHTS = {"shop": shop, "harbour": harbour, "generator": generator, "van": van, "bus": bus, "tube": tube}
