// Pictures of the page, kept as a build output for people to look at; and a check that each of
// them shows something.
import assert from 'node:assert/strict';
import test from 'node:test';
import { colours, devices, item, keepPicture, middle, openSheet, settle, withPage } from '../support/page.mjs';

const theme = (name) => (name === 'dusk'
  ? () => { localStorage.setItem('hearthsight:theme', 'dusk'); } : undefined);

for (const [name, device] of Object.entries({ tallPhone: devices.tallPhone, sidePhone: devices.sidePhone, tablet: devices.tablet, desktop: devices.desktop })) {
  for (const light of ['sun', 'dusk']) {
    test(`pictures: ${name}, ${light}`, async () => {
      await withPage({ device, before: theme(light) }, async (page) => {
        const { width, height } = device.viewport;
        const file = (what) => `${width}x${height}-${light}-${what}`;
        await settle(page);
        assert.ok(await colours(page) >= 8, 'the canvas is blank');
        await keepPicture(page, file('section'));
        const toggle = middle(await item(page, 'action:picture'));
        if (device.hasTouch) await page.touchscreen.tap(...toggle); else await page.mouse.click(...toggle);
        await settle(page);
        assert.ok(await colours(page) >= 8, 'the fit map is blank');
        await keepPicture(page, file('fit-map'));
        for (const sheet of ['people', 'oven', 'why', 'share']) {
          await openSheet(page, sheet);
          await page.waitForTimeout(150);
          await keepPicture(page, file(sheet));
        }
      });
    });
  }
}
