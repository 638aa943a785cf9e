// The link: in the address after every change, copied and opened again with the same numbers.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, drag, evaluateNatively, fragment, item, keepPicture, openSheet, settle, snapshot, tap, withPage, world } from '../support/page.mjs';

// The three digits that close a link (engine/share/seal.h): a well-made link of a version to come.
function sealed(text) {
  let crc = 0xffff;
  for (const byte of Buffer.from(text)) {
    crc ^= byte << 8;
    for (let i = 0; i < 8; ++i) crc = (crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1) & 0xffff;
  }
  const digits = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
  return text + [62 * 62, 62, 1].map((power) => digits[Math.floor(crc / power) % 62]).join('');
}

async function change(page) {
  const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
  await drag(page, [0.3, 0.5, 0.7].map((share) => [x + w * share, y + h / 2]));
}

test('every change is in the address within 300 ms', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const first = await fragment(page);
    // Times are taken where the address is written and where the finger is felt, so that a loaded
    // machine's delays between the two programs are not counted.
    await page.evaluate(() => {
      globalThis.addressTimes = [];
      globalThis.touched = 0;
      addEventListener('pointermove', () => { globalThis.touched = performance.now(); }, true);
      const write = history.replaceState.bind(history);
      history.replaceState = (state, title, url) => {
        if (url && url !== location.hash) globalThis.addressTimes.push(performance.now());
        write(state, title, url);
      };
    });
    await change(page);
    await settle(page);
    await page.waitForTimeout(400);
    const last = await fragment(page);
    assert.notEqual(last, first);
    const { config } = await snapshot(page);
    const { times, touched } = await page.evaluate(() => ({ times: globalThis.addressTimes, touched: globalThis.touched }));
    assert.ok(times.length > 0, 'the address was not written');
    // 300 ms and one late turn of a loaded machine.
    assert.ok(times.at(-1) - touched < 400, `the address follows ${times.at(-1) - touched} ms after the finger`);
    for (let i = 1; i < times.length; ++i) {
      assert.ok(times[i] - times[i - 1] > 295, 'the address is rewritten too often for Safari');
    }
    // The address holds the last value of the drag, not one on the way.
    await withPage({ fragment: last }, async (other) => {
      assert.deepEqual((await snapshot(other)).config, config);
    });
  });
});

test('the document takes its time after the address, never just before it is due', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await settle(page);
    // Each time that the document is made again: how long it was then until the address had to be
    // written. A turn of the page takes no time here, so that a loaded machine that stops between
    // the page's own look at the clock and the document cannot make it seem late.
    await page.evaluate(() => {
      const clock = performance.now.bind(performance);
      let turn = null;
      performance.now = () => {
        if (turn === null) {
          turn = clock();
          queueMicrotask(() => { turn = null; });
        }
        return turn;
      };
      let last = -1000;
      let waits = false;
      globalThis.before = [];
      const write = history.replaceState.bind(history);
      history.replaceState = (...given) => { last = performance.now(); waits = false; write(...given); };
      const { changed } = globalThis.hsHost;
      globalThis.hsHost.changed = (...given) => { waits = true; changed(...given); };
      const program = globalThis.Module;
      const make = program._dk_page_json;
      program._dk_page_json = () => {
        globalThis.before.push(waits ? last + 300 - performance.now() : null);
        return make();
      };
    });
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    await page.mouse.move(x + w * 0.3, y + h / 2);
    await page.mouse.down();
    for (let i = 1; i <= 60; ++i) {
      await page.mouse.move(x + w * (0.3 + 0.4 * i / 60), y + h / 2);
      await page.waitForTimeout(25);
    }
    await page.mouse.up();
    await settle(page);
    const before = await page.evaluate(() => globalThis.before);
    assert.ok(before.length >= 3, `the document was made ${before.length} times`);
    assert.deepEqual(before.filter((ms) => ms !== null && ms > 5 && ms < 149), []);
  });
});

test('the copied link opens in a fresh browser with the same report', async () => {
  await withPage({ extra: { permissions: ['clipboard-read', 'clipboard-write'] } }, async (page) => {
    await settle(page);
    await change(page);
    await settle(page);
    await openSheet(page, 'share');
    await page.locator('#copy-link').click();
    await page.waitForFunction(() => document.getElementById('copy-state').textContent !== '');
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    assert.ok(copied.startsWith(world.url));
    const { report, config } = await snapshot(page);
    await withPage({ device: devices.desktop, fragment: copied.split('#')[1] }, async (other) => {
      const opened = await snapshot(other);
      assert.deepEqual(opened.config, config);
      assert.deepEqual(opened.report, report);
    });
  });
});

test('where the clipboard is closed, the link is selected to be copied by hand', async () => {
  const closed = () => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('closed')) } });
  };
  await withPage({ before: closed }, async (page) => {
    await openSheet(page, 'share');
    await page.locator('#copy-link').click();
    await page.waitForFunction(() => document.activeElement.id === 'link-text');
    const selected = await page.evaluate(() => {
      const { selectionStart, selectionEnd, value } = document.getElementById('link-text');
      return value.slice(selectionStart, selectionEnd);
    });
    assert.equal(selected, `${world.url}#${await fragment(page)}`);
  });
});

