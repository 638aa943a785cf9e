// One headless Chromium for each file of tests of the page, and what each test asks of it.
import assert from 'node:assert/strict';
import { accessSync, constants, mkdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../../scripts/lib/server.mjs';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
export const pageFolder = path.join(root, 'build/web');
// Every screenshot is kept as a build output.
export const pictures = path.join(root, 'build/screenshots');

export const phone = {
  viewport: { width: 390, height: 660 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
};

function findChromium() {
  if (process.env.HEARTHSIGHT_CHROMIUM) return process.env.HEARTHSIGHT_CHROMIUM;
  for (const folder of (process.env.PATH || '').split(path.delimiter)) {
    for (const name of ['chromium', 'chromium-browser', 'google-chrome']) {
      const file = path.join(folder, name);
      try {
        accessSync(file, constants.X_OK);
        return file;
      } catch { /* the next place */ }
    }
  }
  throw new Error('chromium is missing; scripts/setup installs it (Debian package: chromium)');
}

// Software WebGL 2 in a machine without a graphics card, and no talk with the network.
export async function launchChromium() {
  return chromium.launch({
    executablePath: findChromium(),
    headless: true,
    args: ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--no-sandbox',
      '--disable-dev-shm-usage', '--disable-quic', '--no-first-run',
      '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
}

// A suite that passes on a blank canvas proves nothing: without WebGL 2 the run fails here.
export async function requireWebGl2(browser) {
  const page = await browser.newPage();
  const version = await page.evaluate(() => {
    const gl = document.createElement('canvas').getContext('webgl2');
    return gl && gl.getParameter(gl.VERSION);
  });
  await page.close();
  assert.match(String(version), /WebGL 2/, 'this Chromium gives no WebGL 2 context');
}

// Starts the server and the browser; `close` ends both.
export async function startWorld(folder = pageFolder) {
  mkdirSync(pictures, { recursive: true });
  const site = await serve(folder);
  const browser = await launchChromium();
  await requireWebGl2(browser);
  return {
    site, browser, url: site.url,
    async close() {
      await browser.close();
      await site.close();
    },
  };
}

// A page that has reported itself ready. What it logs as an error fails `errors`.
export async function openPage(world, { fragment = '', context: given, device = phone } = {}) {
  const context = given || await world.browser.newContext(device);
  const page = await context.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(world.url + (fragment ? `#${fragment}` : ''));
  await page.waitForFunction(
    () => performance.getEntriesByName('hearthsight:ready').length > 0, null, { timeout: 60000 });
  return { page, context, errors };
}

export async function keepPicture(page, name) {
  await page.screenshot({ path: path.join(pictures, `${name}.png`) });
}
