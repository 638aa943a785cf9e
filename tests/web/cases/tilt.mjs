// The phone's tilt: asked for by a tap, averaged, turned round, told with its error, and never put
// into the plan without a yes. The sensor is made up here: streams with noise, a zero of the phone's
// own, and both makers' signs.
import assert from 'node:assert/strict';
import test from 'node:test';
import { configOf, devices, keepPicture, openSheet, phone, settle, snapshot, withPage } from '../support/page.mjs';

const rad = Math.PI / 180;

// In the page: a sensor that a test can set. `globalThis.tilt = { deg, roll, zero, noise, sign }`.
const sensor = () => {
  globalThis.asked = 0;
  globalThis.tilt = null;
  const normal = () => Array.from({ length: 12 }, Math.random).reduce((a, b) => a + b, -6);
  setInterval(() => {
    if (!globalThis.tilt) return;
    const { deg, roll = 0, zero = 0, noise = 0, sign = 1 } = globalThis.tilt;
    const raised = (deg + zero) * Math.PI / 180;
    const flat = roll * Math.PI / 180;
    const along = [Math.cos(raised) * Math.sin(flat), Math.sin(raised), Math.cos(raised) * Math.cos(flat)]
      .map((part) => sign * 9.81 * (part + noise * normal()));
    dispatchEvent(new DeviceMotionEvent('devicemotion', { accelerationIncludingGravity: { x: along[0], y: along[1], z: along[2] } }));
  }, 16);
};
const asking = (answer) => `(${sensor})(); DeviceMotionEvent.requestPermission = () => { globalThis.asked += 1; return Promise.resolve('${answer}'); };`;

const set = (page, tilt) => page.evaluate((given) => { globalThis.tilt = given; }, tilt);
const part = (page, use) => page.locator(`.tilt[data-use="${use}"]`);
const said = async (page, use) => (await part(page, use).innerText());

async function open(page, use) {
  await openSheet(page, 'oven');
  await part(page, use).locator('summary').tap();
}
async function measure(page, use, button, tilt) {
  await set(page, tilt);
  await part(page, use).getByRole('button', { name: button, exact: true }).tap();
  await part(page, use).locator('p[role="status"]', { hasText: /^Done\.$/ }).waitFor({ timeout: 15000 });
  await set(page, null);
}
// How far below the level the plan has the far edge of the oven's floor.
async function planned(page) {
  const text = await said(page, 'sight');
  return Number(/The plan: ([\d.]+)\u00B0/.exec(text)[1]);
}

test('line of sight: noise is averaged, turning round cancels the zero, and the plan stays as it is', async () => {
  await withPage({ before: sensor }, async (page) => {
    const before = await configOf(page);
    await open(page, 'sight');
    await measure(page, 'sight', 'Measure', { deg: -16, roll: 90, zero: 2, noise: 0.01 });
    let text = await said(page, 'sight');
    // One way alone carries the phone's own zero, and says so.
    const once = Number(/Measured: ([\d.]+)\u00B0/.exec(text)[1]);
    assert.ok(Math.abs(once - 14) < 0.5, text);
    assert.match(text, /\u00B1 1\.1\u00B0/);
    assert.match(text, /Turn the phone round/);
    const plan = await planned(page);
    await keepPicture(page, 'tilt-one-way');
    for (const sign of [1, -1]) {
      await measure(page, 'sight', 'Measure', { deg: -plan, roll: 90, zero: 2, noise: 0.01, sign });
      await measure(page, 'sight', 'Measure turned round', { deg: plan, roll: 90, zero: 2, noise: 0.01, sign });
      text = await said(page, 'sight');
      const both = Number(/Measured: ([\d.]+)\u00B0/.exec(text)[1]);
      assert.ok(Math.abs(both - plan) <= 0.3, text);
      assert.match(text, /own zero, -?2\.[0-2]\u00B0, is cancelled|own zero, -?1\.9\u00B0, is cancelled/);
      assert.match(text, /They agree within their errors/);
      assert.match(text, /\u00B1 0\.[3-5]\u00B0/);
    }
    await keepPicture(page, 'tilt-both-ways');
    await measure(page, 'sight', 'Measure', { deg: -(plan + 6), roll: 90, noise: 0.005 });
    await measure(page, 'sight', 'Measure turned round', { deg: plan + 6, roll: 90, noise: 0.005 });
    assert.match(await said(page, 'sight'), /apart, more than their errors explain/);
    assert.deepEqual(await configOf(page), before, 'a measurement changed the plan');
  });
});

