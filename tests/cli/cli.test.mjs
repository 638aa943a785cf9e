// The command line as a stranger meets it: exit codes, what is printed where, and that no output is
// ever half written. HEARTHSIGHT names the program, build/native/hearthsight by default.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, openSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const program = process.env.HEARTHSIGHT ?? join(root, 'build', 'native', 'hearthsight');
const folder = mkdtempSync(join(tmpdir(), 'hearthsight-cli-'));
after(() => rmSync(folder, { recursive: true }));

const run = (args, input = '') =>
  spawnSync(program, args, { input, encoding: 'utf8', maxBuffer: 1 << 26 });
const config = (members = {}) => JSON.stringify({ format: 'hearthsight/1', ...members });
const filed = (text) => {
  const name = join(folder, 'config.json');
  writeFileSync(name, text);
  return name;
};

test('the program is there', () => assert.ok(existsSync(program), `${program} is not built`));

test('evaluate prints a report, from a file or from stdin', () => {
  const fromFile = run(['evaluate', filed(config())]);
  assert.equal(fromFile.status, 0, fromFile.stderr);
  assert.equal(fromFile.stderr, '');
  assert.equal(JSON.parse(fromFile.stdout).format, 'hearthsight-report/1');
  const fromStdin = run(['evaluate', '-'], config());
  assert.equal(fromStdin.stdout, fromFile.stdout);
});

test('a setting changes what is evaluated as the same member of the file would', () => {
  const set = run(['evaluate', '-', '--set', "cooks.0.stature_mm=6' 1\"", '--set', 'cooks.1.name=Bo'], config());
  const written = run(['evaluate', '-'], config({ cooks: [{ stature_mm: 1854.2 }, { name: 'Bo' }] }));
  assert.equal(set.status, 0, set.stderr);
  assert.equal(set.stdout, written.stdout);
  assert.notEqual(set.stdout, run(['evaluate', '-'], config()).stdout);
});

test('a group set by JSON is the same member of the file', () => {
  const set = run(['evaluate', '-', '--set', 'oven.listed_clearance={"side_mm":25}', '--set', 'cooks=[{"name":"Bo"}]'], config());
  const written = run(['evaluate', '-'], config({ cooks: [{ name: 'Bo' }], oven: { listed_clearance: { side_mm: 25 } } }));
  assert.equal(set.status, 0, set.stderr);
  assert.equal(set.stdout, written.stdout);
  const cleared = run(['evaluate', '-', '--set', 'oven.listed_clearance=null'], config({ oven: { listed_clearance: { side_mm: 25 } } }));
  assert.equal(cleared.stdout, run(['evaluate', '-'], config()).stdout);
});

test('a link and the config it came from are exchanged exactly', () => {
  const given = config({
    title: 'Garden \u00bd', cooks: [{ name: 'Anna', stature_mm: 1650.5 }, { name: 'Bo', seated: true }],
    station: { counter_height_mm: '42 1/2', aisle_mm: null }, oven: { fuel: 'wood' },
  });
  const link = run(['link', '-'], given);
  assert.equal(link.status, 0, link.stderr);
  assert.match(link.stdout, /^[a-z][A-Za-z0-9_-]*[A-Za-z0-9]\n$/);
  const back = run(['from-link', link.stdout.trim()]);
  assert.equal(back.status, 0, back.stderr);
  assert.deepEqual(JSON.parse(back.stdout), {
    format: 'hearthsight/1', title: 'Garden \u00bd',
    cooks: [{ name: 'Anna', stature_mm: 1650.5 }, { name: 'Bo', seated: true }],
    oven: { fuel: 'wood' }, station: { counter_height_mm: 1079.5 },
  });
  assert.equal(run(['link', '-'], back.stdout).stdout, link.stdout);
  assert.equal(run(['evaluate', '-'], back.stdout).stdout, run(['evaluate', '-'], given).stdout);
});

// libxml2 where it is installed: what is well formed needs no mending.
const xmllint = spawnSync('xmllint', ['--version']).status === 0;

