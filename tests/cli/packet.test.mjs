// The packet as other programs read it: poppler for the PDF, Python and LibreOffice for the CSV,
// libxml2 for HTML and SVG, Python's icalendar for the plan. HEARTHSIGHT names the program, build/native/hearthsight by default.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const program = process.env.HEARTHSIGHT ?? join(root, 'build', 'native', 'hearthsight');
const folder = mkdtempSync(join(tmpdir(), 'hearthsight-packet-'));
after(() => rmSync(folder, { recursive: true }));

const demo = join(root, 'presets', 'demo.json');
const surveyed = join(root, 'presets', 'stations', 'garden_shelter.json');
const run = (args, input = '') => spawnSync(program, args, { input, encoding: 'utf8', maxBuffer: 1 << 26 });
let made = 0;
function packet(file, ...options) {
  const place = join(folder, `packet-${++made}`);
  const answer = run(['packet', file, place, ...options]);
  assert.equal(answer.status, 0, answer.stderr);
  return { place, names: answer.stdout.trim().split('\n').map((name) => relative(place, name)) };
}
const pdfText = (file, ...options) => execFileSync('pdftotext', [...options, file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 });
const info = (file) => Object.fromEntries(execFileSync('pdfinfo', [file], { encoding: 'utf8' }).trim().split('\n')
  .map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]));

// Every file of a folder by its path in it.
function filesOf(place) {
  const all = new Map();
  for (const entry of readdirSync(place, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath ?? entry.path, entry.name);
    all.set(relative(place, file), readFileSync(file));
  }
  return all;
}

const dotsPerInch = 300;
const dots = (mm) => Math.round(mm / 25.4 * dotsPerInch);
function picture(file) {
  const bytes = readFileSync(file);
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40));
  return { width: Number(width), height: Number(height), dark: (x, y) => bytes[head.length + y * Number(width) + x] < 128 };
}
function longest(count, dark) {
  let best = 0;
  for (let i = 0, length = 0; i < count; ++i) {
    length = dark(i) ? length + 1 : 0;
    best = Math.max(best, length);
  }
  return best;
}
const inMm = (length) => length / dotsPerInch * 25.4;

test('the packet is the same byte for byte when it is made again, and lists what it wrote', () => {
  const one = packet(demo);
  const two = packet(demo);
  const first = filesOf(one.place);
  const second = filesOf(two.place);
  assert.deepEqual([...first.keys()].sort(), [...second.keys()].sort());
  for (const [name, bytes] of first) assert.ok(bytes.equals(second.get(name)), `${name} differs`);
  assert.deepEqual(one.names.filter((name) => !first.has(name)), []);
  assert.deepEqual([...first.keys()].filter((name) => name !== 'files.txt').sort(), [...one.names].sort());
  for (const name of ['packet.pdf', 'packet.html', 'parts.csv', 'hardware.csv', 'station.json', 'drawings/section.svg', 'drawings/panel_1.svg']) {
    assert.ok(first.has(name), `${name} is missing`);
  }
});

test('nothing is overwritten without --force, and with it no file of before stays', () => {
  const { place } = packet(demo);
  writeFileSync(join(place, 'notes.txt'), 'mine');
  writeFileSync(join(place, 'packet.pdf'), 'mine');
  const before = filesOf(place);
  const refused = run(['packet', demo, place]);
  assert.equal(refused.status, 2);
  assert.equal(refused.stdout, '');
  assert.match(refused.stderr, /packet\.html: a file that is there already/);
  assert.deepEqual(filesOf(place), before);
  // A smaller station has fewer parts: none of the old ones is left between the new.
  const small = run(['packet', join(root, 'presets', 'stations', 'prep_only.json'), place, '--force']);
  assert.equal(small.status, 0, small.stderr);
  const now = filesOf(place);
  assert.equal(now.get('notes.txt').toString(), 'mine');
  assert.ok(now.get('packet.pdf').length > 1000);
  const listed = small.stdout.trim().split('\n').map((name) => relative(place, name));
  assert.deepEqual([...now.keys()].sort(), [...listed, 'files.txt', 'notes.txt'].sort());
});

