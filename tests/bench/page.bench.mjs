// Weighs and times the real page against an empty one of the same make, on a slow phone's profile,
// counts the frames it draws when nobody touches it, and follows a finger and the page's own jumps.
// Runs are interleaved, so that a busy machine slows both alike; medians are shown.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { launchChromium, requireWebGl2, root } from '../web/support/browser.mjs';
import { compressedBody, serve } from '../../scripts/lib/server.mjs';

const rounds = 5;
const limits = { bytes: 1.9, all: 2.4, time: 1.5, frames: 0, paint: 1000, input: 100, shift: 0.1 };

// The usual mobile profile: 150 ms and 1.6 Mbit/s as a browser's own throttle must be told them.
const network = { offline: false, latency: 562.5, downloadThroughput: 1.5e6 / 8, uploadThroughput: 0.75e6 / 8 };
const cpuSlowdown = 4;
const phone = { viewport: { width: 412, height: 823 }, deviceScaleFactor: 1.75, isMobile: true, hasTouch: true };

const ready = () => performance.getEntriesByName('hearthsight:ready').length > 0;

// Everything that was asked for before the page was ready, as it came over the wire.
function measured() {
  const at = performance.getEntriesByName('hearthsight:ready')[0].startTime;
  const before = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
    .filter((entry) => entry.startTime < at);
  const paint = performance.getEntriesByName('first-contentful-paint')[0];
  return {
    time: at,
    paint: paint ? paint.startTime : null,
    bytes: before.reduce((sum, entry) => sum + entry.encodedBodySize, 0),
    files: before.map((entry) => [new URL(entry.name).pathname, entry.encodedBodySize]),
  };
}

async function open(browser, url, slow) {
  const context = await browser.newContext(phone);
  const page = await context.newPage();
  if (slow) {
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.setCacheDisabled', { cacheDisabled: true });
    await session.send('Network.emulateNetworkConditions', network);
    await session.send('Emulation.setCPUThrottlingRate', { rate: cpuSlowdown });
  }
  await page.goto(url);
  await page.waitForFunction(ready, null, { timeout: 120000, polling: 100 });
  return { context, page };
}

async function run(browser, url) {
  const { context, page } = await open(browser, url, true);
  const result = await page.evaluate(measured);
  await context.close();
  return result;
}

async function framesAtRest(browser, url) {
  const { context, page } = await open(browser, url, false);
  const frame = () => page.evaluate(() => window.hearthsight.snapshot().frame);
  await page.waitForTimeout(3000);
  const before = await frame();
  await page.waitForTimeout(5000);
  const after = await frame();
  await context.close();
  return after - before;
}

// On the slow phone: how far the page's parts jump while they come and a sheet opens (layout shift as
// browsers score it, what follows a hand left out), and how long after a finger moves on a ruler the
// frame with its value is drawn.
async function inHand(browser, url) {
  const { context, page } = await open(browser, url, true);
  await page.waitForFunction(() => !document.getElementById('panels').hidden, null, { timeout: 120000 });
  await page.evaluate(() => {
    globalThis.shift = 0;
    globalThis.delays = [];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (!entry.hadRecentInput) globalThis.shift += entry.value;
    }).observe({ type: 'layout-shift', buffered: true });
    const waiting = [];
    addEventListener('pointermove', (event) => { waiting.push(event.timeStamp); }, true);
    const program = globalThis.Module;
    const frame = program._hs_frame;
    program._hs_frame = (time) => {
      const more = frame(time);
      globalThis.delays.push(...waiting.splice(0).map((at) => performance.now() - at));
      return more;
    };
  });
  const { items } = await page.evaluate(() => globalThis.hearthsight.snapshot());
  const [x, y, w, h] = items.find(({ id }) => id === 'field:view.standoff_mm').rect;
  const session = await context.newCDPSession(page);
  const touch = (type, at) => session.send('Input.dispatchTouchEvent', { type, touchPoints: at === null ? [] : [{ x: x + at, y: y + h / 2 }] });
  await touch('touchStart', w * 0.3);
  for (let i = 0; i <= 40; i += 1) {
    await touch('touchMove', w * (0.3 + 0.4 * i / 40));
    await page.waitForTimeout(30);
  }
  await touch('touchEnd', null);
  await page.locator('#bar [data-sheet="why"]').tap();
  await page.waitForTimeout(1500);
  const result = await page.evaluate(() => ({ shift: globalThis.shift, delays: globalThis.delays }));
  await context.close();
  return result;
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const kilobytes = (bytes) => `${(bytes / 1024).toFixed(1)} KB`;
const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const verdict = (value, limit) => (value <= limit ? 'met' : 'MISSED');

