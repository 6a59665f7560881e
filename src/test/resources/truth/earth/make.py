"""Writes rows.csv: nutation, true pole and sidereal time by ERFA's IAU 2006/2000A routines, UT1 = UTC. See README.md."""
import csv
import datetime as dt
import os
import random

import erfa

HERE = os.path.dirname(os.path.abspath(__file__))


def main():
    rng = random.Random(2000)
    with open(os.path.join(HERE, "rows.csv"), "w", newline="") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(("ttDays", "ut1Days", "dpsiArcsec", "depsArcsec", "poleX", "poleY", "poleZ", "gastDeg"))
        for year in range(1950, 2101, 5):
            tt = (dt.datetime(year, 1, 1) - dt.datetime(2000, 1, 1, 12)).days + rng.randrange(365) + round(rng.random(), 6)
            ut1 = round(tt - 60 / 86400, 9)
            dpsi, deps = (x * 206264.80624709636 for x in erfa.nut06a(2451545.0, tt))
            x, y, z = erfa.pnm06a(2451545.0, tt)[2]
            gast = erfa.gst06a(2451545.0, ut1, 2451545.0, tt) * 57.29577951308232
            out.writerow((tt, ut1, "%.6f" % dpsi, "%.6f" % deps, "%.12f" % x, "%.12f" % y, "%.12f" % z, "%.8f" % gast))


if __name__ == "__main__":
    main()
