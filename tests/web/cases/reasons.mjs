// Every finding of the example opens its reason with its source in one tap.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, openSheet, settle, snapshot, withPage } from '../support/page.mjs';

for (const [name, device] of Object.entries({ phone: devices.phone, desktop: devices.desktop })) {
  test(`every finding opens its reason and its source in one tap, ${name}`, async () => {
    await withPage({ device }, async (page) => {
      await settle(page);
      const { report } = await snapshot(page);
      // What concerns the shop stands in the packet, with its sources.
      const findings = report.findings.filter(({ rule }) => !/^(cuts|metal|power|finish|plan|money)\./.test(rule));
      const rules = new Set(findings.map(({ rule }) => rule));
      assert.ok(rules.size > 20, 'the example has hardly any findings');
      const opened = new Set();
      let told = 0;
      // A finding stands with what it is about: people, the oven's surroundings, or the rest.
      for (const sheet of ['people', 'oven', 'why']) {
        const open = async () => {
          if (!await page.locator(`#panel-${sheet}`).isVisible()) await openSheet(page, sheet);
          // Those that are fine are folded away until somebody asks for them.
          await page.evaluate(() => {
            for (const part of document.querySelectorAll('[data-section] > details')) part.open = true;
          });
        };
        await open();
        const places = await page.locator(`#panel-${sheet} [data-section]:not([data-section="cautions"]) .finding .why`)
          .evaluateAll((all) => all.map(({ dataset }) => dataset.rule));
        for (const [index, rule] of places.entries()) {
          if (!rules.has(rule)) continue;
          told += 1;
          if (opened.has(rule)) continue;
          opened.add(rule);
          await open();
          await page.evaluate(() => {
            for (const one of document.querySelectorAll('#reasons details')) one.open = false;
          });
          const button = page.locator(`#panel-${sheet} [data-section]:not([data-section="cautions"]) .finding .why`).nth(index);
          const box = await button.boundingBox();
          assert.ok(box && box.height >= 48 && box.width >= 48, `${rule}: its button is small`);
          if (device.hasTouch) await button.tap(); else await button.click();
          const reason = page.locator(`[id="why-${rule}"]`);
          assert.ok(await reason.evaluate((element) => element.open), `${rule}: one tap does not open it`);
          await page.waitForFunction((id) => {
            const head = document.getElementById(id).firstElementChild;
            const { top, bottom } = head.getBoundingClientRect();
            return top >= 0 && bottom <= innerHeight && document.activeElement === head;
          }, `why-${rule}`, { timeout: 3000 }).catch(() => assert.fail(`${rule}: its reason is not on the screen`));
          const text = await reason.locator('.source').textContent();
          assert.match(text, /^Source: \S.*\S/, `${rule}: "${text}"`);
        }
      }
      assert.ok(told >= findings.length, `${told} of ${findings.length} findings have a button`);
      assert.deepEqual([...opened].sort(), [...rules].sort());
    });
  });
}
