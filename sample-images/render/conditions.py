"""The conditions as data: what lies on each region of a plug, and how worn it is. Colours are linear RGB."""
from coat import NOTHING, Coat

SOOT = Coat(a=(0.028, 0.024, 0.021), b=(0.014, 0.013, 0.012), cover=1.0, patchy=0.15, thick=0.03, kind="powder", rough=1.0)
BROWN = Coat(a=(0.10, 0.074, 0.052), b=(0.045, 0.034, 0.026), cover=0.95, patchy=0.3, thick=0.04, kind="powder", rough=0.95)
TAN = Coat(a=(0.37, 0.235, 0.125), b=(0.19, 0.108, 0.052), cover=0.95, patchy=0.25, thick=0.02, kind="powder", speck=0.15,
           specks=(0.10, 0.06, 0.035), root=0.75, bump=0.2)
GREY_TAN = TAN.but(a=(0.30, 0.238, 0.168), b=(0.17, 0.125, 0.086))
CHALK = Coat(a=(0.83, 0.81, 0.76), b=(0.66, 0.63, 0.57), cover=1.0, patchy=0.1, thick=0.03, kind="powder", speck=0.3,
             specks=(0.33, 0.29, 0.25), root=0.35, tone=-0.2, rough=1.0, bump=0.3)
DARK = Coat(a=(0.072, 0.046, 0.028), b=(0.024, 0.018, 0.013), cover=1.0, patchy=0.2, thick=0.06, kind="powder", rough=1.0, bump=0.35)
FLUFF = Coat(a=(0.013, 0.0128, 0.0125), b=(0.006, 0.006, 0.006), cover=1.35, patchy=0.35, scale=0.45, thick=0.75, kind="fluff", rough=1.0,
             bump=0.7, grain=5.0)
OIL = Coat(a=(0.016, 0.011, 0.007), b=(0.006, 0.005, 0.004), cover=1.0, patchy=0.3, thick=0.32, kind="clots", rough=0.6, bump=0.03,
           wet=1.0, grain=4.0)
CRUST = Coat(a=(0.67, 0.68, 0.61), b=(0.40, 0.46, 0.385), specks=(0.50, 0.40, 0.24), speck=0.25, cover=0.75, patchy=0.7, scale=0.4,
             thick=0.42, kind="crust", rough=0.95, bump=0.5, side=0.3)
GRIME = Coat(a=(0.12, 0.085, 0.055), b=(0.05, 0.038, 0.03), cover=0.3, patchy=0.6, scale=0.12, thick=0.0, rough=0.8, bump=0.1)
FILM = Coat(a=(0.10, 0.05, 0.016), b=(0.035, 0.018, 0.008), cover=0.55, patchy=0.9, scale=0.09, thick=0.0, rough=0.25, bump=0.03,
            wet=0.95, ragged=0.25)


def condition(nose, rim, bore, strap, electrode, thread, shell, wear=0.1, heat=0.3, steel=0.36, upper=NOTHING):
    return dict(nose=nose, rim=rim, bore=bore, strap=strap, electrode=electrode, thread=thread, shell=shell, wear=wear, heat=heat,
                steel=steel, upper=upper)


LIGHT_BROWN = BROWN.but(a=(0.20, 0.155, 0.115), b=(0.10, 0.077, 0.057), cover=0.72, patchy=0.5)
CONDITIONS = {
    "normal": condition(TAN, BROWN, SOOT.but(a=(0.06, 0.045, 0.034)), LIGHT_BROWN, LIGHT_BROWN.but(cover=0.5),
                        GRIME.but(cover=0.45), GRIME),
    "normal, greyish": condition(GREY_TAN, BROWN.but(a=(0.105, 0.09, 0.076), b=(0.045, 0.04, 0.035)), SOOT.but(a=(0.06, 0.052, 0.045)),
                                 LIGHT_BROWN.but(a=(0.2, 0.175, 0.145), b=(0.11, 0.095, 0.08)), LIGHT_BROWN.but(cover=0.5),
                                 GRIME.but(cover=0.45), GRIME),
    "normal, worn": condition(TAN.but(a=(0.34, 0.21, 0.105), b=(0.15, 0.08, 0.037), speck=0.35, thick=0.03), BROWN,
                              SOOT.but(a=(0.05, 0.037, 0.028)), LIGHT_BROWN.but(cover=0.8), LIGHT_BROWN.but(cover=0.6),
                              GRIME.but(cover=0.6), GRIME.but(cover=0.45), wear=0.75, heat=0.5),
    "lean": condition(CHALK, BROWN.but(a=(0.40, 0.37, 0.33), b=(0.21, 0.19, 0.165), cover=0.8, patchy=0.4),
                      SOOT.but(a=(0.17, 0.155, 0.14), b=(0.08, 0.073, 0.066)),
                      CHALK.but(a=(0.52, 0.51, 0.49), b=(0.33, 0.32, 0.31), cover=0.5, patchy=0.6, speck=0.1),
                      CHALK.but(a=(0.5, 0.49, 0.47), b=(0.33, 0.32, 0.31), cover=0.3, patchy=0.6, speck=0.1),
                      GRIME.but(cover=0.4), GRIME, wear=0.3, heat=1.0),
    "rich": condition(DARK, DARK.but(a=(0.038, 0.03, 0.024)), SOOT, DARK.but(a=(0.04, 0.032, 0.026), cover=0.9, patchy=0.3),
                      DARK.but(a=(0.045, 0.036, 0.03), cover=0.85), GRIME.but(cover=0.55, a=(0.05, 0.04, 0.03)), GRIME, heat=0.0),
    "carbon": condition(FLUFF, FLUFF.but(thick=0.8), FLUFF.but(thick=0.5), FLUFF.but(thick=0.6, patchy=0.45), FLUFF.but(thick=0.3),
                        GRIME.but(cover=0.7, a=(0.03, 0.026, 0.023), b=(0.012, 0.012, 0.012)), GRIME.but(cover=0.4), heat=0.0),
    "oil-wetted": condition(OIL, OIL.but(thick=0.2), OIL.but(thick=0.25), OIL.but(thick=0.2, patchy=0.4), OIL.but(thick=0.08),
                            FILM.but(cover=0.85, a=(0.04, 0.022, 0.01), b=(0.012, 0.008, 0.005), scale=0.2), FILM.but(cover=0.4), heat=0.0),
    "coolant": condition(CRUST.but(cover=0.08, patchy=0.55, side=0.3, thick=0.28, root=0.2), CRUST.but(cover=0.72), CRUST.but(cover=0.55, thick=0.3),
                         CRUST.but(cover=0.85, patchy=0.5, thick=0.34), CRUST.but(cover=0.6, thick=0.15),
                         CRUST.but(cover=0.2, patchy=1.0, thick=0.1, speck=0.6, specks=(0.3, 0.13, 0.045), scale=0.25), GRIME.but(cover=0.4), heat=0.3),
    "new": condition(NOTHING, NOTHING, NOTHING, NOTHING, NOTHING, NOTHING, NOTHING, wear=0.0, heat=0.0, steel=0.24),
}

# Oil that ran down the outside from a leaking tube seal; the firing end stays as it is.
OUTER_OIL = dict(shell=FILM.but(cover=0.75), thread=FILM.but(cover=0.3, patchy=0.8, scale=0.12), upper=FILM.but(cover=0.55, patchy=0.9, scale=0.1))
