// What is kept and printed: the safety sheet is one page of paper for every station, the report is
// one file that stands alone.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import test from 'node:test';
import { devices, keepPicture, openSheet, root, snapshot, withPage } from '../support/page.mjs';

const presets = ['demo.json', ...['ovens', 'stations'].flatMap((folder) =>
  readdirSync(path.join(root, 'presets', folder)).map((name) => path.join(folder, name)))];

// Chromium writes each page of a PDF as an object of this type.
const pagesOf = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) || []).length;

async function openFile(page, name) {
  const wanted = JSON.parse(await readFile(path.join(root, 'presets', name), 'utf8')).title;
  await page.locator('#open-file').setInputFiles(path.join(root, 'presets', name));
  await page.waitForFunction((title) => globalThis.hearthsight.snapshot().config.title === title, wanted);
}

async function openSafety(page, context) {
  const [sheet] = await Promise.all([
    context.waitForEvent('page'),
    page.locator('#open-safety').click(),
  ]);
  await sheet.waitForLoadState('load');
  return sheet;
}

async function savedReport(page) {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-report').click()]);
  assert.equal(download.suggestedFilename(), 'hearthsight-report.html');
  return readFile(await download.path(), 'utf8');
}

test('the safety sheet of every preset prints on one page, A4 and Letter', async () => {
  for (const units of ['inch', 'mm']) {
    await withPage({ device: devices.desktop }, async (page, context) => {
      await openSheet(page, 'share');
      await page.locator(`input[name="units"][value="${units}"]`).check();
      for (const [at, name] of presets.entries()) {
        // Each in one of the units; the example in both.
        if (at > 0 && (at % 2 === 0) !== (units === 'mm')) continue;
        await openFile(page, name);
        const sheet = await openSafety(page, context);
        assert.equal(await sheet.title(), `Safety at the oven: ${(await snapshot(page)).config.title}`);
        for (const format of ['A4', 'Letter']) {
          assert.equal(pagesOf(await sheet.pdf({ format })), 1, `${name}, ${format}, ${units}`);
        }
        await sheet.close();
      }
    });
  }
});

test('the safety sheet has the page\u2019s own looks and reads on a phone', async () => {
  await withPage({ device: devices.tallPhone }, async (page, context) => {
    await openSheet(page, 'share');
    const sheet = await openSafety(page, context);
    const paper = await sheet.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--paper').trim());
    assert.equal(paper, '#faf4e6');
    assert.ok(await sheet.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    const small = await sheet.evaluate(() => Math.min(...[...document.querySelectorAll('.safety li')].map((line) =>
      Number.parseFloat(getComputedStyle(line).fontSize))));
    assert.ok(small >= 15, `${small} px`);
    // An unknown is as loud as a failure.
    const weight = await sheet.locator('.safety li[data-verdict="unknown"]').first().evaluate((line) => getComputedStyle(line).fontWeight);
    assert.equal(weight, '700');
    await keepPicture(sheet, 'safety-phone');
    await sheet.close();
  });
});

test('the saved report stands alone, and two parsers read it alike', async () => {
  await withPage({ device: devices.tallPhone }, async (page, context) => {
    await openSheet(page, 'share');
    const text = await savedReport(page);
    assert.doesNotMatch(text, /<script|<link|href=|src=/);
    const alone = await context.newPage();
    const asked = [];
    await alone.route('**/*', (route) => {
      asked.push(route.request().url());
      return route.fulfill({ contentType: 'text/html; charset=utf-8', body: text });
    });
    await alone.goto('http://report.test/');
    assert.deepEqual(asked, ['http://report.test/']);
    assert.ok(await alone.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
    // As HTML and as XML it is the same tree: the HTML parser had nothing to mend.
    const [html, xml] = await alone.evaluate((source) => {
      const tree = (node) => [node.localName, [...node.children].map(tree)];
      const read = (type) => new DOMParser().parseFromString(source, type);
      return [read('text/html'), read('application/xml')].map((parsed) => JSON.stringify(tree(parsed.documentElement)));
    }, text);
    assert.equal(html, xml);
    const ids = await alone.evaluate(() => [...document.querySelectorAll('[id]')].map(({ id }) => id));
    assert.equal(new Set(ids).size, ids.length);
    assert.equal(await alone.locator('main > section').last().getAttribute('id'), 'sources');
    await keepPicture(alone, 'report-phone');
    // Some 36 for heights and surroundings, and what is built with its loads; a sheet a line would be far more.
    for (const format of ['A4', 'Letter']) assert.ok(pagesOf(await alone.pdf({ format })) < 60);
    await alone.close();
  });
});
