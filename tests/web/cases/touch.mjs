// What fingers do: one tap one action, a swipe that passes over controls scrolls and changes
// nothing, and a screen that is turned, cut by a notch or held in one hand keeps everything at hand.
import assert from 'node:assert/strict';
import test from 'node:test';
import { isDeepStrictEqual } from 'node:util';
import { devices, doubleTap, drag, item, keepPicture, middle, openSheet, settle, snapshot, tap, withPage } from '../support/page.mjs';

// `body(send)`: send(type, points) are real touch events, a frame apart by their own times, however
// late a busy machine hands them on.
async function fingers(page, body) {
  const session = await page.context().newCDPSession(page);
  let timestamp = Date.now() / 1000;
  await body((type, points = []) => session.send('Input.dispatchTouchEvent',
    { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })), timestamp: timestamp += 0.016 }));
  await session.detach();
}

// Quick, and not stopped before the finger lifts.
async function swipe(page, [x, y], [dx, dy]) {
  await fingers(page, async (send) => {
    await send('touchStart', [[x, y]]);
    for (let i = 1; i <= 8; ++i) await send('touchMove', [[x + dx * i / 8, y + dy * i / 8]]);
    await send('touchEnd');
  });
}

async function pinch(page, [x, y], from, to) {
  await fingers(page, async (send) => {
    const at = (half) => [[x, y - half], [x, y + half]];
    await send('touchStart', at(from));
    for (let i = 1; i <= 8; ++i) await send('touchMove', at(from + (to - from) * i / 8));
    await send('touchEnd');
  });
}

const sheetScroll = (page) => page.evaluate(() => Math.round(document.getElementById('document').scrollTop));
const scale = (page) => page.evaluate(() => visualViewport.scale);
const boxMiddle = async (locator) => {
  const { x, y, width, height } = await locator.boundingBox();
  return [x + width / 2, y + height / 2];
};
// What `read` tells, once that is what it told a moment ago.
const atRest = async (page, read) => {
  for (let last, now = await read(); ; last = now, now = await read()) {
    if (isDeepStrictEqual(now, last)) return now;
    await page.waitForTimeout(150);
  }
};
const notScrolling = (page) => atRest(page, () => sheetScroll(page));

test('a swipe over the controls of a sheet scrolls it, goes on after the finger, and changes nothing', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'oven');
    const before = (await snapshot(page)).config;
    const open = () => page.locator('#panel-oven details[open]').count();
    const wasOpen = await open();
    // The page itself notes where the sheet was when the finger left: this test may hear of it late.
    await page.evaluate(() => {
      addEventListener('touchend', () => { globalThis.lifted = document.getElementById('document').scrollTop; }, true);
    });
    for (const place of ['.step', 'input[type="text"]', 'select', '.ask', 'label', 'summary']) {
      const control = page.locator(`#oven-fields ${place}`).first();
      await control.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      await notScrolling(page);
      const from = await sheetScroll(page);
      await swipe(page, await boxMiddle(control), [12, -240]);
      await notScrolling(page);
      const lifted = await page.evaluate(() => globalThis.lifted);
      const rest = await sheetScroll(page);
      assert.ok(rest - from > 180, `from ${place} the sheet scrolled by ${rest - from} px`);
      assert.ok(rest > lifted + 5, `from ${place} the sheet stops with the finger`);
    }
    assert.deepEqual((await snapshot(page)).config, before);
    assert.equal(await open(), wasOpen);
    assert.ok(await page.evaluate(() => !document.activeElement.matches('input, select')), 'a swipe brought the keyboard');
    assert.equal(await scale(page), 1);
  });
});

test('a swipe over the rulers of the canvas changes nothing, in no picture', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    const rulers = (await snapshot(page)).items.filter(({ id }) => /^field:.*_mm$/.test(id));
    assert.ok(rulers.length >= 3);
    for (const ruler of rulers) {
      const [x, y] = middle(ruler);
      await swipe(page, [x, y], [30, -200]);
      await swipe(page, [x, y - 200], [-20, 260]);
    }
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, before);
  });
});

test('in a sheet one tap is one action, two quick ones are two, and the page does not zoom', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'people');
    await page.locator('.cook:first-child summary').first().tap();
    const eye = page.locator('[data-path="cooks.0.eye_height_mm"]');
    const more = eye.getByRole('button', { name: /^More/ });
    await more.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const value = async () => { await settle(page); return (await snapshot(page)).config.cooks[0].eye_height_mm; };
    await tap(page, await boxMiddle(more));
    const first = await value();
    assert.equal(typeof first, 'number');
    await tap(page, await boxMiddle(more));
    const second = await value();
    assert.ok(Math.abs(second - first - 6.35) <= 0.1, `one tap went from ${first} to ${second}`);
    await doubleTap(page, await boxMiddle(more));
    const fourth = await value();
    assert.ok(Math.abs(fourth - second - 12.7) <= 0.1, `two taps went from ${second} to ${fourth}`);
    assert.equal(await scale(page), 1);
    // Slid off, and taken away by the system: nothing.
    const [x, y] = await boxMiddle(more);
    await drag(page, [[x, y], [x - 120, y]]);
    await fingers(page, async (send) => {
      await send('touchStart', [[x, y]]);
      await send('touchCancel');
    });
    assert.equal(await value(), fourth);
    // An open part closes by one tap and does not open again.
    const part = page.locator('.cook:first-child details').first();
    await tap(page, await boxMiddle(part.locator('summary')));
    assert.equal(await part.getAttribute('open'), null);
  });
});

