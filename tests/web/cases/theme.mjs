// The colours: those of the document are those of the canvas, and every text can be read in the sun.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { root } from '../support/browser.mjs';

const css = readFileSync(path.join(root, 'web/theme.css'), 'utf8');
const cpp = readFileSync(path.join(root, 'web/app/theme.cpp'), 'utf8');

const colours = (block) => Object.fromEntries(
  [...block.matchAll(/--([a-z_]+):\s*#([0-9a-f]{6});/g)].map(([, name, value]) => [name, value]));
const [sun, dusk] = css.split('[data-theme="dusk"]').map(colours);
const canvas = [...cpp.matchAll(/\{Tone::\w+, "([a-z_]+)", 0x([0-9A-F]{6}), 0x([0-9A-F]{6})\}/g)]
  .map(([, name, day, evening]) => ({ name, sun: day.toLowerCase(), dusk: evening.toLowerCase() }));

// WCAG 2.2, definitions of relative luminance and contrast ratio.
function luminance(hex) {
  const [r, g, b] = hex.match(/../g).map((part) => Number.parseInt(part, 16) / 255)
    .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a, b) {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test('the contrast formula gives the values that WCAG states', () => {
  assert.equal(contrast('ffffff', '000000'), 21);
  assert.equal(contrast('777777', '777777'), 1);
  assert.ok(Math.abs(contrast('777777', 'ffffff') - 4.48) < 0.01);  // the known grey just below 4.5
});

test('the document has the colours of the canvas, role by role', () => {
  assert.ok(canvas.length >= 18, `only ${canvas.length} roles were read from theme.cpp`);
  for (const { name, sun: day, dusk: evening } of canvas) {
    assert.equal(sun[name], day, `${name} in the sun`);
    assert.equal(dusk[name], evening, `${name} at dusk`);
  }
  assert.deepEqual(Object.keys(sun).sort(), canvas.map(({ name }) => name).sort());
});

for (const [name, theme] of Object.entries({ sun, dusk })) {
  test(`every text of the document has a contrast of 7 to 1, ${name}`, () => {
    const texts = ['ink', 'ink_soft', 'accent', 'good', 'warn', 'fail', 'unknown'];
    for (const ground of ['paper', 'card']) {
      for (const text of texts) {
        const ratio = contrast(theme[text], theme[ground]);
        assert.ok(ratio >= 7, `${text} on ${ground}: ${ratio.toFixed(2)}`);
      }
    }
    const pressed = contrast(theme.on_accent, theme.accent);
    assert.ok(pressed >= 7, `on_accent on accent: ${pressed.toFixed(2)}`);
  });

  test(`edges of controls and the focus ring have a contrast of 3 to 1, ${name}`, () => {
    for (const ground of ['paper', 'card']) {
      for (const edge of ['rule', 'focus', 'accent', 'warn', 'fail']) {
        const ratio = contrast(theme[edge], theme[ground]);
        assert.ok(ratio >= 3, `${edge} on ${ground}: ${ratio.toFixed(2)}`);
      }
    }
  });
}

test('no colour stands in the page\'s rules but by its role', () => {
  const page = readFileSync(path.join(root, 'web/page.css'), 'utf8');
  // Paper that is printed on is white, and ink on it black.
  const [screen] = page.split('@media print');
  assert.deepEqual(screen.match(/#[0-9a-f]{3,8}\b(?=[;\s])/g) || [], []);
  for (const [, role] of page.matchAll(/var\(--([a-z_]+)\)/g)) {
    assert.ok(css.includes(`--${role}:`), `--${role} is used and not given`);
  }
});
