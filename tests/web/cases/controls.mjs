// The four main controls, by touch and by keyboard, on the canvas and in the document.
import assert from 'node:assert/strict';
import test from 'node:test';
import { at, devices, drag, item, mainFields, middle, settle, snapshot, tap, withPage, without } from '../support/page.mjs';

const numbers = mainFields.filter((field) => field !== 'oven.kind');

for (const field of numbers) {
  test(`a finger drags ${field}, and the report follows`, async () => {
    await withPage({}, async (page) => {
      await settle(page);
      const before = await snapshot(page);
      const control = await item(page, `field:${field}`);
      const [x, y, w, h] = control.rect;
      const level = y + h / 2;
      // From wherever its thumb is: a slow pull to the right, then the hand is lifted.
      await drag(page, [0.3, 0.4, 0.5, 0.6, 0.7, 0.8].map((share) => [x + w * share, level]));
      await settle(page);
      const after = await snapshot(page);
      assert.notEqual(at(after.config, field), at(before.config, field));
      assert.notDeepEqual(after.report, before.report);
      // Nothing else moved with it.
      assert.deepEqual(without(after.config, field), without(before.config, field));
    });
  });
}

test('a tap changes the kind of oven, and another one changes it back', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const before = await snapshot(page);
    await tap(page, middle(await item(page, 'action:oven.kind.next')));
    const after = await snapshot(page);
    assert.notEqual(at(after.config, 'oven.kind'), at(before.config, 'oven.kind'));
    assert.notDeepEqual(after.report.recommended, before.report.recommended);
    await tap(page, middle(await item(page, 'action:oven.kind.previous')));
    assert.deepEqual((await snapshot(page)).config, before.config);
  });
});

test('one tap is one activation', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const more = middle(await item(page, 'action:station.prep_depth_mm.more'));
    const depth = async () => (await item(page, 'field:station.prep_depth_mm')).value;
    const seen = [await depth()];
    for (let i = 0; i < 3; ++i) {
      await tap(page, more);
      seen.push(await depth());
    }
    // To the next half inch, and then half an inch each time: lengths are kept to 0.1 mm.
    const first = Math.floor(seen[0] / 12.7 + 1e-6) + 1;
    assert.deepEqual(seen.slice(1), [0, 1, 2].map((i) => Math.round((first + i) * 127) / 10));
    const undo = middle(await item(page, 'action:undo'));
    for (const expected of seen.slice(0, 3).reverse()) {
      await tap(page, undo);
      assert.equal(await depth(), expected);
    }
  });
});

test('a tap that slides off its target does nothing', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    const [x, y] = middle(await item(page, 'action:station.prep_depth_mm.more'));
    await drag(page, [[x, y], [x, y - 60], [x, y - 150]]);
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, before);
  });
});

test('a drag is one undo step, and redo brings it back', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    await drag(page, [0.4, 0.5, 0.6, 0.7].map((share) => [x + w * share, y + h / 2]));
    await settle(page);
    const after = (await snapshot(page)).config;
    await tap(page, middle(await item(page, 'action:undo')));
    assert.deepEqual((await snapshot(page)).config, before);
    await tap(page, middle(await item(page, 'action:redo')));
    assert.deepEqual((await snapshot(page)).config, after);
  });
});

test('a cancelled touch and a second finger leave no control held', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    const session = await page.context().newCDPSession(page);
    const send = (type, touchPoints) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
    const first = { x: x + w * 0.4, y: y + h / 2, id: 1 };
    await send('touchStart', [first]);
    await send('touchStart', [first, { x: 200, y: 200, id: 2 }]);
    await send('touchMove', [{ ...first, x: x + w * 0.5 }, { x: 220, y: 200, id: 2 }]);
    await send('touchCancel', []);
    await settle(page);
    const held = (await snapshot(page)).config;
    await drag(page, [[200, 150], [260, 150]]);
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, held);
    const { frame } = await snapshot(page);
    await page.waitForTimeout(500);
    assert.equal((await snapshot(page)).frame, frame, 'something is still held');
  });
});

// The keyboard's way to a control of the canvas.
async function focusOnCanvas(page, id) {
  await page.locator('#canvas').focus();
  for (let i = 0; i < 60; ++i) {
    if (await page.evaluate(() => globalThis.hearthsight.snapshot().focus) === id) return;
    await page.keyboard.press('Tab');
    await page.waitForTimeout(30);
  }
  assert.fail(`the keyboard does not reach ${id}`);
}

for (const field of mainFields) {
  test(`the keyboard moves ${field} on the canvas`, async () => {
    await withPage({ device: devices.desktop }, async (page) => {
      await settle(page);
      const before = await snapshot(page);
      await focusOnCanvas(page, `field:${field}`);
      await page.keyboard.press('ArrowRight');
      await settle(page);
      const after = await snapshot(page);
      assert.notEqual(at(after.config, field), at(before.config, field));
      await page.keyboard.press('Control+z');
      await settle(page);
      assert.deepEqual((await snapshot(page)).config, before.config);
      await page.keyboard.press('Control+Shift+z');
      await settle(page);
      assert.deepEqual((await snapshot(page)).config, after.config);
    });
  });
}

test('Tab leaves the canvas at its end, and Escape leaves it at once', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await settle(page);
    const inside = () => page.evaluate(() => document.activeElement.id === 'canvas');
    await page.locator('#canvas').focus();
    let presses = 0;
    while (await inside() && presses < 80) {
      await page.keyboard.press('Tab');
      presses += 1;
    }
    assert.ok(presses < 80, 'the canvas is a trap');
    await page.keyboard.press('Shift+Tab');
    assert.ok(await inside(), 'Shift+Tab does not lead back');
    await page.keyboard.press('Escape');
    assert.ok(!await inside());
  });
});

test('a mouse drags a control and the wheel breaks nothing', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    await page.mouse.move(x + w * 0.4, y + h / 2);
    await page.mouse.down();
    await page.mouse.move(x + w * 0.7, y + h / 2, { steps: 5 });
    await page.mouse.up();
    await page.mouse.wheel(0, 200);
    await settle(page);
    assert.notEqual(at((await snapshot(page)).config, 'view.standoff_mm'), at(before, 'view.standoff_mm'));
  });
});

test('who looks is one choice: taken on the canvas or in the form, both show it', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await settle(page);
    const chosen = () => page.locator('#looking').inputValue();
    assert.equal(await chosen(), '0');
    const [x, y] = middle(await item(page, 'action:person'));
    await page.mouse.click(x, y);
    await page.waitForFunction(() => document.getElementById('looking').value === '1');
    await settle(page);  // the canvas draws after the document has heard
    const shown = (await item(page, 'action:person')).label;
    await page.locator('#looking').selectOption('0');
    await settle(page);
    assert.notEqual((await item(page, 'action:person')).label, shown);
    assert.equal(await chosen(), '0');
  });
});
