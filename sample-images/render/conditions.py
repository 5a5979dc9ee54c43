"""How each plug condition looks, as numbers: colours are linear reflectances."""
import materials as m

TAN, TAN2 = (0.27, 0.155, 0.075), (0.4, 0.26, 0.145)
GREY_TAN = (0.33, 0.265, 0.2)

LOOKS = {
    # nose: (base colour, coat colour, second tone, coverage, roughness, wet, bump, one side)
    "normal": dict(nose=((0.8, 0.76, 0.68), TAN, TAN2, 0.8, 0.75, 0, 0.25, 0.2), rim=((0.06, 0.045, 0.035), (0.12, 0.09, 0.07), 0.85, 0),
                   metal=((0.42, 0.38, 0.34), (0.3, 0.22, 0.15), 0.45, 0), relief=0.0, wear=0.08),
    "normal-grey": dict(nose=((0.78, 0.75, 0.7), GREY_TAN, (0.52, 0.47, 0.4), 0.75, 0.75, 0, 0.25, 0.2), rim=((0.05, 0.045, 0.04), (0.11, 0.095, 0.08), 0.85, 0),
                        metal=((0.4, 0.38, 0.36), (0.27, 0.23, 0.18), 0.45, 0), relief=0.0, wear=0.12),
    "worn": dict(nose=((0.8, 0.76, 0.68), (0.31, 0.19, 0.1), TAN2, 0.72, 0.75, 0, 0.25, 0.2), rim=((0.07, 0.05, 0.04), (0.14, 0.1, 0.075), 0.8, 0),
                 metal=((0.38, 0.35, 0.32), (0.25, 0.19, 0.14), 0.5, 0), relief=0.0, wear=0.3),
    "lean": dict(nose=((0.88, 0.87, 0.84), (0.82, 0.8, 0.75), (0.93, 0.92, 0.9), 0.7, 0.85, 0, 0.35, 0.1), rim=((0.2, 0.18, 0.16), (0.42, 0.39, 0.35), 0.6, 0),
                 metal=((0.46, 0.45, 0.45), (0.5, 0.47, 0.43), 0.5, 0), relief=0.0, wear=0.15),
    "rich": dict(nose=((0.3, 0.24, 0.18), (0.052, 0.038, 0.027), (0.1, 0.074, 0.052), 0.96, 0.95, 0, 0.4, 0.2), rim=((0.015, 0.013, 0.012), (0.03, 0.026, 0.023), 0.95, 0),
                 metal=((0.2, 0.18, 0.16), (0.03, 0.025, 0.02), 0.85, 0), relief=0.05, wear=0.05),
    "carbon": dict(nose=((0.1, 0.09, 0.08), (0.006, 0.006, 0.006), (0.02, 0.02, 0.02), 1.0, 1.0, 0, 1.0, 0.0), rim=((0.005, 0.005, 0.005), (0.014, 0.014, 0.014), 1.0, 0),
                   metal=((0.05, 0.05, 0.05), (0.008, 0.008, 0.008), 1.0, 0), relief=0.38, wear=0.0),
    "oil-wetted": dict(nose=((0.06, 0.04, 0.025), (0.008, 0.006, 0.004), (0.03, 0.018, 0.008), 0.97, 0.18, 1.0, 0.5, 0.2), rim=((0.008, 0.006, 0.005), (0.016, 0.011, 0.007), 0.95, 1.0),
                       metal=((0.14, 0.11, 0.08), (0.014, 0.01, 0.006), 0.85, 1.0), relief=0.22, wear=0.05),
    "coolant": dict(nose=((0.9, 0.9, 0.88), (0.66, 0.7, 0.62), (0.86, 0.88, 0.82), 0.48, 0.95, 0, 1.0, 0.6), rim=((0.25, 0.24, 0.22), (0.62, 0.66, 0.58), 0.65, 0),
                    metal=((0.42, 0.42, 0.42), (0.66, 0.68, 0.6), 0.55, 0), relief=0.32, wear=0.12),
    "new": dict(nose=((0.9, 0.89, 0.87), (0.9, 0.89, 0.87), (0.92, 0.91, 0.9), 0.1, 0.3, 0, 0.02, 0.0), rim=((0.55, 0.54, 0.53), (0.5, 0.49, 0.48), 0.1, 0),
                metal=((0.58, 0.56, 0.54), (0.5, 0.48, 0.46), 0.1, 0), relief=0.0, wear=0.0),
}


def plug_materials(condition, seed, outer_oil=0.0):
    """Materials of one plug; every plug of a condition differs a little by its seed."""
    look = LOOKS[condition]
    base, coat, second, coverage, rough, wet, bump, one_side = look["nose"]
    shade = 1 + 0.14 * (((seed * 37) % 11) / 5 - 1)
    tint = lambda colour: tuple(min(1.0, value * shade) for value in colour)
    rim_base, rim_coat, rim_cover, rim_wet = look["rim"]
    metal_base, metal_coat, metal_cover, metal_wet = look["metal"]
    fresh = condition == "new"
    dirty = 0.03 if fresh else 0.42
    return {
        "look": look,
        "seed": seed,
        "nose": m.coated("nose", base, 0.0, 0.28, tint(coat), coverage, seed, rough, wet, bump, 0.32, 0.35, tint(second), one_side),
        "rim": m.coated("rim", rim_base, 0.9 if fresh else 0.3, 0.5, rim_coat, rim_cover, seed + 1, 0.2 if rim_wet else 0.95, rim_wet, bump, 0.5),
        "electrode": m.coated("electrode", metal_base, 1.0, 0.4, metal_coat, metal_cover, seed + 2, 0.2 if metal_wet else 0.85, metal_wet, bump * 0.6, 0.5),
        "strap": m.coated("strap", metal_base, 1.0, 0.38, metal_coat, metal_cover, seed + 3, 0.2 if metal_wet else 0.85, metal_wet, bump * 0.6, 0.4),
        "thread": m.steel("thread", seed + 4, dirty=dirty, rough=0.36, dirt=(0.03, 0.02, 0.013) if rim_wet else (0.14, 0.09, 0.055)),
        "shell": m.steel("shell", seed + 5, dirty=0.75 if outer_oil else dirty * 0.5, dirt=(0.07, 0.035, 0.01) if outer_oil else (0.16, 0.1, 0.06)),
        "gasket": m.steel("gasket", seed + 6, tint=(0.5, 0.4, 0.3), dirty=dirty),
        "upper": m.porcelain("upper", seed + 7, outer_oil),
    }
