// The packet as the page makes it, in a worker or by itself: the command's own files, byte for byte.
// And its HTML as a browser prints it.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { devices, keepPicture, openSheet, root, withPage, world } from '../support/page.mjs';

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

// Opens the station, presses as the script says, and gives what was made.
async function packetBy(page, press) {
  await open(page);
  if (!await page.locator('#packet-paper').isVisible()) await openSheet(page, 'share');
  await page.locator('#packet-paper').selectOption('a4');
  return saved(page, press);
}
function byCommand(address) {
  const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-packet-'));
  try {
    execFileSync(program, ['packet', station, folder, '--paper', 'a4', '--address', address], { stdio: 'pipe' });
    return readFileSync(path.join(folder, 'packet.pdf'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
const addressOf = (page) => page.evaluate(() => location.href.split('#')[0]);
// How often the page's own program was asked to search.
const countSearches = (page) => page.evaluate(() => {
  const { _dk_packet_advance } = globalThis.Module;
  globalThis.searches = 0;
  const counted = (steps) => {
    ++globalThis.searches;
    return _dk_packet_advance(steps);
  };
  // em++'s script puts the function itself in this place when it is called first.
  Object.defineProperty(globalThis.Module, '_dk_packet_advance', { get: () => counted, set() {} });
});

test('a worker makes the packet, with a bar that says how far it is, and is gone afterwards', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    await countSearches(page);
    const workers = [];
    page.on('worker', (worker) => workers.push(worker.url()));
    await page.evaluate(() => {
      globalThis.told = [];
      const look = () => {
        const bar = document.getElementById('packet-progress');
        if (bar && !bar.hidden && bar.textContent) globalThis.told.push([bar.value, bar.max, bar.textContent]);
      };
      new MutationObserver(look).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    });
    await packetBy(page, () => page.locator('#make-packet').click());
    assert.match(workers.join(), /packet-worker\.js$/);
    assert.equal(await page.evaluate(() => globalThis.searches), 0, 'the page searched itself');
    const told = await page.evaluate(() => globalThis.told);
    assert.ok(told.length > 3, `${told.length} states of the bar`);
    told.forEach(([value, max, words], i) => {
      assert.ok(value <= max && (i === 0 || value >= told[i - 1][0]), words);
      assert.match(words, /(The cuts of the station|What an inch more of each body would cost): \d+ of \d+ plans made/);
    });
    assert.ok(!await page.locator('#packet-progress, #stop-packet').first().isVisible());
    await page.waitForFunction(() => !document.getElementById('make-packet').disabled);
    assert.equal(page.workers().length, 0);
  });
});

test('without a worker the page makes the same packet itself', async () => {
  await withPage({ device: devices.phone, allowed: [/packet-worker\.js|Failed to load resource/] }, async (page, context) => {
    await context.route('**/packet-worker.js', (route) => route.abort());
    await countSearches(page);
    const pdf = await packetBy(page, () => page.locator('#make-packet').click());
    assert.ok(await page.evaluate(() => globalThis.searches) > 3);
    assert.ok(pdf.bytes.equals(byCommand(await addressOf(page))), 'packet.pdf differs');
  });
});

test('a packet that is stopped is whole, and says that its plans are the best so far', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    const pdf = await packetBy(page, () => page.evaluate(() => {
      document.getElementById('make-packet').click();
      document.getElementById('stop-packet').click();
    }));
    assert.match(await page.locator('#paper-state').textContent(), /You stopped the search: each cut plan is the best so far/);
    const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-packet-'));
    try {
      const file = path.join(folder, 'stopped.pdf');
      writeFileSync(file, pdf.bytes);
      const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
      for (const part of ['Cut plans', 'Cost and mass', 'Safety at the oven', 'Sources']) assert.ok(text.includes(part), part);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

test('beside the button stands what is open: how much of it, and the worst in words', async () => {
  await withPage({ device: devices.phone }, async (page) => {
    await openSheet(page, 'share');
    const findings = await page.evaluate(() => {
      const { _dk_report_json, UTF8ToString } = globalThis.Module;
      return JSON.parse(UTF8ToString(_dk_report_json())).findings;
    });
    const count = (wanted) => findings.filter(({ verdict }) => verdict === wanted).length;
    assert.ok(count('fail') > 0 && count('unknown') > 1);
    assert.match(await page.locator('#open-count').textContent(), new RegExp(`^${count('fail')} things? do(es)? not work and ${count('unknown')} are not known`));
    const worst = page.locator('#open-findings .finding');
    assert.equal(await worst.count(), 2);
    assert.match(await worst.first().textContent(), /Does not work.*\./);
    assert.equal(await worst.first().locator('.why').getAttribute('data-rule'), findings[0].rule);
    await worst.first().locator('.why').tap();
    await page.locator(`[id="why-${findings[0].rule}"][open]`).waitFor();
  });
});

test('a packet of before a change is not offered as the present one, and is again when the change is undone', async () => {
  await withPage({ device: devices.phone, before: () => {
    Object.assign(navigator, { canShare: () => true, share: async () => { globalThis.shared = true; } });
  } }, async (page) => {
    await packetBy(page, () => page.evaluate(() => {
      document.getElementById('make-packet').click();
      document.getElementById('stop-packet').click();
    }));
    const state = page.locator('#paper-state');
    const save = page.getByRole('button', { name: 'Save packet.pdf', exact: true });
    const again = page.getByRole('button', { name: 'Changed since: make it again' });
    await save.waitFor();
    assert.ok(!await again.isVisible());
    assert.ok(await page.locator('#send-packet').isVisible());
    await page.locator('[data-path="title"] input').fill('Another one');
    await page.locator('[data-path="title"] input').press('Enter');
    await again.waitFor();
    assert.match(await state.textContent(), /changed since/);
    assert.doesNotMatch(await state.textContent(), /is made/);
    assert.equal(await page.locator('#packet-files button:visible, #send-packet:visible').count(), 0);
    await page.locator('#undo').click();
    await save.waitFor();
    assert.match(await state.textContent(), /is made/);
    // A finger that is quicker than the page gets no old file.
    let downloads = 0;
    page.on('download', () => { ++downloads; });
    await page.evaluate(() => {
      const paper = document.getElementById('packet-paper');
      paper.value = 'letter';
      document.querySelector('#packet-files button').click();
      document.getElementById('send-packet').click();
    });
    assert.ok(await again.isVisible());
    await page.waitForTimeout(300);
    assert.deepEqual([downloads, await page.evaluate(() => Boolean(globalThis.shared))], [0, false]);
    const pdf = await saved(page, async () => {
      await again.click();
      await page.locator('#stop-packet').click({ timeout: 2000 }).catch(() => {});
    });
    assert.equal(pdf.name, 'packet.pdf');
    assert.ok(!await again.isVisible());
  });
});

for (const [paper, points] of Object.entries({ a4: [595, 842], letter: [612, 792] })) {
  test(`packet.html as a browser prints it on ${paper}: every part on its paper, no page blank or too wide`, async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-packet-'));
    try {
      execFileSync(program, ['packet', station, path.join(folder, 'made'), '--paper', paper], { stdio: 'pipe' });
      const html = readFileSync(path.join(folder, 'made', 'packet.html'), 'utf8');
      const page = await world.browser.newPage();
      await page.setContent(html);
      const heads = await page.locator('h2').allTextContents();
      const strips = await page.evaluate(() => [...document.querySelectorAll('svg')].filter((svg) => /mm$/.test(svg.getAttribute('width') ?? '')).length);
      const file = path.join(folder, 'printed.pdf');
      await page.pdf({ path: file, preferCSSPageSize: true, printBackground: true });
      await page.close();
      const info = execFileSync('pdfinfo', ['-f', '1', '-l', '999', file], { encoding: 'utf8' });
      const pages = [...info.matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+)/g)].map(([, w, h]) => [Number(w), Number(h)].sort((a, b) => a - b));
      assert.ok(pages.length > 20 && strips >= 0, `${pages.length} pages`);
      for (const [short, long] of pages) {
        assert.ok(Math.abs(short - points[0]) < 1.5 && Math.abs(long - points[1]) < 1.5, `a page of ${short} by ${long}`);
      }
      const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 }).split('\f').slice(0, -1);
      assert.equal(text.length, pages.length);
      const all = text.join(' ').replace(/\s+/g, ' ');
      assert.ok(heads.length > 8, heads.join());
      for (const head of heads) assert.ok(all.includes(head.replace(/\s+/g, ' ').trim()), head);
      text.forEach((words, i) => assert.ok(words.trim().length > 5, `page ${i + 1} is blank`));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}
