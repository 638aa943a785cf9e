// What a frame of the scene costs in script on a slow phone, without the graphics driver: every call
// into it is answered by nothing while frames are timed, so that what is left is our own code. And
// what it costs to make the meshes again when the station has changed.
import path from 'node:path';
import { launchChromium, requireWebGl2, root } from '../web/support/browser.mjs';
import { serve } from '../../scripts/lib/server.mjs';

const limit = 2;  // ms of script a frame
const cpuSlowdown = 4;
const phone = { viewport: { width: 412, height: 823 }, deviceScaleFactor: 1.75, isMobile: true, hasTouch: true };

const site = await serve(process.env.HEARTHSIGHT_PAGE || path.join(root, 'build/web'));
const browser = await launchChromium();
try {
  await requireWebGl2(browser);
  const page = await (await browser.newContext(phone)).newPage();
  await page.goto(site.url);
  await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0);
  // Also what comes after the page is ready.
  await page.waitForFunction(() => !document.getElementById('panels').hidden);
  await page.evaluate(() => { globalThis.Module._hs_set_picture(2); globalThis.hsHost.wake(); });
  await page.waitForTimeout(1500);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: cpuSlowdown });
  const result = await page.evaluate(() => {
    const main = globalThis.Module;
    const gl = document.getElementById('canvas').getContext('webgl2');
    const names = new Set();
    for (const name in gl) {
      if (typeof gl[name] === 'function' && !/^(get|create|is|check)/.test(name)) names.add(name);
    }
    for (const name of names) gl[name] = () => undefined;
    gl.getParameter = () => 0;
    const { items } = globalThis.hearthsight.snapshot();
    const box = document.getElementById('canvas').getBoundingClientRect();
    const { rect: [x, y, w, h] } = items.find((item) => item.id === 'action:scene');
    const middle = [x - box.x + w / 2, y - box.y + h * 0.4];
    let time = performance.now();
    const frame = () => { time += 16; return main._hs_frame(time); };
    const rest = () => { for (let i = 0; i < 200 && frame() > 0; i += 1); };
    const timed = (count, before) => {
      const each = [];
      for (let i = 0; i < count; i += 1) {
        before(i);
        const start = performance.now();
        frame();
        each.push(performance.now() - start);
      }
      // The clock is coarse, so the mean; one long pause of the machine is not the script's.
      each.sort((a, b) => a - b);
      const kept = each.slice(0, Math.ceil(each.length * 0.95));
      return kept.reduce((sum, one) => sum + one, 0) / kept.length;
    };
    main._hs_pointer(0, 1, 1, ...middle, time);
    frame();
    frame();
    const turning = (i) => main._hs_pointer(1, 1, 1, middle[0] + 60 * Math.sin(i / 9), middle[1], time);
    timed(100, turning);
    const scene = timed(400, turning);
    main._hs_pointer(2, 1, 1, ...middle, time);
    rest();
    main._hs_set_picture(0);
    rest();
    const section = timed(400, () => {});
    main._hs_set_picture(2);
    rest();
    // Another height moves everything: all three parts are made again. Undo has evaluated it.
    const less = items.find((item) => item.id === 'action:station.oven_base_height_mm.less').rect;
    const at = [less[0] - box.x + less[2] / 2, less[1] - box.y + less[3] / 2];
    main._hs_pointer(0, 2, 1, ...at, time);
    main._hs_pointer(2, 2, 1, ...at, time);
    rest();
    let changed = 0;
    const rebuilt = timed(60, (i) => { rest(); changed += i % 2 === 0 ? main._hs_undo() : main._hs_redo(); });
    main._hs_set_picture(0);
    const plain = timed(60, (i) => { rest(); changed += i % 2 === 0 ? main._hs_undo() : main._hs_redo(); });
    return { scene, section, rebuilt, plain, changed };
  });
  if (result.changed !== 120) throw new Error('the station did not change, so nothing was made again');
  const ms = (value) => `${value.toFixed(2)} ms`;
  console.log(`scene, processor ${cpuSlowdown}x slower, without the graphics driver`);
  console.log(`frame while it turns   ${ms(result.scene)} of script (at most ${limit} ms: ${result.scene <= limit ? 'met' : 'MISSED'}); the side section's ${ms(result.section)}`);
  console.log(`frame that makes all its meshes again  ${ms(result.rebuilt)}; the section's own change ${ms(result.plain)}`);
} finally {
  await browser.close();
  await site.close();
}
