// Draws the page's own icon, web/icon.svg, as the PNG files that phones ask for. It knows as much of
// SVG as that drawing uses: rectangles with round corners, circles, paths of M, L, H, V, h, v, a and z in
// plain colours, a line with round ends. The same drawing gives the same bytes.
import { deflateSync } from 'node:zlib';

const across = 8;   // samples of a pixel's height
const shades = 8;   // of an edge: few enough for a list of colours

const colour = (text) => [1, 3, 5].map((at) => Number.parseInt(text.slice(at, at + 2), 16));

// Points of an arc of a circle, as SVG's `a r r 0 large sweep dx dy` has it, without its first one.
function arc([x0, y0], r, large, sweep, [x1, y1]) {
  const [dx, dy] = [(x1 - x0) / 2, (y1 - y0) / 2];
  const half = Math.hypot(dx, dy);
  const rest = Math.sqrt(Math.max(0, r * r - half * half)) / half * (large === sweep ? -1 : 1);
  const [cx, cy] = [x0 + dx - dy * rest, y0 + dy + dx * rest];
  const from = Math.atan2(y0 - cy, x0 - cx);
  let turn = Math.atan2(y1 - cy, x1 - cx) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  const steps = 64;
  return Array.from({ length: steps }, (none, i) => {
    const angle = from + turn * (i + 1) / steps;
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });
}

function pathPoints(text) {
  const points = [];
  let command = '';
  const parts = text.match(/[MLHVahvz]|-?\d*\.?\d+/g);
  const number = () => Number(parts.shift());
  let at = [0, 0];
  while (parts.length > 0) {
    if (/[A-Za-z]/.test(parts[0])) command = parts.shift();
    if (command === 'z') continue;
    if (command === 'H') at = [number(), at[1]];
    else if (command === 'V') at = [at[0], number()];
    else if (command === 'h') at = [at[0] + number(), at[1]];
    else if (command === 'v') at = [at[0], at[1] + number()];
    else if (command === 'M' || command === 'L') at = [number(), number()];
    else {
      const [r, , , large, sweep, dx, dy] = Array.from({ length: 7 }, number);
      const end = [at[0] + dx, at[1] + dy];
      points.push(...arc(at, r, large, sweep, end));
      at = end;
      continue;
    }
    points.push(at);
  }
  return points;
}

const circle = (x, y, r) => [[x + r, y], ...arc([x + r, y], r, 0, 1, [x - r, y]), ...arc([x - r, y], r, 0, 1, [x + r, y])];

function roundedBox(x, y, w, h, r) {
  const corner = (from, to) => [from, ...(r > 0 ? arc(from, r, 0, 1, to) : [])];
  return [...corner([x, y + r], [x + r, y]), ...corner([x + w - r, y], [x + w, y + r]),
    ...corner([x + w, y + h - r], [x + w - r, y + h]), ...corner([x + r, y + h], [x, y + h - r])];
}

// Outlines with their colours, from the back.
function shapes(svg) {
  return [...svg.matchAll(/<(rect|circle|path)\s([^>]*?)\/?>/g)].flatMap(([, tag, rest]) => {
    const given = Object.fromEntries([...rest.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]));
    const size = (name) => Number(given[name] || 0);
    if (tag === 'rect') return [{ fill: colour(given.fill), points: roundedBox(size('x'), size('y'), size('width'), size('height'), size('rx')) }];
    if (tag === 'circle') return [{ fill: colour(given.fill), points: circle(size('cx'), size('cy'), size('r')) }];
    const points = pathPoints(given.d);
    if (given.fill && !given.stroke) return [{ fill: colour(given.fill), points }];
    const r = size('stroke-width') / 2;
    const fill = colour(given.stroke);
    return points.slice(1).flatMap(([x1, y1], i) => {
      const [x0, y0] = points[i];
      const [nx, ny] = [(y0 - y1) / Math.hypot(x1 - x0, y1 - y0) * r, (x1 - x0) / Math.hypot(x1 - x0, y1 - y0) * r];
      return [{ fill, points: [[x0 + nx, y0 + ny], [x1 + nx, y1 + ny], [x1 - nx, y1 - ny], [x0 - nx, y0 - ny]] },
        { fill, points: circle(x0, y0, r) }, { fill, points: circle(x1, y1, r) }];
    });
  });
}

