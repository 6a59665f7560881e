"""Writes srgb.csv: the linear value of every 8-bit sRGB value by skimage. See README.md."""
import csv
import os

import numpy as np
from skimage.color import rgb2xyz

HERE = os.path.dirname(os.path.abspath(__file__))


def main():
    shown = np.arange(256) / 255
    # Of a grey, Y is the linear value: the middle row of the matrix sums to 1.
    linear = rgb2xyz(np.repeat(shown[None, :, None], 3, axis=2))[0, :, 1]
    with open(os.path.join(HERE, "srgb.csv"), "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(("shown8", "linear"))
        out.writerows((i, "%.9f" % v) for i, v in enumerate(linear))


if __name__ == "__main__":
    main()
