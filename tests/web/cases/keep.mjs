// What this device keeps: every change by itself, in two places in turn; several stations; nothing
// overwritten by a link or by another tab; and one sentence where the storage fails.
import assert from 'node:assert/strict';
import test from 'node:test';
import {
  change, configOf, devices, drag, fragment, item, keepPicture, keptSoon, linksKept, openSheet, phone, places, settle, titled, told, withPage, world,
} from '../support/page.mjs';

const newContext = (device = phone) => world.browser.newContext({ ...device, serviceWorkers: 'block' });
const silent = async (page) => assert.ok(!await page.locator('#notice').isVisible(), await page.locator('#notice-text').textContent());
const stations = (page) => page.locator('.stations > li');

// To a page that asks for nothing: a blank one would still fetch this one's icon, from no origin.
async function leave(page) {
  await page.route('**/elsewhere', (route) => route.fulfill({
    contentType: 'text/html', body: '<!doctype html><link rel="icon" href="data:,"><title>Elsewhere</title>',
  }));
  await page.goto(new URL('elsewhere', world.url).href);
}

test('the bare address opens the last station of this device, and loading again adds none', async () => {
  const context = await newContext();
  let last;
  await withPage({ context }, async (page) => {
    assert.deepEqual(await places(page), {}, 'the example is kept though nobody changed it');
    await change(page, 0.7);
    last = await configOf(page);
    await page.reload();
    await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0 && !document.getElementById('panels').hidden);
    await change(page, 0.3);
    last = await configOf(page);
    assert.equal(Object.keys(await places(page)).length, 2, 'one station, its two places');
  });
  await withPage({ context }, async (page) => {
    assert.deepEqual(await configOf(page), last);
    await silent(page);
    assert.equal(await stations(page).count(), 1);
  });
  await context.close();
});

test('a change is kept also when the page is left at once', async () => {
  const context = await newContext();
  let first;
  await withPage({ context }, async (page) => {
    await settle(page);
    first = await configOf(page);
    // What stands when the page is left is the measure: on a loaded machine a frame may still come.
    await page.evaluate(() => addEventListener('pagehide', () => {
      localStorage.setItem('left', JSON.stringify(globalThis.hearthsight.snapshot().config));
    }));
    const { rect: [x, y, w, h] } = await item(page, 'field:view.standoff_mm');
    await drag(page, [0.5, 0.6, 0.8].map((part) => [x + w * part, y + h / 2]));
    // The canvas takes the finger with its next frame; nothing waits for what follows that.
    await page.waitForFunction((before) => JSON.stringify(globalThis.hearthsight.snapshot().config) !== before,
      JSON.stringify(first));
    await leave(page);
  });
  await withPage({ context }, async (page) => {
    const left = JSON.parse(await page.evaluate(() => localStorage.getItem('left')));
    assert.notDeepEqual(left, first);
    assert.deepEqual(await configOf(page), left);
  });
  await context.close();
});

test('what was written only in part falls back to the place before it', async () => {
  for (const [kind, spoil] of [
    ['cut off', (text) => text.slice(0, text.length - 9)],
    ['one letter', (text) => text.replace(/.$/, (last) => (last === 'x' ? 'y' : 'x'))],
    ['its number', (text) => text.replace(/^(\d+) (\d+)/, (whole, time, count) => `${time} ${Number(count) + 7}`)],
    ['nothing', () => ''],
  ]) {
    const context = await newContext();
    let older;
    let newer;
    await withPage({ context }, async (page) => {
      await change(page, 0.7);
      older = await configOf(page);
      await change(page, 0.3);
      newer = await configOf(page);
      await page.evaluate((spoilt) => {
        const keys = Object.keys(localStorage).filter((key) => key.startsWith('hearthsight:station:'));
        const last = keys.sort((a, b) => (localStorage[a] < localStorage[b] ? 1 : -1))[0];
        const edit = { ...spoilt };
        localStorage[last] = edit.text ?? localStorage[last];
      }, { text: spoil(Object.values(await places(page)).sort().pop()) });
    });
    await withPage({ context }, async (page) => {
      // A wrong number spoils only what is said about the link, and the link itself is good.
      assert.deepEqual(await configOf(page), kind === 'its number' ? newer : older, kind);
      await silent(page);
      await change(page, 0.9);
      assert.ok((await linksKept(page)).includes(await fragment(page)), kind);
    });
    await context.close();
  }
});

