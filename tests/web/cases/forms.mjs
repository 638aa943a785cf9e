// The forms: everything that is typed, made from the field table.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, fromDesk, openSheet, settle, snapshot, withPage } from '../support/page.mjs';

const wide = { device: devices.desktop };
const openAll = (page) => page.evaluate(() => {
  for (const details of document.querySelectorAll('#panels details')) details.open = true;
});
const field = (page, path) => page.locator(`[data-path="${path}"]`).first();
const control = (page, path) => field(page, path).locator('input, select').first();

test('typing, Backspace and Tab work in every input of the page', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const inputs = await page.locator('#document input[type="text"]:not([readonly])').all();
    assert.ok(inputs.length > 50, `only ${inputs.length} inputs`);
    for (const input of inputs) {
      if (!await input.isVisible()) continue;
      const name = await input.evaluate((element) => element.labels[0]?.textContent);
      assert.ok(name, 'an input without a label');
      const before = await input.inputValue();
      await input.focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('12z');
      assert.equal(await input.inputValue(), '12z', name);
      await page.keyboard.press('Backspace');
      assert.equal(await input.inputValue(), '12', name);
      // What was there goes back in, so that no field is refused for another one's sake.
      await page.keyboard.press('Control+a');
      await page.keyboard.press('Delete');
      if (before) await page.keyboard.type(before);
      await page.keyboard.press('Tab');
      assert.ok(!await input.evaluate((element) => element === document.activeElement), `Tab does not leave ${name}`);
    }
  });
});

test('no input is smaller than 16 px, which would make a phone zoom', async () => {
  await withPage({}, async (page) => {
    const sizes = await page.$$eval('#document input[type="text"], #document select',
      (all) => all.map((element) => Number.parseFloat(getComputedStyle(element).fontSize)));
    assert.ok(Math.min(...sizes) >= 16, String(Math.min(...sizes)));
  });
});

test('every field of the table has its control, with a question, and help where there is some', async () => {
  await withPage(wide, async (page) => {
    // One for each row of a list: nobody has read the ground here yet.
    const rows = (await fromDesk(page, 'fields_json')).fields;
    for (const row of rows) {
      for (let i = 0; i < row.values.length; ++i) {
        const root = field(page, row.path.replace('[]', `.${i}`));
        assert.equal(await root.count(), 1, row.path);
        assert.ok((await root.locator('label').first().textContent()).includes(row.question), row.path);
        if (row.measure) assert.ok((await root.textContent()).includes(row.measure), row.path);
      }
    }
  });
});

test('a refused value is explained beside its field and changes nothing', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const before = (await snapshot(page)).config;
    const input = control(page, 'cooks.0.stature_mm');
    await input.fill('9000 mm');
    await input.press('Enter');
    await settle(page);
    assert.equal(await input.getAttribute('aria-invalid'), 'true');
    const described = (await input.getAttribute('aria-describedby')).split(' ');
    const words = await page.evaluate((ids) => ids.map((id) => document.getElementById(id).textContent).join(' '), described);
    assert.match(words, /\d/, 'the message gives no range');
    assert.equal(await input.inputValue(), '9000 mm', 'what was typed is gone');
    assert.deepEqual((await snapshot(page)).config, before);
    await input.fill('1812 mm');
    await input.press('Enter');
    await settle(page);
    assert.equal(await input.getAttribute('aria-invalid'), null);
    assert.equal((await snapshot(page)).config.cooks[0].stature_mm, 1812);
  });
});

test('lengths are read in feet, inches, fractions, mm and cm, with a comma too', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const input = control(page, 'cooks.0.stature_mm');
    const texts = { "5' 10 1/2\"": 1790.7, '70 1/2 in': 1790.7, '1790 mm': 1790, '178,5 cm': 1785, '1.8 m': 1800 };
    for (const [text, mm] of Object.entries(texts)) {
      await input.fill(text);
      await input.press('Enter');
      await settle(page);
      assert.equal((await snapshot(page)).config.cooks[0].stature_mm, mm, text);
    }
  });
});

test('steppers set a value without a keyboard, and the cross makes it not known again', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const root = field(page, 'cooks.0.eye_height_mm');
    const before = (await snapshot(page)).config.cooks[0].eye_height_mm;
    await root.getByRole('button', { name: /^More/ }).click();
    await settle(page);
    const first = (await snapshot(page)).config.cooks[0].eye_height_mm;
    assert.equal(typeof first, 'number');
    assert.notEqual(first, before);
    await root.getByRole('button', { name: /^More/ }).click();
    await settle(page);
    const second = (await snapshot(page)).config.cooks[0].eye_height_mm;
    assert.ok(Math.abs(second - first - 6.35) < 0.11, `a quarter of an inch, not ${second - first} mm`);
    await root.getByRole('button', { name: /^Not known/ }).click();
    await settle(page);
    assert.ok([null, undefined].includes((await snapshot(page)).config.cooks[0].eye_height_mm));
    assert.equal(await control(page, 'cooks.0.eye_height_mm').inputValue(), '');
  });
});