// How much of each pixel lies inside the outline: exact along a row, samples across it.
function cover(points, size, add) {
  const low = Math.max(0, Math.floor(Math.min(...points.map(([, y]) => y))));
  const high = Math.min(size, Math.ceil(Math.max(...points.map(([, y]) => y))));
  for (let y = low; y < high; ++y) {
    const row = new Float64Array(size);
    for (let s = 0; s < across; ++s) {
      const level = y + (s + 0.5) / across;
      const cuts = [];
      points.forEach(([x0, y0], i) => {
        const [x1, y1] = points[(i + 1) % points.length];
        if ((y0 <= level) !== (y1 <= level)) cuts.push(x0 + (level - y0) / (y1 - y0) * (x1 - x0));
      });
      cuts.sort((a, b) => a - b);
      for (let i = 0; i + 1 < cuts.length; i += 2) {
        for (let x = Math.max(0, Math.floor(cuts[i])); x < Math.min(size, cuts[i + 1]); ++x) {
          row[x] += Math.max(0, Math.min(x + 1, cuts[i + 1]) - Math.max(x, cuts[i])) / across;
        }
      }
    }
    row.forEach((share, x) => { if (share > 0) add(x, y, share); });
  }
}

const table = Array.from({ length: 256 }, (none, n) => {
  let c = n;
  for (let i = 0; i < 8; ++i) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});
function chunk(type, body) {
  const data = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  let crc = 0xffffffff;
  for (const byte of data) crc = table[(crc ^ byte) & 255] ^ (crc >>> 8);
  const out = Buffer.alloc(body.length + 12);
  out.writeUInt32BE(body.length, 0);
  data.copy(out, 4);
  out.writeUInt32BE((crc ^ 0xffffffff) >>> 0, body.length + 8);
  return out;
}

// The first shape is the back: it fills the square, and the rest keeps clear of what a phone may cut
// away. Source of that room: a circle of 80 % (W3C, Web Application Manifest, maskable icons; from
// memory).
export function drawIcon(svg, size) {
  const [, side] = /viewBox="0 0 (\d+)/.exec(svg);
  const shrink = 0.74;
  const scale = (size / Number(side)) * shrink;
  const shift = size * (1 - shrink) / 2;
  const pixels = new Float64Array(size * size * 3);
  shapes(svg).forEach(({ fill, points }, index) => {
    const placed = index === 0 ? [[0, 0], [size, 0], [size, size], [0, size]]
      : points.map(([x, y]) => [x * scale + shift, y * scale + shift]);
    cover(placed, size, (x, y, exact) => {
      const share = Math.round(exact * shades) / shades;
      const at = (y * size + x) * 3;
      for (let i = 0; i < 3; ++i) pixels[at + i] = pixels[at + i] * (1 - share) + fill[i] * share;
    });
  });
  // Each pixel as its place in a list of colours.
  const list = new Map();
  const rows = Buffer.alloc(size * (size + 1));  // a row begins with 0: written as it is
  for (let y = 0; y < size; ++y) {
    for (let x = 0; x < size; ++x) {
      const at = (y * size + x) * 3;
      const one = [0, 1, 2].map((i) => Math.round(pixels[at + i]));
      const key = one.join();
      if (!list.has(key)) list.set(key, { place: list.size, one });
      rows[y * (size + 1) + 1 + x] = list.get(key).place;
    }
  }
  if (list.size > 256) throw new Error(`the icon has ${list.size} colours, and a list holds 256`);
  const all = [...list.values()].map(({ one }) => one);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 3, 0, 0, 0], 8);  // 8 bits, a list of colours
  return Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk('IHDR', head),
    chunk('PLTE', Buffer.from(all.flat())), chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0))]);
}

// What phones ask for: name and size.
export const icons = [['192.png', 192], ['512.png', 512]];