test('where all that is kept is damaged the page opens on the example', async () => {
  const rubbish = () => {
    for (const [i, text] of ['', 'x', '1 2 3 4 5 6 7', '\u0000\uffff', '9999999999999 1 a b =% =% avS', ' '.repeat(40)].entries()) {
      localStorage.setItem(`hearthsight:station:bad${i}:a`, text);
    }
    localStorage.setItem('hearthsight:station:', 'no id');
    localStorage.setItem('hearthsight:station:x', 'short');
  };
  await withPage({ before: rubbish }, async (page) => {
    assert.equal((await configOf(page)).cooks.length, 3);
    assert.equal(await stations(page).count(), 0);
    await change(page, 0.7);
    assert.ok((await linksKept(page)).includes(await fragment(page)));
  });
});

// Storage that refuses, as browsers do it: a full one, and one that is switched off.
const full = () => {
  const set = Storage.prototype.setItem;
  globalThis.room = 0;
  Storage.prototype.setItem = function (key, value) {
    const used = Object.keys(localStorage).filter((name) => name.startsWith('hearthsight:station:') && name !== key).length;
    if (key.startsWith('hearthsight:station:') && used >= globalThis.room) throw new DOMException('no room', 'QuotaExceededError');
    set.call(this, key, value);
  };
};
const closed = () => {
  Object.defineProperty(globalThis, 'localStorage', { get() { throw new DOMException('closed', 'SecurityError'); } });
};

test('a full and a closed storage are told once, in one sentence, and all else works', async () => {
  for (const [before, sentence] of [[full, /no room left on this device/], [closed, /keeps nothing for this page/]]) {
    await withPage({ before }, async (page) => {
      await silent(page);
      await change(page, 0.7);
      await told(page, sentence);
      await keepPicture(page, `storage-${before === full ? 'full' : 'closed'}`);
      await page.locator('#notice-close').click();
      await change(page, 0.3);
      await silent(page);
      const here = await configOf(page);
      await openSheet(page, 'share');
      assert.equal(await page.locator('#link-text').inputValue(), `${world.url}#${await fragment(page)}`);
      await withPage({ fragment: await fragment(page) }, async (other) => assert.deepEqual(await configOf(other), here));
    });
  }
});

test('a full storage first lets go of the oldest station without a name', async () => {
  const context = await newContext();
  await withPage({ context, before: full }, async (page) => {
    await page.evaluate(() => { globalThis.room = 100; });
    await titled(page, 'Named');
    await page.getByRole('button', { name: 'Start with the example' }).click();
    await change(page, 0.7);
    const second = await fragment(page);
    await openSheet(page, 'share');
    await page.getByRole('button', { name: 'Start with the example' }).click();
    await page.evaluate(() => { globalThis.room = 2; });
    await change(page, 0.3);
    const links = await linksKept(page);
    assert.ok(links.includes(await fragment(page)), 'the present one is not kept');
    assert.ok(!links.includes(second), 'the oldest one without a name is still there');
    assert.deepEqual((await stations(page).locator('strong').allTextContents()).filter((text) => text === 'Named'), ['Named']);
  });
  await context.close();
});

test('what the page says by itself covers no height, no control and not the middle of the picture', async () => {
  for (const name of ['tallPhone', 'phone', 'sidePhone', 'tablet', 'desktop']) {
    await withPage({ device: devices[name] }, async (page) => {
      await titled(page, 'Mine');
      await page.getByRole('button', { name: 'Start with the example' }).click();
      await told(page, /is kept/);
      await settle(page);
      await keepPicture(page, `notice-${name}`);
      const box = await page.locator('#notice').boundingBox();
      const canvas = await page.locator('#canvas').boundingBox();
      const { items } = await page.evaluate(() => globalThis.hearthsight.snapshot());
      const lies = ([x, y, w, h]) => x < box.x + box.width - 1 && x + w > box.x + 1 && y < box.y + box.height - 1 && y + h > box.y + 1;
      // On a low screen it lies on what is only read: the people's lines and the caution.
      const free = page.viewportSize().height >= 750 ? [] : ['action:people', 'action:worst'];
      const under = items.filter(({ id, rect }) => !free.includes(id) && !/^(action:(fit_point|scene)|drag:)/.test(id) && lies(rect)).map(({ id }) => id);
      assert.deepEqual(under, [], name);
      const heights = items.filter(({ id }) => id.startsWith('action:why.')).map(({ rect }) => rect);
      const controls = items.filter(({ id }) => id.startsWith('field:')).map(({ rect }) => rect);
      assert.ok(heights.length > 0 && controls.length > 0);
      if (name !== 'sidePhone') {
        const top = Math.max(...heights.map(([, y, , h]) => y + h));
        const low = Math.min(...items.filter(({ id }) => id === 'action:people').map(({ rect }) => rect[1]));
        assert.ok(!lies([canvas.x + canvas.width / 2, (top + low) / 2, 1, 1]), `${name}: the middle of the picture`);
      }
      for (const button of await page.locator('#notice button:visible').all()) {
        const { width, height } = await button.boundingBox();
        assert.ok(width >= 48 && height >= 48);
      }
    });
  }
});

