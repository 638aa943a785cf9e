// The native window on a display without a screen: its pictures, its controls under a real mouse and
// a real keyboard, and that it does nothing at rest. It fails where there is no OpenGL ES 3.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { openWindow, pause, program, root, runWindow, startDisplay } from './display.mjs';
import { colours, difference, readPpm, writePng } from './image.mjs';

const pictures = path.join(root, 'build/screenshots');
const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-window-'));
let display;
before(async () => {
  mkdirSync(pictures, { recursive: true });
  display = await startDisplay(folder);
});
after(async () => {
  await display?.stop();
  rmSync(folder, { recursive: true });
});

// A picture at rest, kept under build/screenshots; `items` are the controls on it.
function shoot(name, args) {
  const file = path.join(folder, `${name}.ppm`);
  const { status, stderr, stdout } = runWindow(display, [...args, '--screenshot', file, '--items']);
  assert.equal(status, 0, stderr);
  const image = readPpm(file);
  writePng(path.join(pictures, `native-${name}.png`), image);
  return { ...image, items: JSON.parse(stdout) };
}
const place = (items, id) => {
  const found = items.find((one) => one.id === id);
  assert.ok(found, `${id} is not in the window`);
  return found.rect;
};
const middle = (items, id) => {
  const [x, y, w, h] = place(items, id);
  return [x + w / 2, y + h / 2];
};
const configOf = (address) => JSON.parse(execFileSync(path.join(root, 'build/native/hearthsight'),
  ['from-link', address.slice(address.indexOf('#') + 1)], { encoding: 'utf8' }));
const size = ['--size', '900x800', '--scale', '1'];

test('the program is there', () => assert.ok(existsSync(program), `${program} is not built`));

test('section, fit map and scene are drawn, and are three pictures', () => {
  const [section, fit, scene] = ['section', 'fit', 'scene'].map((name) => shoot(name, ['--picture', name, ...size]));
  for (const image of [section, fit, scene]) {
    assert.deepEqual([image.width, image.height], [900, 800]);
    assert.ok(colours(image) > 60, `${colours(image)} colours`);
  }
  assert.ok(difference(section, fit) > 0.05, `${difference(section, fit)}`);
  assert.ok(difference(section, scene) > 0.05, `${difference(section, scene)}`);
  // Shading makes far more colours than lines and fills do.
  const [x, y, w, h] = place(scene.items, 'action:scene');
  const inside = (at) => {
    const [px, py] = [at % 900, Math.floor(at / 900)];
    return px >= x && px < x + w && py >= y && py < y + h;
  };
  assert.ok(colours(scene, inside) > 400, `${colours(scene, inside)} colours in the scene`);
});

test('the picture follows size, scale, units and theme', () => {
  const phone = shoot('phone', ['--picture', 'scene', '--size', '390x660', '--scale', '2']);
  assert.deepEqual([phone.width, phone.height], [780, 1320]);
  const dusk = shoot('dusk', ['--theme', 'dusk', '--units', 'mm', ...size]);
  const bright = ({ data }) => data.reduce((sum, byte) => sum + byte, 0) / data.length;
  assert.ok(bright(dusk) < 0.6 * bright(shoot('section', size)));
  assert.match(dusk.items.find(({ id }) => id === 'action:why.oven_counter').label, / mm/);
});

test('a link and a file open the station they hold', () => {
  const config = { format: 'hearthsight/1', station: { oven_base_height_mm: 812 }, cooks: [{ name: 'Ines' }] };
  const file = path.join(folder, 'station.json');
  writeFileSync(file, JSON.stringify(config));
  const link = execFileSync(path.join(root, 'build/native/hearthsight'), ['link', file], { encoding: 'utf8' }).trim();
  for (const given of [['--file', file], ['--link', link], ['--link', `http://localhost/#${link}`]]) {
    const { items } = shoot('opened', [...given, ...size]);
    assert.match(items.find(({ id }) => id === 'action:people').label, /Ines/);
    assert.equal(JSON.parse(items.find(({ id }) => id === 'field:station.oven_base_height_mm').value), 812);
  }
});

