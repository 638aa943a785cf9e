// The shop's own list on the page: rows by hand, and a spreadsheet's file in and out.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import test from 'node:test';
import { configOf, devices, keepPicture, openSheet, settle, withPage } from '../support/page.mjs';

const csv = (text) => ({ name: 'prices.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
const state = (page) => page.locator('#stock-state').textContent();

for (const device of ['tallPhone', 'desktop']) {
  test(`stock: rows are added, filled in and taken off, and go out and in as CSV, ${device}`, async () => {
    await withPage({ device: devices[device], extra: { locale: 'en-US' } }, async (page) => {
      await openSheet(page, 'oven');
      const box = page.locator('#stock');
      await box.locator('summary').first().click();
      assert.match(await box.textContent(), /Nothing is listed/);
      await page.locator('#add-stock').click();
      await settle(page);
      const name = page.locator('[data-path="stock.0.name"] input');
      assert.ok(await name.evaluate((input) => input === document.activeElement), 'a new row opens and takes the focus');
      await name.fill('Ply');
      await page.locator('[data-path="stock.0.length_mm"] input').fill('8 ft');
      await page.locator('[data-path="stock.0.on_hand"] input').fill('3');
      await page.locator('[data-path="stock.0.price"] input').fill('60.5');
      await page.keyboard.press('Enter');
      await settle(page);
      const [row] = (await configOf(page)).stock;
      assert.deepEqual([row.name, row.length_mm, row.on_hand, row.price], ['Ply', 2438.4, 3, 60.5]);
      assert.match(await box.locator('.stock-row summary').textContent(), /^Ply: .*, 3 in the shop$/);
      await keepPicture(page, `stock-${device}`);

      const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-stock').click()]);
      assert.equal(download.suggestedFilename(), 'hearthsight-stock.csv');
      const saved = await readFile(await download.path(), 'utf8');
      assert.match(saved, /^\uFEFF?"?name"?,/);
      await box.getByRole('button', { name: 'Take it off the list' }).click();
      await settle(page);
      assert.equal((await configOf(page)).stock, undefined);
      await page.locator('#open-stock').setInputFiles(csv(saved));
      await settle(page);
      assert.deepEqual((await configOf(page)).stock, [row], 'what went out came in');

      // Nothing of a file with a fault is taken in, and the fault has its line.
      await page.locator('#open-stock').setInputFiles(csv('name,price\nOak,12\nAsh,dear\n'));
      await page.waitForFunction(() => /line 3/.test(document.getElementById('stock-state').textContent));
      assert.match(await state(page), /dear/);
      assert.deepEqual((await configOf(page)).stock, [row]);
    });
  });
}
