// Every station and oven of presets/, and the example in each arrangement, as people see them: the
// section and the scene, on four screens, in both themes. Kept as a build output to be looked at.
// A plain run draws the example on all of them, each other one on one screen in one theme;
// HEARTHSIGHT_GALLERY=whole (scripts/test --gallery) draws all.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { colours, devices, root, settle, withPage } from '../support/page.mjs';
import { pictures } from '../support/browser.mjs';

const program = path.join(root, 'build/native/hearthsight');
const presets = path.join(root, 'presets');
const linkOf = (file, ...sets) => execFileSync(program,
  ['link', path.join(presets, file), ...sets.flatMap((set) => ['--set', set])], { encoding: 'utf8' }).trim();

function stations() {
  const found = [];
  for (const folder of ['ovens', 'stations']) {
    for (const file of readdirSync(path.join(presets, folder)).sort()) {
      found.push([file.replace('.json', ''), linkOf(path.join(folder, file))]);
    }
  }
  for (const arrangement of ['one_level', 'riser', 'two_level']) {
    found.push([`demo-${arrangement}`, linkOf('demo.json', `station.arrangement=${arrangement}`)]);
  }
  return found;
}

const kinds = { section: 0, scene: 2 };
const screens = { tallPhone: devices.tallPhone, sidePhone: devices.sidePhone, tablet: devices.tablet, desktop: devices.desktop };
const whole = process.env.HEARTHSIGHT_GALLERY === 'whole';
Object.entries(screens).forEach(([name, device], screen) => {
  test(`every preset and arrangement is drawn: ${name}`, async (context) => {
    if (!existsSync(program)) {
      assert.ok(!process.env.CI, 'build/native/hearthsight is not built: it writes the links');
      context.skip('build/native/hearthsight is not built');
      return;
    }
    const { width, height } = device.viewport;
    const folder = path.join(pictures, `gallery-${width}x${height}`);
    mkdirSync(folder, { recursive: true });
    // Density 1: these are looked at for what they show; sharpness is the other pictures' matter.
    await withPage({ device: { ...device, deviceScaleFactor: 1 } }, async (page) => {
      await settle(page);
      for (const [theme, light] of ['sun', 'dusk'].entries()) {
        await page.evaluate((wanted) => {
          if (document.documentElement.dataset.theme !== wanted) document.getElementById('theme').click();
        }, light);
        for (const [at, [station, link]] of stations().entries()) {
          if (!whole && !station.startsWith('demo') && (at % 4 !== screen || (at >> 2) % 2 !== theme)) continue;
          await page.evaluate((text) => { location.hash = text; }, link);
          await page.waitForFunction((text) => globalThis.Module.UTF8ToString(globalThis.Module._hs_link()) === text, link);
          assert.ok(!await page.locator('#notice').isVisible(), `${station}: the link was refused`);
          for (const [kind, number] of Object.entries(kinds)) {
            await page.evaluate((picture) => {
              globalThis.Module._hs_set_picture(picture);
              globalThis.hsHost.wake();
            }, number);
            await settle(page);
            assert.ok(await colours(page) >= 8, `${station}, ${kind}: the picture is blank`);
            await page.screenshot({ path: path.join(folder, `${light}-${station}-${kind}.png`) });
          }
        }
      }
    });
  });
});