test('what cannot be done ends with one clear line and no picture', () => {
  const file = path.join(folder, 'none.ppm');
  const refused = [[['--nonsense'], /--help/], [['--size', '10x10'], /240 to 8000/], [['--picture'], /give section, fit, scene or lamp/],
    [['--link', 'damaged'], /link/], [['--file', path.join(folder, 'missing.json')], /readable file/]];
  for (const [args, words] of refused) {
    const { status, stdout, stderr } = runWindow(display, [...args, '--screenshot', file]);
    assert.equal(status, 2, stderr);
    assert.equal(stdout, '');
    assert.match(stderr, words);
    assert.ok(!existsSync(file));
  }
  const nowhere = runWindow({ env: { ...display.env, DISPLAY: ':65000' } }, ['--screenshot', file]);
  assert.equal(nowhere.status, 1);
  assert.match(nowhere.stderr, /no window/);
  assert.equal(runWindow(display, ['--screenshot', path.join(folder, 'no/such/folder.ppm')]).status, 1);
});

test('mouse and keys change the station, undo and redo it, and the link is copied', async () => {
  const { items } = shoot('section', size);
  const field = 'field:station.oven_base_height_mm';
  const window = await openWindow(display, [...size, '--page', 'http://localhost:1234/']);
  const height = async () => {
    await window.key('ctrl+c');
    const address = (await window.lines()).at(-1);
    assert.match(address, /^http:\/\/localhost:1234\/#/);
    return configOf(address).station?.oven_base_height_mm;
  };
  try {
    const start = await height();
    const [x, y, w, h] = place(items, field);
    await window.drag([x + w / 2, y + h / 2], [x + w / 2 + 60, y + h / 2]);
    const dragged = await height();
    assert.notEqual(dragged, start);
    await window.key('ctrl+z');
    assert.equal(await height(), start);
    await window.key('ctrl+shift+z');
    assert.equal(await height(), dragged);

    // Tab as often as it takes to come to the control, then arrows.
    const order = items.findIndex(({ id }) => id === field);
    assert.ok(order >= 0);
    await window.key('ctrl+z');
    await window.key(...Array(order + 1).fill('Tab'));
    await window.key('Right');
    const stepped = await height();
    assert.notEqual(stepped, start);
    await window.key('Left');
    await window.key('ctrl+v');
    assert.equal(await height(), stepped, 'the copied link was the stepped one');

    window.lastKey('ctrl+q');
    assert.deepEqual(await window.ended(), { code: 0, errors: '' });
  } finally {
    window.stop();
  }
});

test('a part that only the page has is told over the picture and in the terminal', async () => {
  const { items, ...still } = shoot('section', size);
  const window = await openWindow(display, size);
  // What is on the screen itself, kept as a picture.
  const look = (name) => {
    const seen = display.screen(900, 800);
    writePng(path.join(pictures, `native-${name}.png`), seen);
    return seen;
  };
  try {
    const plain = look('screen');
    assert.ok(difference(plain, still) < 0.001, `${difference(plain, still)}: the screen shows the same picture`);
    await window.click(...middle(items, 'action:people'));
    const people = await window.lines();
    assert.match(people[0], /^People is in the page: scripts\/serve\./);
    assert.equal(configOf(people[1]).format, 'hearthsight/1');
    const told = difference(plain, look('people'));
    assert.ok(told > 0.003 && told < 0.1, `${told}`);
    await window.click(...middle(items, 'action:why.oven_counter'));
    assert.match((await window.lines())[0], / Source: /);
    const why = difference(plain, look('why'));
    assert.ok(why > told && why < 0.2, `${why}`);
    window.move(10, 790);
    await window.key('Escape');
    assert.ok(difference(plain, look('again')) < 0.001, 'the next key takes the words away');
  } finally {
    window.stop();
  }
});

test('nothing is drawn at rest, and a turned scene comes to rest', async () => {
  const { items } = shoot('scene', ['--picture', 'scene', ...size]);
  const window = await openWindow(display, ['--picture', 'scene', ...size]);
  try {
    const [x, y] = middle(items, 'action:scene');
    const before = window.ticks();
    await window.drag([x, y], [x + 120, y + 20]);
    await window.wheel(x, y, -2);
    await window.resize(700, 780);
    assert.ok(window.ticks() > before, 'hands make it draw');
    await window.rest();
    const resting = window.ticks();
    await pause(2000);
    assert.ok(window.ticks() - resting <= 1, `${window.ticks() - resting} ticks of 10 ms in two seconds at rest`);
  } finally {
    window.stop();
  }
});
