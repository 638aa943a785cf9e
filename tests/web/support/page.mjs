// What the tests of one file share: one server and one Chromium, and hands.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { after } from 'node:test';
import { openPage, pageFolder, phone, root, startWorld } from './browser.mjs';

export { keepPicture, phone, root } from './browser.mjs';

// Another build of the page can be tested by naming its folder.
export const world = await startWorld(process.env.HEARTHSIGHT_PAGE || pageFolder);
after(() => world.close());

// Four times the pixels show nothing more, and are drawn without a graphics card.
const fine = process.env.HEARTHSIGHT_GALLERY ? 2 : 1;

export const devices = {
  phone,
  tallPhone: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, isMobile: true, hasTouch: true },
  sidePhone: { viewport: { width: 844, height: 390 }, deviceScaleFactor: 3, isMobile: true, hasTouch: true },
  tablet: { viewport: { width: 768, height: 1024 }, deviceScaleFactor: fine, isMobile: true, hasTouch: true },
  desktop: { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 },
};

// The four main controls of the first screen.
export const mainFields = ['oven.kind', 'station.oven_base_height_mm', 'view.standoff_mm', 'station.prep_depth_mm'];

// Opens the page, runs `body`, and fails when the page logged an error or broke its own policy.
export async function withPage(options, body) {
  const { before, allowed = [], ...rest } = options;
  // Working offline has tests of its own (cases/offline.mjs); the others need no copy of the page.
  const context = rest.context || await world.browser.newContext({ ...(rest.device || phone), serviceWorkers: 'block', ...rest.extra });
  await context.addInitScript(() => {
    globalThis.policyViolations = [];
    addEventListener('securitypolicyviolation', (event) => {
      globalThis.policyViolations.push(`${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  if (before) await context.addInitScript(before);
  const { page, errors } = await openPage(world, { fragment: rest.fragment, context });
  // The document comes a moment after the picture.
  await page.waitForFunction(() => !document.getElementById('panels').hidden);
  try {
    await body(page, context);
    assert.deepEqual(await page.evaluate(() => globalThis.policyViolations), []);
    assert.deepEqual(errors.filter((text) => !allowed.some((pattern) => pattern.test(text))), []);
  } finally {
    if (rest.context) await page.close(); else await context.close();
  }
}

// What the document's half of the program (web/desk) says of this page's present station: asked of
// another page that opens the station's link, so that neither page's state can hide a difference.
export async function fromDesk(page, name) {
  const [link, units] = await page.evaluate(() => {
    const { _hs_link, _hs_units, UTF8ToString } = globalThis.Module;
    return [UTF8ToString(_hs_link()), _hs_units()];
  });
  let answer = null;
  await withPage({ fragment: link }, async (other) => {
    answer = await other.evaluate(([call, inUnits]) => {
      const program = globalThis.Module;
      program._hs_set_units(inUnits);
      return JSON.parse(program.UTF8ToString(program[`_dk_${call}`]()));
    }, [name, units]);
  });
  return answer;
}

export const snapshot = (page) => page.evaluate(() => globalThis.hearthsight.snapshot());
export const configOf = async (page) => (await snapshot(page)).config;
export const fragment = (page) => page.evaluate(() => location.hash.slice(1));

// What the page says in its notice, sooner or later.
export const told = (page, pattern) => page.locator('#notice-text', { hasText: pattern }).waitFor();

// The places that this device keeps stations in, by key, and the links in them.
export const places = (page) => page.evaluate(() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith('hearthsight:station:'))));
export const linksKept = async (page) => Object.values(await places(page)).map((text) => text.split(' ').pop());

// The config leaves out what equals its default; two of them differ in a field or they do not.
export const at = (config, field) => field.split('.').reduce((part, key) => part?.[key], config);
export function without(config, field) {
  const rest = structuredClone(config);
  const [section, key] = field.split('.');
  if (rest[section]) delete rest[section][key];
  if (rest[section] && Object.keys(rest[section]).length === 0) delete rest[section];
  return rest;
}

export async function item(page, id) {
  // Not the whole of it: the report takes a while.
  const items = await page.evaluate(() => globalThis.hearthsight.snapshot().items);
  const found = items.find((one) => one.id === id);
  assert.ok(found, `${id} is not on the screen; there are ${items.map((one) => one.id).join(' ')}`);
  return found;
}

export const middle = ({ rect: [x, y, w, h] }) => [x + w / 2, y + h / 2];

// Waits until the page has drawn what it wanted and the document has followed.
export async function settle(page) {
  // A frame that is asked for comes with the next one that the browser draws, and on a busy machine
  // that may be long: two of the browser's own frames lie between two counts.
  let last = -1;
  for (let i = 0; i < 100; ++i) {
    const frame = await page.evaluate(() => new Promise((done) => {
      requestAnimationFrame(() => requestAnimationFrame(() => done(globalThis.hearthsight.snapshot().frame)));
    }));
    if (frame === last) return;
    last = frame;
    await page.waitForTimeout(120);
  }
  assert.fail('the page never comes to rest');
}

// Real touch events; Playwright's own tap is one of them, but it cannot drag.
export async function drag(page, points) {
  const session = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
  const [first, ...rest] = points.map(([x, y]) => ({ x, y }));
  await send('touchStart', [first]);
  await page.waitForTimeout(60);
  for (const point of rest) {
    await send('touchMove', [point]);
    await page.waitForTimeout(30);
  }
  await page.waitForTimeout(60);
  await send('touchEnd', []);
  await session.detach();
}

export async function tap(page, [x, y]) {
  await drag(page, [[x, y]]);
  await settle(page);
}

// A change is written a moment after it, and a loaded machine takes its time: until what the address
// says is kept. A storage without room is not waited for long, and one that refuses not at all.
export async function keptSoon(page) {
  await page.waitForTimeout(900);
  await page.waitForFunction(() => {
    try {
      return Object.entries(localStorage).some(([key, text]) => (
        key.startsWith('hearthsight:station:') && text.split(' ').pop() === location.hash.slice(1)));
    } catch {
      return true;
    }
  }, null, { timeout: 5000 }).catch(() => {});
}

// Another distance, by a finger; `share` of the slider's length. Kept when this returns.
export async function change(page, share) {
  await settle(page);
  const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
  await drag(page, [0.5, (0.5 + share) / 2, share].map((part) => [x + w * part, y + h / 2]));
  await settle(page);
  await keptSoon(page);
}

// The station's name, typed under Share. Kept when this returns.
export async function titled(page, text) {
  await openSheet(page, 'share');
  const input = page.locator('[data-path="title"] input');
  await input.fill(text);
  await input.press('Enter');
  await settle(page);
  await keptSoon(page);
}

// Two quick taps. Each event says itself when it was, so that a machine with too much to do cannot
// make them slow.
export async function doubleTap(page, [x, y]) {
  const session = await page.context().newCDPSession(page);
  const from = Date.now() / 1000;
  for (const [type, at] of [['touchStart', 0], ['touchEnd', 0.06], ['touchStart', 0.2], ['touchEnd', 0.26]]) {
    const touchPoints = type === 'touchStart' ? [{ x, y }] : [];
    await session.send('Input.dispatchTouchEvent', { type, touchPoints, timestamp: from + at });
    await page.waitForTimeout(30);
  }
  await session.detach();
}

// A sheet by its word in the bar.
export async function openSheet(page, name) {
  const button = page.locator(`#bar [data-sheet="${name}"]`);
  await button.click();
  await page.locator(`#panel-${name}`).waitFor({ state: 'visible' });
}

// How many different colours the canvas shows at 64 by 64 places: a blank one has a single colour.
export async function colours(page) {
  const shot = await page.locator('#canvas').screenshot();
  return page.evaluate(async (bytes) => {
    const bitmap = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
    const copy = new OffscreenCanvas(64, 64).getContext('2d');
    copy.imageSmoothingEnabled = false;
    copy.drawImage(bitmap, 0, 0, 64, 64);
    const { data } = copy.getImageData(0, 0, 64, 64);
    const seen = new Set();
    for (let i = 0; i < data.length; i += 4) seen.add((data[i] << 16) | (data[i + 1] << 8) | data[i + 2]);
    return seen.size;
  }, [...shot]);
}

// What the command line says about the same link; null where it is not built.
export function evaluateNatively(link) {
  const program = path.join(root, 'build/native/hearthsight');
  if (!existsSync(program)) return null;
  const config = execFileSync(program, ['from-link', link]);
  return JSON.parse(execFileSync(program, ['evaluate', '-'], { input: config, maxBuffer: 1 << 26 }));
}
