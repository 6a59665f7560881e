#!/usr/bin/python3
"""Writes moon-events.csv: when Jupiter's moons and their shadows pass its limb, from the positions of python3-ephem (libastro).

libastro looks its moons up by UT where their theory (Bureau des Longitudes) wants TT, so that all of them come late by Delta T;
here it is asked Delta T later.  Its unit is a radius in which Io stands 5.9122 from Jupiter, 5.90569 * 71420 km.  The rest is
plain geometry of rays and a spheroid.  See README.md.
"""
import datetime as dt
import os

import ephem
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
AU_KM, LIGHT_KM_S = 149597870.7, 299792.458
UNIT_KM = 71420 * 5.90569 / 5.9122
EQUATOR_KM, POLE_KM = 71492.0, 66854.0
DELTA_T_S = 69.2
MOONS = [ephem.Io, ephem.Europa, ephem.Ganymede, ephem.Callisto]
WINDOWS = ["2022-09-20", "2025-12-26", "2026-02-10", "2027-03-03", "2031-06-05", "2034-09-12", "2038-01-20"]
DAYS = 7
STEP_S = 120
PI = np.pi


def unit(ra, dec):
    return np.array([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])


AXIS = unit(268.057 * PI / 180, 64.496 * PI / 180)  # IAU WGCCRE 2015, J2000


def stretched(v):
    """The spheroid as a sphere."""
    return v + (EQUATOR_KM / POLE_KM - 1) * (v @ AXIS) * AXIS


def depth_of_hit(origin, through):
    """Discriminant of a ray with the spheroid about 0, in radii: positive inside the outline."""
    o, d = stretched(origin), stretched(through - origin)
    closest = o - (o @ d) / (d @ d) * d
    return 1 - np.linalg.norm(closest) / EQUATOR_KM


def first_hit(origin, through):
    o, d = stretched(origin), stretched(through - origin)
    a, b, c = d @ d, o @ d, o @ o - EQUATOR_KM ** 2
    root = b * b - a * c
    return None if root < 0 else origin + (-(b + np.sqrt(root)) / a) * (through - origin)


class Scene:
    """Jupiter's centre is 0; J2000, km."""

    def __init__(self, seconds):
        self.date = ephem.Date("2000/1/1") + seconds / 86400
        jupiter, sun = ephem.Jupiter(), ephem.Sun()
        jupiter.compute(self.date, epoch="2000")
        sun.compute(self.date, epoch="2000")
        self.u = unit(float(jupiter.a_ra), float(jupiter.a_dec))
        self.earth = -self.u * jupiter.earth_distance * AU_KM
        self.sun = self.earth + unit(float(sun.a_ra), float(sun.a_dec)) * sun.earth_distance * AU_KM
        east = np.cross([0, 0, 1], self.u)
        self.east = east / np.linalg.norm(east)
        self.north = np.cross(self.u, self.east)

    def moon(self, kind, shift_s=0.0):
        m = kind()
        m.compute(self.date + (DELTA_T_S + shift_s) / 86400)
        return UNIT_KM * (m.x * self.east - m.y * self.north - m.z * self.u)

    def phases(self, kind):
        """Of transit, shadow, occultation, eclipse how far the moon is into each; negative outside."""
        seen = self.moon(kind)
        front = -(seen @ self.u)
        outline = depth_of_hit(self.earth, seen)
        sunward = self.sun / np.linalg.norm(self.sun)
        height = seen @ sunward
        lit = depth_of_hit(self.sun, seen)
        shadow = -1.0
        if height > 0:
            # the light of the shadow's place passed the moon earlier than the light by which the moon is seen left it
            caster = self.moon(kind, -(front + height) / LIGHT_KM_S)
            shadow = depth_of_hit(self.sun, caster)
            place = first_hit(self.sun, caster)
            if place is not None:
                normal = place + ((EQUATOR_KM / POLE_KM) ** 2 - 1) * (place @ AXIS) * AXIS
                shadow = min(shadow, -(normal @ self.u) / np.linalg.norm(normal))
        return dict(transit=outline if front > 0 else -1.0, shadow=shadow, occultation=outline if front < 0 else -1.0,
                    eclipse=lit if height < 0 else -1.0)


def refine(kind, event, low, high, rising):
    while high - low > 0.25:
        middle = (low + high) / 2
        if (Scene(middle).phases(kind)[event] >= 0) == rising:
            high = middle
        else:
            low = middle
    return (low + high) / 2


rows = []
for window in WINDOWS:
    start = (dt.datetime.fromisoformat(window) - dt.datetime(2000, 1, 1)).total_seconds()
    for kind in MOONS:
        before = None
        for k in range(DAYS * 86400 // STEP_S + 1):
            at = start + k * STEP_S
            now = Scene(at).phases(kind)
            for event in now if before else ():
                if (now[event] >= 0) != (before[event] >= 0):
                    rising = bool(now[event] >= 0)
                    t = refine(kind, event, at - STEP_S, at, rising)
                    rows.append((t, kind.__name__, event + (" begins" if rising else " ends")))
            before = now
rows.sort()
with open(os.path.join(HERE, "moon-events.csv"), "w") as out:
    print("utc,moon,event", file=out)
    for t, moon, event in rows:
        print((dt.datetime(2000, 1, 1) + dt.timedelta(seconds=round(t))).isoformat() + "Z", moon, event, sep=",", file=out)
