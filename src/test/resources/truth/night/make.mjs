// Writes nights-engine.csv: the nights of nights-libastro.csv by the npm package astronomy-engine, with the same conventions.
// Usage: npm install astronomy-engine@2.1.19 && node make.mjs
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';

const A = createRequire(path.join(process.cwd(), 'x.js'))('astronomy-engine');
const here = path.dirname(new URL(import.meta.url).pathname);
const [header, ...lines] = fs.readFileSync(path.join(here, 'nights-libastro.csv'), 'utf8').trim().split('\n');
const HALF_A_DAY = 0.5;

const nearest = (a, b, t) => (Math.abs(a.ut - t.ut) < Math.abs(b.ut - t.ut) ? a : b);
const hourAngle = (body, at, hours, from, direction) => A.SearchHourAngle(body, at, hours, from, direction).time;
const text = t => (t ? `${new Date(Math.round(t.date / 1000) * 1000).toISOString().slice(0, 19)}Z` : '');

// the last ascent or the first descent in an interval of monotonous altitude
function crossing(body, at, direction, from, to, altitude) {
  return A.SearchAltitude(body, at, direction, from, to.ut - from.ut, altitude);
}

function limb(body, at, direction, from, to) {
  return A.SearchRiseSet(body, at, direction, from, to.ut - from.ut);
}

function pass(body, at, midnight) {
  const culmination = nearest(hourAngle(body, at, 0, midnight, -1), hourAngle(body, at, 0, midnight, 1), midnight);
  const before = hourAngle(body, at, 12, culmination, -1);
  const after = hourAngle(body, at, 12, culmination, 1);
  const place = A.Equator(body, culmination, at, true, true);
  const { altitude } = A.Horizon(culmination, at, place.ra, place.dec);
  return [text(limb(body, at, 1, before, culmination)), text(culmination), altitude.toFixed(4),
    text(limb(body, at, -1, culmination, after))];
}

function row(line) {
  const [planet, latitude, longitude, offset, date] = line.split(',');
  const at = new A.Observer(Number(latitude), Number(longitude), 0);
  const body = A.Body[planet[0].toUpperCase() + planet.slice(1)];
  const clock = new A.AstroTime(new Date(Date.parse(`${date}T00:00:00Z`) + (24 - Number(offset)) * 3600e3));
  const midnight = nearest(hourAngle(A.Body.Sun, at, 12, clock, -1), hourAngle(A.Body.Sun, at, 12, clock, 1), clock);
  const moon = pass(A.Body.Moon, at, midnight);
  moon.splice(2, 1);
  const heights = [-50 / 60, -6, -12, -18];
  const dusks = heights.map(h => text(crossing(A.Body.Sun, at, -1, midnight.AddDays(-HALF_A_DAY), midnight, h)));
  const dawns = heights.reverse().map(h => text(crossing(A.Body.Sun, at, 1, midnight, midnight.AddDays(HALF_A_DAY), h)));
  return [planet, latitude, longitude, offset, date, ...pass(body, at, midnight), ...moon, ...dusks, ...dawns].join(',');
}

fs.writeFileSync(path.join(here, 'nights-engine.csv'), [header, ...lines.map(row)].join('\n') + '\n');
