// The plots: each stands beside the section it belongs to, says in words and as a table what it shows.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, keepPicture, openSheet, withPage } from '../support/page.mjs';

const plots = { why: ['share', 'oven-comfort', 'dough-comfort'], people: ['moves'] };

for (const [sheet, names] of Object.entries(plots)) {
  test(`plots of ${sheet} fit a phone, and say what they show`, async () => {
    await withPage({ device: devices.phone }, async (page) => {
      await openSheet(page, sheet);
      for (const name of names) {
        const part = page.locator(`#panel-${sheet} [data-drawings] > [data-name="${name}"]`);
        await part.locator('summary').click();
        await page.waitForFunction((wanted) => {
          const image = document.querySelector(`[data-drawings] > [data-name="${wanted}"] img`);
          return image.complete && image.naturalWidth > 0;
        }, name);
        await part.scrollIntoViewIfNeeded();
        await keepPicture(page, `plot-${name}`);
        // As wide as the page: nothing to scroll sideways for.
        const box = await part.locator('img').boundingBox();
        assert.ok(box.x >= 0 && box.x + box.width <= 390, `${name} is cut off`);
        const words = await part.locator('figcaption').textContent();
        assert.match(words, /Each row is one/);
        assert.ok((await part.locator('img').getAttribute('alt')).endsWith(words));
        // The moves have their table in the section above them.
        assert.equal(await part.locator('table').count(), name === 'moves' ? 0 : 1);
        if (name !== 'moves') assert.ok(await part.locator('tbody tr').count() > 4);
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    });
  });
}
