// Full-size strips of the base's cuts on paper: printed by a browser, drawn by another program,
// measured on the dots.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { root } from '../support/browser.mjs';
import { world } from '../support/page.mjs';

const program = process.env.HEARTHSIGHT || path.join(root, 'build', 'native', 'hearthsight');
const station = path.join(root, 'presets', 'stations', 'garden_shelter.json');
const dotsPerInch = 300;
const dots = (mm) => Math.round(mm / 25.4 * dotsPerInch);
const papers = { a4: [297, 210], letter: [279.4, 215.9] };

// A binary grey picture (PGM): dark(x, y), from the top left corner.
function picture(file) {
  const bytes = readFileSync(file);
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40));
  return {
    width: Number(width), height: Number(height),
    dark: (x, y) => bytes[head.length + y * Number(width) + x] < 128,
  };
}

// The longest unbroken run of dark dots.
function longest(count, dark) {
  let best = 0;
  for (let i = 0, run = 0; i < count; ++i) {
    run = dark(i) ? run + 1 : 0;
    best = Math.max(best, run);
  }
  return best;
}

for (const [paper, [wide, high]] of Object.entries(papers)) {
  test(`strips printed on ${paper} measure 100 mm within 0.5 mm each way, on every sheet`, async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-strips-'));
    try {
      const html = execFileSync(program, ['template', station, '--paper', paper], { encoding: 'utf8' });
      const page = await world.browser.newPage();
      await page.setContent(html);
      const sheets = await page.locator('svg').count();
      const pdf = path.join(folder, 'strips.pdf');
      await page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true });
      await page.close();
      execFileSync('pdftoppm', ['-gray', '-r', String(dotsPerInch), pdf, path.join(folder, 'sheet')]);
      const files = readdirSync(folder).filter((name) => name.endsWith('.pgm')).sort();
      assert.equal(files.length, sheets, 'a sheet is not one page');
      assert.ok(sheets >= 20, `${sheets} sheets`);
      for (const name of files) {
        const shown = picture(path.join(folder, name));
        assert.ok(Math.abs(shown.width - dots(wide)) <= 2 && Math.abs(shown.height - dots(high)) <= 2,
          `${name}: ${shown.width} by ${shown.height} dots`);
        // The level line lies 18 mm above the lower edge, the upright one 20 mm from the left.
        let level = 0;
        for (let y = shown.height - dots(20); y < shown.height - dots(16); ++y) {
          level = Math.max(level, longest(dots(160), (x) => shown.dark(x, y)));
        }
        let upright = 0;
        for (let x = dots(18); x < dots(22); ++x) {
          upright = Math.max(upright, longest(shown.height, (y) => shown.dark(x, y)));
        }
        for (const [which, run] of Object.entries({ level, upright })) {
          const mm = run / dotsPerInch * 25.4;
          assert.ok(Math.abs(mm - 100) <= 0.5, `${name}: the ${which} line measures ${mm} mm`);
        }
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}