test('report prints one HTML file that stands alone, in the units asked for', () => {
  const given = config({ title: 'A & <B>', cooks: [{ name: '<script>alert(1)</script>' }, { name: 'Bo' }] });
  const inch = run(['report', '-'], given);
  assert.equal(inch.status, 0, inch.stderr);
  assert.equal(inch.stderr, '');
  assert.match(inch.stdout, /^<!DOCTYPE html>\n<html lang="en">/);
  assert.match(inch.stdout, /<title>A &amp; &lt;B&gt;<\/title>/);
  assert.doesNotMatch(inch.stdout, /<script|<link|<img|href=|src=|url\(/);
  // The page's own colours, print rules, the drawings and the safety sheet are inside.
  for (const part of ['--paper: #faf4e6', '@media print', '<svg ', 'id="safety"', 'id="sources"']) {
    assert.ok(inch.stdout.includes(part), part);
  }
  const mm = run(['report', '-', '--units', 'mm'], given);
  assert.notEqual(mm.stdout, inch.stdout);
  assert.equal(run(['report', '-', '--units', 'inch'], given).stdout, inch.stdout);
  if (xmllint) {
    for (const { stdout } of [inch, mm]) {
      const checked = spawnSync('xmllint', ['--noout', '-'], { input: stdout, encoding: 'utf8' });
      assert.equal(checked.status, 0, checked.stderr);
    }
  }
});

test('report refuses what is bad, and prints nothing then', () => {
  for (const args of [['report', '-', '--units', 'feet'], ['report', '-', '--set', 'oven.fuel=coal'], ['report']]) {
    const result = run(args, config());
    assert.equal(result.status, 2);
    assert.equal(result.stdout, '');
    assert.notEqual(result.stderr, '');
  }
  assert.match(run(['report', '-', '--units', 'feet'], config()).stderr, /--units.*inch or mm/);
});

test('draw prints one drawing as SVG, true to scale', () => {
  for (const name of ['section', 'elevation', 'plan']) {
    const result = run(['draw', '-', name, '--units', 'mm'], config({ title: 'A & B' }));
    assert.equal(result.status, 0, result.stderr);
    assert.equal(result.stderr, '');
    const [, wide, high, width, height] = /^<svg [^>]*viewBox="\S+ \S+ (\d+) (\d+)" width="(\d+)mm" height="(\d+)mm"/.exec(result.stdout);
    assert.deepEqual([width, height], [wide, high]);
    assert.match(result.stdout, /<title>[^<]+: A &amp; B<\/title>/);
    const [, from, to] = /<line x1="(\S+)" y1="\S+" x2="(\S+)"[^>]*class="[^"]*scale"/.exec(result.stdout);
    // Places are written to 0.01 mm.
    assert.ok(Math.abs(Number(to) - Number(from) - 1000) < 0.011, `${from} to ${to}`);
    assert.match(result.stdout, /this line is 1000 mm/);
  }
});

