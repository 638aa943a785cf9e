// The link as a square, read by a decoder that is not ours, off the screen and off paper.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import jsQR from 'jsqr';
import { large, openConfig } from '../support/large.mjs';
import { devices, fragment, keepPicture, openSheet, withPage, world } from '../support/page.mjs';

// A PNG's pixels, by the browser.
async function pixelsOf(page, png) {
  const { width, height, text } = await page.evaluate(async (given) => {
    const bytes = Uint8Array.from(atob(given), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const copy = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    copy.drawImage(bitmap, 0, 0);
    const { data } = copy.getImageData(0, 0, bitmap.width, bitmap.height);
    let binary = '';
    for (let at = 0; at < data.length; at += 32768) binary += String.fromCharCode(...data.subarray(at, at + 32768));
    return { width: bitmap.width, height: bitmap.height, text: btoa(binary) };
  }, png.toString('base64'));
  return { width, height, data: new Uint8ClampedArray(Buffer.from(text, 'base64')) };
}

// A grey raster as pdftoppm writes it.
function pixelsOfGrey(file) {
  const bytes = readFileSync(file);
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let i = 0; i < width * height; ++i) data.fill(bytes[head.length + i], i * 4, i * 4 + 3);
  return { width: Number(width), height: Number(height), data };
}

const decoded = ({ data, width, height }) => jsQR(data, width, height)?.data ?? null;

for (const [name, device] of Object.entries({ phone: devices.phone, desktop: devices.desktop })) {
  test(`the square on the screen of a ${name} is this station's link`, async () => {
    await withPage({ device }, async (page) => {
      for (const config of [null, large(4)]) {
        if (config) await openConfig(page, config);
        await openSheet(page, 'share');
        const image = page.locator('#square img');
        await image.scrollIntoViewIfNeeded();
        await page.waitForTimeout(400);
        const link = `${world.url}#${await fragment(page)}`;
        assert.equal(decoded(await pixelsOf(page, await image.screenshot())), link);
        // As another phone's camera sees it: the whole screen.
        assert.equal(decoded(await pixelsOf(page, await page.screenshot())), link);
        if (config) await keepPicture(page, `square-${name}`);
      }
    });
  });
}

test('in the dusk colours the square is still black on white', async () => {
  await withPage({ before: () => localStorage.setItem('hearthsight:theme', 'dusk') }, async (page) => {
    await openSheet(page, 'share');
    await page.locator('#square img').scrollIntoViewIfNeeded();
    await page.waitForTimeout(400);
    assert.equal(decoded(await pixelsOf(page, await page.screenshot())), `${world.url}#${await fragment(page)}`);
  });
});

test('the square on the printed page is this station\'s link', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-print-'));
  await withPage({}, async (page) => {
    await openConfig(page, large(4));
    const link = `${world.url}#${await fragment(page)}`;
    await page.pdf({ path: path.join(folder, 'page.pdf'), format: 'A4', printBackground: true });
    // 150 dots an inch: what a plain office printer and a phone's camera both surpass.
    execFileSync('pdftoppm', ['-r', '150', '-gray', path.join(folder, 'page.pdf'), path.join(folder, 'sheet')]);
    const sheets = execFileSync('ls', [folder], { encoding: 'utf8' }).split('\n').filter((file) => file.endsWith('.pgm'));
    const found = sheets.map((file) => decoded(pixelsOfGrey(path.join(folder, file)))).filter(Boolean);
    assert.deepEqual(found, [link]);
  });
  rmSync(folder, { recursive: true });
});
