// Reading the ground on a phone, by emulated touch: points on a small plan, readings in fractions,
// what is doubtful, read twice or from a new line, and what comes of it.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import test from 'node:test';
import { devices, keepPicture, keptSoon, openSheet, root, settle, snapshot, withPage } from '../support/page.mjs';

const program = process.env.HEARTHSIGHT || path.join(root, 'build', 'native', 'hearthsight');
const shelter = () => execFileSync(program,
  ['link', path.join(root, 'presets/stations/garden_shelter.json')], { encoding: 'utf8' }).trim();
const inches = { before: () => localStorage.setItem('hearthsight:units', 'inch') };

const head = (page) => page.locator('#point-head').textContent();
const reading = (page) => page.locator('#ground [data-path$="reading_mm"] input');
const points = async (page) => (await page.evaluate(() => globalThis.hearthsight.snapshot().config)).survey?.points ?? [];

async function tapPoint(page, index) {
  const mark = page.locator(`#ground [data-point="${index}"]`);
  // In the middle of the screen: at its edges the tools lie over the sheet.
  await mark.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const { x, y, width, height } = await mark.boundingBox();
  await page.touchscreen.tap(x + width / 2, y + height / 2);
  await page.waitForFunction((wanted) =>
    document.getElementById('point-head').textContent.startsWith(`Point ${wanted} of`), index + 1);
}
async function setOut(page) {
  await openSheet(page, 'oven');
  await page.locator('#set-out').tap();
  await page.locator('#point-head').waitFor({ state: 'visible' });
}
// A reading as it is typed, and on to the next point.
async function type(page, text) {
  await reading(page).fill(text);
  await reading(page).press('Enter');
  await settle(page);
}

test('points are set out, tapped on the plan, and read in fractions, one after the other', async () => {
  await withPage({ device: devices.tallPhone, ...inches }, async (page) => {
    await setOut(page);
    const all = await points(page);
    assert.ok(all.length >= 10 && all.length <= 40, `${all.length} points`);
    assert.equal(all.filter(({ kind }) => kind === 'feet').length, 3);
    assert.ok(all.every((point) => point.reading_mm === undefined));
    await tapPoint(page, 3);
    await type(page, '58 1/4');
    assert.equal((await points(page))[3].reading_mm, 1479.6);
    assert.match(await head(page), /^Point 5 of /);
    await type(page, '1481 mm');
    assert.equal((await points(page))[4].reading_mm, 1481);
    // What cannot be read is refused in words, and its point stays.
    await reading(page).fill('58 1/x');
    await page.locator('#point-next').tap();
    await settle(page);
    assert.match(await head(page), /^Point 6 of /);
    assert.ok((await page.locator('#ground .card .error').first().textContent()).length > 10);
    assert.equal((await points(page))[5].reading_mm, undefined);
    await type(page, '58');
    assert.match(await head(page), /^Point 7 of /);
    assert.match(await page.locator('#points-left').textContent(), new RegExp(`^3 of ${all.length} read`));
    // Every target is large enough for a thumb.
    for (const button of await page.locator('#ground button:visible').all()) {
      const box = await button.boundingBox();
      assert.ok(box.height >= 47.9, `${await button.textContent()} is ${box.height} px high`);
    }
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  });
});

for (const name of ['tallPhone', 'sidePhone']) {
  test(`the fractions of a reading stand beside its question, never over it, and move nothing, ${name}`, async () => {
    await withPage({ device: devices[name], ...inches }, async (page) => {
      await setOut(page);
      const field = page.locator('#ground [data-path$="reading_mm"]');
      const chips = field.locator('.chips');
      const next = () => page.locator('#point-next').evaluate((button) => button.offsetTop - button.closest('.card').offsetTop);
      const before = await next();
      await reading(page).tap();
      await settle(page);
      const box = await chips.boundingBox();
      for (const other of [field.locator('label'), reading(page), page.locator('#point-next'), page.locator('.tools'), page.locator('#bar')]) {
        const { x, y, width, height } = await other.boundingBox();
        const apart = x + width <= box.x + 0.5 || box.x + box.width <= x + 0.5 || y + height <= box.y + 0.5 || box.y + box.height <= y + 0.5;
        assert.ok(apart, `they lie over ${await other.evaluate((element) => element.outerHTML.slice(0, 60))}`);
      }
      assert.ok(box.y >= 0 && box.y + box.height <= devices[name].viewport.height, 'they are off the screen');
      assert.equal(await next(), before);
      await reading(page).fill('58');
      await chips.locator('button', { hasText: '1/4' }).tap();
      await settle(page);
      assert.equal(await reading(page).inputValue(), '58 1/4');
      assert.equal(await next(), before);
      await page.locator('#point-next').tap();
      await settle(page);
      assert.equal((await points(page))[0].reading_mm, 1479.6);
    });
  });
}