test('in inches a number is completed by chips of fractions, without losing the field', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'people');
    await page.locator('.cook:first-child summary').first().tap();
    const field = page.locator('[data-path="cooks.0.eye_height_mm"]');
    const input = field.locator('input');
    await input.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    assert.ok(!await field.locator('.chips').isVisible(), 'chips stand where nobody types');
    const next = page.locator('[data-path="cooks.0.elbow_height_mm"]');
    const place = await next.boundingBox();
    await input.tap();
    assert.deepEqual(await next.boundingBox(), place, 'what follows moves');
    assert.equal(await input.getAttribute('inputmode'), 'decimal');
    await input.fill('60');
    const chips = await field.locator('.chips button').all();
    assert.deepEqual(await Promise.all(chips.map((chip) => chip.textContent())), ['1/2', '1/4', '1/8', '1/16']);
    for (const chip of chips) {
      const box = await chip.boundingBox();
      assert.ok(box.width >= 47.5 && box.height >= 47.5, `a chip is ${box.width} by ${box.height} px`);
      assert.ok(box.x >= 0 && box.x + box.width <= 390);
    }
    await keepPicture(page, 'fraction-chips');
    // 60 in, and the sixteenths that each tap adds or takes away.
    for (const [i, text, mm] of [[0, '60 1/2', 1536.7], [2, '60 5/8', 1539.9], [3, '60 11/16', 1541.5], [0, '60 3/16', 1528.8]]) {
      await chips[i].tap();
      await settle(page);
      assert.equal(await input.inputValue(), text);
      assert.equal((await snapshot(page)).config.cooks[0].eye_height_mm, mm);
      assert.ok(await input.evaluate((element) => element === document.activeElement), 'the field lost the keypad');
    }
    assert.deepEqual(await Promise.all(chips.map((chip) => chip.getAttribute('aria-pressed'))), ['false', 'false', 'true', 'true']);
    await page.evaluate(() => document.activeElement.blur());
    assert.ok(!await field.locator('.chips').isVisible());
    await page.evaluate(() => document.querySelector('input[name="units"][value="mm"]').click());
    await settle(page);
    await input.tap();
    assert.ok(!await field.locator('.chips').isVisible(), 'fractions of an inch for millimetres');
  });
});

test('two fingers enlarge a sheet for who needs it, and never the page under the canvas', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const { config } = await snapshot(page);
    await pinch(page, middle(await item(page, 'action:people')), 20, 90);
    await settle(page);
    assert.equal(await scale(page), 1);
    assert.deepEqual((await snapshot(page)).config, config);
    await openSheet(page, 'why');
    await pinch(page, [195, 300], 30, 120);
    await page.waitForTimeout(300);
    assert.ok(await scale(page) > 1.3, 'a sheet cannot be enlarged');
    assert.deepEqual((await snapshot(page)).config, config);
  });
});

test('a phone turned and turned back keeps its sheet, what is being typed, and the focus', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openSheet(page, 'people');
    const input = page.locator('[data-path="cooks.0.stature_mm"] input');
    await input.tap();
    await input.fill('70 1');
    for (const { viewport } of [devices.sidePhone, devices.tallPhone]) {
      await page.setViewportSize(viewport);
      await settle(page);
      assert.ok(await page.locator('#panel-people').isVisible());
      assert.equal(await input.inputValue(), '70 1');
      assert.ok(await input.evaluate((element) => element === document.activeElement));
      const bar = await page.locator('#bar').boundingBox();
      assert.ok(bar.x >= 0 && bar.y >= 0 && bar.x + bar.width <= viewport.width && bar.y + bar.height <= viewport.height);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    }
  });
});

test('no target of the canvas takes text, and every number there has its steppers', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    for (const picture of ['section', 'fit map', 'scene']) {
      const { items } = await snapshot(page);
      for (const { id } of items.filter((one) => /^field:.*(_mm|_deg|lumens)$/.test(one.id))) {
        const path = id.replace('field:', '');
        for (const part of ['less', 'more']) assert.ok(items.some((one) => one.id === `action:${path}.${part}`), `${id} has no ${part}`);
      }
      // What is under the picture is the same in all three.
      const taps = picture === 'section' ? items : items.filter(({ id }) => !/^(field:(oven|station|view)|action:(oven|station|view|why|undo|redo|units|people|worst|person|height))/.test(id));
      for (const { id } of taps.filter((one) => one.id !== 'action:picture')) {
        const found = (await snapshot(page)).items.find((one) => one.id === id);
        if (!found) continue;
        await tap(page, middle(found));
        assert.ok(!await page.evaluate(() => document.activeElement.matches('input[type="text"], textarea')), `${id} asks for the keyboard`);
        if (await page.locator('#close').isVisible()) {
          await page.locator('#close').tap();
          await page.waitForFunction(() => !history.state.sheet);
          await settle(page);
        }
      }
      await tap(page, middle(await item(page, 'action:picture')));
    }
  });
});

