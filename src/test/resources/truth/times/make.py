#!/usr/bin/python3
"""Writes rows.csv: FITS time keywords and the UTC start and end they mean, by astropy.time; and tai-utc.csv by ERFA.
See README.md."""
import csv
import random

import erfa
from astropy.time import Time, TimeDelta

random.seed(20310502)
rows = []


def utc(time):
    t = time.utc
    t.precision = 9
    return t.isot + "Z"


def row(cards, start, end):
    rows.append(["|".join(f"{k}={v}" for k, v in cards), utc(start), utc(end)])


def seconds(s):
    return TimeDelta(s, format="sec")


def leaps(time):
    """TAI - UTC, seconds."""
    utc = time.utc
    when = utc.ymdhms
    return erfa.dat(when["year"], when["month"], when["day"], 0.0)


def iso(time, precision=3):
    t = time.copy()
    t.precision = precision
    return t.isot


# Days before, at and after leap seconds, and ordinary ones; no instant within a leap second itself.
moments = ["1999-01-01T00:00:20.5", "2005-12-31T23:59:59.25", "2006-01-01T00:00:00.75", "2012-06-30T23:59:40",
           "2012-07-01T00:00:34.5", "2015-07-01T00:00:10", "2016-12-31T23:59:58.125", "2017-01-01T00:00:01",
           "2024-12-18T19:24:30.5", "2031-05-02T21:14:05"]
for text in moments:
    for scale in ["utc", "tt", "tai"]:
        start = Time(text, scale="utc")
        length = random.choice([30.0, 60.0, 123.5])
        end = start + seconds(length)
        shown = {s: getattr(t, scale) for s, t in [("BEG", start), ("END", end)]}
        system = [] if scale == "utc" else [("TIMESYS", scale.upper())]
        row([*system, ("DATE-BEG", iso(shown["BEG"])), ("DATE-END", iso(shown["END"]))],
            Time(iso(shown["BEG"]), scale=scale), Time(iso(shown["END"]), scale=scale))
        # Left out: lengths across a leap second, and UTC days of 86401 s as MJD, which has no agreed meaning.
        day_ends = Time(start.isot[:10] + "T00:00:00", scale="utc") + TimeDelta(1.5, format="jd")
        if leaps(start) != leaps(end) or (scale == "utc" and leaps(start) != leaps(day_ends)):
            continue
        # Modified Julian dates with ten decimals, read as exact decimals.
        mjd = {s: f"{t.to_value('mjd', 'decimal'):.10f}" for s, t in shown.items()}
        row([*system, ("MJD-BEG", mjd["BEG"]), ("XPOSURE", length)], Time(mjd["BEG"], format="mjd", scale=scale),
            Time(mjd["BEG"], format="mjd", scale=scale) + seconds(length))
        row([*system, ("MJD-OBS", mjd["BEG"]), ("MJD-END", mjd["END"])], Time(mjd["BEG"], format="mjd", scale=scale),
            Time(mjd["END"], format="mjd", scale=scale))
        middle = getattr(start + seconds(length / 2), scale)
        row([*system, ("DATE-AVG", iso(middle, 6)), ("TELAPSE", length)],
            Time(iso(middle, 6), scale=scale) - seconds(length / 2),
            Time(iso(middle, 6), scale=scale) + seconds(length / 2))
with open("rows.csv", "w", newline="") as f:
    writer = csv.writer(f, lineterminator="\n")
    writer.writerow(["cards", "start", "end"])
    writer.writerows(rows)
with open("tai-utc.csv", "w", newline="") as f:
    writer = csv.writer(f, lineterminator="\n")
    writer.writerow(["from", "taiMinusUtcSeconds"])
    for entry in erfa.leap_seconds.get():
        if entry["year"] >= 1972:
            writer.writerow([f"{entry['year']}-{entry['month']:02d}-01T00:00:00Z", int(entry["tai_utc"])])