test('a doubtful reading shows itself; read again, and from a second line, the lines close', async () => {
  await withPage({ device: devices.phone, ...inches }, async (page) => {
    await setOut(page);
    const count = (await points(page)).length;
    const placed = await points(page);
    for (let i = 0; i < count; ++i) {
      await tapPoint(page, i);
      // Falls 1 in 50 to the front; one tape was read two inches off.
      const mm = 1500 - 0.02 * (placed[i].y_mm ?? 0) + (i === 4 ? 51 : 0);
      await type(page, `${mm.toFixed(1)} mm`);
    }
    assert.match(await page.locator('#points-left').textContent(), new RegExp(`^All ${count} are read`));
    assert.equal(await page.locator('#ground .spot.doubtful').count(), 1);
    assert.equal(await page.locator('#ground .spot.doubtful').getAttribute('data-point'), '4');
    assert.match(await page.locator('#ground-told').textContent(), /doubtful|off|again/i);
    await tapPoint(page, 4);
    assert.match(await page.locator('#point-state').textContent(), /doubtful: read it again/);
    await reading(page).fill(`${(1500 - 0.02 * (placed[4].y_mm ?? 0)).toFixed(1)} mm`);
    await reading(page).press('Enter');
    await settle(page);
    assert.equal(await page.locator('#ground .spot.doubtful').count(), 0);

    // Two points from a second line, 30 mm higher: joined, and closed to what was typed.
    for (const [index, off] of [[0, 0], [6, 1.5]]) {
      await tapPoint(page, index);
      // The first new line is b; the second reading is of that line too.
      await page.locator(index === 0 ? '#point-line' : '#point-again').tap();
      await settle(page);
      const at = (await points(page)).length - 1;
      assert.match(await head(page), new RegExp(`^Point ${at + 1} of ${at + 1}`));
      assert.match(await page.locator('#point-state').textContent(), /level line B/);
      await type(page, `${(1530 - 0.02 * (placed[index].y_mm ?? 0) + off).toFixed(1)} mm`);
    }
    const { report } = await snapshot(page);
    const { survey } = report;
    assert.equal(survey.level_lines.length, 2);
    assert.ok(Math.abs(survey.loops[0].closing_error_mm - 1.5) < 0.11, JSON.stringify(survey.loops));
    assert.ok(await page.locator('#ground .twice').count() >= 2, 'read twice, and not shown so');
    assert.match(await page.locator('#ground-told').textContent(), /close|line/i);

    const before = (await points(page)).length;
    await page.locator('#ground details').evaluate((part) => { part.open = true; });
    await page.locator('#point-remove').tap();
    await settle(page);
    assert.equal((await points(page)).length, before - 1);
  });
});

test('what is read after a new line is of that line, also after a reload; the next one waits for it', async () => {
  await withPage({ device: devices.tallPhone, ...inches }, async (page) => {
    await setOut(page);
    const state = page.locator('#point-state');
    const setups = async () => (await points(page)).map(({ setup = 'a' }) => setup);
    for (const text of ['58', '58 1/4', '58 1/2', '58 3/4']) await type(page, text);
    const count = (await points(page)).length;
    await tapPoint(page, 0);
    await page.locator('#point-line').tap();
    await settle(page);
    assert.match(await head(page), new RegExp(`^Point ${count + 1} of ${count + 1}`));
    await type(page, '60');
    assert.match(await head(page), /^Point 5 of /);
    assert.match(await state.textContent(), /level line B/);
    await type(page, '60 1/4');
    assert.deepEqual((await setups()).slice(0, 5), ['a', 'a', 'a', 'a', 'b']);
    // One shared point joins the lines and checks nothing.
    await page.locator('#point-line').tap();
    await settle(page);
    assert.match(await page.locator('#line-needs').textContent(), /^Level line B still needs two points .* it has one\. Tap such a point/);
    assert.equal((await points(page)).length, count + 1);
    assert.ok(!(await setups()).includes('c'));
    await keptSoon(page);

    await page.reload();
    await page.waitForFunction(() => !document.getElementById('panels').hidden);
    if (!await page.locator('#point-head').isVisible()) await openSheet(page, 'oven');
    await tapPoint(page, 6);
    assert.match(await state.textContent(), /level line B/);
    await type(page, '60 1/2');
    assert.equal((await setups())[6], 'b');
    await tapPoint(page, 1);
    await page.locator('#point-again').tap();
    await settle(page);
    assert.match(await state.textContent(), /level line B/);
    await type(page, '60 1/4');
    await tapPoint(page, 2);
    await page.locator('#point-line').tap();
    await settle(page);
    assert.match(await page.locator('#line-needs').textContent(), /^Level line C still needs two points .* it has none/);
    assert.match(await state.textContent(), /level line C/);
    await page.locator('#undo').tap();
    await settle(page);
    assert.equal(await page.locator('#line-needs').textContent(), '');
    // Where nothing is read yet, there is nothing to read again.
    await tapPoint(page, 7);
    await page.locator('#point-line').tap();
    await settle(page);
    assert.match(await head(page), /^Point 8 of /);
    assert.match(await state.textContent(), /level line C; to be read/);
    assert.equal((await points(page)).length, count + 2);
    // One step, back and forth.
    await page.locator('#undo').tap();
    await settle(page);
    assert.equal((await points(page)).length, count + 2);
    assert.ok(!(await setups()).includes('c'));
  });
});

