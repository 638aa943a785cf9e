// Opening: what a person meets first, and what the page costs at rest.
import assert from 'node:assert/strict';
import test from 'node:test';
import { openPage } from '../support/browser.mjs';
import {
  colours, devices, drag, fragment, item, mainFields, middle, settle, snapshot, tap, withPage, world,
} from '../support/page.mjs';

test('opens on the demo household with all four controls, and says no error', async () => {
  await withPage({}, async (page) => {
    const { config, report, items, frame, focus, lastError } = await snapshot(page);
    assert.equal(config.format, 'hearthsight/1');
    assert.equal(report.format, 'hearthsight-report/1');
    assert.ok(config.cooks.length >= 2, 'the demo household is a household');
    assert.ok(frame >= 1);
    assert.equal(typeof focus, 'string');
    assert.equal(lastError, '');
    for (const field of mainFields) {
      assert.ok(items.some(({ id }) => id === `field:${field}`), `${field} is not on the first screen`);
    }
    assert.match(await fragment(page), /^[A-Za-z][A-Za-z0-9_-]*[A-Za-z0-9]$/);
  });
});

test('the snapshot is there before the engine is, and says so', async () => {
  const context = await world.browser.newContext(devices.phone);
  const page = await context.newPage();
  // The engine is held back until the test has seen the page without it.
  let release;
  const held = new Promise((done) => { release = done; });
  await page.route('**/*.wasm', async (route) => {
    await held;
    await route.continue().catch(() => {});
  });
  await page.goto(world.url, { waitUntil: 'commit' });
  await page.waitForFunction(() => globalThis.hearthsight);
  const early = await snapshot(page);
  assert.deepEqual(early.items, []);
  assert.equal(early.frame, 0);
  // Real words stand on the screen while the picture is on its way.
  assert.ok(await page.locator('#shell h1').isVisible());
  release();
  await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0);
  await context.close();
});

test('the picture answers before the document is there, and the document then shows what was done', async () => {
  let release;
  const released = new Promise((done) => { release = done; });
  const context = await world.browser.newContext(devices.phone);
  await context.route('**/later.wasm', async (route) => {
    await released;
    await route.continue();
  });
  const { page, errors } = await openPage(world, { context });
  const value = async (id) => (await item(page, id)).value;
  const link = () => page.evaluate(() => globalThis.Module.UTF8ToString(globalThis.Module._hs_link()));
  await settle(page);
  for (const field of mainFields.slice(1)) {
    const { rect: [x, y, w, h], value: before } = await item(page, `field:${field}`);
    await drag(page, [0.3, 0.4, 0.5, 0.6, 0.7, 0.8].map((share) => [x + w * share, y + h / 2]));
    await settle(page);
    assert.notEqual(await value(`field:${field}`), before, field);
  }
  // Each button of the first screen, and those of the other pictures.
  for (let picture = 0; picture < 3; ++picture) {
    for (const { id } of (await snapshot(page)).items) {
      if (!id.startsWith('action:') || /^action:(picture|undo|redo|people|worst|why)/.test(id)) continue;
      const found = (await snapshot(page)).items.find((one) => one.id === id);
      if (found) await tap(page, middle(found));
    }
    await tap(page, middle(await item(page, 'action:picture')));
  }
  const changed = await link();
  await tap(page, middle(await item(page, 'action:undo')));
  assert.notEqual(await link(), changed);
  await tap(page, middle(await item(page, 'action:redo')));
  assert.equal(await link(), changed);
  await page.locator('#canvas').focus();
  for (const key of ['Tab', 'Tab', 'ArrowRight', 'PageUp', 'Home', 'Enter', 'Escape']) await page.keyboard.press(key);
  await settle(page);

  assert.deepEqual(errors, []);
  assert.ok(await page.evaluate(() => document.getElementById('panels').hidden), 'the document was there already');
  const early = await page.evaluate(() => {
    try { return globalThis.Module._dk_page_json(); } catch (error) { return error.message; }
  });
  assert.match(String(early), /later\.wasm, which is not here yet/);

  const before = await snapshot(page);
  release();
  await page.waitForFunction(() => !document.getElementById('panels').hidden);
  const { config, report, items } = await snapshot(page);
  // What is built is worked out when its code is there, and adds to what was said; nothing else moves.
  const built = /^(frame|survey|load|cuts|metal|power|finish|plan|money)\./;
  const first = ({ frame, parts, hardware, loads, cuts, metal, power, finish, plan, money, sources, findings, ...rest }) =>
    ({ ...rest, findings: findings.filter(({ rule }) => !built.test(rule)) });
  assert.deepEqual({ config, report: first(report), items },
    { config: before.config, report: first(before.report), items: before.items });
  assert.ok(report.findings.some(({ rule }) => built.test(rule)));
  // As a page says that opens the same link with everything there.
  await withPage({ fragment: await link() }, async (other) => {
    assert.deepEqual((await snapshot(other)).report, report);
  });
  assert.deepEqual(errors, []);
  await context.close();
});

