"""Writes reference.csv, the pictures moved-*.csv and rows.csv: shifts by skimage's phase correlation. See README.md."""
import csv
import os

import numpy as np
from skimage.registration import phase_cross_correlation

HERE = os.path.dirname(os.path.abspath(__file__))
SIDE = 44
MOVES = ((0.0, 0.0), (0.37, -0.21), (-0.5, 0.5), (1.3, 0.84))


def blobs():
    rng = np.random.default_rng(8)
    place = rng.uniform(15, SIDE - 16, (60, 2))
    return place, rng.normal(0, 0.05, 60), rng.uniform(1.6, 2.4, 60)


def picture(dx, dy, gain):
    y, x = np.mgrid[:SIDE, :SIDE]
    total = np.zeros((SIDE, SIDE))
    for (bx, by), strength, width in zip(*blobs()):
        total += gain * strength * np.exp(-((x - bx - dx) ** 2 + (y - by - dy) ** 2) / (2 * width**2))
    return np.round(total, 5)


def write(name, header, rows):
    with open(os.path.join(HERE, name), "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(header)
        out.writerows(rows)


def main():
    header = ["c%d" % x for x in range(SIDE)]
    reference = picture(0, 0, 1)
    rows = []
    for i, (dx, dy) in enumerate(MOVES):
        moved = picture(dx, dy, 0.7)
        name = "moved-%d.csv" % i
        write(name, header, [["%.5g" % v for v in row] for row in moved])
        found, _, _ = phase_cross_correlation(moved, reference, upsample_factor=100, normalization=None)
        rows.append((name, dx, dy, "%.2f" % found[1], "%.2f" % found[0]))
    write("reference.csv", header, [["%.5g" % v for v in row] for row in reference])
    write("rows.csv", ("file", "trueX", "trueY", "foundX", "foundY"), rows)


if __name__ == "__main__":
    main()