test('bad input writes nothing at all', () => {
  const place = join(folder, 'nowhere');
  for (const args of [
    ['packet', demo],
    ['packet', demo, place, '--paper', 'a3'],
    ['packet', demo, place, '--address', 'javascript:alert(1)'],
    ['packet', demo, place, '--address', 'https://x.example/#a'],
    ['packet', demo, place, '--set', 'cooks.0.stature_mm=9000'],
    ['packet', demo, place, 'third'],
  ]) {
    const answer = run(args);
    assert.equal(answer.status, 2, args.join(' '));
    assert.equal(answer.stdout, '');
    assert.ok(!existsSync(place), args.join(' '));
  }
  const file = join(folder, 'a-file');
  writeFileSync(file, 'mine');
  assert.equal(run(['packet', demo, file, '--force']).status, 2);
  assert.equal(readFileSync(file, 'utf8'), 'mine');
});

for (const [paper, [wide, high]] of Object.entries({ a4: [210, 297], letter: [215.9, 279.4] })) {
  test(`the PDF on ${paper}: its pages, its words, and lines of 100 mm that measure so`, () => {
    const { place } = packet(surveyed, '--paper', paper);
    const pdf = join(place, 'packet.pdf');
    const about = info(pdf);
    const pages = Number(about.Pages);
    assert.equal(about.JavaScript, 'no');
    const text = pdfText(pdf).split('\f');
    // Every page but the strips carries its number.
    const numbered = text.filter((page, index) => page.includes(`page ${index + 1} of ${pages}`));
    const strips = readdirSync(join(place, 'drawings')).filter((name) => name.startsWith('strip_')).length;
    assert.ok(strips > 0);
    assert.equal(numbered.length, pages - strips);
    const { inch } = JSON.parse(run(['evaluate', surveyed]).stdout).recommended_build;
    for (const words of ['In this packet', inch.counter_height_text, inch.oven_base_height_text]) {
      assert.ok(text[0].includes(words), `${words}: ${text[0]}`);
    }
    assert.doesNotMatch(text.join(''), /[\u2044\u2080-\u2089\ufffd]/);

    execFileSync('pdftoppm', ['-gray', '-r', String(dotsPerInch), pdf, join(folder, paper)], { maxBuffer: 1 << 26 });
    const shown = readdirSync(folder).filter((name) => name.startsWith(`${paper}-`)).sort();
    assert.equal(shown.length, pages);
    let measured = 0;
    shown.forEach((name, index) => {
      const page = picture(join(folder, name));
      const lying = page.width > page.height;
      const [w, h] = lying ? [high, wide] : [wide, high];
      assert.ok(Math.abs(page.width - dots(w)) <= 2 && Math.abs(page.height - dots(h)) <= 2, name);
      const words = text[index];
      const isStrip = words.includes('Print at 100 %');
      if (!isStrip && !words.includes('Measure both lines')) return;
      // Where the lines are: of a strip 18 mm above the lower edge and 20 mm from the left; on the
      // cover the longest dark runs of the left half.
      let level = 0;
      let upright = 0;
      if (isStrip) {
        for (let y = page.height - dots(20); y < page.height - dots(16); ++y) level = Math.max(level, longest(dots(160), (x) => page.dark(x, y)));
        for (let x = dots(18); x < dots(22); ++x) upright = Math.max(upright, longest(page.height, (y) => page.dark(x, y)));
      } else {
        for (let x = dots(10); x < dots(30); ++x) upright = Math.max(upright, longest(page.height, (y) => page.dark(x, y)));
        for (let y = dots(30); y < page.height - dots(20); ++y) {
          const length = longest(dots(125), (x) => page.dark(x, y));
          if (Math.abs(inMm(length) - 100) < 3) level = Math.max(level, length);
        }
      }
      for (const [which, length] of Object.entries({ level, upright })) {
        assert.ok(Math.abs(inMm(length) - 100) <= 0.5, `${name}: the ${which} line measures ${inMm(length)} mm`);
      }
      ++measured;
    });
    assert.equal(measured, strips + 1);
  });
}

