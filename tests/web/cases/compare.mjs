// Two or three kept stations side by side, as tables of the program's own words: only what differs.
import assert from 'node:assert/strict';
import test from 'node:test';
import { change, devices, evaluateNatively, fragment, keepPicture, keptSoon, openSheet, settle, snapshot, titled, withPage } from '../support/page.mjs';

const pick = (page, name) => page.locator('#compare .choice').filter({ hasText: name }).locator('input');
const tables = (page) => page.locator('#compare table').evaluateAll((all) => all.map((table) => ({
  caption: table.caption.textContent,
  columns: [...table.tHead.rows[0].cells].map((cell) => cell.textContent),
  rows: [...table.tBodies[0].rows].map((row) => [...row.cells].map((cell) => cell.textContent)),
})));

// Three stations: by the porch, by the shed with another distance, and the shed with one more cook.
async function three(page) {
  await change(page, 0.2);
  await titled(page, 'Porch');
  await page.getByRole('button', { name: 'Start with the example' }).click();
  await settle(page);
  await change(page, 0.8);
  await titled(page, 'Shed');
  const link = await fragment(page);
  await page.getByRole('button', { name: 'Start with the example' }).click();
  await settle(page);
  await openSheet(page, 'people');
  await page.locator('#add-cook').click();
  await settle(page);
  await keptSoon(page);
  await titled(page, 'Shed for five');
  return link;
}

test('side by side: heights, verdicts, findings and answers, and only what differs', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'share');
    assert.ok(!await page.locator('#compare').isVisible(), 'there is nothing to compare yet');
    await page.locator('#close').click();
    await page.locator('#document').waitFor({ state: 'hidden' });
    const shed = await three(page);
    await pick(page, 'Porch').tap();
    assert.equal(await page.locator('#compare table').count(), 0, 'one alone is compared with nothing');
    await pick(page, /^Shed$/).tap();
    const two = await tables(page);
    const answers = two.find(({ caption }) => caption === 'Answers');
    assert.deepEqual(answers.columns.slice(1).sort(), ['Porch', 'Shed']);
    // Only the distance was changed between the two.
    assert.equal(answers.rows.length, 1, JSON.stringify(answers.rows));
    for (const { caption, columns, rows } of two) {
      for (const cells of rows) {
        assert.equal(cells.length, columns.length);
        assert.ok(new Set(cells.slice(1)).size > 1, `${caption}: ${cells} is the same in both`);
      }
    }
    assert.match(await page.locator('#compare [role="status"]').textContent(), /The same in all of them: /);
    // The words of a verdict are those that the program gives that station alone.
    const native = evaluateNatively(shed);
    const told = two.find(({ caption }) => caption === 'Findings');
    if (native && told) {
      const column = told.columns.indexOf('Shed');
      const words = { ok: 'Good', warn: 'Watch', fail: 'Does not work', unknown: 'Not known' };
      const verdicts = new Set(native.findings.map(({ verdict }) => words[verdict]));
      for (const cells of told.rows) assert.ok(cells[column] === '\u2014' || verdicts.has(cells[column].split(':')[0]), cells[column]);
    }
    await page.locator('#compare').scrollIntoViewIfNeeded();
    await keepPicture(page, 'compare-two');
    // The third is one cook more: not in the two others.
    await pick(page, 'Shed for five').tap();
    const all = await tables(page);
    assert.equal(all[0].columns.length, 4);
    const people = all.find(({ caption }) => caption === 'How it suits whom');
    assert.ok(people.rows.some((cells) => cells.filter((cell) => cell === '\u2014').length === 2));
    await pick(page, 'Porch').tap();
    await pick(page, /^Shed$/).tap();
    assert.equal(await page.locator('#compare table').count(), 0);
  });
});

test('the comparison follows the units, a change and a deletion, and never shows a fourth', async () => {
  await withPage({ device: { ...devices.desktop, hasTouch: true }, extra: { locale: 'en-GB' } }, async (page) => {
    await three(page);
    await page.getByRole('button', { name: 'Start with the example' }).click();
    await settle(page);
    await change(page, 0.5);
    for (const name of ['Porch', /^Shed$/, 'Shed for five']) await pick(page, name).click();
    const boxes = page.locator('#compare input');
    assert.equal(await boxes.count(), 4);
    assert.equal(await page.locator('#compare input:disabled').count(), 1);
    assert.match(JSON.stringify(await tables(page)), / mm/);
    await page.getByLabel('Feet and inches').click();
    await settle(page);
    assert.doesNotMatch(JSON.stringify(await tables(page)), /\d mm/);
    await page.locator('#compare').scrollIntoViewIfNeeded();
    await keepPicture(page, 'compare-three-desktop');
    await page.getByRole('button', { name: 'Delete: Porch' }).click();
    const columns = (await tables(page))[0].columns;
    assert.ok(!columns.includes('Porch'));
    assert.equal(columns.length, 3);
    // Opened, the stations stay as they are: a comparison changes none.
    assert.equal((await snapshot(page)).config.title, 'Example (invented)');
  });
});

test('a comparison fits its screen: what is wider scrolls inside its own box', async () => {
  for (const name of ['tallPhone', 'sidePhone', 'tablet', 'desktop']) {
    await withPage({ device: { ...devices[name], hasTouch: true } }, async (page) => {
      await three(page);
      for (const station of ['Porch', 'Shed for five']) await pick(page, station).check();
      await page.locator('#compare').scrollIntoViewIfNeeded();
      await page.locator('#compare').evaluate((section) => section.scrollIntoView());
      await keepPicture(page, `compare-${name}`);
      assert.ok(await page.locator('#document').evaluate((sheet) => sheet.scrollWidth <= sheet.clientWidth), name);
      const low = await page.locator('#compare .choice').evaluateAll((all) => Math.min(...all.map((one) => one.getBoundingClientRect().height)));
      assert.ok(low >= 48, `${name}: ${low}`);
    });
  }
});
