"""Positions from JPL's DE405 (Standish 1998) as packaged in Debian's casacore-data-jpl-de405: 1959-12-10 to 2060-01-31.

The table holds the Chebyshev blocks of the binary file DE405 without their two leading dates, 32 days a row.
Checked against the initial positions in the table's own keywords (JDEPOC, X5, ...): see check().
"""
import numpy as np
from casacore.tables import table

_TABLE = table("/usr/share/casacore/data/ephemerides/DE405", ack=False)
_BLOCKS, _MJD = _TABLE.getcol("x"), _TABLE.getcol("MJD")
_KEYS = _TABLE.getkeywords()
AU_KM = _KEYS["AU"]
FIRST_JD, LAST_JD = _MJD[0] + 2400000.5, _MJD[-1] + 2400032.5

# place of the first coefficient, coefficients a component, intervals a block: the header record of DE405
_LAYOUT = dict(mercury=(3, 14, 4), venus=(171, 10, 2), emb=(231, 13, 2), mars=(309, 11, 1), jupiter=(342, 8, 1),
               saturn=(366, 7, 1), uranus=(387, 6, 1), neptune=(405, 6, 1), moon=(441, 13, 8), sun=(753, 11, 2))


def _raw(name, jd):
    first, n, intervals = _LAYOUT[name]
    days = jd - 2400000.5 - _MJD[0]
    row = int(days // 32)
    part = (days - 32 * row) / 32 * intervals
    k = int(part)
    start = first - 3 + 3 * n * k
    coefficients = _BLOCKS[row][start:start + 3 * n].reshape(3, n)
    return np.polynomial.chebyshev.chebval(2 * (part - k) - 1, coefficients.T)


def barycentric_km(name, jd):
    """ICRS, km, at a TDB Julian date."""
    if name == "earth":
        return _raw("emb", jd) - _raw("moon", jd) / (1 + _KEYS["EMRAT"])
    return _raw(name, jd)


def check():
    """The initial conditions of the integration, as the keywords give them (au)."""
    for name, key in (("mercury", "1"), ("emb", "B"), ("jupiter", "5"), ("neptune", "8")):
        expected = [_KEYS[c + key] for c in "XYZ"]
        assert np.allclose(barycentric_km(name, _KEYS["JDEPOC"]) / AU_KM, expected, atol=1e-10, rtol=0), name