test('every letter is as wide as another program says that it is', () => {
  // Poppler has tables of its own of the standard typefaces. A file of this test's own writing sets
  // every letter by itself; ours are the tables of the source.
  const source = readFileSync(join(root, 'engine', 'report', 'pdf_font.cpp'), 'utf8');
  const columns = 16;
  for (const [font, name] of [['Helvetica', 'kPlain'], ['Helvetica-Bold', 'kBold']]) {
    const table = new RegExp(`${name}\\[\\] = \\{([^}]*)\\}`).exec(source)[1].replace(/\/\/[^\n]*/g, '');
    const ours = [...table.matchAll(/\d+/g)].map(([number]) => Number(number));
    assert.equal(ours.length, 224);
    const place = (code) => [20 + (code % columns) * 34, 700 - Math.floor(code / columns) * 40];
    let marks = 'BT /F 20 Tf ';
    for (let code = 33; code < 256; ++code) {
      const [x, y] = place(code);
      marks += `1 0 0 1 ${x} ${y} Tm (\\${code.toString(8).padStart(3, '0')}) Tj `;
    }
    marks += 'ET';
    const objects = ['<</Type/Catalog/Pages 2 0 R>>', '<</Type/Pages/Kids[3 0 R]/Count 1>>',
      '<</Type/Page/Parent 2 0 R/MediaBox[0 0 595 842]/Resources<</Font<</F 4 0 R>>>>/Contents 5 0 R>>',
      `<</Type/Font/Subtype/Type1/BaseFont/${font}/Encoding/WinAnsiEncoding>>`,
      `<</Length ${marks.length}>>\nstream\n${marks}\nendstream`];
    const file = join(folder, `${font}.pdf`);
    writeFileSync(file, `%PDF-1.4\n${objects.map((body, i) => `${i + 1} 0 obj\n${body}\nendobj\n`).join('')}trailer\n<</Root 1 0 R/Size 6>>\n`);
    const boxes = [...pdfText(file, '-bbox').matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)"/g)]
      .map(([, left, top, right]) => ({ left: Number(left), top: Number(top), wide: Number(right) - Number(left) }));
    let compared = 0;
    for (let code = 33; code < 256; ++code) {
      const [x, y] = place(code);
      // A letter stands up to 20 points above its foot.
      const box = boxes.find(({ left, top }) => Math.abs(left - x) < 0.5 && Math.abs(842 - y - top - 14) < 12);
      if (!box || ours[code - 32] === 0) continue;
      assert.ok(Math.abs(box.wide * 50 - ours[code - 32]) < 0.6, `${font} ${code}: ${box.wide * 50}, ours ${ours[code - 32]}`);
      ++compared;
    }
    assert.ok(compared > 205, `${compared} letters of ${font} were found`);
  }
});

test('what a person typed is no tag, no script, no formula and no mark of the PDF', () => {
  const evil = '<script>alert(1)</script>) Tj ET (\\';
  const file = join(folder, 'evil.json');
  writeFileSync(file, JSON.stringify({ format: 'hearthsight/1', title: evil, cooks: [{ name: '=1+1' }, { name: '"><img src=x onerror=alert(1)>' }] }));
  const { place } = packet(file);
  assert.ok(pdfText(join(place, 'packet.pdf')).includes('<script>alert(1)</script>) Tj ET (\\'));
  assert.equal(info(join(place, 'packet.pdf')).JavaScript, 'no');
  for (const [name, bytes] of filesOf(place)) {
    if (!/\.(html|svg)$/.test(name)) continue;
    assert.doesNotMatch(bytes.toString(), /<script|<img|onerror=(?!alert\(1\)&gt;)/, name);
  }
});