test('nothing of the first screen lies below 660 px on a screen 390 px wide', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    const { items } = await snapshot(page);
    assert.ok(items.length >= 4);
    for (const { id, rect: [x, y, w, h] } of items) {
      assert.ok(x >= 0 && y >= 0 && x + w <= 390 + 0.5, `${id} leaves the screen sideways`);
      assert.ok(y + h <= 660 + 0.5, `${id} ends at ${y + h}`);
    }
    const { scrollWidth, scrollHeight } = await page.evaluate(() => ({
      scrollWidth: document.scrollingElement.scrollWidth, scrollHeight: document.scrollingElement.scrollHeight,
    }));
    assert.ok(scrollWidth <= 390 && scrollHeight <= 660, 'the first screen scrolls');
  });
});

test('what is tapped on the canvas is at least 48 px each way, and nothing overlaps', async () => {
  for (const device of Object.values(devices)) {
    await withPage({ device }, async (page) => {
      await settle(page);
      const { items } = await snapshot(page);
      for (const { id, rect: [, , w, h] } of items) {
        assert.ok(w >= 48 - 0.5 && h >= 48 - 0.5, `${id} is ${w} by ${h}`);
      }
      for (const a of items) {
        for (const b of items) {
          if (a === b) continue;
          const overlap = Math.min(a.rect[0] + a.rect[2], b.rect[0] + b.rect[2]) - Math.max(a.rect[0], b.rect[0]) > 0.5
            && Math.min(a.rect[1] + a.rect[3], b.rect[1] + b.rect[3]) - Math.max(a.rect[1], b.rect[1]) > 0.5;
          assert.ok(!overlap, `${a.id} and ${b.id} overlap`);
        }
      }
    });
  }
});

test('a square is a square: as many pixels across as down, on every screen', async () => {
  for (const [name, device] of Object.entries(devices)) {
    await withPage({ device }, async (page) => {
      await settle(page);
      const { across, down } = await page.evaluate(() => {
        const canvas = document.getElementById('canvas');
        return { across: canvas.width / canvas.clientWidth, down: canvas.height / canvas.clientHeight };
      });
      // Half a pixel of rounding on the shortest side.
      assert.ok(Math.abs(across - down) < 0.005, `${name}: ${across} across, ${down} down`);
      assert.ok(Math.abs(across - Math.min(2, device.deviceScaleFactor)) < 0.005, `${name}: ${across}`);
    });
  }
});

test('follows a turn of the phone', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await page.setViewportSize({ width: 844, height: 390 });
    await settle(page);
    const box = await page.locator('#canvas').boundingBox();
    for (const { id, rect: [x, y, w, h] } of (await snapshot(page)).items) {
      assert.ok(x + w <= box.x + box.width + 0.5 && y + h <= box.y + box.height + 0.5, `${id} leaves the canvas`);
    }
  });
});

test('draws no frame in two seconds at rest', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    await page.waitForTimeout(700);  // the live region follows half a second after the last change
    const { frame } = await snapshot(page);
    await page.waitForTimeout(2000);
    assert.equal((await snapshot(page)).frame, frame);
  });
});

test('the layout does not shift while the page starts', async () => {
  for (const device of [devices.phone, devices.desktop]) {
    const watch = () => {
      globalThis.shift = 0;
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) globalThis.shift += entry.value;
      }).observe({ type: 'layout-shift', buffered: true });
    };
    await withPage({ device, before: watch }, async (page) => {
      await page.waitForTimeout(800);
      const shift = await page.evaluate(() => globalThis.shift);
      assert.ok(shift < 0.1, `layout shift ${shift}`);  // the limit of "good", web vitals
    });
  }
});

test('a picture that the phone takes away comes back, and the station with it', async () => {
  await withPage({ allowed: [/context.?lost/i] }, async (page) => {
    await settle(page);
    const before = await snapshot(page);
    await page.evaluate(async () => {
      const gl = document.getElementById('canvas').getContext('webgl2');
      const handle = gl.getExtension('WEBGL_lose_context');
      const next = (type) => new Promise((done) => {
        document.getElementById('canvas').addEventListener(type, done, { once: true });
      });
      const lost = next('webglcontextlost');
      handle.loseContext();
      await lost;
      await new Promise((done) => { setTimeout(done, 300); });
      const restored = next('webglcontextrestored');
      handle.restoreContext();
      await restored;
    });
    await settle(page);
    const after = await snapshot(page);
    assert.ok(after.frame > before.frame, 'nothing was drawn again');
    assert.deepEqual(after.report, before.report);
    assert.ok(await colours(page) >= 8, 'the canvas is blank');
  });
});
