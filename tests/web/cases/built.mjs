// Pieces as they came out, typed beside their drawn sizes: into the one text that the station keeps.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, openSheet, settle, snapshot, withPage } from '../support/page.mjs';

const kept = async (page) => (await page.evaluate(() => globalThis.hearthsight.snapshot().config)).frame?.as_built ?? '';
const box = (page, name) => page.locator(`#as-built [data-path="frame.as_built.${name}"]`);
async function open(page, units) {
  await openSheet(page, 'oven');
  await page.locator('#as-built > summary').tap();
  assert.ok(await box(page, 'base').locator('.unit').textContent() === units);
}
async function type(page, name, text) {
  const input = box(page, name).locator('input');
  await input.fill(text);
  await input.press('Enter');
  await settle(page);
}

test('pieces that came out other than drawn are typed in fractions beside their drawn sizes', async () => {
  await withPage({ device: devices.tallPhone, before: () => localStorage.setItem('hearthsight:units', 'inch') }, async (page) => {
    await open(page, 'in');
    const { report } = await snapshot(page);
    const { measures } = report.frame;
    const names = await page.locator('#as-built > form > .field').evaluateAll((all) => all.map(({ dataset }) => dataset.path.replace('frame.as_built.', '')));
    assert.deepEqual([...names].sort(), measures.map(({ name }) => name).sort());
    assert.equal(names[0], 'base');
    const words = await page.locator('#as-built > form label').allTextContents();
    for (const text of words) assert.match(text, /^[A-Z][^=_]*: drawn [\d/\u00A0]+\u00A0in$/);
    assert.equal(new Set(words.map((text) => text.split(':')[0])).size, words.length);

    await type(page, 'base', '4 1/8');
    assert.equal(await kept(page), 'base=104.8');
    await type(page, 'dough.box', '741 mm');
    assert.equal(await kept(page), 'base=104.8 dough.box=741');
    assert.equal(await box(page, 'base').locator('input').inputValue(), '4 1/8');
    assert.match(await page.locator('#as-built > summary').textContent(), / 2$/);
    assert.match(await page.locator('#built-told').textContent(), /lands at/);
    // What is refused is said at its box, and what was there stays.
    for (const text of ['4 1/x', '900', '0']) {
      await type(page, 'base', text);
      assert.match(await box(page, 'base').locator('.error').textContent(), text === '4 1/x' ? /^"4 1\/x" is not allowed; give a length, such as / : / is not allowed; give 1\/16 to 275 .* in$/);
      assert.equal(await box(page, 'base').locator('input').getAttribute('aria-invalid'), 'true');
      // The fractions, which are there while the number is typed, do not lie on it.
      const [said, chips] = await Promise.all(['.error', '.chips'].map((part) => box(page, 'base').locator(part).boundingBox()));
      assert.ok(said.y >= chips.y + chips.height || chips.y >= said.y + said.height, 'the fractions hide what is wrong');
      assert.equal(await kept(page), 'base=104.8 dough.box=741');
    }
    await box(page, 'base').locator('.clear').tap();
    await settle(page);
    assert.equal(await kept(page), 'dough.box=741');
    assert.equal(await box(page, 'base').locator('.error').textContent(), '');
    // Fractions begin from what is drawn.
    const riser = box(page, 'riser.height').locator('input');
    await riser.tap();
    await box(page, 'riser.height').locator('.chips button').first().tap();
    await settle(page);
    assert.match(await riser.inputValue(), /^\d+( \d+\/\d+)?$/);
    assert.match(await kept(page), /^dough\.box=741 riser\.height=[\d.]+$/);
    // The text says the same, and what is typed there shows here.
    await page.locator('#as-built > details > summary').tap();
    const text = page.locator('#as-built-text input');
    assert.equal(await text.inputValue(), await kept(page));
    await text.fill('oven.box=735.5');
    await text.press('Enter');
    await settle(page);
    assert.equal(await box(page, 'oven.box').locator('input').inputValue(), '28 15/16');
    assert.equal(await riser.inputValue(), '');
    await text.fill('base=4 1/8 in oven.box=735.5');
    await text.press('Enter');
    await settle(page);
    assert.equal(await box(page, 'base').locator('input').inputValue(), '4 1/8');
    assert.equal(await box(page, 'oven.box').locator('input').inputValue(), '28 15/16');
    await type(page, 'oven.box', '28 7/8');
    assert.equal(await kept(page), 'base=4 1/8 in oven.box=733.4');
    for (const target of await page.locator('#as-built button:visible, #as-built input:visible').all()) {
      assert.ok((await target.boundingBox()).height >= 47.9, await target.evaluate((element) => element.outerHTML));
    }
  });
});

test('in millimetres they are typed as such, and more than the text holds is refused at the box', async () => {
  await withPage({ device: devices.tallPhone, before: () => localStorage.setItem('hearthsight:units', 'mm') }, async (page) => {
    await open(page, 'mm');
    await type(page, 'base', '104.2');
    assert.equal(await kept(page), 'base=104.2');
    await type(page, 'dough.box', '29 1/8 in');
    assert.equal(await kept(page), 'base=104.2 dough.box=739.8');
    for (const [text, mm] of [['740,5', 740.5], ['74 cm', 740], ["2' 5 1/8", 739.8], ['2 ft 5 in', 736.6], ['29.125"', 739.8]]) {
      await type(page, 'dough.box', text);
      assert.equal(await kept(page), `base=104.2 dough.box=${mm}`, text);
    }
    const names = await page.locator('#as-built > form > .field').evaluateAll((all) => all.map(({ dataset }) => dataset.path.replace('frame.as_built.', '')));
    let refused = '';
    for (const name of names.filter((one) => !/^(base|dough\.box)$/.test(one))) {
      await type(page, name, '500');
      refused = await box(page, name).locator('.error').textContent();
      if (refused) break;
    }
    assert.ok(refused.length > 10 && !refused.includes('frame.as_built'), refused);
    assert.ok((await kept(page)).length <= 300);
  });
});
