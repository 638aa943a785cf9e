// The first minute: who knows only the address has heights for two people after three answers.
import assert from 'node:assert/strict';
import test from 'node:test';
import { configOf, devices, evaluateNatively, fragment, keepPicture, openSheet, phone, settle, snapshot, titled, told, withPage, world } from '../support/page.mjs';

const button = (page) => page.locator('#bar [data-sheet="start"]');

test('knowing only the address: heights for two people, in under 90 s of the page\'s own time', async () => {
  for (const locale of ['en-US', 'en-GB']) {
    await withPage({ extra: { locale } }, async (page) => {
      assert.ok(!await page.locator('#notice').isVisible(), 'something stands before the station');
      assert.equal(await page.locator('dialog, [role="dialog"]').count(), 0);
      await keepPicture(page, `start-first-${locale}`);
      await button(page).tap();
      await page.locator('#start-kind').waitFor();
      assert.equal(await page.locator('#panel-start').locator('input, select').count(), 3, 'more than three questions');
      await page.locator('#start-kind').selectOption('masonry_dome_28');
      await page.locator('#start-tall').fill(locale === 'en-US' ? '6\' 1"' : '185');
      await page.locator('#start-short').fill(locale === 'en-US' ? '5 ft 4' : '1.63');
      await keepPicture(page, `start-answers-${locale}`);
      await page.getByRole('button', { name: 'Show my heights' }).tap();
      await settle(page);
      const took = await page.evaluate(() => performance.now());
      assert.ok(took < 90000, `${took} ms`);
      const { config: now, report } = await snapshot(page);
      assert.equal(now.cooks.length, 2);
      assert.deepEqual(now.cooks.map(({ stature_mm: mm }) => mm), locale === 'en-US' ? [1854.2, 1625.6] : [1850, 1630]);
      assert.equal(now.oven.kind, 'masonry_dome_28');
      assert.equal(now.title, undefined, 'the invented household is still in it');
      // Said back right: on the screen, to a reader, and by the command line.
      assert.ok(!await page.locator('#document').isVisible(), 'the sheet hides the answer');
      await page.waitForTimeout(700);
      const live = await page.locator('#live').textContent();
      assert.match(live, /counter/i);
      const native = evaluateNatively(await fragment(page));
      if (native) {
        assert.equal(native.recommended.counter_height_mm, report.recommended.counter_height_mm);
        const build = native.recommended_build;
        const text = locale === 'en-US' ? build.inch.counter_height_text : `${build.mm.counter_height_mm} mm`;
        assert.ok(live.includes(text), `${live} does not say ${text}`);
      }
      await keepPicture(page, `start-heights-${locale}`);
      // Nothing asks again.
      assert.ok(!await button(page).isVisible());
      // The example is one step back.
      await page.goBack();
      await settle(page);
      assert.equal((await configOf(page)).cooks.length, 3);
      assert.ok(await button(page).isVisible());
    });
  }
});

test('an answer that cannot be is said beside the question, and the station stays', async () => {
  await withPage({ extra: { locale: 'en-US' } }, async (page) => {
    const before = await configOf(page);
    await button(page).tap();
    await page.getByRole('button', { name: 'Show my heights' }).tap();
    assert.match(await page.locator('#start-error').textContent(), /height/);
    assert.ok(await page.locator('#start-tall').evaluate((input) => input === document.activeElement));
    await page.locator('#start-tall').fill('tall');
    await page.getByRole('button', { name: 'Show my heights' }).tap();
    assert.match(await page.locator('#start-error').textContent(), /ft|in/);
    await keepPicture(page, 'start-refused');
    await page.locator('#start-tall').fill('6 ft');
    await page.locator('#start-short').fill('12');
    await page.getByRole('button', { name: 'Show my heights' }).tap();
    assert.ok(await page.locator('#start-short').evaluate((input) => input === document.activeElement));
    assert.deepEqual(await configOf(page), before);
    await page.locator('#start-short').fill('');
    await page.getByRole('button', { name: 'Show my heights' }).tap();
    await settle(page);
    assert.equal((await configOf(page)).cooks.length, 1);
  });
});

test('it can be left alone, and a station of one\'s own is never asked', async () => {
  const context = await world.browser.newContext({ ...phone, serviceWorkers: 'block' });
  await withPage({ context }, async (page) => {
    await titled(page, 'Mine');
    assert.ok(!await button(page).isVisible());
  });
  await withPage({ context }, async (page) => {
    assert.ok(!await button(page).isVisible());
    assert.ok(!await page.locator('#panel-start').isVisible());
  });
  await context.close();
});