test('the fall of the ground goes into the plan by a tap, and out by undo', async () => {
  await withPage({ before: sensor, extra: { locale: 'en-GB' } }, async (page) => {
    const before = await configOf(page);
    await open(page, 'fall');
    // A quarter inch in a foot is 63.5 mm in 10 ft: 1.1935 degrees.
    const deg = Math.atan(1 / 48) / rad;
    await measure(page, 'fall', 'Measure', { deg: -deg, zero: -1.5, noise: 0.002, sign: -1 });
    assert.doesNotMatch(await said(page, 'fall'), /ground falls/, 'one way says nothing of a slope');
    await measure(page, 'fall', 'Measure turned round', { deg, zero: -1.5, noise: 0.002, sign: -1 });
    const text = await said(page, 'fall');
    const mm = Number(/falls (\d+) mm/.exec(text)[1]);
    assert.ok(Math.abs(mm - 63.5) <= 4, text);
    assert.match(text, /\u00B1 1[67] mm/);
    assert.deepEqual(await configOf(page), before, 'it went into the plan unasked');
    await part(page, 'fall').getByRole('button', { name: /^Put / }).tap();
    await settle(page);
    assert.ok(Math.abs((await configOf(page)).site.fall_mm - mm) <= 0.5);
    assert.match(await said(page, 'fall'), /Undo takes it out/);
    await page.locator('#undo').tap();
    await settle(page);
    assert.deepEqual(await configOf(page), before);
    // Not turned round at all.
    await measure(page, 'fall', 'Measure', { deg: -12 });
    await measure(page, 'fall', 'Measure turned round', { deg: -12 });
    assert.match(await said(page, 'fall'), /do not belong to one line/);
    // A hand that does not keep still.
    await set(page, { deg: -2, noise: 0.2 });
    const shaking = page.evaluate(() => new Promise((done) => {
      let at = 0;
      const timer = setInterval(() => { globalThis.tilt = { deg: at % 2 ? -9 : 4 + at / 20, noise: 0.1 }; at += 1; }, 700);
      setTimeout(() => { clearInterval(timer); done(); }, 7000);
    }));
    await part(page, 'fall').getByRole('button', { name: 'Measure', exact: true }).tap();
    await part(page, 'fall').locator('p[role="status"]', { hasText: /^Done\.$/ }).waitFor({ timeout: 15000 });
    await shaking;
    assert.match(await said(page, 'fall'), /not held still/);
  });
});

test('eye height by two angles: with its error, and as a body height for who knows none', async () => {
  await withPage({ before: sensor, extra: { locale: 'en-GB' } }, async (page) => {
    await open(page, 'eye');
    const names = await part(page, 'eye').locator('option').allTextContents();
    const { cooks } = await configOf(page);
    assert.deepEqual(names, cooks.map(({ name }) => name));
    const guess = cooks.findIndex((cook) => !cook.eye_height_mm && cook.build !== 'child');
    await part(page, 'eye').locator('select').selectOption(String(guess));
    // Phone 1000 mm up, 3000 away; eye at 1600.
    await measure(page, 'eye', 'At the feet', { deg: -Math.atan(1 / 3) / rad, roll: 90, noise: 0.003, zero: 0.4 });
    await measure(page, 'eye', 'At the eye', { deg: Math.atan(0.2) / rad, roll: 90, noise: 0.003, zero: 0.4 });
    assert.match(await said(page, 'eye'), /Give the distance/);
    await page.locator('#tilt-distance').fill('3000');
    await page.locator('#tilt-distance').press('Enter');
    const text = await said(page, 'eye');
    const [, mm, error] = /eye is (\d+) mm above the ground, \u00B1 (\d+) mm/.exec(text).map(Number);
    assert.ok(Math.abs(mm - 1600) < 25, text);
    assert.ok(error >= 24 && error <= 30, text);
    assert.match(text, /from the body height/);
    assert.match(text, /not offered as one/);
    await keepPicture(page, 'tilt-eye');
    await part(page, 'eye').getByRole('button', { name: 'Use that body height' }).tap();
    await settle(page);
    const after = (await configOf(page)).cooks[guess];
    assert.equal(after.eye_height_mm, undefined);
    assert.ok(Math.abs((await snapshot(page)).report.cooks[guess].eye_height_mm - mm) <= 2);
  });
});

