// Pictures as the native window writes them (binary PPM), and as PNG to look at.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';

// { width, height, data }: three bytes a pixel, rows from the top.
export function readPpm(file) {
  const bytes = readFileSync(file);
  const head = /^P6\n(\d+) (\d+)\n255\n/.exec(bytes.subarray(0, 40).toString('latin1'));
  assert.ok(head, `${file} is no PPM`);
  const [width, height] = [Number(head[1]), Number(head[2])];
  const data = bytes.subarray(head[0].length);
  assert.equal(data.length, 3 * width * height, `${file} is cut short`);
  return { width, height, data };
}

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; ++k) c = c & 1 ? 0xEDB88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

// PNG's check of a chunk (W3C PNG, annex D).
function crc(bytes) {
  let c = 0xFFFFFFFF;
  for (const byte of bytes) c = crcTable[(c ^ byte) & 0xFF] ^ (c >>> 8);
  return (c ^ 0xFFFFFFFF) >>> 0;
}

function chunk(name, body) {
  const out = Buffer.alloc(body.length + 12);
  out.writeUInt32BE(body.length, 0);
  out.write(name, 4, 'latin1');
  body.copy(out, 8);
  out.writeUInt32BE(crc(out.subarray(4, body.length + 8)), body.length + 8);
  return out;
}

export function writePng(file, { width, height, data }) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2], 8);  // eight bits, red green blue; the rest is zero
  const rows = Buffer.alloc(height * (3 * width + 1));
  for (let y = 0; y < height; ++y) {
    data.copy(rows, y * (3 * width + 1) + 1, y * 3 * width, (y + 1) * 3 * width);
  }
  writeFileSync(file, Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]));
}

export function colours({ data }, keep = () => true) {
  const seen = new Set();
  for (let i = 0; i < data.length; i += 3) {
    if (keep(i / 3)) seen.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2]);
  }
  return seen.size;
}

// The share of pixels that differ by more than a rounding.
export function difference(a, b) {
  assert.deepEqual([a.width, a.height], [b.width, b.height]);
  let count = 0;
  for (let i = 0; i < a.data.length; i += 3) {
    const most = Math.max(Math.abs(a.data[i] - b.data[i]), Math.abs(a.data[i + 1] - b.data[i + 1]),
      Math.abs(a.data[i + 2] - b.data[i + 2]));
    if (most > 8) ++count;
  }
  return count / (a.width * a.height);
}
