#!/usr/bin/env python3
"""Pictures of a lit spheroid by dense sampling, for rows.csv; see README.md. Needs numpy and scipy."""
import csv

import numpy as np
from scipy.ndimage import gaussian_filter
from scipy.spatial.transform import Rotation

SIZE, FINE, RADIUS = 48, 40, 20.0
SCENES = [  # polar/equatorial radius, central meridian, sub-Earth, sub-solar meridian, sub-solar latitude (centric),
    # west longitudes, north angle, mirrored, Minnaert k, FWHM, centre
    dict(name="jupiter", f=66854.0 / 71492.0, cm=200.0, de=3.0, sun=190.0, ds=2.5, west=True, north=20.0,
         mirrored=True, k=0.9, fwhm=2.0, cx=24.0, cy=22.5),
    dict(name="saturn", f=54364.0 / 60268.0, cm=40.0, de=-24.0, sun=45.0, ds=-21.0, west=True, north=-130.0,
         mirrored=False, k=0.8, fwhm=1.6, cx=23.2, cy=24.1),
    dict(name="venus", f=1.0, cm=310.0, de=5.0, sun=250.0, ds=-2.0, west=False, north=65.0,
         mirrored=False, k=1.0, fwhm=2.4, cx=23.5, cy=23.5),
]


def albedo(latitude, east):
    return 0.6 + 0.25 * np.cos(latitude) * np.cos(3 * east - 1.0) + 0.1 * np.sin(4 * latitude)


def picture(s):
    fine = (np.arange(SIZE * FINE) + 0.5) / FINE - 0.5
    right, down = np.meshgrid((fine - s["cx"]) / RADIUS, (fine - s["cy"]) / RADIUS)
    # image -> pole up, unmirrored: turn the pole back to up, then reflect
    n = np.radians(s["north"])
    up = -down
    u = right * np.cos(n) + up * np.sin(n)
    v = -right * np.sin(n) + up * np.cos(n)
    if s["mirrored"]:
        u = -u
    # pole up -> body: the viewer looks along -x; tilt by the sub-Earth latitude, turn to the meridian
    east = -s["cm"] if s["west"] else s["cm"]
    to_body = Rotation.from_euler("z", east, degrees=True) * Rotation.from_euler("y", -s["de"], degrees=True)
    grid = np.stack([np.zeros_like(u), u, v], -1).reshape(-1, 3)
    p = to_body.apply(grid)
    d = to_body.apply([1.0, 0.0, 0.0])                # towards the viewer, parallel rays
    q = np.array([1.0, 1.0, 1.0 / s["f"] ** 2])       # the surface is sum(q x^2) = 1
    a, b, c = (q * d * d).sum(), (q * p * d).sum(-1), (q * p * p).sum(-1) - 1.0
    root = b * b - a * c
    hit = root > 0
    t = (-b + np.sqrt(np.where(hit, root, 0.0))) / a  # the root nearer to the viewer
    x = p + t[:, None] * d
    normal = q * x
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    sun_east = np.radians(-s["sun"] if s["west"] else s["sun"])
    ds = np.radians(s["ds"])
    sun = np.array([np.cos(ds) * np.cos(sun_east), np.cos(ds) * np.sin(sun_east), np.sin(ds)])
    mu, mu0 = np.maximum(normal @ d, 0.03), normal @ sun
    bright = albedo(np.arcsin(normal[:, 2]), np.arctan2(x[:, 1], x[:, 0])) \
        * np.clip(mu0, 0.0, None) ** s["k"] * mu ** (s["k"] - 1.0)
    image = np.where(hit & (mu0 > 0), bright, 0.0).reshape(u.shape)
    image = gaussian_filter(image, s["fwhm"] / np.sqrt(8 * np.log(2)) * FINE, truncate=6)
    return image.reshape(SIZE, FINE, SIZE, FINE).mean(axis=(1, 3))


with open("rows.csv", "w", newline="") as out:
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["scene", "y"] + ["x%d" % i for i in range(SIZE)])
    for scene in SCENES:
        for y, line in enumerate(picture(scene)):
            rows.writerow([scene["name"], y] + ["%.5f" % value for value in line])
