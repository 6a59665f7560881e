// Writes moon-events.csv: when Jupiter's moons and their shadows pass its outline, from the positions of the npm package
// astronomy-engine. The rest is plain geometry of rays and a spheroid. See README.md.
// Usage: npm install astronomy-engine@2.1.19 && node moon-events.mjs
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';

const A = createRequire(path.join(process.cwd(), 'x.js'))('astronomy-engine');
const here = path.dirname(new URL(import.meta.url).pathname);
// TT - UTC from IERS Bulletin C instead of the package's estimate; no leap second after 2017 is known
const LEAPS = [[1990, 57.184], [1991, 58.184], [1999, 64.184], [2006, 65.184], [2015.5, 68.184], [2017, 69.184]];
A.SetDeltaTFunction(ut => LEAPS.filter(([year]) => year <= 2000 + ut / 365.25).pop()[1]);
const MOONS = ['io', 'europa', 'ganymede', 'callisto'];
const WINDOWS = ['1990-11-12', '2004-03-01', '2015-12-20', '2022-09-20', '2025-12-26', '2027-03-03', '2034-09-12', '2029-06-10'];
const DAYS = 6;
const STEP = 2 / 1440;
const EQUATOR_KM = 71492;
const FLAT = 71492 / 66854;
const KM = A.KM_PER_AU;
const LIGHT_KM_PER_DAY = 299792.458 * 86400;

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const plus = (a, f, b) => a.map((x, i) => x + f * b[i]);
const length = a => Math.sqrt(dot(a, a));
const km = v => [v.x * KM, v.y * KM, v.z * KM];
const rad = Math.PI / 180;
// IAU WGCCRE 2015, J2000
const AXIS = [Math.cos(64.496 * rad) * Math.cos(268.057 * rad), Math.cos(64.496 * rad) * Math.sin(268.057 * rad), Math.sin(64.496 * rad)];
const stretched = v => plus(v, (FLAT - 1) * dot(v, AXIS), AXIS);

// how far inside the outline a ray passes, in radii
function inside(origin, through) {
  const o = stretched(origin);
  const d = stretched(plus(through, -1, origin));
  return 1 - length(plus(o, -dot(o, d) / dot(d, d), d)) / EQUATOR_KM;
}

function firstHit(origin, through) {
  const way = plus(through, -1, origin);
  const [o, d] = [stretched(origin), stretched(way)];
  const root = dot(o, d) ** 2 - dot(d, d) * (dot(o, o) - EQUATOR_KM ** 2);
  return root < 0 ? null : plus(origin, -(dot(o, d) + Math.sqrt(root)) / dot(d, d), way);
}

// how far a moon is into each event at an instant (UT days since J2000); negative outside
function phases(moon, ut) {
  const time = new A.AstroTime(ut);
  const jupiter = km(A.GeoVector(A.Body.Jupiter, time, false));
  const earth = jupiter.map(x => -x);
  const sun = plus(earth, 1, km(A.GeoVector(A.Body.Sun, time, false)));
  const away = jupiter.map(x => x / length(jupiter));
  const left = time.tt - length(jupiter) / LIGHT_KM_PER_DAY;
  const at = later => km(A.JupiterMoons(A.AstroTime.FromTerrestrialTime(left + later))[moon]);
  const nearer = -dot(at(0), away);
  const seen = at(nearer / LIGHT_KM_PER_DAY);
  const front = -dot(seen, away);
  const sunward = sun.map(x => x / length(sun));
  const height = dot(seen, sunward);
  let shadow = -1;
  if (height > 0) {
    const caster = at(-height / LIGHT_KM_PER_DAY);
    const place = firstHit(sun, caster);
    shadow = inside(sun, caster);
    if (place) {
      const normal = plus(place, (FLAT ** 2 - 1) * dot(place, AXIS), AXIS);
      shadow = Math.min(shadow, -dot(normal, away) / length(normal));
    }
  }
  const outline = inside(earth, seen);
  return { transit: front > 0 ? outline : -1, shadow, occultation: front < 0 ? outline : -1,
    eclipse: height < 0 ? inside(sun, seen) : -1 };
}

function refine(moon, event, from, to, begins) {
  let [low, high] = [from, to];
  while (high - low > 0.2 / 86400) {
    const middle = (low + high) / 2;
    if ((phases(moon, middle)[event] >= 0) === begins) {
      high = middle;
    } else {
      low = middle;
    }
  }
  return (low + high) / 2;
}

const rows = [];
for (const window of WINDOWS) {
  const start = new A.AstroTime(new Date(`${window}T00:00:00Z`)).ut;
  for (const moon of MOONS) {
    let before = null;
    for (let k = 0; k * STEP < DAYS; k++) {
      const now = phases(moon, start + k * STEP);
      for (const event of before ? Object.keys(now) : []) {
        const begins = now[event] >= 0;
        if (begins !== before[event] >= 0) {
          const ut = refine(moon, event, start + (k - 1) * STEP, start + k * STEP, begins);
          const utc = new Date(Math.round(new A.AstroTime(ut).date / 1000) * 1000).toISOString().slice(0, 19);
          rows.push(`${utc}Z,${moon[0].toUpperCase() + moon.slice(1)},${event} ${begins ? 'begins' : 'ends'}`);
        }
      }
      before = now;
    }
  }
}
fs.writeFileSync(path.join(here, 'moon-events.csv'), `utc,moon,event\n${rows.sort().join('\n')}\n`);
