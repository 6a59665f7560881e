#!/usr/bin/python3
"""Writes nights-libastro.csv: nights at invented sites, by python3-ephem (libastro).  Usage: make.py, then node make.mjs

Horizon conventions: planets rise by their centre at an airless altitude of -34 arcmin, the Moon by its upper limb, the Sun by its
centre at -50 arcmin; twilights at -6, -12, -18 degrees.  See README.md.
"""
import datetime as dt
import os
import random

import ephem

HERE = os.path.dirname(os.path.abspath(__file__))
PLANETS = ["Mercury", "Venus", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"]
SITES = [(46.2, 8.5, 1), (-33.4, -70.6, -4), (19.8, -155.5, -10), (-37.8, 145.0, 10), (60.2, 25.0, 2), (0.1, 37.0, 3)]
# polar night and day, planets that never rise or never set, a Sun that hardly sets
POLAR = [("Jupiter", 78.2, 15.6, 1, "2025-12-20"), ("Saturn", 78.2, 15.6, 1, "2025-12-05"),
         ("Venus", 78.2, 15.6, 1, "2026-06-20"), ("Mars", 78.2, 15.6, 1, "2022-12-20"),
         ("Uranus", -75.1, 123.3, 8, "2026-06-21"), ("Neptune", -75.1, 123.3, 8, "2026-12-21"),
         ("Mercury", 69.7, 19.0, 1, "2026-11-20"), ("Jupiter", 65.5, 25.0, 2, "2026-06-15"),
         ("Mars", 58.0, 25.0, 2, "2026-06-01"), ("Saturn", 69.7, 19.0, 1, "2026-05-10")]
COLUMNS = "body,latitudeDeg,longitudeDeg,offsetHours,date,rise,culmination,culminationAltitudeDeg,set," \
          "moonrise,moonCulmination,moonset,sunset,civilDusk,nauticalDusk,astronomicalDusk," \
          "astronomicalDawn,nauticalDawn,civilDawn,sunrise"
HOUR = 1 / 24


def observer(latitude, longitude, at, horizon="0"):
    o = ephem.Observer()
    o.lat, o.lon, o.elevation, o.pressure = str(latitude), str(longitude), 0, 0
    o.date, o.horizon = at, horizon
    return o


def nearest(options, at):
    return min(options, key=lambda t: abs(t - at))


def search(method, o, body, centre, first, last):
    try:
        found = getattr(o, method)(body, use_center=centre)
    except (ephem.AlwaysUpError, ephem.NeverUpError):
        return None
    return found if first <= found <= last else None


def text(when):
    if when is None:
        return ""
    seconds = round((when - ephem.Date("2000/1/1")) * 86400)
    return (dt.datetime(2000, 1, 1) + dt.timedelta(seconds=seconds)).isoformat() + "Z"


def passing(body, latitude, longitude, midnight, horizon, centre):
    o = observer(latitude, longitude, midnight)
    culmination = nearest([o.previous_transit(body), o.next_transit(body)], midnight)
    o = observer(latitude, longitude, culmination)
    before, after = o.previous_antitransit(body), o.next_antitransit(body)
    o = observer(latitude, longitude, culmination)
    body.compute(o)
    altitude = body.alt * 180 / ephem.pi
    rise = search("previous_rising", observer(latitude, longitude, culmination, horizon), body, centre, before, culmination)
    settles = search("next_setting", observer(latitude, longitude, culmination, horizon), body, centre, culmination, after)
    return rise, culmination, altitude, settles


def row(planet, latitude, longitude, offset, date):
    sun, moon, body = ephem.Sun(), ephem.Moon(), getattr(ephem, planet)()
    y, m, d = map(int, date.split("-"))
    clock = ephem.Date(ephem.Date((y, m, d)) + (24 - offset) * HOUR)
    o = observer(latitude, longitude, clock)
    midnight = nearest([o.previous_antitransit(sun), o.next_antitransit(sun)], clock)
    cells = [planet.lower(), "%.1f" % latitude, "%.1f" % longitude, str(offset), date]
    rise, culmination, altitude, settles = passing(body, latitude, longitude, midnight, "-0:34", True)
    cells += [text(rise), text(culmination), "%.4f" % altitude, text(settles)]
    rise, culmination, _, settles = passing(moon, latitude, longitude, midnight, "-0:34", False)
    cells += [text(rise), text(culmination), text(settles)]
    heights = ["-0:50", "-6", "-12", "-18"]
    cells += [text(search("previous_setting", observer(latitude, longitude, midnight, h), sun, True,
                          midnight - 12 * HOUR, midnight)) for h in heights]
    cells += [text(search("next_rising", observer(latitude, longitude, midnight, h), sun, True,
                          midnight, midnight + 12 * HOUR)) for h in reversed(heights)]
    return ",".join(cells)


random.seed(21)
with open(os.path.join(HERE, "nights-libastro.csv"), "w") as out:
    print(COLUMNS, file=out)
    for place in SITES:
        for name in PLANETS:
            day = dt.date(1950, 1, 1) + dt.timedelta(days=random.randrange(150 * 365))
            print(row(name, *place, day.isoformat()), file=out)
    for planet, latitude, longitude, offset, date in POLAR:
        print(row(planet, latitude, longitude, offset, date), file=out)
