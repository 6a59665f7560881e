// Writes galilean-moons.txt of src/main/resources/org/epochrome/ephemeris: the series L1.2 of Jupiter's moons in plain rows.
// Usage: npm install astronomy-engine@2.1.19 && node extract.mjs OUTFILE      (not part of the build)
import fs from 'node:fs';

const source = fs.readFileSync('node_modules/astronomy-engine/astronomy.js', 'utf8');
const from = source.indexOf('const JupiterMoonModel = ');
const model = new Function(`return ${source.slice(source.indexOf('[', from), source.indexOf('];', from) + 1)}`)();

const head = `# The moons of Jupiter by the series L1.2 (Lainey, Duriez & Vienne 2006, Astron. Astrophys. 456, 783), the larger terms. Sections:
# an element, the moon and the number of terms. A term: amplitude, phase (radians), frequency (radians a day since 1950 January 1, 0 h
# TT). "axis" au, cosines; "longitude" radians, sines, after a first term of constant and rate; "eccentricity" and "inclination" complex,
# cosines and sines.
`;
const lines = [];
model.forEach((moon, i) => {
  const sections = { axis: moon.a, longitude: [[...moon.al, 0], ...moon.l], eccentricity: moon.z, inclination: moon.zeta };
  for (const [name, terms] of Object.entries(sections)) {
    lines.push(`${name} ${i + 1} ${terms.length}`, ...terms.map(term => term.join(' ')));
  }
});
fs.writeFileSync(process.argv[2], head + lines.join('\n') + '\n');