// Every file of a page as brotli, what is only fetched on request included.
async function allFiles(folder) {
  const files = readdirSync(folder, { withFileTypes: true }).map((entry) => ({ entry, name: path.join(folder, entry.name) }));
  const sizes = await Promise.all(files.map(({ entry, name }) =>
    (entry.isDirectory() ? allFiles(name) : compressedBody(name, 'br').then(({ length }) => length))));
  return sizes.reduce((sum, size) => sum + size, 0);
}

const pageFolder = process.env.HEARTHSIGHT_PAGE || path.join(root, 'build/web');
const sites = {
  page: await serve(pageFolder),
  empty: await serve(path.join(root, 'build/empty-page')),
};
const browser = await launchChromium();
try {
  await requireWebGl2(browser);
  const results = { page: [], empty: [] };
  // The first answer of the server waits for its brotli; one round each is thrown away.
  for (const name of Object.keys(sites)) await run(browser, sites[name].url);
  for (let round = 0; round < rounds; round += 1) {
    for (const name of Object.keys(sites)) results[name].push(await run(browser, sites[name].url));
  }
  const of = (name, key) => median(results[name].map((result) => result[key]));
  console.log(`slow phone: ${network.latency} ms a request, 1.5 Mbit/s, processor ${cpuSlowdown}x slower; medians of ${rounds}`);
  for (const [file, size] of results.page[0].files) console.log(`  ${kilobytes(size).padStart(9)}  ${file}`);
  const bytes = of('page', 'bytes') / of('empty', 'bytes');
  const time = of('page', 'time') / of('empty', 'time');
  const range = (name) => results[name].map((result) => seconds(result.time)).join(' ');
  console.log(`bytes before ready  page ${kilobytes(of('page', 'bytes'))}, empty page ${kilobytes(of('empty', 'bytes'))}: ` +
    `${bytes.toFixed(2)} times (at most ${limits.bytes}: ${verdict(bytes, limits.bytes)})`);
  const all = await allFiles(pageFolder);
  const allTimes = all / of('empty', 'bytes');
  console.log(`all files           page ${kilobytes(all)}: ${allTimes.toFixed(2)} times the empty page ` +
    `(at most ${limits.all}: ${verdict(allTimes, limits.all)})`);
  console.log(`time to ready       page ${seconds(of('page', 'time'))}, empty page ${seconds(of('empty', 'time'))}: ` +
    `${time.toFixed(2)} times (at most ${limits.time}: ${verdict(time, limits.time)})`);
  console.log(`                    page ${range('page')}; empty page ${range('empty')}`);
  const paint = of('page', 'paint');
  console.log(`first text          page ${seconds(paint)} (at most ${seconds(limits.paint)}: ${verdict(paint, limits.paint)})`);
  const { shift, delays } = await inHand(browser, sites.page.url);
  if (delays.length < 10) throw new Error(`only ${delays.length} moves of the finger were drawn`);
  const late = [...delays].sort((a, b) => a - b)[Math.floor(delays.length * 0.9)];
  console.log(`input to frame      ${median(delays).toFixed(0)} ms, nine in ten within ${late.toFixed(0)} ms ` +
    `(at most ${limits.input} ms: ${verdict(late, limits.input)}), ${delays.length} moves of a finger on a ruler`);
  console.log(`layout shift        ${shift.toFixed(3)} (at most ${limits.shift}: ${verdict(shift, limits.shift)})`);
  const frames = await framesAtRest(browser, sites.page.url);
  console.log(`frames in 5 s at rest  ${frames} (${limits.frames}: ${verdict(frames, limits.frames)})`);
  // Bytes, frames and shifts are the same on every machine; a time is judged by whoever reads it.
  if (bytes > limits.bytes || allTimes > limits.all || frames > limits.frames || shift > limits.shift) process.exitCode = 1;
} finally {
  await browser.close();
  await Promise.all(Object.values(sites).map((site) => site.close()));
}
