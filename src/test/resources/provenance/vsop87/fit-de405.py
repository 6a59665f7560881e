"""Least-squares correction of VSOP87B's Uranus and Neptune to DE405, 1960 to 2060 (not part of the build).

Needs numpy, python3-casacore with casacore-data-jpl-de405, and the full series as JSON: {planet: {L|B|R: {power: [[A, B, C]]}}}.
Usage: python3 fit-de405.py series.json; prints the constant, the T term and the term of the mean motion for extract.mjs.
"""
import json
import os
import sys

import numpy as np

sys.path.insert(0, os.path.join(os.path.dirname(__file__), "..", "..", "truth", "aspect"))
from de405 import AU_KM, barycentric_km

MEAN_MOTION = dict(uranus=74.7815985673, neptune=38.1330356378)       # rad a millennium
TO_ICRS = np.array([[1, 0.000000440360, -0.000000190919],
                    [-0.000000479966, 0.917482137087, -0.397776982902],
                    [0, 0.397776982902, 0.917482137087]])


def series(table, t):
    return np.array([sum((np.array(terms).reshape(-1, 3)[:, 0]
                          * np.cos(np.array(terms).reshape(-1, 3)[:, 1] + np.array(terms).reshape(-1, 3)[:, 2] * t)).sum()
                         * t ** int(power) for power, terms in table[c].items()) for c in "LBR"])


def spherical(v):
    return np.array([np.arctan2(v[1], v[0]), np.arcsin(v[2] / np.linalg.norm(v)), np.linalg.norm(v)])


def main(path):
    full = json.load(open(path))
    days = np.linspace(2436913, 2473480, 600)
    t = (days - 2451545.0) / 365250.0
    for planet, n in MEAN_MOTION.items():
        d = np.array([spherical(TO_ICRS.T @ (barycentric_km(planet, jd) - barycentric_km("sun", jd)) / AU_KM)
                      - series(full[planet], (jd - 2451545.0) / 365250.0) for jd in days])
        d[:, 0] = (d[:, 0] + np.pi) % (2 * np.pi) - np.pi
        for i, c in enumerate("LBR"):
            columns = [np.ones_like(t), np.cos(n * t), np.sin(n * t)] + ([t] if c == "L" else [])
            x = np.linalg.lstsq(np.array(columns).T, d[:, i], rcond=None)[0]
            left = np.abs(d[:, i] - np.array(columns).T @ x).max()
            print(planet, c, "constant %.11f" % x[0], "T %.11f" % (x[3] if c == "L" else 0),
                  "amplitude %.11f phase %.6f" % (np.hypot(x[1], x[2]), np.arctan2(-x[2], x[1]) % (2 * np.pi)),
                  "left %.2e" % left)


if __name__ == "__main__":
    main(sys.argv[1])