test('asked for by a tap only, and where it is refused or missing a tape is named', async () => {
  await withPage({ before: asking('granted') }, async (page) => {
    assert.equal(await page.evaluate(() => globalThis.asked), 0, 'asked without a tap');
    await open(page, 'fall');
    assert.equal(await page.evaluate(() => globalThis.asked), 0);
    await measure(page, 'fall', 'Measure', { deg: 1 });
    assert.equal(await page.evaluate(() => globalThis.asked), 1);
  });
  await withPage({ before: asking('denied') }, async (page) => {
    await open(page, 'fall');
    await set(page, { deg: 1 });
    await part(page, 'fall').getByRole('button', { name: 'Measure', exact: true }).tap();
    await part(page, 'fall').getByText(/a tape or a level says/).waitFor();
  });
  // A desktop has the event and no sensor.
  await withPage({ device: devices.desktop }, async (page) => {
    await part(page, 'fall').locator('summary').click();
    await part(page, 'fall').getByRole('button', { name: 'Measure', exact: true }).click();
    await part(page, 'fall').getByText(/a tape or a level says/).waitFor({ timeout: 15000 });
  });
});

test('every measured field of a cook has its way by tape drawn, and told to who cannot see it', async () => {
  for (const device of [phone, devices.desktop]) {
    await withPage({ device }, async (page) => {
      await openSheet(page, 'people');
      for (const details of await page.locator('#cooks .cook:first-of-type details').all()) await details.evaluate((one) => { one.open = true; });
      for (const key of ['stature_mm', 'eye_height_mm', 'elbow_height_mm', 'shoulder_height_mm', 'shoe_mm']) {
        const root = page.locator(`[data-path="cooks.0.${key}"]`);
        await root.locator('.ask').click();
        const drawing = root.getByRole('img');
        assert.ok(await drawing.isVisible(), key);
        assert.match(await drawing.getAttribute('aria-label'), /tape|thickness/);
        const box = await drawing.boundingBox();
        assert.ok(box.width >= 120 && box.height >= 120, key);
        await drawing.scrollIntoViewIfNeeded();
        await keepPicture(page, `howto-${key}-${device === phone ? 'phone' : 'desktop'}`);
        await root.locator('.ask').click();
      }
    });
  }
});

test('measuring with the phone fits every screen', async () => {
  for (const name of ['tallPhone', 'sidePhone', 'tablet', 'desktop']) {
    await withPage({ device: devices[name] }, async (page) => {
      await openSheet(page, 'oven');
      for (const details of await page.locator('.tilt').all()) await details.evaluate((one) => { one.open = true; });
      await page.locator('#tilt').evaluate((section) => section.scrollIntoView());
      await keepPicture(page, `tilt-${name}`);
      const boxes = await page.locator('#tilt button:visible, #tilt input, #tilt select, #tilt summary').evaluateAll((all) => all.map((one) => {
        const box = one.getBoundingClientRect();
        return [one.textContent, box.height, box.right <= innerWidth];
      }));
      for (const [text, height, fits] of boxes) assert.ok(height >= 48 && fits, `${name}: ${text} ${height}`);
    });
  }
});
