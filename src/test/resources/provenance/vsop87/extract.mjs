// Writes the truncated VSOP87B series of src/main/resources/org/epochrome/ephemeris.
// Usage: npm install astronomia@4.2.0 && node extract.mjs OUTDIR      (not part of the build)
import fs from 'node:fs';
import path from 'node:path';

const out = process.argv[2];

// semi-major axis in au: radius terms are cut relative to it; cut in radians
const PLANETS = {
  mercury: [0.387, 5e-8], venus: [0.723, 5e-8], earth: [1.0, 5e-8], mars: [1.524, 5e-8],
  jupiter: [5.203, 1e-7], saturn: [9.555, 1e-7], uranus: [19.218, 1e-7], neptune: [30.11, 1e-7],
};

// VSOP87 was fitted to DE200, whose Uranus and Neptune run up to 1.7" and 3.1" off DE405 in 1960-2060. These terms, the
// least-squares difference DE405 - VSOP87 as found by fit-de405.py, correct the mean longitude, mean motion,
// eccentricity and inclination; n is the mean motion in radians a millennium.
const N = { uranus: 74.7815985673, neptune: 38.1330356378 };
const CORRECTIONS = {
  uranus: {
    L: [[[0.00000163390, 0, 0], [0.00000364089, 4.042623, N.uranus]], [[0.00005512587, 0, 0]]],
    B: [[[0.00000001182, 0, 0], [0.00000017226, 4.434072, N.uranus]]],
    R: [[[-0.00000850074, 0, 0], [0.00003734220, 2.327809, N.uranus]]],
  },
  neptune: {
    L: [[[-0.00000622778, 0, 0], [0.00000313023, 0.158714, N.neptune]], [[-0.00011149578, 0, 0]]],
    B: [[[-0.00000004058, 0, 0], [0.00000024464, 0.813724, N.neptune]]],
    R: [[[0.00005314124, 0, 0], [0.00004506253, 4.894940, N.neptune]]],
  },
};

const number = (x, digits) => x.toFixed(digits).replace(/\.?0+$/, '');

for (const [name, [axisAu, cut]] of Object.entries(PLANETS)) {
  const module = await import(`astronomia/data/vsop87B${name}`);
  const series = module.default?.default ?? module.default;
  const lines = [
    `# VSOP87B (Bretagnon & Francou 1988), ${name}: heliocentric ecliptic longitude L, latitude B (rad), radius R (au),`,
    '# dynamical ecliptic and equinox J2000. A section "L 1 n" holds n terms of T^1, T in Julian millennia of TDB from J2000;',
    `# each term is A, B, C of A cos(B + C T). Terms below ${cut} (times T = 0.1 per power) are left out; see README.md.`,
  ];
  for (const coordinate of ['L', 'B', 'R']) {
    const scale = coordinate === 'R' ? axisAu : 1;
    for (const [power, all] of Object.entries(series[coordinate])) {
      const kept = all.filter(([a]) => Math.abs(a) * 0.1 ** power / scale >= cut);
      kept.push(...(CORRECTIONS[name]?.[coordinate]?.[power] ?? []));
      if (kept.length === 0) continue;
      lines.push(`${coordinate} ${power} ${kept.length}`);
      kept.forEach(([a, b, c]) => lines.push(`${number(a, 11)} ${number(b, 8)} ${number(c, 10)}`));
    }
  }
  fs.writeFileSync(path.join(out, `vsop87b-${name}.txt`), lines.join('\n') + '\n');
  console.log(name, lines.length - 3);
}
