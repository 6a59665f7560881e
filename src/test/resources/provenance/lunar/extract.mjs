// Writes moon.txt of src/main/resources/org/epochrome/ephemeris: the series of Meeus 1998, tables 47.A and 47.B, in plain rows.
// Usage: npm install astronomia@4.2.0 && node extract.mjs OUTFILE      (not part of the build)
import fs from 'node:fs';

const source = fs.readFileSync('node_modules/astronomia/src/moonposition.js', 'utf8');

function rows(name) {
  const from = source.indexOf(`const ${name} = (function`);
  const table = source.slice(from, source.indexOf('return', from));
  return [...table.matchAll(/\[(-?\d+(?:, -?\d+)+)\]/g)].map(([, row]) => row.replaceAll(',', ''));
}

const head = `# The Moon: periodic terms of Meeus 1998, Astronomical Algorithms, 2nd ed., tables 47.A and 47.B, after the lunar theory
# ELP-2000/82 (Chapront-Touze & Chapront 1983, Astron. Astrophys. 124, 50). Sections: a name and the number of terms. A term:
# multiples of D, M, M', F, then in "longitude" the amplitudes of longitude (sine, 1e-6 degrees) and distance (cosine, m), in
# "latitude" that of latitude (sine, 1e-6 degrees).
`;
const sections = [['longitude', rows('ta')], ['latitude', rows('tb')]];
const lines = sections.flatMap(([name, terms]) => [`${name} ${terms.length}`, ...terms]);
fs.writeFileSync(process.argv[2], head + lines.join('\n') + '\n');