test('cooks are added, named and removed, and a field in use keeps the focus', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'people');
    const count = (await snapshot(page)).config.cooks.length;
    await page.locator('#add-cook').click();
    const name = control(page, `cooks.${count}.name`);
    await page.waitForFunction(() => document.activeElement.localName === 'input');
    assert.ok(await name.evaluate((element) => element === document.activeElement));
    await name.fill('Grandmother');
    await name.press('Tab');
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks[count].name, 'Grandmother');
    assert.ok(await page.getByRole('group', { name: 'Grandmother' }).isVisible());
    const tall = control(page, `cooks.${count}.stature_mm`);
    await tall.fill('1500 mm');
    await tall.press('Enter');
    await settle(page);
    assert.ok(await tall.evaluate((element) => element === document.activeElement), 'the focus is gone');
    await page.getByRole('button', { name: 'Remove Grandmother' }).click();
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks.length, count);
    assert.match(await page.locator('#live').textContent(), /Grandmother removed/);
    // The place on the page is kept: the focus is on who stands there now.
    assert.equal(await page.evaluate(() => [...document.querySelectorAll('#cooks > fieldset')].indexOf(document.activeElement)), count - 1);
    assert.ok(await page.locator('#cooks > fieldset').last().isVisible());
  });
});

test('a name that is tapped is replaced by what is typed, and a second tap sets the caret', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'people');
    const name = control(page, 'cooks.0.name');
    await name.tap();
    await page.keyboard.type('Bela');
    await page.keyboard.press('Enter');
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks[0].name, 'Bela');
    // In the field already: a tap is for one place in it.
    await name.tap();
    assert.ok(await name.evaluate((input) => input.selectionStart === input.selectionEnd));
    await page.keyboard.press('End');
    await page.keyboard.type('s');
    await page.keyboard.press('Enter');
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks[0].name, 'Belas');
  });
});

test('what is changed in the document is on the canvas, and the other way round', async () => {
  await withPage(wide, async (page) => {
    await settle(page);
    const input = control(page, 'view.standoff_mm');
    await input.fill('900 mm');
    await input.press('Enter');
    await settle(page);
    const { items, config } = await snapshot(page);
    assert.equal(config.view.standoff_mm, 900);
    assert.equal(items.find(({ id }) => id === 'field:view.standoff_mm').value, 900);
    const shown = await input.inputValue();
    await page.locator('#undo').click();
    await settle(page);
    assert.notEqual(await input.inputValue(), shown);
  });
});

test('units are the device\'s: the texts change, the station and its link do not', async () => {
  await withPage(wide, async (page) => {
    await settle(page);
    const before = await snapshot(page);
    const link = await page.evaluate(() => location.hash);
    const input = control(page, 'view.standoff_mm');
    const inches = await input.inputValue();
    await page.getByLabel('Millimetres').check();
    await settle(page);
    assert.equal(await input.inputValue(), String(before.report.used.standoff_mm));
    assert.notEqual(await input.inputValue(), inches);
    const after = await snapshot(page);
    assert.deepEqual(after.config, before.config);
    assert.deepEqual(after.report, before.report);
    assert.equal(await page.evaluate(() => location.hash), link);
    assert.ok(await page.locator('#undo').isDisabled(), 'changing units is no step to undo');
    await page.reload();
    await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0);
    await page.locator('#panels').waitFor();
    assert.equal(await control(page, 'view.standoff_mm').inputValue(), String(before.report.used.standoff_mm));
  });
});

test('beside inches a temperature is in °F and a mass in lb, and what is kept stays', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const kept = async () => (await snapshot(page)).config.oven;
    const unit = (path) => field(page, path).locator('.unit').textContent();
    const before = await kept();
    assert.equal(await unit('oven.floor_temp_c'), '°F');
    assert.equal(await unit('oven.mass_kg'), 'lb');
    const input = control(page, 'oven.floor_temp_c');
    // What stands there, typed again, is no change.
    const shown = await input.inputValue();
    await input.fill('1');
    await input.fill(shown);
    await input.press('Enter');
    await settle(page);
    assert.deepEqual(await kept(), before);
    await input.fill('900');
    await input.press('Enter');
    await settle(page);
    assert.equal((await kept()).floor_temp_c, 482.2);
    await field(page, 'oven.floor_temp_c').getByRole('button', { name: /^More/ }).click();
    await settle(page);
    assert.ok(Number(await input.inputValue()) > 900 && Number(await input.inputValue()) <= 925);
    await input.fill('5000');
    await input.press('Enter');
    await settle(page);
    assert.match(await field(page, 'oven.floor_temp_c').locator('.error').textContent(), /5000.* 32 to 1112 degrees Fahrenheit/);
    const mass = control(page, 'oven.mass_kg');
    await mass.fill('77');
    await mass.press('Enter');
    await settle(page);
    assert.equal((await kept()).mass_kg, 34.9);
    await page.getByLabel('Millimetres').check();
    await settle(page);
    assert.equal(await unit('oven.mass_kg'), 'kg');
    assert.equal(await mass.inputValue(), '34.9');
  });
});