test('a second thing to say waits for the first, and is not lost', async () => {
  await withPage({ before: closed, fragment: 'me.bad' }, async (page) => {
    await told(page, /damaged/);
    await change(page, 0.7);
    assert.match(await page.locator('#notice-text').textContent(), /damaged/, 'the first one is gone unread');
    await page.locator('#notice-close').click();
    await told(page, /keeps nothing for this page/);
    await page.locator('#notice-close').click();
    await silent(page);
  });
});

test('a storage that is cleared meanwhile is told, and this station is kept again', async () => {
  await withPage({}, async (page) => {
    await change(page, 0.7);
    await silent(page);
    await page.evaluate(() => localStorage.clear());
    await change(page, 0.3);
    await told(page, /was cleared/);
    assert.ok((await linksKept(page)).includes(await fragment(page)));
    await page.locator('#notice-close').click();
    await change(page, 0.6);
    await silent(page);
  });
});

test('two tabs with one station: both go on, and neither overwrites the other', async () => {
  const context = await newContext();
  await withPage({ context }, async (one) => {
    await change(one, 0.7);
    const start = await fragment(one);
    await withPage({ context }, async (two) => {
      assert.equal(await fragment(two), start);
      await silent(two);
      await change(two, 0.3);
      await silent(two);
      await told(one, /changed in another tab too/);
      const ofTwo = await fragment(two);
      await change(one, 0.9);
      const ofOne = await fragment(one);
      assert.notEqual(ofOne, ofTwo);
      await change(two, 0.2);
      await silent(two);
      const links = await linksKept(one);
      for (const link of [ofOne, ofTwo, await fragment(two)]) assert.ok(links.includes(link), `${link} is lost`);
      assert.equal(await stations(one).count(), 2);
      assert.equal(await stations(two).count(), 2, 'the list does not follow the other tab');
    });
  });
  await context.close();
});

test('a tab whose station another tab has changed says so, shows it by one tap, and loses nothing', async () => {
  const context = await newContext();
  await withPage({ context }, async (one) => {
    await change(one, 0.7);
    const before = await fragment(one);
    await withPage({ context }, async (two) => {
      await change(two, 0.3);
      const after = await fragment(two);
      await told(one, /changed in another tab too; here it is as it was before/);
      await keepPicture(one, 'other-tab');
      assert.equal(await fragment(one), before, 'the picture changed by itself');
      assert.equal(await stations(one).count(), 1, 'a copy of what nobody changed here');
      await one.getByRole('button', { name: 'Show the change' }).click();
      await settle(one);
      assert.equal(await fragment(one), after);
      await silent(one);
      assert.equal(await stations(one).count(), 1);
      // What is changed from here on is this station's, and the other tab hears of it in its turn.
      // Not by way of what it was before, which would be a step back to it.
      await change(one, 0.85);
      await silent(one);
      await told(two, /changed in another tab too/);
      assert.equal(await stations(one).count(), 1);
      // What was there before is a step back, and goes on as a copy.
      await two.locator('#notice-close').click();
      await change(two, 0.5);
      await told(two, /both are kept/);
      const links = await linksKept(two);
      assert.ok(links.includes(await fragment(one)) && links.includes(await fragment(two)));
      await two.getByRole('button', { name: 'Show the other' }).click();
      await settle(two);
      assert.equal(await fragment(two), await fragment(one));
    });
  });
  await context.close();
});

