// No WebGL: the document is the page, with every control and every number.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, fromDesk, keepPicture, mainFields, settle, snapshot, withPage } from '../support/page.mjs';

// The context is refused as a browser without WebGL refuses it.
const without = () => {
  const get = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function context(kind, ...rest) {
    return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
  };
};
// em++ may complain of the missing context; the page itself may not.
const allowed = [/webgl/i, /context/i];

for (const device of [devices.phone, devices.desktop]) {
  test(`without WebGL every control and number is in the document, ${device.viewport.width} px`, async () => {
    await withPage({ device, before: without, allowed }, async (page) => {
      assert.ok(!await page.locator('#canvas').isVisible());
      const told = await fromDesk(page, 'page_json');
      const text = await page.locator('#panels').evaluate((element) => element.textContent);
      for (const { label, value, yours, band, note } of told.headlines) {
        for (const part of [label, value, yours, band, note]) assert.ok(text.includes(part), part);
      }
      for (const { name, line } of told.cooks) assert.ok(text.includes(`${name}: ${line}`), name);
      assert.ok(text.includes(told.worst.text));
      assert.ok(text.includes(told.feet_line));
      for (const { title, tables = [], items = [] } of told.sections) {
        assert.ok(text.includes(title), title);
        for (const cell of tables.flatMap(({ rows }) => rows.flat())) assert.ok(text.includes(cell), cell);
        for (const { sentence } of items) assert.ok(text.includes(sentence), sentence);
      }
      for (const { words, source } of Object.values(told.why)) {
        assert.ok(text.includes(words), words);
        assert.ok(text.includes(source), source);
      }
      const { items } = await snapshot(page);
      for (const field of mainFields) {
        assert.ok(items.some(({ id }) => id === `field:${field}`), field);
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
      await keepPicture(page, `no-webgl-${device.viewport.width}`);
    });
  });
}

test('without WebGL the four controls work by keyboard alone, and the numbers follow', async () => {
  await withPage({ device: devices.desktop, before: without, allowed }, async (page) => {
    const root = (path) => page.locator(`#panel-text [data-path="${path}"]`);
    for (const path of mainFields.slice(1)) {
      const before = (await snapshot(page)).config;
      const button = root(path).getByRole('button', { name: /^More/ });
      await button.focus();
      await page.keyboard.press('Enter');
      await settle(page);
      assert.notDeepEqual((await snapshot(page)).config, before, path);
    }
    const before = await snapshot(page);
    const kind = await root('oven.kind').locator('select').inputValue();
    await root('oven.kind').locator('select').selectOption('steel_cabinet');
    await settle(page);
    const after = await snapshot(page);
    assert.equal(after.config.oven.kind, 'steel_cabinet');
    assert.notDeepEqual(after.report, before.report);
    await page.keyboard.press('Control+z');
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, before.config);
    assert.equal(await root('oven.kind').locator('select').inputValue(), kind);
  });
});

test('a picture lost for good leaves one document, with one of each control', async () => {
  await withPage({ allowed }, async (page) => {
    await settle(page);
    const controls = () => page.locator('#document [data-path]').count();
    const before = await controls();
    // The phone gives a context back that nothing can be drawn with, twice.
    await page.evaluate(() => {
      globalThis.Module._hs_canvas_start = () => 0;
      const canvas = document.getElementById('canvas');
      for (let i = 0; i < 2; ++i) {
        canvas.dispatchEvent(new Event('webglcontextlost', { cancelable: true }));
        canvas.dispatchEvent(new Event('webglcontextrestored'));
      }
    });
    await page.waitForFunction(() => document.documentElement.classList.contains('no-canvas'));
    await settle(page);
    assert.equal(await controls(), before);
    const cooks = (await snapshot(page)).config.cooks.length;
    await page.locator('#add-cook').click();
    await settle(page);
    assert.equal((await snapshot(page)).config.cooks.length, cooks + 1);
    assert.equal(await page.locator('#cooks > fieldset').count(), cooks + 1);
  });
});
