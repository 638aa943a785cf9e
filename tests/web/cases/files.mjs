// Files in and out, and what is too large for a link.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { large, openConfig } from '../support/large.mjs';
import { devices, fragment, keepPicture, openSheet, phone, settle, snapshot, withPage } from '../support/page.mjs';

test('a station too large for a link says so, has no square, and is sent as a file', async () => {
  const sharing = () => {
    navigator.canShare = ({ files }) => files?.length === 1;
    navigator.share = (data) => { globalThis.shared = data; return Promise.resolve(); };
  };
  await withPage({ before: sharing }, async (page) => {
    await openSheet(page, 'share');
    assert.equal(await page.locator('#send-link').textContent(), 'Send link');
    await openConfig(page, large(12));
    assert.ok((await fragment(page)).length > 500, 'the example of a large station is not large');
    await openSheet(page, 'share');
    assert.ok(await page.getByText('Send it as a file').isVisible());
    assert.ok(!await page.locator('#square').isVisible());
    await keepPicture(page, 'too-large-for-a-link');
    await page.getByRole('button', { name: 'Send file' }).click();
    const file = await page.evaluate(async () => ({ name: globalThis.shared.files[0].name, type: globalThis.shared.files[0].type, text: await globalThis.shared.files[0].text() }));
    assert.equal(file.name, 'hearthsight-station.json');
    assert.equal(file.type, 'application/json');
    assert.deepEqual(JSON.parse(file.text), (await snapshot(page)).config);
    // The address still holds it: what is too much for a chat is not too much for a browser.
    await withPage({ fragment: await fragment(page) }, async (other) => {
      assert.equal((await snapshot(other)).config.cooks.length, 12);
    });
  });
});

// A drop as a browser makes it, on the element at `selector`.
const drop = (page, selector, files) => page.evaluate(([place, given]) => {
  const data = new DataTransfer();
  for (const { name, text } of given) data.items.add(new File([text], name, { type: 'application/json' }));
  const target = document.querySelector(place);
  const send = (type) => target.dispatchEvent(new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: data }));
  // True: the page takes it, and the browser does not leave for the file.
  return [send('dragover'), send('drop')].every((unheeded) => !unheeded);
}, [selector, files]);

test('a file goes out and comes in by picker and by drop, anywhere on the page', async () => {
  let saved;
  await withPage({}, async (page) => {
    await openConfig(page, large(3));
    await openSheet(page, 'share');
    const [file] = await Promise.all([page.waitForEvent('download'), page.locator('#save-file').click()]);
    assert.equal(file.suggestedFilename(), 'hearthsight-station.json');
    saved = readFileSync(await file.path(), 'utf8');
    assert.deepEqual(JSON.parse(saved), (await snapshot(page)).config);
  });
  for (const device of [phone, devices.desktop]) {
    for (const place of ['#canvas', '#bar']) {
      await withPage({ device }, async (page) => {
        await settle(page);
        assert.ok(await drop(page, place, [{ name: 'a.json', text: saved }]), `${place}: the browser takes the file`);
        await page.waitForFunction(() => globalThis.hearthsight.snapshot().config.cooks.length === 3
          && globalThis.hearthsight.snapshot().config.title);
        assert.deepEqual((await snapshot(page)).config, JSON.parse(saved));
        await page.goBack();
        await settle(page);
        assert.notDeepEqual((await snapshot(page)).config, JSON.parse(saved));
      });
    }
  }
});

test('files that are no station are refused with the reason, and change nothing', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'hearthsight-file-'));
  await withPage({}, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    const huge = path.join(folder, 'huge.json');
    writeFileSync(huge, Buffer.alloc((1 << 20) + 1, 32));
    await openSheet(page, 'share');
    for (const [file, reason] of [
      [huge, /too large/],
      [{ name: 'a.json', text: 'not JSON' }, /not a station/],
      [{ name: 'a.json', text: '' }, /not a station/],
      [{ name: 'a.json', text: '{"format":"hearthsight/9"}' }, /format/],
      [{ name: 'a.json', text: '{"format":"hearthsight/1","view":{"standoff_mm":-5}}' }, /standoff_mm/],
      [{ name: 'a.json', text: '\u0000\u0001' }, /not a station/],
    ]) {
      await page.locator('#open-file').setInputFiles(typeof file === 'string' ? file
        : { name: file.name, mimeType: 'application/json', buffer: Buffer.from(file.text) });
      await page.waitForFunction((pattern) => new RegExp(pattern).test(document.getElementById('copy-state').textContent), reason.source);
      assert.deepEqual((await snapshot(page)).config, before);
    }
    await page.locator('#close').click();
    await drop(page, '#canvas', [{ name: 'a.json', text: 'not JSON' }]);
    await page.locator('#notice-text', { hasText: 'not a station' }).waitFor();
    await drop(page, '#canvas', [{ name: 'a.json', text: '{}' }, { name: 'b.json', text: '{}' }]);
    await page.locator('#notice-text', { hasText: 'one file at a time' }).waitFor();
    assert.deepEqual((await snapshot(page)).config, before);
  });
  rmSync(folder, { recursive: true });
});
