"""Puts one plug together: parts, their coats and materials, individual by its seed. Firing end up, rim at z = 0."""
import math
import random

import bpy
import numpy as np

import firing_end as fire
import shell
import upper_end as upper
from coat import NOTHING
from conditions import CONDITIONS, OUTER_OIL
from deposits import lay
from materials import alloy, ceramic, coated, plated
from mesh import grid_object
from noise import smoothstep


def _individual(coat, chance):
    """No two plugs of an engine are quite alike."""
    shade = chance.uniform(0.86, 1.14)
    warm = chance.uniform(-0.05, 0.05)
    tint = lambda c: (min(0.9, c[0] * shade * (1 + warm)), min(0.9, c[1] * shade), min(0.9, c[2] * shade * (1 - warm)))
    return coat.but(a=tint(coat.a), b=tint(coat.b), patchy=coat.patchy * chance.uniform(0.8, 1.3), side=coat.side + (chance.uniform(0, 0.2) if coat.cover else 0),
                    tone=coat.tone + chance.uniform(-0.15, 0.15))


def build_plug(condition, seed, outer_oil=False, fresh=None):
    """Returns an empty that carries the plug; `strap_angle` on it says where the strap is welded."""
    chance = random.Random(seed)
    state = dict(CONDITIONS[condition])
    fresh = condition == "new" if fresh is None else fresh
    if outer_oil:
        state.update(OUTER_OIL)
    coats = {k: _individual(state[k], chance) for k in ("nose", "rim", "bore", "strap", "electrode", "thread", "shell", "upper")}
    wear, angle = state["wear"], chance.uniform(0, 2 * math.pi)
    s = seed % 1000
    parts = []

    def add(name, points, coat, base, outward=1, sharp=35, caps=(), material=None, **place):
        points, values = lay(points, coat, s + len(parts) * 7, outward, **place)
        smooth = None if coat.thick > 0.1 else sharp
        thing = grid_object(name, points, material or coated(name, base, coat, s + len(parts)), values, sharp=smooth, caps=caps)
        parts.append(thing)
        return thing

    new_glow = ceramic(glaze=0.15, glow=0.3 if fresh or condition == "coolant" else 0.0)
    nose = fire.nose()
    deep = smoothstep(-0.5, -7.5, nose[..., 2])
    add("nose", nose, coats["nose"], new_glow, darker=deep - 0.35 * smoothstep(0.6, 1.6, nose[..., 2]), bias=0.25 * deep,
        edge=0.55 + 0.45 * smoothstep(1.5, 0.5, nose[..., 2]))
    rim = shell.rim_and_bore()
    inside = rim[:, 0, 2] < -0.26
    inside &= np.arange(len(rim)) < len(rim) // 2
    split = int(inside.sum())
    add("bore", rim[: split + 1], coats["bore"], plated(0.4), outward=-1)
    face = rim[split:]
    add("rim", face, coats["rim"], alloy(0.4) if not fresh else plated(0.22), outward=-1, edge=smoothstep(-1.0, -0.35, face[..., 2]))
    tip = fire.electrode(wear)
    add("electrode", tip, coats["electrode"], alloy(0.34 if fresh else 0.45, not fresh), heat=0.5 * state["heat"], bias=-0.3 * smoothstep(2.6, 2.9, tip[..., 2]))
    strap, along = fire.strap(0.95 + 0.35 * wear + chance.uniform(-0.05, 0.05), wear)
    strap_base = alloy(0.3 if fresh else 0.42, not fresh)
    thing = add("strap", strap, coats["strap"], strap_base, heat=state["heat"] * (0.1 + 0.85 * smoothstep(0.25, 0.95, along)),
                bias=0.25 * (1 - along) - 0.1)
    bead = add("weld", fire.weld(s), coats["strap"], strap_base, heat=0.2 * state["heat"], bias=0.2)
    for turned in (thing, bead):
        turned.rotation_euler = (0, 0, angle)

    steel = plated(state["steel"])
    screw = shell.thread()
    add("thread", screw, coats["thread"], steel, -1, sharp=50, bias=0.55 * np.exp((screw[..., 2] + 1) / 2.6) - 0.1,
        darker=np.exp((screw[..., 2] + 1) / 4.0))
    body = coated("shell", steel, coats["shell"], s + 31)
    for name, points in (("neck", shell.neck()), ("collar", shell.collar()), ("hex", shell.hexagon()), ("crimp", shell.crimp())):
        add(name, points, coats["shell"], steel, -1, material=body, sharp=25)
    add("gasket", shell.gasket(not fresh), coats["shell"], dict(colour=(0.6, 0.55, 0.48), metal=1.0, rough=0.3), material=None)
    add("upper", upper.porcelain(), coats["upper"], ceramic(glaze=1.0, glow=0.2), -1)
    add("terminal", upper.terminal(), NOTHING, plated(0.25), -1)

    whole = bpy.data.objects.new("plug", None)
    whole["strap_angle"] = angle
    bpy.context.collection.objects.link(whole)
    for part in parts:
        part.parent = whole
    return whole
