#!/usr/bin/python3
"""Writes rows-libastro.csv: the moons of Jupiter by python3-ephem. Usage: make.py > rows-libastro.csv"""
import random
import ephem

random.seed(44)
MOONS = [ephem.Io, ephem.Europa, ephem.Ganymede, ephem.Callisto]
print('utc,moon,eastRadii,northRadii,frontRadii,visible,lit')
instants = [random.uniform(1950, 1999) for _ in range(30)] + [random.uniform(1999.1, 2039.9) for _ in range(60)] \
    + [random.uniform(2040, 2050) for _ in range(10)]
# moments when a moon or its shadow stands before the disk, or near it, are what the positions are for
start = ephem.Date('2000/1/1')
while len(instants) < 130:
    when = start + random.uniform(0, 14600)
    for moon in MOONS:
        m = moon()
        m.compute(ephem.Date(when))
        if m.x ** 2 + m.y ** 2 < 1:
            instants.append(2000 + (when - start) / 365.25)
            break
for year in sorted(instants):
    date = ephem.Date(round((start + (year - 2000) * 365.25) * 1440) / 1440)
    for moon in MOONS:
        m = moon()
        m.compute(date)
        y, mo, d, h, mi, s = date.tuple()
        print('%04d-%02d-%02dT%02d:%02d:%02dZ,%s,%.5f,%.5f,%.5f,%d,%d' % (
            y, mo, d, h, mi, round(s) % 60, m.name, m.x, -m.y, m.z, m.earth_visible, m.sun_visible))
