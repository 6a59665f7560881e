"""Writes refraction.csv: refraction by ERFA's refco and by tracing rays through a model atmosphere. See README.md."""
import csv
import math
import os

import erfa
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
DEG = math.pi / 180
EARTH_M, GRAVITY, GAS, DRY_KG = 6371000.0, 9.784, 8.314472, 0.028964


def birch_downs(nm, hpa, celsius, humidity):
    """n - 1: Birch & Downs 1993/1994 (Metrologia 30, 155 and 31, 315), the revised Edlen equation."""
    s, p, t = (1000.0 / nm) ** 2, hpa * 100.0, celsius
    standard = (8342.54 + 2406147 / (130 - s) + 15998 / (38.9 - s)) * 1e-8
    dry = standard * p / 96095.43 * (1 + 1e-8 * (0.601 - 0.00972 * t) * p) / (1 + 0.0036610 * t)
    vapour = humidity * 611.2 * math.exp(17.62 * t / (243.12 + t))          # Magnus
    return dry - vapour * (3.7345 - 0.0401 * s) * 1e-10


def trace(n0, hpa, celsius, apparent_altitude):
    """Refraction in arcsec: Bouguer's invariant through a troposphere (6.5 K/km to 11 km) and an isothermal layer above."""
    h = np.concatenate([np.arange(0, 11000, 2.0), np.arange(11000, 80001, 10.0)])
    t0 = celsius + 273.15
    lapse, top = 0.0065, t0 - 0.0065 * 11000
    power = GRAVITY * DRY_KG / (GAS * lapse)
    density = np.where(h <= 11000, (np.maximum(t0 - lapse * h, top) / t0) ** (power - 1),
                       (top / t0) ** (power - 1) * np.exp(-GRAVITY * DRY_KG / (GAS * top) * (h - 11000)))
    n = 1 + n0 * density
    sin_z = (1 + n0) * EARTH_M * math.cos(apparent_altitude * DEG) / (n * (EARTH_M + h))
    tan_z = sin_z / np.sqrt(1 - sin_z ** 2)
    steps = -np.diff(np.log(n)) * (tan_z[1:] + tan_z[:-1]) / 2
    return steps.sum() / DEG * 3600


def main():
    with open(os.path.join(HERE, "refraction.csv"), "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(("nm", "hPa", "celsius", "humidity", "trueAltitudeDeg", "refcoArcsec", "tracedArcsec"))
        for hpa, celsius, humidity in ((1013.25, 15, 0.5), (1010, 0, 0.9), (950, 10, 0.4), (760, 5, 0.2), (620, -3, 0.1)):
            for nm in (400.0, 450.0, 540.0, 645.0, 890.0):
                n0 = birch_downs(nm, hpa, celsius, humidity)
                a, b = erfa.refco(hpa, celsius, humidity, nm / 1000)
                for apparent in (5.5, 10, 15, 20, 30, 45, 60, 80):
                    traced = trace(n0, hpa, celsius, apparent)
                    true = apparent - traced / 3600
                    tan = math.tan((90 - apparent) * DEG)
                    out.writerow((nm, hpa, celsius, humidity, "%.6f" % true,
                                  "%.4f" % ((a * tan + b * tan ** 3) / DEG * 3600), "%.4f" % traced))


if __name__ == "__main__":
    main()