test('a tab that slept while another one changed its station does not write over it', async () => {
  const context = await newContext();
  // As in a phone's background: no word of the other tab arrives.
  const deaf = () => addEventListener('storage', (event) => event.stopImmediatePropagation(), true);
  await withPage({ context, before: deaf }, async (one) => {
    await change(one, 0.7);
    await withPage({ context }, async (two) => {
      await change(two, 0.3);
      const ofTwo = await fragment(two);
      await change(one, 0.9);
      await told(one, /changed in another tab too/);
      const links = await linksKept(one);
      assert.ok(links.includes(ofTwo) && links.includes(await fragment(one)));
    });
  });
  await context.close();
});

test('a link in a new tab is a station of its own; the one before is one tap away', async () => {
  let link;
  let theirs;
  await withPage({}, async (page) => {
    await change(page, 0.2);
    link = await fragment(page);
    theirs = await configOf(page);
  });
  const context = await newContext();
  await withPage({ context }, async (page) => {
    await change(page, 0.8);
    await titled(page, 'Back porch');
  });
  await withPage({ context, fragment: link }, async (page) => {
    assert.equal(await fragment(page), link);
    await told(page, /Yours is kept: Back porch/);
    await settle(page);
    await keepPicture(page, 'link-beside-kept');
    await page.getByRole('button', { name: 'Show it' }).click();
    await settle(page);
    assert.equal((await configOf(page)).title, 'Back porch');
    // And back to the link's own, both ways.
    await page.goBack();
    await settle(page);
    assert.equal(await fragment(page), link);
    assert.deepEqual(await configOf(page), theirs);
    await page.goForward();
    await settle(page);
    assert.equal((await configOf(page)).title, 'Back porch');
    assert.equal(await stations(page).count(), 2);
  });
  // Opened again, it is known, and nothing is asked.
  await withPage({ context, fragment: link }, async (page) => {
    await silent(page);
    assert.equal(await stations(page).count(), 2);
  });
  await context.close();
});

test('a link pasted under Share: what was there stays, by one tap, by Back and by undo', async () => {
  let link;
  await withPage({}, async (page) => {
    await change(page, 0.2);
    link = await fragment(page);
  });
  for (const device of [phone, devices.desktop]) {
    for (const way of ['tap', 'back', 'undo']) {
      await withPage({ device }, async (page) => {
        const input = page.locator('[data-path="title"] input');
        await openSheet(page, 'share');
        await input.fill('Back porch');
        await input.press('Enter');
        await settle(page);
        const before = await configOf(page);
        await page.locator('#paste-text').fill(`${world.url}#${link}`);
        await page.locator('#open-link button').click();
        await settle(page);
        assert.equal(await fragment(page), link);
        await told(page, /you had before is kept/);
        if (device === phone) assert.ok(!await page.locator('#document').isVisible(), 'the sheet hides the station that was opened');
        if (way === 'tap') await page.getByRole('button', { name: 'Back to it' }).click();
        if (way === 'back') await page.goBack();
        if (way === 'undo') await page.keyboard.press('Control+z');
        await settle(page);
        await keptSoon(page);
        assert.deepEqual(await configOf(page), before, way);
        const links = await linksKept(page);
        assert.ok(links.includes(link) && links.includes(await fragment(page)), `${way}: one of the two is lost`);
        await openSheet(page, 'share');
        const names = await stations(page).locator('strong').allTextContents();
        assert.equal(names.length, 2, `${way}: ${names}`);
        assert.match(await stations(page).filter({ hasText: 'is on the screen' }).textContent(), /Back porch/);
      });
    }
  }
});

test('a damaged link pasted under Share says so and changes nothing', async () => {
  await withPage({}, async (page) => {
    await change(page, 0.7);
    const before = await configOf(page);
    await openSheet(page, 'share');
    for (const text of ['Anonsense', 'https://example.org/', `${await fragment(page)}x`, 'a']) {
      await page.locator('#paste-text').fill(text);
      await page.locator('#open-link button').click();
      assert.match(await page.locator('#paste-error').textContent(), /damaged|cannot be opened/, text);
      assert.deepEqual(await configOf(page), before);
    }
    assert.equal(await stations(page).count(), 1);
    await page.locator('#close').click();
    await page.locator('#document').waitFor({ state: 'hidden' });
  });
});