test('draw takes units, a cook and settings, in any order', () => {
  const two = config({ cooks: [{ name: 'Ann' }, { name: 'Bo', stature_mm: 1500 }] });
  const inch = run(['draw', '-', 'section'], two).stdout;
  assert.match(inch, /Ann's eye|Ann&#39;s eye/);
  assert.match(inch, /this line is 36 in/);
  const second = run(['draw', '--cook', '2', '-', '--set', 'cooks.1.name=Bea', 'section'], two);
  assert.equal(second.status, 0, second.stderr);
  assert.match(second.stdout, /Bea&#39;s eye/);
});

test('draw refuses what it cannot draw, and says what it can', () => {
  const refusals = [
    [['draw', '-', 'map'], /section, elevation, plan/],
    [['draw', '-'], /section, elevation, plan/],
    [['draw', '-', 'plan', '--units', 'ells'], /--units.*inch or mm/],
    [['draw', '-', 'plan', '--cook', '0'], /--cook/],
    [['draw', '-', 'plan', '--cook', '2'], /--cook.*1 to 1/],
    [['draw', '-', 'plan', '--cook', '1.5'], /--cook/],
    [['draw', '-', 'plan', '--cook'], /--cook/],
    [['draw', '-', 'plan', 'extra'], /extra/],
  ];
  for (const [args, told] of refusals) {
    const result = run(args, config());
    assert.deepEqual([result.status, result.stdout], [2, ''], args.join(' '));
    assert.match(result.stderr, told);
  }
  const bad = run(['draw', '-', 'plan'], config({ oven: { width_mm: 1 } }));
  assert.deepEqual([bad.status, bad.stdout], [2, '']);
  assert.match(bad.stderr, /oven\.width_mm/);
});

test('readings of the ground are set by place, one at a time, as a row or as a list', () => {
  const points = [{ x_mm: 300, reading_mm: 901.7 }, { y_mm: -400, reading_mm: 920, kind: 'feet' }];
  const written = run(['link', '-'], config({ survey: { points } })).stdout;
  const one = run(['link', '-', '--set', 'survey.points.0.x_mm=300', '--set', 'survey.points.0.reading_mm=35 1/2 in',
    '--set', 'survey.points.1={"y_mm":-400,"reading_mm":"920 mm","kind":"feet"}'], config());
  assert.equal(one.status, 0, one.stderr);
  assert.equal(one.stdout, written);
  const list = run(['link', '-', '--set', `survey.points=${JSON.stringify(points)}`], config({ survey: { points: [{}, {}, {}] } }));
  assert.equal(list.stdout, written);
  assert.deepEqual(JSON.parse(run(['from-link', written.trim()]).stdout).survey, { points });
  const none = run(['link', '-', '--set', 'survey.points=[]'], config({ survey: { points } }));
  assert.equal(none.stdout, run(['link', '-'], config()).stdout);
  const far = run(['link', '-', '--set', 'survey.points.2.x_mm=1'], config());
  assert.equal(far.status, 2);
  assert.match(far.stderr, /survey\.points\.2\.x_mm: point 2 is not allowed; give point 0 to 0/);
  const whole = run(['link', '-', '--set', 'survey={"board_mm":"7 1/4 in"}'], config({ survey: { points } }));
  assert.equal(whole.stdout, run(['link', '-'], config({ survey: { board_mm: '7 1/4 in' } })).stdout);
});

test('template prints full-size strips as a document, or one sheet as large as its paper', () => {
  const station = join(root, 'presets', 'stations', 'garden_shelter.json');
  const html = run(['template', station]);
  assert.equal(html.status, 0, html.stderr);
  assert.match(html.stdout, /^<!doctype html>/);
  assert.match(html.stdout, /@page\{size:297mm 210mm;margin:0\}/);
  assert.doesNotMatch(html.stdout, /<script|NaN|inf/);
  const sheets = html.stdout.split('<svg ').length - 1;
  assert.ok(sheets >= 20, `${sheets} sheets`);
  const last = run(['template', '--paper', 'letter', station, '--page', '2', '--units', 'mm']);
  assert.match(last.stdout, /^<svg [^>]*viewBox="0 -215.9 279.4 215.9" width="279.4mm" height="215.9mm"/);
  const bars = [...last.stdout.matchAll(/<line x1="(\S+)" y1="(\S+)" x2="(\S+)" y2="(\S+)"[^>]*class="[^"]*scale"/g)]
    .map(([, ...ends]) => ends.map(Number));
  assert.deepEqual(bars.map(([ax, ay, bx, by]) => [Math.round((bx - ax) * 100), Math.round((ay - by) * 100)]), [[10000, 0], [0, 10000]]);
  const refusals = [
    [[station, '--paper', 'a3'], /--paper.*a4 or letter/],
    [[station, '--page', '0'], /--page/],
    [[station, '--page', '1.5'], /--page/],
    [[station, '--page', '900'], /--page.*1 to \d+/],
    [[station, '--units', 'ells'], /--units/],
    [[filed(config())], /survey\.points.*readings at both ends/],
  ];
  for (const [args, told] of refusals) {
    const result = run(['template', ...args]);
    assert.deepEqual([result.status, result.stdout], [2, ''], args.join(' '));
    assert.match(result.stderr, told);
  }
});

test('the cut of the base is drawn with its readings, and without any it says so', () => {
  const cut = run(['draw', join(root, 'presets', 'stations', 'garden_shelter.json'), 'base-profile', '--units', 'mm']);
  assert.equal(cut.status, 0, cut.stderr);
  assert.match(cut.stdout, /rip to 96\.8 mm, compass 19 mm/);
  assert.match(run(['draw', '-', 'base-profile'], config()).stdout, /Nobody has read the ground yet/);
});

test('schema, fields and rules are JSON', () => {
  const schema = JSON.parse(run(['schema']).stdout);
  assert.equal(schema.$schema, 'https://json-schema.org/draft/2020-12/schema');
  assert.equal(schema.properties.cooks.maxItems, 12);
  const { fields } = JSON.parse(run(['fields']).stdout);
  assert.ok(fields.some((field) => field.path === 'cooks[].stature_mm' && field.min === 800));
  const rules = run(['rules']);
  assert.equal(rules.status, 0, rules.stderr);
  assert.ok(JSON.parse(rules.stdout).rules.length > 40);
});

test('check says nothing about a good config and one line a problem about a bad one', () => {
  const good = run(['check', '-'], config());
  assert.deepEqual([good.status, good.stdout, good.stderr], [0, '', '']);
  const bad = run(['check', '-'], config({ oven: { width_mm: 1, colour: 'red' }, cooks: [{ share: 2 }] }));
  assert.equal(bad.status, 2);
  const lines = bad.stdout.trimEnd().split('\n');
  assert.deepEqual(lines.map((line) => line.split(':')[0]), ['oven.width_mm', 'oven.colour', 'cooks.0.share']);
});

test('every preset that is a config is fit for evaluation', () => {
  const presets = join(root, 'presets');
  const files = [];
  const walk = (at) => {
    for (const entry of readdirSync(at, { withFileTypes: true })) {
      if (entry.isDirectory()) walk(join(at, entry.name));
      else if (entry.name.endsWith('.json')) files.push(join(at, entry.name));
    }
  };
  walk(presets);
  const configs = files.filter((name) => readFileSync(name, 'utf8').includes('"hearthsight/'));
  assert.ok(configs.length > 0);
  for (const name of configs) {
    const result = run(['evaluate', name]);
    assert.equal(result.status, 0, `${name}: ${result.stderr}`);
    JSON.parse(result.stdout);
  }
});

const long = 'z'.repeat(5000);
// What is given on stdin, and what stderr must name.
const badInputs = [
  ['no text', '', 'empty input'],
  ['no object', '[]', 'a list'],
  ['text that breaks off', '{"format":"hearthsight/1"', 'breaks off'],
  ['no format', '{}', 'format'],
  ['a newer format', '{"format":"hearthsight/2"}', 'format'],
  ['an older format', '{"format":"hearthsight/0"}', 'format'],
  ['an unknown key', config({ overn: {} }), 'overn'],
  ['an unknown key in a group', config({ oven: { widht_mm: 600 } }), 'oven.widht_mm'],
  ['a repeated key', '{"format":"hearthsight/1","title":"a","title":"b"}', 'title'],
  ['a number too small', config({ oven: { mouth_height_mm: 39 } }), 'oven.mouth_height_mm'],
  ['a number too large', config({ cooks: [{ stature_mm: 2301 }] }), 'cooks.0.stature_mm'],
  ['1e308', '{"format":"hearthsight/1","peel":{"length_mm":1e308}}', 'peel.length_mm'],
  ['1e999', '{"format":"hearthsight/1","peel":{"length_mm":1e999}}', 'peel.length_mm'],
  ['NaN', '{"format":"hearthsight/1","view":{"lateral_mm":NaN}}', 'view.lateral_mm'],
  ['Infinity', '{"format":"hearthsight/1","view":{"lateral_mm":-Infinity}}', 'view.lateral_mm'],
  ['a wrong type', config({ oven: { fuel: 3 } }), 'oven.fuel'],
  ['text for a flag', config({ cooks: [{ seated: 'yes' }] }), 'cooks.0.seated'],
  ['a word that is no choice', config({ station: { arrangement: 'three_level' } }), 'station.arrangement'],
  ['junk for a length', config({ station: { aisle_mm: '4 cubits' } }), 'station.aisle_mm'],
  ['a length that may be thousands', config({ station: { prep_width_mm: '1,200' } }), 'station.prep_width_mm'],
  ['null where a value must be', config({ oven: { width_mm: null } }), 'oven.width_mm'],
  ['no cooks', config({ cooks: [] }), 'cooks'],
  ['13 cooks', config({ cooks: Array(13).fill({}) }), 'cooks'],
  ['500 cooks', config({ cooks: Array(500).fill({}) }), 'cooks'],
  ['two cooks of one name', config({ cooks: [{ name: 'A' }, { name: 'A' }] }), 'cooks.1.name'],
  ['a control character', config({ title: 'a\u0007b' }), 'title'],
  ['bytes that are not UTF-8', Buffer.from('{"format":"hearthsight/1","title":"\xff"}', 'latin1'), 'title'],
  ['a title too long', config({ title: long }), 'title'],
  ['one level at two heights', config({ station: { arrangement: 'one_level', counter_height_mm: 900, oven_base_height_mm: 950 } }), 'station.oven_base_height_mm'],
  ['a trial by nobody', config({ trial: { at: { cook: 'Zed' } } }), 'trial.at.cook'],
  ['a mouth wider than the oven', config({ oven: { width_mm: 400, mouth_width_mm: 900 } }), 'oven.mouth_width_mm'],
  ['an arch that springs above its top', config({ oven: { mouth_shape: 'arch', mouth_side_height_mm: 200, mouth_height_mm: 130 } }), 'oven.mouth_side_height_mm'],
  ['41 readings of the ground', config({ survey: { points: Array(41).fill({}) } }), 'survey.points'],
  ['readings that are no list', config({ survey: { points: {} } }), 'survey.points'],
  ['a reading below nothing', config({ survey: { points: [{ reading_mm: -1 }] } }), 'survey.points.0.reading_mm'],
  ['a reading without a unit that is one', config({ survey: { points: [{}, { reading_mm: '4 ells' }] } }), 'survey.points.1.reading_mm'],
  ['a fifth level line', config({ survey: { points: [{ setup: 'e' }] } }), 'survey.points.0.setup'],
  ['an unknown key of a reading', config({ survey: { points: [{ z_mm: 1 }] } }), 'survey.points.0.z_mm'],
  ['feet under the counter', config({ survey: { points: [{ kind: 'feet', y_mm: 200 }] } }), 'survey.points.0.y_mm'],
  ['a null survey', config({ survey: null }), 'survey'],
  ['deep nesting', '['.repeat(100000) + ']'.repeat(100000), 'nesting'],
  ['10 MB', ' '.repeat(10_000_000), 'bytes of input'],
];
for (const [name, text, named] of badInputs) {
  test(`refused: ${name}`, () => {
    for (const command of ['evaluate', 'link']) {
      const result = run([command, '-'], text);
      assert.equal(result.status, 2);
      assert.equal(result.stdout, '');
      assert.ok(result.stderr.includes(named), result.stderr.slice(0, 500));
      assert.ok(!result.stderr.includes(long), 'a value is echoed whole');
      assert.ok(result.stderr.trimEnd().split('\n').length <= 51);
    }
  });
}

// Arguments and what stderr must name.
const badCalls = [
  [[], 'command'],
  [['bake'], 'bake'],
  [['evaluate'], 'FILE'],
  [['evaluate', join(folder, 'none.json')], 'none.json'],
  [['evaluate', folder], folder.slice(0, 20)],
  [['evaluate', '-', 'other.json'], 'other.json'],
  [['evaluate', '-', '--sett', 'x=1'], '--sett'],
  [['evaluate', '-', '--set'], '--set'],
  [['evaluate', '-', '--set', 'title'], '--set'],
  [['evaluate', '-', '--set', 'oven.width_mm=1'], 'oven.width_mm'],
  [['evaluate', '-', '--set', 'oven.listed_clearance={side_mm:25}'], 'oven.listed_clearance: broken JSON'],
  [['evaluate', '-', '--set', 'oven.listed_clearance={"sides_mm":25}'], 'oven.listed_clearance.sides_mm'],
  [['evaluate', '-', '--set', 'format=x'], 'in the file itself'],
  [['evaluate', '-', '--set', 'cooks.0.height_mm=1700'], 'cooks.0.height_mm'],
  [['evaluate', '-', '--set', 'cooks.7.share=1'], 'cooks.7.share'],
  [['from-link'], 'from-link'],
  [['from-link', 'a'], 'link'],
  [['from-link', 'aKEhQ'], 'link'],
  [['schema', 'more'], 'more'],
];
for (const [args, named] of badCalls) {
  test(`refused: hearthsight ${args.join(' ')}`.slice(0, 80), () => {
    const result = run(args, config());
    assert.equal(result.status, 2);
    assert.equal(result.stdout, '');
    assert.ok(result.stderr.includes(named), result.stderr);
  });
}

test('help and version are answers, not errors', () => {
  const help = run(['--help']);
  assert.equal(help.status, 0);
  assert.match(help.stdout, /evaluate FILE/);
  // Every drawing that a wrong name is answered with is in the help too.
  const refused = run(['draw', 'presets/demo.json', 'nope']);
  const names = refused.stderr.split('; give ')[1].trim().split(', ');
  assert.ok(names.length > 8);
  for (const name of names) assert.ok(help.stdout.includes(name), name);
  assert.match(run(['--version']).stdout, /^hearthsight \d+\.\d+\.\d+\n$/);
});

test('an output that cannot be written is a fault', { skip: !existsSync('/dev/full') }, () => {
  const full = openSync('/dev/full', 'w');
  const result = spawnSync(program, ['schema'], { stdio: ['ignore', full, 'pipe'], encoding: 'utf8' });
  assert.equal(result.status, 1);
  assert.match(result.stderr, /could not be written/);
});