test('what is used most is under the thumb of either hand', async () => {
  for (const device of [devices.phone, devices.tallPhone]) {
    await withPage({ device }, async (page) => {
      await settle(page);
      const { width, height } = device.viewport;
      const { items } = await snapshot(page);
      const controls = items.filter(({ id }) => /^field:/.test(id));
      assert.ok(controls.length >= 4);
      for (const { id, rect: [, y, , h] } of controls) {
        assert.ok(y + h / 2 > height * 0.5, `${id} is in the upper half`);
      }
      // Each long ruler has a stepper within reach of both thumbs.
      const [less] = (await item(page, 'action:station.prep_depth_mm.less')).rect;
      assert.ok(less >= 0);
      for (const path of ['view.standoff_mm']) {
        const [left] = (await item(page, `action:${path}.less`)).rect;
        const [right, , w] = (await item(page, `action:${path}.more`)).rect;
        assert.ok(left < width / 2 && right + w > width - 60, `${path}: steppers from ${left} to ${right + w}`);
      }
      const bar = await page.locator('#bar').boundingBox();
      assert.ok(bar.y + bar.height >= height - 1, 'the bar is not at the bottom');
    });
  }
});

const notches = {
  upright: { device: devices.tallPhone, insets: { top: 59, right: 0, bottom: 34, left: 0 } },
  'on its side': { device: devices.sidePhone, insets: { top: 0, right: 59, bottom: 21, left: 59 } },
};
for (const [way, { device, insets }] of Object.entries(notches)) {
  test(`with a notch, ${way}, nothing lies under it or under the edge that a swipe goes home from`, async () => {
    await withPage({ device }, async (page) => {
      const session = await page.context().newCDPSession(page);
      await session.send('Emulation.setSafeAreaInsetsOverride', { insets: { ...insets, topMax: insets.top, bottomMax: insets.bottom, leftMax: insets.left, rightMax: insets.right } });
      await page.evaluate(() => dispatchEvent(new Event('resize')));
      await settle(page);
      const { width, height } = device.viewport;
      const inside = ([x, y, w, h]) => x >= insets.left - 0.5 && y >= insets.top - 0.5
        && x + w <= width - insets.right + 0.5 && y + h <= height - insets.bottom + 0.5;
      const { items } = await snapshot(page);
      assert.deepEqual(items.filter(({ rect }) => !inside(rect)).map(({ id, rect }) => `${id} ${rect}`), []);
      await keepPicture(page, `notch-${width}`);
      await openSheet(page, 'people');
      const boxes = await page.$$eval('#bar button, .tools button, #panel-people h2, #panel-people label, #panel-people .entry *', (all) => all
        .filter((element) => element.offsetParent !== null).map((element) => {
          const { x, y, width: w, height: h } = element.getBoundingClientRect();
          return { name: `${element.localName} ${element.textContent}`.slice(0, 40), rect: [x, y, w, h] };
        }));
      const sheet = await page.locator('#document').boundingBox();
      const out = boxes.filter(({ rect }) => rect[1] < sheet.y + sheet.height && rect[1] + rect[3] > 0)
        .filter(({ rect: [x, y, w, h], name }) => x < insets.left - 0.5 || x + w > width - insets.right + 0.5
          || (/^button (Undo|Redo|Close|People|Oven|Why|Share)/.test(name) && !inside([x, y, w, h])));
      assert.deepEqual(out, []);
      await keepPicture(page, `notch-${width}-sheet`);
    });
  });
}

test('a swipe along a wide table moves the table alone, and Back still closes the sheet', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'why');
    const box = page.locator('[data-section="fit"] .scroll').first();
    // Sections above it may still come in and move it down from under the finger.
    await settle(page);
    await box.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const [x, y] = await atRest(page, () => boxMiddle(box));
    await notScrolling(page);
    assert.ok(await box.evaluate((element) => element.scrollWidth > element.clientWidth), 'no table is wide here');
    const there = await sheetScroll(page);
    // On a busy machine the browser hands the fingers on late.
    const element = await box.elementHandle();
    const moved = page.waitForFunction((table) => table.scrollLeft > 40, element);
    await swipe(page, [x, y], [-160, 3]);
    await moved;
    await page.waitForTimeout(600);
    assert.equal(await sheetScroll(page), there);
    // Past its end, both ways.
    for (const way of [-300, 300, 300]) await swipe(page, [x, y], [way / 2, 0]);
    await page.waitForTimeout(600);
    assert.ok(await page.locator('#panel-why').isVisible());
    await page.goBack();
    await page.locator('#document').waitFor({ state: 'hidden' });
  });
});
