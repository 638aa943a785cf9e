// The packet as the page makes it: the command's own files, byte for byte.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { devices, keepPicture, openSheet, root, withPage } from '../support/page.mjs';

const program = process.env.HEARTHSIGHT || path.join(root, 'build', 'native', 'hearthsight');
const station = path.join(root, 'presets', 'stations', 'garden_shelter.json');

async function open(page) {
  const wanted = JSON.parse(await readFile(station, 'utf8')).title;
  await openSheet(page, 'share');
  await page.locator('#open-file').setInputFiles(station);
  await page.waitForFunction((title) => globalThis.hearthsight.snapshot().config.title === title, wanted);
}

async function saved(page, press) {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: 120000 }), press()]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

for (const device of [devices.desktop, devices.phone ?? devices.desktop]) {
  test(`the page makes the packet that the command makes, ${device === devices.desktop ? 'wide' : 'narrow'}`, async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-packet-'));
    try {
      await withPage({ device }, async (page) => {
        await open(page);
        // A phone shows the station that was opened.
        if (!await page.locator('#packet-paper').isVisible()) await openSheet(page, 'share');
        await page.locator('#packet-paper').selectOption('a4');
        const pdf = await saved(page, () => page.locator('#make-packet').click());
        assert.equal(pdf.name, 'packet.pdf');
        const address = await page.evaluate(() => location.href.split('#')[0]);
        execFileSync(program, ['packet', station, folder, '--paper', 'a4', '--address', address], { stdio: 'pipe' });
        assert.ok(pdf.bytes.equals(readFileSync(path.join(folder, 'packet.pdf'))), 'packet.pdf differs');
        const names = readFileSync(path.join(folder, 'files.txt'), 'utf8').trim().split('\n');
        const offered = await page.locator('#packet-files button').allTextContents();
        assert.equal(offered[0], 'Save packet.pdf');
        assert.deepEqual([...offered].sort(), names.map((name) => `Save ${name.replace('/', '-')}`).sort());
        assert.match(await page.locator('#paper-state').textContent(), /packet\.pdf is made and given to this device/);
        const section = page.getByRole('button', { name: 'Save drawings-section.svg', exact: true });
        assert.ok(!await section.isVisible(), 'drawings bury the rest');
        await page.locator('#packet-files summary').click();
        for (const name of ['packet.html', 'parts.csv', 'cuts.csv', 'stock.csv', 'drawings/section.svg', 'drawings/strip_1.svg', 'station.json']) {
          const file = await saved(page, () => page.getByRole('button', { name: `Save ${name.replace('/', '-')}`, exact: true }).click());
          assert.ok(file.bytes.equals(readFileSync(path.join(folder, name))), `${name} differs`);
        }
        await keepPicture(page, `packet-${device === devices.desktop ? 'wide' : 'narrow'}`);
      });
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}