test('units changed on the canvas are the document\'s too, and remembered', async () => {
  await withPage(wide, async (page) => {
    await settle(page);
    const link = await page.evaluate(() => location.hash);
    const { items } = await snapshot(page);
    const [x, y, w, h] = items.find(({ id }) => id === 'action:units').rect;
    await page.mouse.click(x + w / 2, y + h / 2);
    await settle(page);
    assert.ok(await page.getByLabel('Millimetres').isChecked());
    assert.match(await page.locator('#headlines .figure').first().textContent(), /mm/);
    assert.equal(await page.evaluate(() => localStorage.getItem('hearthsight:units')), 'mm');
    assert.equal(await page.evaluate(() => location.hash), link);
  });
});

test('a device that speaks another English starts in millimetres', async () => {
  await withPage({ device: devices.desktop, extra: { locale: 'en-GB' } }, async (page) => {
    assert.ok(await page.getByLabel('Millimetres').isChecked());
  });
});

test('an existing cabinet is answered in one line', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const before = await page.locator('#panels').textContent();
    const input = control(page, 'station.existing_counter_mm');
    await input.fill('36 in');
    await input.press('Enter');
    await settle(page);
    assert.equal((await snapshot(page)).config.station.existing_counter_mm, 914.4);
    const after = await page.locator('#panels').textContent();
    assert.notEqual(after, before);
    assert.match(after, /36 in/);
  });
});

test('a cold trial that disagrees offers its correction, and a yes applies it', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    assert.ok(!await page.locator('#accept-trial').isVisible());
    const { report } = await snapshot(page);
    const predicted = report.cooks.find(({ upright }) => upright?.farthest_visible_mm)?.upright.farthest_visible_mm;
    assert.equal(typeof predicted, 'number');
    const input = control(page, 'trial.cold_farthest_seen_mm');
    // Short of what was worked out by more than the inputs' errors explain together, and by less
    // than four standard errors of the one most likely off: 2.5 for this station's mouth.
    await input.fill(`${Math.round(predicted * 0.9)} mm`);
    await input.press('Enter');
    await settle(page);
    const before = (await snapshot(page)).config;
    await page.locator('#accept-trial').click();
    await settle(page);
    assert.notDeepEqual((await snapshot(page)).config, before);
  });
});

test('a cold mark that no one input explains offers no correction and asks to measure again', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const { report } = await snapshot(page);
    const predicted = report.cooks.find(({ upright }) => upright?.farthest_visible_mm).upright.farthest_visible_mm;
    const input = control(page, 'trial.cold_farthest_seen_mm');
    await input.fill(`${Math.round(predicted * 0.4)} mm`);
    await input.press('Enter');
    await settle(page);
    assert.equal((await snapshot(page)).report.trial.agrees, false);
    assert.ok(!await page.locator('#accept-trial').isVisible());
    assert.match(await page.locator('#panels').textContent(), /measure again/i);
  });
});

test('a cook\'s place says where one works whom nobody has asked', async () => {
  await withPage(wide, async (page) => {
    await openAll(page);
    const usual = (i) => control(page, `cooks.${i}.at`).locator('option').first().textContent();
    assert.equal(await usual(0), 'Oven and dough counter (usual)');
    await control(page, 'cooks.0.build').selectOption('child');
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks[0].build, 'child');
    assert.equal(await usual(0), 'Dough counter only (usual)');
  });
});

test('the live region speaks half a second after the last change, and not before', async () => {
  await withPage(wide, async (page) => {
    await settle(page);
    await page.waitForTimeout(700);
    // The page keeps the times itself: how long a message takes to reach this test is another matter.
    await page.evaluate(() => {
      const live = document.getElementById('live');
      globalThis.times = { changed: 0, spoken: 0 };
      document.addEventListener('change', () => { globalThis.times.changed = performance.now(); }, true);
      new MutationObserver(() => { globalThis.times.spoken ||= performance.now(); })
        .observe(live, { childList: true, characterData: true, subtree: true });
    });
    const input = control(page, 'station.oven_base_height_mm');
    await input.fill('800 mm');
    await input.press('Enter');
    await page.waitForFunction(() => globalThis.times.spoken > 0, null, { timeout: 10000 });
    const { changed, spoken } = await page.evaluate(() => globalThis.times);
    assert.ok(changed > 0, 'the field was not changed');
    assert.ok(spoken - changed >= 499, `it speaks ${spoken - changed} ms after the change`);
  });
});

test('a station is saved as a file and opened from it', async () => {
  await withPage(wide, async (page) => {
    await settle(page);
    const { config } = await snapshot(page);
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-file').click()]);
    const file = await download.path();
    const input = control(page, 'view.standoff_mm');
    await input.fill('1111 mm');
    await input.press('Enter');
    await settle(page);
    await page.locator('#open-file').setInputFiles(file);
    await page.waitForFunction(() => document.getElementById('copy-state').textContent === 'Opened.');
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, config);
    await page.locator('#open-file').setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"format":"other"}') });
    await page.waitForFunction(() => !['', 'Opened.'].includes(document.getElementById('copy-state').textContent));
    assert.deepEqual((await snapshot(page)).config, config);
  });
});
