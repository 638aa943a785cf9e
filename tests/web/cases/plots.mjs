// The plots: each stands beside the section it belongs to, says in words and as a table what it shows.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import test from 'node:test';
import { devices, keepPicture, openSheet, root, withPage } from '../support/page.mjs';

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

test('the cut of the base stands beside what the ground does, once somebody has read it', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    await openSheet(page, 'why');
    assert.equal(await page.locator('[data-name="base-profile"], [data-section="ground"]').count(), 0);
  });
  const fragment = execFileSync(path.join(root, 'build/native/hearthsight'),
    ['link', path.join(root, 'presets/stations/garden_shelter.json')], { encoding: 'utf8' }).trim();
  await withPage({ device: devices.phone, fragment }, async (page) => {
    await openSheet(page, 'why');
    const ground = page.locator('section[data-section="ground"]');
    assert.match(await ground.textContent(), /above the feet/);
    assert.ok(await ground.locator('.verdict').count() > 8, 'findings of the ground are missing');
    const part = page.locator('#panel-why [data-drawings="ground"] > [data-name="base-profile"]');
    await part.locator('summary').click();
    await page.waitForFunction(() => {
      const image = document.querySelector('[data-name="base-profile"] img');
      return image.complete && image.naturalWidth > 0;
    });
    await part.scrollIntoViewIfNeeded();
    await keepPicture(page, 'plot-base-profile');
    const box = await part.locator('img').boundingBox();
    assert.ok(box.x >= 0 && box.x + box.width <= 390, 'the cut of the base is cut off');
    assert.ok(await part.locator('tbody tr').count() > 40);
    assert.match(await part.locator('figcaption').textContent(), /compass/);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    // A drag keeps what the ground does.
    const { report } = await page.evaluate(() => globalThis.hearthsight.snapshot());
    assert.ok(report.survey.base.fits);
  });
});
