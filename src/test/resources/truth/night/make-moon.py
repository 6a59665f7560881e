#!/usr/bin/python3
"""Writes moon.csv: the Moon from invented sites, by JPL DE405 and ERFA.  Needs what ../aspect/make.py needs.  See README.md.

Light time by iteration; aberration is left out, as Earth and Moon share their way around the Sun (diurnal: 0.3 arcsec).
"""
import datetime as dt
import math
import os
import random
import sys

import erfa
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "aspect"))
import de405  # noqa: E402

SITES = [(46.2, 8.5), (-33.4, -70.6), (19.8, -155.5), (78.2, 15.6), (0.1, 37.0)]
C_KM_S = 299792.458
random.seed(1969)
de405.check()


def unit(v):
    return v / np.linalg.norm(v)


with open(os.path.join(HERE, "moon.csv"), "w") as out:
    print("utc,latitudeDeg,longitudeDeg,rightAscensionDeg,declinationDeg,distanceKm,altitudeDeg,azimuthDeg,"
          "illuminatedFraction", file=out)
    for i in range(80):
        utc = dt.datetime(1972, 7, 1) + dt.timedelta(minutes=random.randrange(86 * 365 * 1440))
        latitude, longitude = SITES[i % len(SITES)]
        day = utc.hour / 24 + utc.minute / 1440
        leap = 37.0 if utc.year >= 2017 else erfa.dat(utc.year, utc.month, utc.day, day)
        d1, d2 = erfa.cal2jd(utc.year, utc.month, utc.day)
        ut = d2 + day
        tt = ut + (leap + 32.184) / 86400
        frame = erfa.pnm06a(d1, tt)
        gast = erfa.gst06a(d1, ut, d1, tt)
        last = gast + math.radians(longitude)
        site = erfa.gd2gc(1, math.radians(longitude), math.radians(latitude), 0.0) / 1000
        c, s = math.cos(gast), math.sin(gast)
        observer = np.array([c * site[0] - s * site[1], s * site[0] + c * site[1], site[2]])
        jd = d1 + tt
        moon = de405._raw("moon", jd)
        # the Earth's motion during the light time is the aberration that is left out
        for _ in range(3):
            moon = de405._raw("moon", jd - np.linalg.norm(moon) / C_KM_S / 86400)
        line = frame @ moon - observer
        sun = frame @ (de405.barycentric_km("sun", jd) - de405.barycentric_km("earth", jd)) - observer
        ra, dec = math.atan2(line[1], line[0]), math.asin(unit(line)[2])
        azimuth, altitude = erfa.hd2ae(last - ra, dec, math.radians(latitude))
        phase = math.acos(unit(-line) @ unit(sun - line))
        print(utc.isoformat() + "Z", latitude, longitude, "%.5f" % (math.degrees(ra) % 360), "%.5f" % math.degrees(dec),
              "%.1f" % np.linalg.norm(line), "%.5f" % math.degrees(altitude), "%.5f" % math.degrees(azimuth),
              "%.5f" % ((1 + math.cos(phase)) / 2), sep=",", file=out)
