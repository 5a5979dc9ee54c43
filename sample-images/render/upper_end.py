"""The dry end: ribbed glazed porcelain and the solid terminal. Millimetres, rim at z = 0."""
import numpy as np

from mesh import lathe


def porcelain():
    line = [(6.6, -35.0), (6.0, -36.2), (5.75, -37.2), (5.65, -42)]
    for rib in range(5):
        z = -43.5 - rib * 3.0
        line += [(5.6, z), (4.95, z - 0.5), (4.8, z - 0.9), (4.95, z - 1.3), (5.45, z - 1.75), (5.6, z - 2.1)]
    line += [(5.5, -58.6), (5.1, -59.4), (4.3, -60.0), (3.4, -60.1), (2.6, -60.0)]
    return lathe(line, 160, 0.25)


def terminal():
    bulge = [(3.15 + 0.05 * np.sin(a), -66.0 - 2.4 * a / np.pi) for a in np.linspace(0, np.pi, 8)]
    return lathe([(2.7, -59.9), (2.7, -60.6), (3.5, -60.8), (3.6, -61.1), (3.6, -62.0), (3.3, -62.4), (2.3, -63.0), (2.2, -64.6),
                  (2.9, -65.4)] + bulge + [(2.8, -69.4), (2.1, -69.9), (0.02, -70.0)], 96, 0.2)