test('beside the readings stands what is high and where it falls, with the ways to it and back', async () => {
  await withPage({ device: devices.tallPhone, fragment: shelter(), ...inches }, async (page) => {
    const { report } = await snapshot(page);
    const { survey } = report;
    const number = (index) => survey.points[index].reading + 1;
    await openSheet(page, 'oven');
    const lie = await page.locator('#ground-lie').textContent();
    assert.match(lie, new RegExp(`^Highest: point ${number(survey.highest_point)}, .* in above; lowest: point ${number(survey.lowest_point)}, .* in below; both from where feet stand\\. It falls to the ${survey.plane.falls_to}\\.$`));
    for (const [name, wanted] of [['What is high', /What the ground does/], ['The fall', /ground as read falls/], ['The cuts', /Panels of the base/]]) {
      await page.locator('#ground-ways button', { hasText: name }).tap();
      await page.locator('#panel-why').waitFor({ state: 'visible' });
      await page.waitForFunction((source) => {
        const part = document.activeElement.closest('.finding, .scroll');
        if (!part || !new RegExp(source).test(part.textContent)) return false;
        const { top, bottom } = part.getBoundingClientRect();
        return top >= document.querySelector('.tools').getBoundingClientRect().bottom - 1 && top < innerHeight - 100 && bottom > 0;
      }, wanted.source);
      // A table that is over by less than anyone sees does not send a reader to its side.
      assert.deepEqual(await page.locator('section[data-section="ground"] .scroll').evaluateAll((all) => all.map((box) =>
        (box.scrollWidth - box.clientWidth >= 8) === Boolean(box.dataset.more))), [true, true, true, true]);
      await page.locator('[data-section="ground"] button', { hasText: 'The readings, point by point' }).tap();
      await page.locator('#point-head').waitFor({ state: 'visible' });
      assert.ok(await page.locator('#point-head').evaluate((element) => element === document.activeElement));
    }
  });
  // Without readings there is nothing to say, and nowhere to go.
  await withPage({ device: devices.tallPhone }, async (page) => {
    await setOut(page);
    assert.ok(!await page.locator('#ground-lie').isVisible());
    assert.equal(await page.locator('#ground-ways button:visible').count(), 0);
  });
});

test('a surveyed station shows its points, cuts, cabinets and loads, and hands over its strips', async () => {
  const link = shelter();
  for (const [name, device] of Object.entries({ phone: devices.tallPhone, side: devices.sidePhone, tablet: devices.tablet, desktop: devices.desktop })) {
    await withPage({ device, fragment: link }, async (page) => {
      if (name !== 'desktop') await openSheet(page, 'oven');
      await page.locator('#ground .ground-plan').scrollIntoViewIfNeeded();
      await keepPicture(page, `ground-${name}`);
      assert.equal(await page.locator('#ground .spot').count(), 24);
      const box = await page.locator('#ground .ground-plan').boundingBox();
      assert.ok(box.width > 250 && box.height > 60, `${box.width} by ${box.height}`);
      if (name !== 'desktop') for (const index of [4, 21, 8]) await tapPoint(page, index);
      if (name === 'phone') {
        const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-strips').tap()]);
        assert.equal(download.suggestedFilename(), 'hearthsight-strips.html');
        const html = await readFile(await download.path(), 'utf8');
        // Page and command line hand over the same sheets.
        const units = await page.evaluate(() => localStorage.getItem('hearthsight:units') ?? 'inch');
        const native = execFileSync(program, ['template', path.join(root, 'presets/stations/garden_shelter.json'),
          '--paper', units === 'mm' ? 'a4' : 'letter', '--units', units], { encoding: 'utf8', maxBuffer: 1 << 26 });
        assert.equal(html, native);
      }
      if (name !== 'desktop') await openSheet(page, 'why');
      const loads = page.locator('[data-section="loads"]');
      await loads.scrollIntoViewIfNeeded();
      const captions = await loads.locator('caption').allTextContents();
      for (const wanted of [/^Tipping/, /What would tip it/, /What people lift/, /Growth/, /Masses/]) {
        assert.ok(captions.some((caption) => wanted.test(caption)), `${wanted} is not among ${captions}`);
      }
      await keepPicture(page, `loads-${name}`);
      for (const drawing of ['frame_front', 'frame_side', 'frame_pulled_apart']) {
        const part = page.locator(`#drawings > [data-name="${drawing}"]`);
        await part.locator('summary').click();
        await page.waitForFunction((wanted) => {
          const image = document.querySelector(`#drawings > [data-name="${wanted}"] img`);
          return image.complete && image.naturalWidth > 0;
        }, drawing);
        await part.scrollIntoViewIfNeeded();
        await keepPicture(page, `${drawing}-${name}`);
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    });
  }
});
