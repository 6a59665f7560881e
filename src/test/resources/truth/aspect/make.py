"""Writes rows-de405.csv, rows-libastro.csv and rows-aa.csv: aspects of the planets, computed apart from Epochrome's code.

Needs python3 with numpy, erfa, ephem, casacore, casacore-data-jpl-de405
and astronomical-almanac (Debian 12).  See README.md.
"""
import csv
import datetime as dt
import math
import os
import random
import re
import subprocess
import tempfile

import ephem
import erfa
import numpy as np

import de405

HERE = os.path.dirname(os.path.abspath(__file__))
DEG = math.pi / 180
AU_KM, C_KM_S = 149597870.700, 299792.458
RADII = dict(mercury=(2440.53, 2438.26), venus=(6051.8, 6051.8), mars=(3396.19, 3376.20), jupiter=(71492.0, 66854.0),
             saturn=(60268.0, 54364.0), uranus=(25559.0, 24973.0), neptune=(24764.0, 24341.0))
EASTWARD = {"venus", "uranus"}
# invented sites in both hemispheres, high and low
SITES = [None, (46.2, 8.5, 480.0), (-33.4, -70.6, 2400.0), (19.8, -155.5, 4200.0), (-37.8, 145.0, 60.0),
         (60.2, 25.0, 20.0), (0.1, 37.0, 1700.0)]


# -- WGCCRE 2015 (Archinal et al. 2018); Jupiter I, II and Saturn I of the earlier reports.  Degrees; t in centuries,
# d in days.  The numbers were compared with NAIF's text kernel pck00011.
def sin(x):
    return math.sin(x * DEG)


def cos(x):
    return math.cos(x * DEG)


def elements(body, d):
    t = d / 36525.0
    if body == "mercury":
        m = [174.7910857 + 4.092335 * d, 349.5821714 + 8.184670 * d, 164.3732571 + 12.277005 * d,
             339.1643429 + 16.369340 * d, 153.9554286 + 20.461675 * d]
        w = 329.5988 + 6.1385108 * d + sum(a * sin(x) for a, x in zip(
            (0.01067257, -0.00112309, -0.00011040, -0.00002539, -0.00000571), m))
        return 281.0103 - 0.0328 * t, 61.4155 - 0.0049 * t, {"single": w}
    if body == "venus":
        return 272.76, 67.16, {"single": 160.20 - 1.4813688 * d}
    if body == "mars":
        ra = 317.269202 - 0.10927547 * t + sum(a * sin(p + r * t) for a, p, r in (
            (0.000068, 198.991226, 19139.4819985), (0.000238, 226.292679, 38280.8511281),
            (0.000052, 249.663391, 57420.7251593), (0.000009, 266.183510, 76560.6367950),
            (0.419057, 79.398797, 0.5042615)))
        de = 54.432516 - 0.05827105 * t + sum(a * cos(p + r * t) for a, p, r in (
            (0.000051, 122.433576, 19139.9407476), (0.000141, 43.058401, 38280.8753272),
            (0.000031, 57.663379, 57420.7517205), (0.000005, 79.476401, 76560.6495004),
            (1.591274, 166.325722, 0.5042615)))
        w = 176.049863 + 350.891982443297 * d + sum(a * sin(p + r * t) for a, p, r in (
            (0.000145, 129.071773, 19140.0328244), (0.000157, 36.352167, 38281.0473591),
            (0.000040, 56.668646, 57420.9295360), (0.000001, 67.364003, 76560.2552215),
            (0.000001, 104.792680, 95700.4387578), (0.584542, 95.391654, 0.5042615)))
        return ra, de, {"single": w}
    if body == "jupiter":
        j = [99.360714 + 4850.4046 * t, 175.895369 + 1191.9605 * t, 300.323162 + 262.5475 * t,
             114.012305 + 6070.2476 * t, 49.511251 + 64.3000 * t]
        ra = 268.056595 - 0.006499 * t + sum(a * sin(x) for a, x in zip(
            (0.000117, 0.000938, 0.001432, 0.000030, 0.002150), j))
        de = 64.495303 + 0.002413 * t + sum(a * cos(x) for a, x in zip(
            (0.000050, 0.000404, 0.000617, -0.000013, 0.000926), j))
        return ra, de, {"I": 67.10 + 877.900 * d, "II": 43.30 + 870.270 * d, "III": 284.95 + 870.5360000 * d}
    if body == "saturn":
        return 40.589 - 0.036 * t, 83.537 - 0.004 * t, {"I": 227.2037 + 844.3 * d, "III": 38.90 + 810.7939024 * d}
    if body == "uranus":
        return 257.311, -15.175, {"single": 203.81 - 501.1600928 * d}
    n = 357.85 + 52.316 * t
    return 299.36 + 0.70 * sin(n), 43.46 - 0.51 * cos(n), {"single": 249.978 + 541.1397757 * d - 0.48 * sin(n)}