test('what became of a tap that copies is said on the button that was tapped, in sight, and to a reader', async () => {
  const writing = () => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.resolve() } });
    Object.defineProperty(navigator, 'share', { value: undefined });
  };
  for (const device of [devices.phone, devices.tallPhone, devices.desktop]) {
    await withPage({ before: writing, device }, async (page) => {
      for (const [sheet, id, state] of [['share', 'copy-link', '#copy-state'], ['share', 'ask-by-link', '#copy-state'], ['people', 'ask-someone', '#ask-someone + [role="status"]']]) {
        if (!await page.locator(`#panel-${sheet}`).isVisible()) await openSheet(page, sheet);
        const button = page.locator(`#${id}`);
        const label = await button.textContent();
        await button.scrollIntoViewIfNeeded();
        await button.click();
        await page.waitForFunction((one) => document.getElementById(one).textContent === 'Copied.', id);
        await keepPicture(page, `copied-${id}`);
        const said = page.locator(state);
        assert.match(await said.textContent(), /^Copied/);
        for (const part of [button, said]) {
          assert.ok(await part.evaluate((element) => {
            const box = element.getBoundingClientRect();
            return document.elementFromPoint(box.left + 10, (box.top + box.bottom) / 2) === element;
          }), `${id}: out of sight`);
        }
        await page.waitForFunction(([one, text]) => document.getElementById(one).textContent === text, [id, label], { timeout: 8000 });
      }
    });
  }
});

test('the share sheet of the phone gets the same link', async () => {
  const sharing = () => {
    navigator.share = (data) => { globalThis.shared = data; return Promise.resolve(); };
  };
  await withPage({ before: sharing }, async (page) => {
    await openSheet(page, 'share');
    await page.locator('#send-link').click();
    assert.equal((await page.evaluate(() => globalThis.shared)).url, `${world.url}#${await fragment(page)}`);
  });
});

test('the report on the page is the command line\'s for the same link', async (context) => {
  await withPage({}, async (page) => {
    await settle(page);
    await change(page);
    await settle(page);
    const link = await fragment(page);
    const native = evaluateNatively(link);
    if (!native) {
      assert.ok(!process.env.CI, 'build/native/hearthsight is not built: nothing to compare with');
      context.skip('build/native/hearthsight is not built');
      return;
    }
    assert.deepEqual((await snapshot(page)).report, native);
  });
});

test('a pasted link is opened, and undo leads back', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const first = await snapshot(page);
    const link = await fragment(page);
    await change(page);
    await settle(page);
    const second = await snapshot(page);
    await page.evaluate((text) => { location.hash = text; }, link);
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, first.config);
    await page.keyboard.press('Control+z');
    await settle(page);
    assert.deepEqual((await snapshot(page)).config, second.config);
  });
});

test('a damaged, a truncated and a newer link open the page with a plain message', async () => {
  let good;
  await withPage({}, async (page) => { good = await fragment(page); });
  assert.equal(sealed(good.slice(0, -3)), good, 'the seal of links has changed');
  // One letter in the middle replaced by another of the alphabet.
  const middle = Math.floor(good.length / 2);
  const other = good[middle] === 'A' ? 'B' : 'A';
  const bad = {
    damaged: good.slice(0, middle) + other + good.slice(middle + 1),
    truncated: good.slice(0, -4),
    newer: sealed(`b${good.slice(1, -3)}`),
    foreign: 'chapter-2',
  };
  for (const [kind, text] of Object.entries(bad)) {
    await withPage({ fragment: text }, async (page) => {
      const message = page.locator('#notice-text');
      assert.ok(await message.isVisible(), `${kind}: no message`);
      assert.match(await message.textContent(), kind === 'newer' ? /newer version/ : /damaged/, kind);
      assert.equal(await fragment(page), text, `${kind}: the address was touched`);
      assert.ok((await snapshot(page)).report.recommended, `${kind}: no station is shown`);
      await page.locator('#notice-close').click();
      assert.ok(!await message.isVisible());
      await settle(page);
      assert.equal(await fragment(page), text);
      await change(page);
      await settle(page);
      await page.waitForTimeout(350);
      assert.notEqual(await fragment(page), text, `${kind}: a change is not in the address`);
    });
  }
});

test('after a damaged link the last good station of this device is shown', async () => {
  const context = await world.browser.newContext(devices.phone);
  let last;
  await withPage({ context }, async (page) => {
    await settle(page);
    await change(page);
    await settle(page);
    await page.waitForTimeout(350);
    last = await snapshot(page);
  });
  await withPage({ context, fragment: 'Abroken' }, async (page) => {
    assert.deepEqual((await snapshot(page)).config, last.config);
    assert.equal(await fragment(page), 'Abroken');
  });
  await context.close();
});

test('a damaged link pasted into an open page changes nothing', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    const before = (await snapshot(page)).config;
    await page.evaluate(() => { location.hash = 'Anonsense'; });
    await page.locator('#notice-text').waitFor({ state: 'visible' });
    assert.deepEqual((await snapshot(page)).config, before);
    assert.equal(await fragment(page), 'Anonsense');
  });
});

test('the page works where storage is closed', async () => {
  const closed = () => {
    Object.defineProperty(globalThis, 'localStorage', { get() { throw new Error('closed'); } });
  };
  await withPage({ before: closed }, async (page) => {
    await settle(page);
    await change(page);
    await settle(page);
    assert.ok((await snapshot(page)).report.recommended);
  });
});

test('an inner tap of the sheet does not lose the link on Back', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    await openSheet(page, 'oven');
    const input = page.locator('[data-path="oven.mouth_height_mm"] input').first();
    await input.fill('150 mm');
    await input.press('Enter');
    await settle(page);
    const { config } = await snapshot(page);
    assert.equal(config.oven.mouth_height_mm, 150);
    await page.goBack();
    await settle(page);
    assert.ok(!await page.locator('#document').isVisible());
    assert.deepEqual((await snapshot(page)).config, config);
    const link = await fragment(page);
    await withPage({ fragment: link }, async (other) => {
      assert.deepEqual((await snapshot(other)).config, config);
    });
  });
});
