// The lamp at the oven on the real page: its head under a finger, its numbers in the document and
// the link.
import assert from 'node:assert/strict';
import test from 'node:test';
import { at, devices, drag, evaluateNatively, fragment, item, keepPicture, middle, settle, snapshot, tap, withPage }
  from '../support/page.mjs';

async function press(page, device, id) {
  const place = middle(await item(page, id));
  if (device.hasTouch) await page.touchscreen.tap(...place); else await page.mouse.click(...place);
  await settle(page);
}

async function openLamp(page, device = devices.tallPhone) {
  await settle(page);
  await press(page, device, 'action:lamp');
  await press(page, device, 'action:lamp_right');
}

const lamp = async (page) => (await snapshot(page)).report.light.lamp;

test('lamp: a finger drags its head, lux follow live, finger up evaluates and undo restores', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openLamp(page);
    const before = await snapshot(page);
    const start = await lamp(page);
    assert.ok(start.places > 0, 'nobody has looked for places');
    const [x, y] = middle(await item(page, 'action:lamp_head'));
    const session = await page.context().newCDPSession(page);
    const send = (type, points) => session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await send('touchStart', [{ x, y }]);
    await page.waitForTimeout(60);
    const seen = [];
    for (let i = 1; i <= 4; i += 1) {
      await send('touchMove', [{ x: x - 10 * i, y }]);
      await page.waitForTimeout(120);
      seen.push((await lamp(page)).pizza_lx);
    }
    assert.equal(new Set([start.pizza_lx, ...seen]).size, 5, `lux stay at ${seen} while the head moves`);
    await keepPicture(page, 'lamp-held');
    await send('touchEnd', []);
    await session.detach();
    await settle(page);
    const after = await lamp(page);
    assert.equal(after.places, start.places, 'finger up did not look for places again');
    assert.ok(at((await snapshot(page)).config, 'light.head').ahead_mm > start.head.ahead_mm);
    const { frame } = await snapshot(page);
    await page.waitForTimeout(1200);
    assert.equal((await snapshot(page)).frame, frame, 'frames are drawn at rest');
    // The command line says the same of the same link.
    const native = evaluateNatively(await fragment(page));
    if (native) assert.deepEqual(native.light, (await snapshot(page)).report.light);
    await tap(page, middle(await item(page, 'action:undo')));
    assert.deepEqual((await snapshot(page)).config, before.config);
    assert.deepEqual(await lamp(page), start);
  });
});

test('lamp: what it cannot do is told where it is, and its reason is one tap away', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openLamp(page);
    const { rect: [left, top, w, h] } = await item(page, 'action:lamp_head');
    const [x, y] = [left + w / 2, top + h / 2];
    await drag(page, [[x, y], [x + 60, y - 60], [x + 400, y - 120]]);
    await settle(page);
    const saying = await item(page, 'action:lamp_saying');
    assert.match(saying.label, /lamp's head is .*: move it\. Why\?/);
    assert.match((await item(page, 'action:lamp_worth')).label, /heat not good/);
    await tap(page, middle(saying));
    const reason = page.locator('#reasons details[open]').last();
    assert.ok(await reason.isVisible());
    assert.match(await reason.textContent(), /Source: \S+/);
  });
});

test('lamp: typed in the document it hangs where it was told to, by link and by command line', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await openLamp(page, devices.desktop);
    const type = async (path, text) => {
      const input = page.locator(`[data-path="${path}"] input`).first();
      await page.evaluate((name) => {
        for (let part = document.querySelector(`[data-path="${name}"]`); part; part = part.parentElement) {
          if (part.tagName === 'DETAILS') part.open = true;
        }
      }, path);
      await input.fill(text);
      await input.press('Enter');
      await settle(page);
    };
    await type('light.head.across_mm', '250 mm');
    await type('light.head.ahead_mm', '600 mm');
    await type('light.head.up_mm', '250 mm');
    assert.deepEqual((await lamp(page)).head, { across_mm: 250, ahead_mm: 600, up_mm: 250 });
    assert.deepEqual((await item(page, 'action:lamp_head')).value, [250, 600, 250]);
    const link = await fragment(page);
    const said = await lamp(page);
    await withPage({ fragment: link, device: devices.desktop }, async (other) => {
      assert.deepEqual(await lamp(other), said);
    });
    await press(page, devices.desktop, 'action:lamp_best');
    assert.equal(at((await snapshot(page)).config, 'light.head'), undefined);
  });
});

test('lamp: mouse and keyboard move the head as a finger does', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await openLamp(page, devices.desktop);
    const [x, y] = middle(await item(page, 'action:lamp_head'));
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 40, y, { steps: 5 });
    await page.mouse.up();
    await settle(page);
    const dragged = at((await snapshot(page)).config, 'light.head');
    assert.ok(dragged, 'the mouse moved nothing');
    for (const key of ['ArrowRight', 'ArrowUp', 'PageUp']) {
      await page.keyboard.press(key);
      await settle(page);
    }
    const moved = at((await snapshot(page)).config, 'light.head');
    assert.ok(moved.ahead_mm < dragged.ahead_mm && moved.up_mm > dragged.up_mm && moved.across_mm > dragged.across_mm);
  });
});

for (const [name, device] of Object.entries({ tallPhone: devices.tallPhone, sidePhone: devices.sidePhone, tablet: devices.tablet, desktop: devices.desktop })) {
  for (const light of ['sun', 'dusk']) {
    // A plain run takes each screen in one theme; HEARTHSIGHT_GALLERY=whole in both.
    if (process.env.HEARTHSIGHT_GALLERY !== 'whole' && (light === 'dusk') !== ['sidePhone', 'desktop'].includes(name)) continue;
    test(`lamp: pictures, ${name}, ${light}`, async () => {
      const before = light === 'dusk' ? () => { localStorage.setItem('hearthsight:theme', 'dusk'); } : undefined;
      await withPage({ device, before }, async (page) => {
        await settle(page);
        const { width, height } = device.viewport;
        const file = (what) => `${width}x${height}-${light}-${what}`;
        await press(page, device, 'action:lamp');
        await keepPicture(page, file('lamp-none'));
        await press(page, device, 'action:lamp_right');
        await keepPicture(page, file('lamp'));
        await page.evaluate(() => { globalThis.Module._hs_set_picture(2); globalThis.hsHost.wake(); });
        await settle(page);
        await press(page, device, 'action:clear_zones');
        await keepPicture(page, file('scene-zones'));
      });
    });
  }
}