# -- time: UTC with ERFA's TAI-UTC (which knows the stretched UTC of the 1960s too); UT1 = UTC; TDB = TT
def julian(when):
    frac = (when.hour * 3600 + when.minute * 60 + when.second) / 86400.0
    _, day = erfa.cal2jd(when.year, when.month, when.day)
    if when.year < 1960:                      # no UTC: Delta T of Espenak & Meeus 2006 at mid-1950s, by hand
        t = when.year + (when.timetuple().tm_yday - 0.5) / 365.25 - 1950
        delta = 29.07 + 0.407 * t - t * t / 233 + t ** 3 / 2547
    else:
        delta = 32.184 + erfa.dat(when.year, when.month, when.day, frac)
    return 2400000.5 + day, frac, frac + delta / 86400.0


def unit(v):
    return v / np.linalg.norm(v)


def angle(u, v):
    return math.atan2(np.linalg.norm(np.cross(u, v)), float(u @ v)) / DEG


def observer(site, jd, ut, tt):
    if site is None:
        return np.zeros(3), np.zeros(3), None
    m = erfa.c2t06a(jd, tt, jd, ut, 0.0, 0.0)
    lat, lon, h = site
    xyz = erfa.gd2gc(1, lon * DEG, lat * DEG, h) / 1000.0
    velocity = np.cross([0, 0, 7.292115e-5], xyz)
    up = np.array([cos(lat) * cos(lon), cos(lat) * sin(lon), sin(lat)])
    return m.T @ xyz, m.T @ velocity, m.T @ up


def vectors_de405(body, jd, tt, topo):
    """Body and Sun from the observer, Sun from the body at emission (km), light time, Earth's velocity (km/s)."""
    t = jd + tt
    earth = de405.barycentric_km("earth", t) + topo
    tau = 0.0
    for _ in range(5):
        line = de405.barycentric_km(body, t - tau / 86400) - earth
        tau = float(np.linalg.norm(line)) / C_KM_S
    emitted = t - tau / 86400
    sun = de405.barycentric_km("sun", emitted) - de405.barycentric_km(body, emitted)
    h = 0.01
    velocity = (de405.barycentric_km("earth", t + h) - de405.barycentric_km("earth", t - h)) / (2 * h * 86400)
    return line, de405.barycentric_km("sun", t) - earth, sun, tau, velocity


def libastro(name, t):
    """Astrometric J2000 place and distance, Earth-centred (km); at a TT Julian date."""
    body = getattr(ephem, name.capitalize())()
    date = t - 2415020.0
    body.compute(ephem.Date(date - ephem.delta_t(ephem.Date(date)) / 86400), epoch=ephem.J2000)
    ra, de, r = float(body.a_ra), float(body.a_dec), body.earth_distance * AU_KM
    return r * np.array([math.cos(de) * math.cos(ra), math.cos(de) * math.sin(ra), math.sin(de)])


def vectors_libastro(body, jd, tt, topo):
    """As above; but libastro's distance is the one without light time, so nothing that hangs on it is kept."""
    t = jd + tt
    line = libastro(body, t) - topo
    sun = libastro("sun", t) - topo
    h = 0.02
    velocity = -(libastro("sun", t + h) - libastro("sun", t - h)) / (2 * h * 86400)
    return line, sun, sun - line, float(np.linalg.norm(line)) / C_KM_S, velocity


# -- apparent places by the program aa, which fits DE404 within 0.1" to 1"
def places_aa(requests):
    """Apparent geocentric (RA, Dec) in degrees of (planet number, TT) pairs."""
    answers = "".join("%d\n%d\n%d\n%d\n%d\n%.3f\n1\n1\n%d\n" % (
        tt.year, tt.month, tt.day, tt.hour, tt.minute, tt.second + tt.microsecond / 1e6, number)
        for number, tt in requests)
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, "aa.ini"), "w") as f:
            f.write("0.0\n0.0\n0.0\n12.0\n1010.0\n1\n0.0\n")          # the 1: times are TT
        text = subprocess.run(["aa"], input=answers + "-1\n" * 9, cwd=folder, capture_output=True, text=True).stdout
    found = re.findall(r"Apparent: +R\.A\. +(\d+)h +(\d+)m +([\d.]+)s +Dec\. +(-?) *(\d+)d +(\d+)' +([\d.]+)\"", text)
    assert len(found) == len(requests), (len(found), len(requests))
    return [(15 * (int(h) + int(m) / 60 + float(s) / 3600),
             (-1 if sign else 1) * (int(d) + int(dm) / 60 + float(ds) / 3600)) for h, m, s, sign, d, dm, ds in found]


