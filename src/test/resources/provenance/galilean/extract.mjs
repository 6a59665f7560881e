// Writes galilean-moons.txt of src/main/resources/org/epochrome/ephemeris: the series of Meeus 1998, chapter 44, in plain rows.
// Usage: npm install astronomia@4.2.0 && node extract.mjs OUTFILE      (not part of the build)
import fs from 'node:fs';

const source = fs.readFileSync('node_modules/astronomia/src/jupitermoons.js', 'utf8');
const NAMES = {
  π: 'pi', ω: 'om', ψ: 'psi', 'Gʹ': 'Gs', Π: 'Pi', Φλ: 'Phi', Σ: 'S', L: 'L', l: 'l', G: 'G',
};

// "2 * (l1 - 2 * l2 + ω2)" to {l1: 2, l2: -4, om2: 2}; a plain number, in degrees, goes to 'deg'
function multiples(text) {
  const found = {};
  const t = text.replace(/\s+/g, '').replace(/([\d.]+)\*p(?![a-z])/g, '$1deg');
  const outer = t.match(/^(\d+)\*\((.*)\)$/);
  const factor = outer ? Number(outer[1]) : 1;
  const inner = outer ? outer[2] : t;
  for (const [, sign, number, name] of inner.matchAll(/([+-]?)(?:([\d.]+)\*?)?(deg|[lLπωΣ]\d|Gʹ|Φλ|[ψGΠ])/gu)) {
    const key = name === 'deg' ? 'deg'
      : (NAMES[name] ?? NAMES[name[0]] + (/[LΣ]/.test(name[0]) ? '' : name.slice(1)));
    found[key] = (found[key] ?? 0) + factor * (sign === '-' ? -1 : 1) * (number ? Number(number) : 1);
  }
  return found;
}

function rows(text, form, scale) {
  return [...text.matchAll(form)].map(([, amplitude, argument]) => {
    const parts = Object.entries(multiples(argument)).map(([k, v]) => `${Number(v.toPrecision(8))} ${k}`);
    return `${(Number(amplitude.replace(/\s/g, '')) * scale).toFixed(7).replace(/0+$/, '')} ${parts.join(' ')}`;
  });
}

const argument = String.raw`((?:[^()]|\([^()]*\))*)`;
const lines = [];
const from = source.indexOf('const Σ1');
const longitudes = source.slice(from, source.indexOf('const L1 =', from)).split(/const Σ\d = /).slice(1);
const sines = source.slice(source.indexOf('const B = ['), source.indexOf('R = [')).split('Math.atan(').slice(1);
const radii = source.slice(source.indexOf('R = [')).split(/\* \(1 \+/).slice(1, 5);
for (let moon = 0; moon < 4; moon++) {
  const parts = {
    longitude: rows(longitudes[moon], new RegExp(String.raw`(-?[\d.]+) \* p \* Math\.sin\(${argument}\)`, 'gu'), 1),
    latitude: rows(sines[moon], new RegExp(String.raw`(-?[\d.]+) \* Math\.sin\(${argument}\)`, 'gu'), 1),
    radius: rows(radii[moon].split('const T0')[0], new RegExp(String.raw`(-?[\d.]+) \* Math\.cos\(${argument}\)`, 'gu'), 1),
  };
  for (const [name, terms] of Object.entries(parts)) {
    lines.push(`${name} ${moon + 1} ${terms.length}`, ...terms);
  }
}
const head = `# The moons of Jupiter by theory E2x3 (Lieske 1987, Astron. Astrophys. 176, 146), as tabulated by Meeus 1998,
# Astronomical Algorithms, 2nd ed., chapter 44. Sections: longitude (sine terms, degrees), latitude (sine terms of its tangent),
# radius (cosine terms, parts of the mean one); then moon and number of terms. A term: amplitude, then pairs of a multiple
# and an angle. l1 to l4 mean longitudes, pi perijoves, om nodes, psi node of Jupiter's equator, G and Gs mean anomalies of
# Jupiter and Saturn, Pi Jupiter's perihelion, Phi the libration, L the moon's true longitude, S its longitude's sum, deg one degree.
`;
fs.writeFileSync(process.argv[2], head + lines.join('\n') + '\n');