test('heights said in metres are answered in millimetres, on A4, until a person chooses', async () => {
  for (const [said, units, paper] of [['1.85 m', 'mm', 'a4'], ['1,85m', 'mm', 'a4'], ['185 cm', 'mm', 'a4'], ['178', 'mm', 'a4'], ['5 ft 10 in', 'inch', 'letter'], ['70', 'inch', 'letter']]) {
    await withPage({ extra: { locale: 'en-US' } }, async (page) => {
      assert.equal(await page.locator('#packet-paper').inputValue(), 'letter');
      await button(page).tap();
      await page.locator('#start-tall').fill(said);
      await page.getByRole('button', { name: 'Show my heights' }).tap();
      await settle(page);
      assert.equal((await snapshot(page)).items.find(({ id }) => id === 'action:units').value, units === 'mm' ? 'mm' : 'in', said);
      await openSheet(page, 'share');
      assert.ok(await page.locator(`input[name="units"][value="${units}"]`).isChecked(), said);
      assert.equal(await page.locator('#packet-paper').inputValue(), paper, said);
      if (said !== '1.85 m') return;
      // A person's own choice of paper and of units stands from then on.
      await page.locator('#packet-paper').selectOption('a4');
      await page.getByLabel('Feet and inches').check();
      await settle(page);
      assert.equal(await page.locator('#packet-paper').inputValue(), 'a4');
      await page.getByRole('button', { name: 'Start again' }).filter({ visible: true }).tap();
      await page.locator('#start-tall').fill('180 cm');
      await page.getByRole('button', { name: 'Show my heights' }).tap();
      await settle(page);
      assert.equal((await configOf(page)).cooks[0].stature_mm, 1800);
      assert.equal((await snapshot(page)).items.find(({ id }) => id === 'action:units').value, 'in');
    });
  }
});

test('after the first time the three questions are one tap away, and what was there is kept', async () => {
  for (const device of [devices.tallPhone, devices.desktop]) {
    await withPage({ device, extra: { locale: 'en-GB' } }, async (page) => {
      const again = page.getByRole('button', { name: 'Start again' }).filter({ visible: true });
      assert.equal(await again.count(), 0);
      await titled(page, 'First');
      if (device === devices.tallPhone) await openSheet(page, 'people');
      await keepPicture(page, `start-again-${device === devices.desktop ? 'desktop' : 'phone'}`);
      await again.first().click();
      await page.locator('#start-tall').waitFor();
      assert.ok(await page.locator('#head-start').evaluate((head) => head === document.activeElement));
      assert.match(await page.locator('#panel-start p').first().textContent(), /is kept on this device/);
      await page.locator('#start-tall').fill('185');
      await page.getByRole('button', { name: 'Show my heights' }).click();
      await settle(page);
      assert.equal((await configOf(page)).cooks.length, 1);
      assert.ok(!await page.locator('#panel-start').isVisible());
      await told(page, /is kept/);
      await page.getByRole('button', { name: 'Back to it' }).click();
      await settle(page);
      assert.equal((await configOf(page)).title, 'First');
    });
  }
});

test('the three questions fit every screen, in reach of a thumb', async () => {
  for (const name of ['tallPhone', 'sidePhone', 'tablet', 'desktop']) {
    await withPage({ device: devices[name] }, async (page) => {
      if (name === 'desktop') await page.locator('#start-kind').waitFor(); else await button(page).tap();
      await page.locator('#start-kind').waitFor();
      await page.waitForTimeout(200);
      await keepPicture(page, `start-${name}`);
      const boxes = await page.locator('#panel-start').locator('input, select, button').evaluateAll((all) => all.map((one) => {
        const box = one.getBoundingClientRect();
        return [one.id || one.textContent, box.height, box.left >= 0 && box.right <= innerWidth];
      }));
      for (const [what, height, fits] of boxes) assert.ok(height >= 48 && fits, `${name}: ${what} ${height}`);
      const bar = await page.locator('#bar button:visible').evaluateAll((all) => all.map((one) => [one.textContent, one.scrollWidth <= one.clientWidth + 1, one.getBoundingClientRect().height]));
      for (const [word, fits, height] of bar) assert.ok(fits && height >= 48, `${name}: ${word} in the bar`);
    });
  }
});
