// The drawings: shown by the page, saved true to scale, their text selectable.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import test from 'node:test';
import { devices, keepPicture, openSheet, settle, withPage } from '../support/page.mjs';

const names = ['section', 'elevation', 'plan'];
const part = (page, name) => page.locator(`#drawings > [data-name="${name}"]`);

async function open(page, name) {
  await part(page, name).locator('summary').click();
  await page.waitForFunction((wanted) => {
    const image = document.querySelector(`#drawings > [data-name="${wanted}"] img`);
    return image.complete && image.naturalWidth > 0;
  }, name);
}

async function saved(page, name) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    part(page, name).getByRole('button', { name: 'Save drawing' }).click(),
  ]);
  assert.equal(download.suggestedFilename(), `hearthsight-${name}.svg`);
  return readFile(await download.path(), 'utf8');
}

test('every drawing opens in the page, and follows the station and its colours', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    await openSheet(page, 'why');
    for (const name of names) {
      await open(page, name);
      const image = part(page, name).locator('img');
      assert.match(await image.getAttribute('alt'), /\. .{40}/);
      const box = await image.boundingBox();
      assert.ok(box.height > 100, `${name} is ${box.height} px high`);
      await part(page, name).scrollIntoViewIfNeeded();
      await keepPicture(page, `drawing-${name}`);
    }
    // The page does not grow sideways with them.
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    const source = () => part(page, 'plan').locator('img').getAttribute('src');
    const before = await source();
    await page.evaluate(() => document.getElementById('theme').click());
    await page.waitForFunction((old) => document.querySelector('#drawings > [data-name="plan"] img').src !== old, before);
  });
});

test('a saved drawing stands alone: 1000 mm measure 1000, and its text can be selected', async () => {
  await withPage({ device: devices.desktop, before: () => localStorage.setItem('hearthsight:units', 'mm') }, async (page, context) => {
    await settle(page);
    for (const name of names) {
      await open(page, name);
      const text = await saved(page, name);
      assert.doesNotMatch(text, /<script/);
      const alone = await context.newPage();
      const errors = [];
      alone.on('pageerror', (error) => errors.push(error.message));
      alone.on('console', (message) => { if (message.type() === 'error') errors.push(message.text()); });
      await alone.route('http://drawing.test/', (route) => route.fulfill({ contentType: 'image/svg+xml', body: text }));
      await alone.goto('http://drawing.test/');
      const measured = await alone.evaluate(() => {
        const root = document.documentElement;
        const bar = document.querySelector('line.scale');
        const label = [...document.querySelectorAll('text')].find((each) => each.textContent.startsWith('this line is'));
        getSelection().selectAllChildren(label);
        const view = root.viewBox.baseVal;
        const spill = [...document.querySelectorAll('text')].filter((each) => {
          const box = each.getBBox();
          return box.x < view.x || box.y < view.y || box.x + box.width > view.x + view.width || box.y + box.height > view.y + view.height;
        });
        return {
          root: root.localName, bar: bar.getBBox().width, pixels: bar.getCTM().a,
          wide: root.width.baseVal.valueInSpecifiedUnits, unit: root.width.baseVal.unitType, view: view.width,
          label: label.textContent, selected: String(getSelection()), spill: spill.map((each) => each.textContent),
        };
      });
      assert.equal(measured.root, 'svg');
      assert.ok(Math.abs(measured.bar - 1000) < 0.02, `${measured.bar}`);
      // One user unit is one CSS millimetre: 96 px to 25.4 mm.
      assert.ok(Math.abs(measured.pixels - 96 / 25.4) < 0.001, `${measured.pixels}`);
      assert.equal(measured.unit, 7);  // SVGLength.SVG_LENGTHTYPE_MM
      assert.equal(measured.wide, measured.view);
      assert.equal(measured.label, 'this line is 1000 mm');
      assert.equal(measured.selected.trim(), measured.label);
      assert.deepEqual(measured.spill, [], 'text runs off the sheet');
      assert.deepEqual(errors, []);
      await alone.close();
    }
  });
});

test('a drawing opened alone from the page shows text and keeps to the policy', async () => {
  await withPage({ device: devices.desktop }, async (page, context) => {
    await open(page, 'section');
    const [alone] = await Promise.all([
      context.waitForEvent('page'), part(page, 'section').getByRole('link', { name: 'Open it alone' }).click(),
    ]);
    await alone.waitForLoadState();
    const shown = await alone.evaluate(() => ({
      root: document.documentElement.localName,
      texts: document.querySelectorAll('text').length,
      fill: getComputedStyle(document.querySelector('text')).fill,
      wide: document.documentElement.getBoundingClientRect().width,
      room: innerWidth,
    }));
    assert.equal(shown.root, 'svg');
    assert.ok(shown.texts > 10);
    assert.notEqual(shown.fill, 'rgb(0, 0, 0)');
    assert.ok(shown.wide <= shown.room + 1);
  });
});

// As a browser without WebGL refuses it.
const without = () => {
  const get = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function context(kind, ...rest) {
    return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
  };
};
test('without WebGL the drawings stand open under the heights', async () => {
  await withPage({ device: devices.phone, before: without, allowed: [/webgl/i, /context/i] }, async (page) => {
    await page.waitForFunction((wanted) => {
      const images = [...document.querySelectorAll('#panel-text #drawings img')];
      const there = [...document.querySelectorAll('#drawings > [data-name]')].map(({ dataset }) => dataset.name);
      return wanted.every((name) => there.includes(name)) && images.length === there.length
        && images.every((image) => image.complete && image.naturalWidth > 0);
    }, [...names, 'frame_front', 'frame_side', 'frame_pulled_apart']);
    assert.ok(await page.locator('#drawings-part').isVisible());
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    await keepPicture(page, 'drawings-no-webgl');
  });
});