def aspect(body, when, site, vectors):
    jd, ut, tt = julian(when)
    topo, spin_velocity, zenith = observer(site, jd, ut, tt)
    line, sun, to_sun, tau, velocity = vectors(body, jd, tt, topo)
    beta = (velocity + spin_velocity) / C_KM_S
    los = unit(line)

    def aberrated(v):
        return erfa.ab(v, beta, 1.0, math.sqrt(1 - float(beta @ beta)))

    apparent = aberrated(los)
    npb = erfa.pnm06a(jd, tt)
    ra, de = (x / DEG for x in erfa.c2s(npb @ apparent))
    pole = npb[2]
    east = unit(np.cross(pole, los))
    north = np.cross(los, east)

    d = jd - 2451545.0 + tt - tau / 86400
    pole_ra, pole_de, w = elements(body, d)
    spin = np.array([cos(pole_de) * cos(pole_ra), cos(pole_de) * sin(pole_ra), sin(pole_de)])
    node = np.array([-sin(pole_ra), cos(pole_ra), 0.0])
    third = np.cross(spin, node)
    a, b = RADII[body]

    def place(v):
        """East longitude from the node, centric and graphic latitude."""
        x, y, z = v @ node, v @ third, v @ spin
        return math.atan2(y, x) / DEG, math.asin(z) / DEG, math.atan2(z, (b / a) ** 2 * math.hypot(x, y)) / DEG

    def longitude(v, meridian):
        east_longitude = place(v)[0] - meridian
        return (east_longitude if body in EASTWARD else -east_longitude) % 360

    u_obs, u_sun = -los, unit(to_sun)
    row = dict(body=body, utc=when.strftime("%Y-%m-%dT%H:%M:%SZ"))
    row.update(dict(zip(("latitudeDeg", "longitudeDeg", "heightM"), site or ("", "", ""))))
    row.update(raDeg=ra % 360, decDeg=de, distanceAu=np.linalg.norm(line) / AU_KM,
               sunDistanceAu=np.linalg.norm(to_sun) / AU_KM, lightTimeS=tau,
               diameterArcsec=2 * math.asin(a / np.linalg.norm(line)) / DEG * 3600,
               elongationDeg=angle(apparent, aberrated(unit(sun))), phaseDeg=angle(u_obs, u_sun),
               cmI="", cmII="", cmIII="", cmSingle="")
    for system, meridian in w.items():
        row["cm" + ("Single" if system == "single" else system)] = longitude(u_obs, meridian)
    row.update(subEarthDeg=place(u_obs)[2], subEarthCentricDeg=place(u_obs)[1], subSolarDeg=place(u_sun)[2],
               subSolarLongitudeDeg=longitude(u_sun, w.get("III", w.get("single"))),
               poleAngleDeg=math.atan2(spin @ east, spin @ north) / DEG,
               sunAngleDeg=math.atan2(u_sun @ east, u_sun @ north) / DEG,
               altitudeDeg="", azimuthDeg="", parallacticDeg="")
    if zenith is not None:
        horizon_north = unit(pole - (pole @ zenith) * zenith)
        horizon_east = np.cross(horizon_north, zenith)
        row.update(altitudeDeg=math.asin(float(apparent @ zenith)) / DEG,
                   azimuthDeg=math.atan2(apparent @ horizon_east, apparent @ horizon_north) / DEG % 360,
                   parallacticDeg=math.atan2(zenith @ east, zenith @ north) / DEG)
    return row


def write(name, rows):
    with open(os.path.join(HERE, name), "w", newline="") as f:
        out = csv.DictWriter(f, rows[0].keys(), lineterminator="\n")
        out.writeheader()
        for row in rows:
            out.writerow({k: "%.7f" % v if isinstance(v, float) else v for k, v in row.items()})


def instants(years, count, rng):
    for i in range(count):
        year = years[i * len(years) // count]
        yield dt.datetime(year, 1, 1) + dt.timedelta(seconds=rng.randrange(364 * 86400))


NUMBERS = dict(mercury=1, venus=2, mars=4, jupiter=5, saturn=6, uranus=7, neptune=8)
GEOMETRY = ("body", "utc", "latitudeDeg", "longitudeDeg", "heightM", "cmI", "cmII", "cmIII", "cmSingle", "subEarthDeg",
            "subEarthCentricDeg", "poleAngleDeg", "altitudeDeg", "azimuthDeg", "parallacticDeg")


def main():
    de405.check()
    rng = random.Random(1988)
    write("rows-de405.csv", [
        aspect(body, when, SITES[i % len(SITES)], vectors_de405)
        for body in RADII for i, when in enumerate(instants(range(1960, 2060), 28, rng))])

    rows = [aspect(body, when, SITES[i % len(SITES)], vectors_libastro)
            for body in RADII for i, when in enumerate(instants([*range(1950, 1960), *range(2060, 2101)], 14, rng))]
    write("rows-libastro.csv", [{k: row[k] for k in GEOMETRY} for row in rows])

    asked = [(body, when) for body in RADII for when in instants(range(1950, 2101), 21, rng)]
    terrestrial = []
    for _, when in asked:
        jd, ut, tt = julian(when)
        terrestrial.append(when + dt.timedelta(days=tt - ut))
    places = places_aa([(NUMBERS[body], tt) for (body, _), tt in zip(asked, terrestrial)])
    write("rows-aa.csv", [dict(body=body, utc=when.strftime("%Y-%m-%dT%H:%M:%SZ"), raDeg=ra, decDeg=de)
                          for (body, when), (ra, de) in zip(asked, places)])


if __name__ == "__main__":
    main()
