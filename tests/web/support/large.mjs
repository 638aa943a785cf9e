// Stations as large as the links that carry them.
import assert from 'node:assert/strict';
import { settle } from './page.mjs';

// Everything measured, and long names: four cooks are near the longest link.
export const large = (cooks) => ({
  format: 'hearthsight/1',
  title: 'Grandmother\u2019s courtyard behind the old bakery, second try after the rain',
  cooks: Array.from({ length: cooks }, (none, i) => ({
    name: `Cook number ${i + 1} of the whole family`, stature_mm: 1500.3 + i * 31.7,
    eye_height_mm: 1400.1 + i * 31.7, elbow_height_mm: 950.9 + i * 21.1, shoulder_height_mm: 1250.7 + i * 27.3,
    handed: i % 2 ? 'left' : 'right', shoe_mm: 11.3 + i, share: 0.31,
  })),
});

// Opens `config` as a file under Share.
export async function openConfig(page, config) {
  await page.locator('#open-file').setInputFiles({ name: 'station.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(config)) });
  await page.waitForFunction(() => document.getElementById('copy-state').textContent !== '');
  assert.equal(await page.locator('#copy-state').textContent(), 'Opened.');
  await settle(page);
}
