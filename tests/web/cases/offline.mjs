// Without a network: one visit is enough, a version is used whole or not at all, and a newer one
// waits until it is taken.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { listedWorker } from '../../../scripts/lib/worker_list.mjs';
import { serve } from '../../../scripts/lib/server.mjs';
import { openPage, pageFolder } from '../support/browser.mjs';
import { devices, drag, item, openSheet, root, settle, snapshot, world } from '../support/page.mjs';

const folder = process.env.HEARTHSIGHT_PAGE || pageFolder;
const template = readFileSync(path.join(root, 'web/service-worker.js'), 'utf8');
const versionFolder = (page) => readdirSync(page).find((name) => /^v-[0-9a-f]+$/.test(name));
const present = (page) => page.waitForFunction(() => !document.getElementById('panels').hidden);
const kept = async (page) => {
  await page.getByText('now opens without a network').waitFor({ state: 'attached' });
  await page.waitForFunction(() => navigator.serviceWorker.controller);
};
const offer = (page) => page.locator('#notice-text', { hasText: 'newer version' });

async function ready(page) {
  await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0);
  await present(page);
}

// A page of its own folder, served; `close` takes both away.
async function hosted(below = '') {
  const home = mkdtempSync(path.join(tmpdir(), 'hearthsight-page-'));
  const place = path.join(home, below);
  mkdirSync(place, { recursive: true });
  cpSync(folder, place, { recursive: true });
  const site = await serve(home);
  const context = await world.browser.newContext(devices.phone);
  return {
    place, context, url: site.url + (below ? `${below}/` : ''),
    async close() {
      await context.close();
      await site.close();
      rmSync(home, { recursive: true });
    },
  };
}

// The same page as a second build of it would be: another folder, and a script that says so.
function makeSecond(place, { spoil = false } = {}) {
  const was = versionFolder(place);
  const is = 'v-222222222222';
  renameSync(path.join(place, was), path.join(place, is));
  const change = (name, edit) => writeFileSync(path.join(place, name), edit(readFileSync(path.join(place, name), 'utf8')));
  change('index.html', (text) => text.replaceAll(was, is));
  change(`${is}/js/main.js`, (text) => `${text}\nglobalThis.second = true;\n`);
  writeFileSync(path.join(place, 'service-worker.js'), listedWorker(template, place));
  // What the host then sends is not what the list says.
  if (spoil) change(`${is}/js/document.js`, (text) => `${text}\n`);
}

const lookForUpdate = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  const was = registration.installing || registration.waiting;
  await registration.update().catch(() => {});
  const next = registration.installing;
  if (!next || next === was) return 'none';
  return new Promise((done) => {
    const look = () => { if (next.state !== 'installing') done(next.state); };
    next.addEventListener('statechange', look);
    look();
  });
});