test('packet.html is well formed, fetches nothing and has rules for its paper', () => {
  const { place } = packet(surveyed, '--paper', 'letter', '--units', 'mm');
  const html = readFileSync(join(place, 'packet.html'), 'utf8');
  const checked = spawnSync('xmllint', ['--noout', '--huge', '-'], { input: html, encoding: 'utf8' });
  assert.equal(checked.status, 0, checked.stderr.slice(0, 400));
  assert.match(html, /@page\{size:215\.9mm 279\.4mm/);
  assert.doesNotMatch(html, /<(script|link|img|iframe|object)\b|url\(|@import/);
});

test('CSV: another parser reads numbers as numbers, and no cell of words is a formula', () => {
  const { place } = packet(demo);
  const read = `
import csv, json, sys
out = []
for name in sys.argv[1:]:
    with open(name, newline='', encoding='utf-8') as f:
        out.append(list(csv.reader(f, strict=True)))
print(json.dumps(out))`;
  const [parts, hardware] = JSON.parse(execFileSync('python3', ['-c', read, join(place, 'parts.csv'), join(place, 'hardware.csv')], { encoding: 'utf8' }));
  const report = JSON.parse(run(['evaluate', demo]).stdout);
  assert.equal(parts.length, report.parts.length + 1);
  const column = (name) => parts[0].indexOf(name);
  report.parts.forEach((part, i) => {
    const row = parts[i + 1];
    assert.equal(row.length, parts[0].length);
    assert.equal(Number(row[column('number')]), part.number);
    assert.equal(Number(row[column('quantity')]), part.quantity);
    assert.ok(Math.abs(Number(row[column('length_mm')]) - part.finished.length_mm) < 1e-9);
    const inches = Number(row[column('length_in')]);
    if (part.material === 'stainless sheet') {  // decimals, as the fabricator reads them
      assert.ok(Math.abs(inches * 25.4 - part.finished.length_mm) <= 0.051, row.join());
      assert.ok(Math.abs(inches - Number.parseFloat(part.finished.length_in)) <= 0.00051, row.join());
      return;
    }
    // Nearest 1/32 in (the report writes the same length as a fraction).
    assert.ok(Number.isInteger(inches * 32) && Math.abs(inches * 25.4 - part.finished.length_mm) <= 25.4 / 64 + 1e-9, row.join());
  });
  assert.equal(hardware.length, report.hardware.length + 1);
  report.hardware.forEach((one, i) => assert.equal(Number(hardware[i + 1][1]), one.quantity));
  for (const row of [...parts, ...hardware]) {
    for (const cell of row) assert.doesNotMatch(cell, /^[=+\-@\t\r]/);
  }
});

test('CSV: a spreadsheet program shows numbers as numbers, words as words, and computes nothing', () => {
  const { place } = packet(yard);
  const tables = ['parts.csv', 'hardware.csv', 'cuts.csv', 'stock.csv'];
  // Flat XML, so that every cell's type is there to read. Separator comma, quotes, UTF-8, first row 1.
  execFileSync('soffice', ['--headless', '--norestore', `-env:UserInstallation=file://${join(folder, 'office')}`,
    '--infilter=CSV:44,34,76,1', '--convert-to', 'fods', '--outdir', folder, ...tables.map((name) => join(place, name))], { stdio: 'pipe', timeout: 240000 });
  const read = `
import csv, json, sys
import xml.etree.ElementTree as tree
o = '{urn:oasis:names:tc:opendocument:xmlns:office:1.0}'
t = '{urn:oasis:names:tc:opendocument:xmlns:table:1.0}'
def cells(file):
    rows = []
    for row in tree.parse(file).iter(t + 'table-row'):
        out = []
        for cell in row.iter(t + 'table-cell'):
            if t + 'formula' in cell.attrib: sys.exit('a formula in ' + file)
            one = [cell.get(o + 'value-type'), cell.get(o + 'value'), ''.join(cell.itertext()).strip()]
            out += [one] * int(cell.get(t + 'number-columns-repeated', '1')) if len(out) < 60 else []
        rows.append(out)
    return rows
print(json.dumps([[cells(a), list(csv.reader(open(b, newline='', encoding='utf-8')))] for a, b in zip(sys.argv[1::2], sys.argv[2::2])]))`;
  const pairs = tables.flatMap((name) => [join(folder, name.replace('.csv', '.fods')), join(place, name)]);
  const all = JSON.parse(execFileSync('python3', ['-c', read, ...pairs], { encoding: 'utf8', maxBuffer: 1 << 26 }));
  let numbers = 0;
  all.forEach(([shown, rows], which) => {
    rows.forEach((row, i) => row.forEach((text, j) => {
      const [type, value] = shown[i][j] ?? [];
      const where = `${tables[which]} row ${i + 1} column ${j + 1}: ${text}`;
      if (/^-?[0-9]+([.][0-9]+)?$/.test(text)) {
        assert.equal(type, 'float', where);
        assert.equal(Number(value), Number(text), where);
        ++numbers;
      } else if (text !== '') {
        assert.equal(type, 'string', where);
      }
    }));
  });
  assert.ok(numbers > 200, `${numbers} numbers`);
});

const yard = join(root, 'presets', 'stations', 'open_courtyard.json');

test('every part of the packet is there where the station has it, and named where it has not', () => {
  const { place, names } = packet(yard);
  const text = pdfText(join(place, 'packet.pdf'));
  const report = JSON.parse(run(['evaluate', yard]).stdout);
  for (const title of ['Parts and hardware', 'Cut plans', 'Metal order', 'Finish', 'Plan and build sheet', 'Cost and mass', 'Safety at the oven', 'Sources']) {
    assert.ok(text.includes(title), title);
  }
  assert.ok(names.includes('cuts.csv') && names.includes('stock.csv'), names.join());
  if (!report.survey) assert.match(text, /The ground and the base\.\s+Not in this packet:/);
});

test('the calendar file reads in an independent library, with the plan\'s own days', () => {
  const { place, names } = packet(yard);
  assert.ok(names.includes('plan.ics'), 'the preset has a first day');
  const ics = readFileSync(join(place, 'plan.ics'));
  assert.match(ics.toString(), /^BEGIN:VCALENDAR\r\n/);
  assert.match(ics.toString(), /END:VCALENDAR\r\n$/);
  for (const line of ics.toString('latin1').split('\r\n')) assert.ok(line.length <= 75, `a line of ${line.length} octets`);
  const read = `
import icalendar, json, sys
calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
out = []
for part in calendar.walk():
    if part.errors: sys.exit(str(part.errors))
    if part.name != 'VEVENT': continue
    out.append({'uid': str(part['UID']), 'stamp': part['DTSTAMP'].dt.isoformat(), 'words': str(part['SUMMARY']),
                'from': part['DTSTART'].dt.isoformat(), 'to': part['DTEND'].dt.isoformat()})
print(json.dumps({'version': str(calendar['VERSION']), 'by': str(calendar['PRODID']), 'events': out}))`;
  // Debian's own Python has Debian's library.
  const calendar = JSON.parse(execFileSync('/usr/bin/python3', ['-c', read], { input: ics, encoding: 'utf8' }));
  assert.equal(calendar.version, '2.0');
  assert.match(calendar.by, /Hearthsight/i);
  const { tasks } = JSON.parse(run(['evaluate', yard]).stdout).plan;
  assert.equal(new Set(calendar.events.map(({ uid }) => uid)).size, calendar.events.length, 'an UID stands twice');
  for (const event of calendar.events) assert.ok(event.to > event.from, event.words);
  for (const task of tasks) {
    const own = calendar.events.filter(({ uid }) => uid.includes(`/${task.key}/`));
    const work = own.filter(({ uid }) => uid.includes('/work/')), wait = own.filter(({ uid }) => uid.endsWith('/wait'));
    assert.equal(work.length > 0, task.work_h > 0, task.key);
    if (work.length > 0) {
      assert.equal(work[0].words, task.name);
      assert.equal(work[0].from.slice(0, 16), task.start, task.key);
      assert.equal(work.at(-1).to.slice(0, 16), task.worked, task.key);
    }
    assert.equal(wait.length, task.wait_h > 0 ? 1 : 0, task.key);
    if (wait.length > 0) assert.deepEqual([wait[0].from.slice(0, 16), wait[0].to.slice(0, 16)], [task.worked, task.done], task.key);
  }
});

test('a cook an inch taller: what changed is told by sheet, from the values', () => {
  const stature = JSON.parse(readFileSync(demo, 'utf8')).cooks[0].stature_mm;
  const taller = join(folder, 'taller.json');
  const config = JSON.parse(readFileSync(demo, 'utf8'));
  config.cooks[0].stature_mm = stature + 25.4;
  writeFileSync(taller, JSON.stringify(config));
  const same = run(['diff', demo, demo]);
  assert.equal(same.stdout, 'Nothing is different.\n', same.stderr);
  const changed = run(['diff', demo, taller, '--units', 'mm']);
  assert.equal(changed.status, 0, changed.stderr);
  const lines = changed.stdout.trim().split('\n');
  assert.match(lines[0], /^Given: .*1815.* mm, was 1790/);
  // Each height that a builder marks otherwise is a line with both values.
  const [before, after] = [demo, taller].map((file) => JSON.parse(run(['evaluate', file]).stdout));
  let moved = 0;
  for (const key of ['counter_height_mm', 'oven_base_height_mm']) {
    const [then, now] = [before.recommended_build.mm[key], after.recommended_build.mm[key]];
    if (then === now) continue;
    ++moved;
    assert.ok(lines.some((line) => line.startsWith('Cover') && line.includes(`${now} mm`) && line.includes(`${then} mm`)), `${key}: ${changed.stdout}`);
  }
  assert.ok(moved > 0);
  assert.ok(lines.some((line) => line.startsWith('Parts and hardware')), changed.stdout);
  assert.equal(run(['diff', demo]).status, 2);
});

test('the stock list goes out and comes back the same; what is wrong is named by line and column', () => {
  const out = run(['stock', yard]);
  assert.equal(out.status, 0, out.stderr);
  const list = join(folder, 'stock.csv');
  writeFileSync(list, out.stdout);
  const back = run(['stock', demo, list]);
  assert.equal(back.status, 0, back.stderr);
  assert.deepEqual(JSON.parse(back.stdout).stock, JSON.parse(run(['stock', yard, list]).stdout).stock);
  assert.deepEqual(JSON.parse(run(['from-link', run(['link', yard]).stdout.trim()]).stdout).stock, JSON.parse(back.stdout).stock);
  // As a spreadsheet program writes it where the comma is the decimal mark, and with words that
  // would act there.
  writeFileSync(list, 'name;kind;length_mm;price\n"\'=1+1";sheet;2440,5;39,9\n');
  const other = JSON.parse(run(['stock', demo, list]).stdout).stock[0];
  assert.equal(other.name, '=1+1');
  assert.equal(other.length_mm, 2440.5);
  assert.equal(other.price, 39.9);
  for (const [text, said] of [
    ['name,colour\nx,y\n', /line 1, column 2: .*name, kind/],
    ['name,name\nx,y\n', /line 1, column 2: .*each column once/],
    ['name,kind\nx,wood\n', /line 2, column 2: /],
    ['name,length_mm\nx,99999999\n', /line 2, column 2: /],
    ['name,price\na,1\nb,"2\n', /line 3, column 2: a quote that does not close/],
    ['name\na,b\n', /line 2, column 2: a cell without a column/],
    ['', /line 1, column 1: missing/],
  ]) {
    writeFileSync(list, text);
    const refused = run(['stock', demo, list]);
    assert.equal(refused.status, 2, text);
    assert.equal(refused.stdout, '');
    assert.match(refused.stderr, said);
  }
});

test('an eye an inch higher: what each sees is told, and what holds a height that stays', () => {
  const config = JSON.parse(readFileSync(demo, 'utf8'));
  const report = JSON.parse(run(['evaluate', demo]).stdout);
  const files = [0, 25.4].map((more, i) => {
    const given = structuredClone(config);
    given.cooks[1].eye_height_mm = Number((report.cooks[1].eye_height_mm + more).toFixed(1));
    const file = join(folder, `eye_${i}.json`);
    writeFileSync(file, JSON.stringify(given));
    return file;
  });
  const [then, now] = files.map((file) => JSON.parse(run(['evaluate', file]).stdout));
  const { stdout } = run(['diff', ...files, '--units', 'mm']);
  const share = (one) => Math.floor(one.cooks[1].upright.visible_pizza_fraction * 100 + 0.5);
  assert.notEqual(share(then), share(now));
  assert.match(stdout, new RegExp(`${config.cooks[1].name}: sees ${share(now)} % .*; was: sees ${share(then)} %`), stdout);
  // The shortest cook's hands hold the oven's counter, whatever the eyes do.
  assert.equal(then.used.oven_base_height_mm, now.used.oven_base_height_mm);
  assert.match(stdout, new RegExp(`^Unmoved: oven counter, .*hands`, 'm'), stdout);
});