test('stations are named, opened, renamed and deleted, and a deleted one comes back', async () => {
  const context = await newContext(devices.tallPhone);
  await withPage({ context }, async (page) => {
    await titled(page, 'Back porch');
    const porch = await configOf(page);
    await page.getByRole('button', { name: 'Start with the example' }).click();
    await change(page, 0.2);
    const yard = await configOf(page);
    await openSheet(page, 'share');
    const row = (text) => stations(page).filter({ hasText: text });
    assert.equal(await stations(page).count(), 2);
    await row('Back porch').scrollIntoViewIfNeeded();
    await keepPicture(page, 'stations-kept');

    // Another one than that on the screen is renamed; its link carries the name.
    await page.getByRole('button', { name: 'Rename: Back porch' }).click();
    const typed = row('Name of this station').locator('input:visible');
    assert.equal(await typed.inputValue(), 'Back porch');
    assert.ok(await typed.evaluate((input) => input === document.activeElement));
    await typed.fill('x'.repeat(81));
    await page.getByRole('button', { name: 'Save name' }).click();
    assert.match(await page.locator('.stations .error:visible').textContent(), /80/);
    await typed.fill('Side porch <b>');
    await keepPicture(page, 'station-naming');
    await typed.press('Enter');
    assert.deepEqual(await configOf(page), yard, 'renaming another one changed the present one');
    await page.getByRole('button', { name: 'Open: Side porch <b>' }).click();
    await settle(page);
    assert.deepEqual(await configOf(page), { ...porch, title: 'Side porch <b>' });

    // The one on the screen is named in the list too.
    await openSheet(page, 'share');
    await page.getByRole('button', { name: 'Rename: Side porch <b>' }).click();
    await page.locator('.stations input:visible').fill('');
    await page.getByRole('button', { name: 'Save name' }).click();
    await settle(page);
    await keptSoon(page);
    assert.equal((await configOf(page)).title, undefined);

    const other = stations(page).filter({ hasNotText: 'is on the screen' });
    await other.getByRole('button', { name: /^Delete/ }).click();
    assert.equal(await stations(page).count(), 1);
    assert.equal((await linksKept(page)).includes(await fragment(page)), true);
    await page.getByRole('button', { name: 'Bring it back' }).click();
    assert.equal(await stations(page).count(), 2);
    await other.getByRole('button', { name: /^Open/ }).click();
    await settle(page);
    assert.deepEqual(await configOf(page), yard);
  });
  await context.close();
});

test('the list keeps every station with a name, and twenty without', async () => {
  const context = await newContext();
  await withPage({ context }, async (page) => {
    await titled(page, 'Named');
    await page.locator('#close').click();
    await page.locator('#document').waitFor({ state: 'hidden' });
    const links = await page.evaluate(() => {
      const text = (value) => globalThis.Module.UTF8ToString(value);
      return text(globalThis.Module._hs_link());
    });
    // As if older visits had left them.
    await page.evaluate((link) => {
      const [key] = Object.keys(localStorage).filter((one) => one.startsWith('hearthsight:station:'));
      const sum = (given) => {
        let hash = 0x811c9dc5;
        for (let i = 0; i < given.length; ++i) hash = Math.imul(hash ^ given.charCodeAt(i), 0x01000193);
        return (hash >>> 0).toString(36);
      };
      for (let i = 0; i < 25; ++i) {
        const head = `${1500000000000 + i} 1 old`;
        const rest = `= =Old${i} ${link}`;
        localStorage.setItem(`hearthsight:station:old${i}:a`, `${head} ${sum(`${head} ${rest}`)} ${rest}`);
      }
      return key;
    }, links);
    await change(page, 0.3);
    await openSheet(page, 'share');
    const names = await stations(page).locator('strong').allTextContents();
    assert.equal(names.filter((text) => text === 'Named').length, 1);
    assert.deepEqual(names.filter((text) => text.startsWith('Old')), Array.from({ length: 20 }, (none, i) => `Old${24 - i}`));
  });
  await context.close();
});

test('loaded again with a sheet open, the sheet is there, Back closes it, and no change is lost', async () => {
  await withPage({}, async (page) => {
    await settle(page);
    await titled(page, 'Back porch');
    await page.reload();
    await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0 && !document.getElementById('panels').hidden);
    assert.ok(await page.locator('#panel-share').isVisible());
    await page.goBack();
    await page.locator('#document').waitFor({ state: 'hidden' });
    await settle(page);
    assert.equal((await configOf(page)).title, 'Back porch');
    await withPage({ fragment: await fragment(page) }, async (other) => assert.equal((await configOf(other)).title, 'Back porch'));
  });
});