// Which build's files a loaded page has used.
const builds = (page) => page.evaluate(() => [...new Set(performance.getEntriesByType('resource')
  .map(({ name }) => /\/(v-[0-9a-f]+)\//.exec(name)?.[1]).filter(Boolean))]);

test('the worker\'s list names every file of the page with its hash, and nothing else', () => {
  const text = readFileSync(path.join(folder, 'service-worker.js'), 'utf8');
  const list = JSON.parse(/\[\s*\["[\s\S]*?"\]\s*\]/.exec(text)[0]);
  const below = (name = '') => readdirSync(path.join(folder, name), { withFileTypes: true })
    .flatMap((entry) => (entry.isDirectory() ? below(`${name}${entry.name}/`) : [name + entry.name]));
  assert.deepEqual(list.map(([name]) => name).sort(), below().filter((name) => name !== 'service-worker.js').sort());
  for (const [name, hash] of list) {
    assert.equal(hash, createHash('sha256').update(readFileSync(path.join(folder, name))).digest('base64'), name);
  }
});

test('the page can be installed: a manifest with icons that are what it says', async () => {
  const { page, context, errors } = await openPage(world, { context: await world.browser.newContext({ ...devices.phone, serviceWorkers: 'block' }) });
  const manifest = await page.evaluate(async () => {
    const place = document.querySelector('link[rel="manifest"]').href;
    const answer = await fetch(place);
    const type = answer.headers.get('content-type');
    const data = await answer.json();
    const icons = await Promise.all(data.icons.map(async ({ src }) => {
      const bitmap = await createImageBitmap(await (await fetch(new URL(src, place))).blob());
      const copy = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
      copy.drawImage(bitmap, 0, 0);
      const { data: pixels } = copy.getImageData(0, 0, bitmap.width, bitmap.height);
      const at = (x, y) => [...pixels.slice((y * bitmap.width + x) * 4, (y * bitmap.width + x) * 4 + 4)].join();
      const share = (x, y) => at(Math.round(x * bitmap.width), Math.round(y * bitmap.height));
      return { size: `${bitmap.width}x${bitmap.height}`, corner: at(0, 0), green: share(0.5, 0.1), all: new Set(Array.from({ length: 4096 }, (none, i) => share((i % 64 + 0.5) / 64, (Math.floor(i / 64) + 0.5) / 64))).size };
    }));
    return { type, data, icons };
  });
  assert.equal(manifest.type, 'application/manifest+json');
  assert.equal(manifest.data.display, 'standalone');
  // Both sizes are what installing asks for. Source: web.dev, "Add a web app manifest" (from memory).
  assert.deepEqual(manifest.data.icons.map(({ sizes }) => sizes), ['192x192', '512x512']);
  manifest.icons.forEach((icon, i) => {
    assert.equal(icon.size, manifest.data.icons[i].sizes);
    // The back's colour of web/icon.svg, up to the corners that a phone may cut.
    assert.deepEqual([icon.green, icon.corner], ['23,71,47,255', '23,71,47,255']);
    assert.ok(icon.all >= 4, 'the icon shows less than its four colours');
  });
  assert.deepEqual(errors, []);
  await context.close();
});

test('the worker is asked for after the page is ready, and is not kept by the browser\'s own cache', async () => {
  const context = await world.browser.newContext(devices.phone);
  await context.addInitScript(() => {
    const register = navigator.serviceWorker.register.bind(navigator.serviceWorker);
    navigator.serviceWorker.register = (...given) => {
      globalThis.readyThen = performance.getEntriesByName('hearthsight:ready').length;
      return register(...given);
    };
  });
  const { page, errors } = await openPage(world, { context });
  await kept(page);
  assert.equal(await page.evaluate(() => globalThis.readyThen), 1);
  for (const [name, type] of [['service-worker.js', /^text\/javascript/], ['app.webmanifest', /manifest\+json/]]) {
    // By number: this asks the system for the address, and a bare one has no name for itself.
    const answer = await page.request.get(world.url.replace('localhost', '127.0.0.1') + name);
    assert.match(answer.headers()['content-type'], type);
    assert.equal(answer.headers()['cache-control'], 'no-cache');
  }
  assert.deepEqual(errors, []);
  await context.close();
});

for (const below of ['', 'a/station page']) {
  test(`after one visit the page opens and exports without a network${below ? ', from a folder of a host too' : ''}`, async () => {
    const host = await hosted(below);
    const { page } = await openPage({ url: host.url }, { context: host.context });
    await kept(page);
    await settle(page);
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    await drag(page, [0.3, 0.5, 0.7].map((share) => [x + w * share, y + h / 2]));
    await settle(page);
    await page.waitForTimeout(500);
    const before = await snapshot(page);

    await host.context.setOffline(true);
    await page.reload();
    await ready(page);
    await settle(page);
    assert.equal(await page.evaluate(() => navigator.onLine), false);
    assert.deepEqual((await snapshot(page)).report, before.report);
    await openSheet(page, 'share');
    const [file] = await Promise.all([page.waitForEvent('download'), page.locator('#save-file').click()]);
    assert.deepEqual(JSON.parse(readFileSync(await file.path(), 'utf8')), before.config);
    assert.ok(await page.locator('#square img').isVisible());
    const [report] = await Promise.all([page.waitForEvent('download'), page.locator('#save-report').click()]);
    assert.match(readFileSync(await report.path(), 'utf8'), /<style>[\s\S]*--paper/, 'the report has no looks');
    const [safety] = await Promise.all([host.context.waitForEvent('page'), page.locator('#open-safety').click()]);
    await safety.waitForLoadState('load');
    assert.match(await safety.title(), /^Safety at the oven/);
    // Its looks come from the kept files: the paper of web/theme.css.
    assert.equal(await safety.evaluate(() => getComputedStyle(document.documentElement).backgroundColor), 'rgb(250, 244, 230)');
    await safety.close();
    const [notices] = await Promise.all([host.context.waitForEvent('page'), page.getByRole('link', { name: /Licences/ }).click()]);
    await notices.waitForLoadState();
    assert.match(await notices.locator('body').textContent(), /QR Code generator/);
    await notices.close();
    await openSheet(page, 'why');
    const drawing = page.locator('#drawings details').first();
    await drawing.locator('summary').click();
    const [picture] = await Promise.all([page.waitForEvent('download'), drawing.getByText('Save drawing').click()]);
    assert.match(readFileSync(await picture.path(), 'utf8'), /^<svg/);

    // The bare address, as from the home screen: the last station is there.
    const again = await host.context.newPage();
    await again.goto(host.url);
    await ready(again);
    assert.deepEqual((await snapshot(again)).config, before.config);
    assert.equal(await again.evaluate(() => navigator.serviceWorker.controller.scriptURL), new URL('service-worker.js', host.url).href);
    await host.close();
  });
}

test('a newer version is offered, waits, and is taken whole', async () => {
  const host = await hosted();
  const first = versionFolder(host.place);
  const { page } = await openPage({ url: host.url }, { context: host.context });
  await kept(page);
  makeSecond(host.place);
  assert.equal(await lookForUpdate(page), 'installed');
  await offer(page).waitFor();
  // Not taken: everything stays of the first build, also when the page is loaded again.
  await page.locator('#notice-close').click();
  await page.reload();
  await ready(page);
  await page.waitForTimeout(500);
  assert.deepEqual(await builds(page), [first]);
  assert.equal(await page.evaluate(() => globalThis.second), undefined);
  await offer(page).waitFor();

  await settle(page);
  const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
  await drag(page, [0.3, 0.5, 0.7].map((share) => [x + w * share, y + h / 2]));
  await settle(page);
  const { config } = await snapshot(page);
  const other = await host.context.newPage();
  await other.goto(host.url);
  await ready(other);
  assert.deepEqual(await builds(other), [first]);

  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Use it now' }).click()]);
  await ready(page);
  assert.equal(await page.evaluate(() => globalThis.second), true);
  assert.deepEqual(await builds(page), ['v-222222222222']);
  assert.deepEqual((await snapshot(page)).config, config);
  assert.ok(!await offer(page).isVisible());

  // The other tab goes on with the first build until it is asked, although the host has lost it.
  await offer(other).waitFor();
  assert.equal(await other.evaluate(async (name) => (await fetch(`${name}/later.wasm`)).status, first), 200);
  assert.equal(await other.evaluate(() => globalThis.second), undefined);
  await Promise.all([other.waitForEvent('load'), other.getByRole('button', { name: 'Use it now' }).click()]);
  await ready(other);
  assert.deepEqual(await builds(other), ['v-222222222222']);
  await host.close();
});

test('a version that does not come whole, or not as its list says, is never used', async () => {
  const host = await hosted();
  const first = versionFolder(host.place);
  const { page } = await openPage({ url: host.url }, { context: host.context });
  await kept(page);
  makeSecond(host.place, { spoil: true });
  assert.equal(await lookForUpdate(page), 'redundant');
  assert.ok(!await offer(page).isVisible());
  assert.equal(await page.evaluate(async () => (await caches.keys()).length), 1, 'half a version is left behind');
  await host.context.setOffline(true);
  await page.reload();
  await ready(page);
  assert.deepEqual(await builds(page), [first]);
  await host.close();
});
