"""Writes image.csv, spline.csv, gaussian.csv and smear.csv: what SciPy and scikit-image make of one small picture. See README.md."""
import csv
import math
import os

import numpy as np
from scipy import ndimage
from skimage import transform

HERE = os.path.dirname(os.path.abspath(__file__))
WIDTH, HEIGHT = 23, 19


def write(name, header, rows):
    with open(os.path.join(HERE, name), "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(header)
        out.writerows(rows)


def pixels(picture, before=()):
    return [(*before, x, y, "%.7f" % picture[y, x]) for y in range(HEIGHT) for x in range(WIDTH)]


def moved(picture, columns, rows):
    """The picture moved, by cubic convolution (a = -1/2) as scikit-image's warp does it with order 3."""
    back = np.array([[1, 0, -columns], [0, 1, -rows], [0, 0, 1]], float)
    return transform.warp(picture, back, order=3, mode="constant", cval=0, clip=False, preserve_range=True)


def main():
    rng = np.random.default_rng(4)
    # Steps of 1/1024 are exact as floats and as decimals.
    picture = np.round(rng.uniform(0, 1, (HEIGHT, WIDTH)) * 1024) / 1024
    write("image.csv", ["c%d" % x for x in range(WIDTH)], [["%.10g" % v for v in row] for row in picture])

    x = np.round(rng.uniform(-2.5, WIDTH + 1.5, 300), 4)
    y = np.round(rng.uniform(-2.5, HEIGHT + 1.5, 300), 4)
    x[:6], y[:6] = (0, WIDTH - 1, 5, -0.5, WIDTH - 0.5, 1), (0, HEIGHT - 1, 7, -0.5, HEIGHT - 0.5, HEIGHT - 3)
    value = ndimage.map_coordinates(picture, [y, x], order=3, mode="mirror")
    write("spline.csv", ("x", "y", "value"), [(a, b, "%.7f" % v) for a, b, v in zip(x, y, value)])

    rows = []
    for sigma in (0.3, 0.8, 1.7, 3.2):
        blurred = ndimage.gaussian_filter(
            picture, sigma, mode="constant", cval=0, truncate=math.ceil(4 * sigma) / sigma)
        rows += pixels(blurred, (sigma,))
    write("gaussian.csv", ("sigmaPx", "x", "y", "value"), rows)

    rows = []
    for direction, offsets in ((0, (-1, -1, 2)), (90, (-1.5, 0.25, 1.25)), (-37, (-2.2, -0.4, 0.6, 2.0))):
        right, up = -math.sin(math.radians(direction)), math.cos(math.radians(direction))
        copies = [moved(picture, o * right, -o * up) for o in offsets]
        rows += pixels(np.mean(copies, axis=0), (direction, ";".join(map(str, offsets))))
    write("smear.csv", ("directionDeg", "offsetsPx", "x", "y", "value"), rows)


if __name__ == "__main__":
    main()
