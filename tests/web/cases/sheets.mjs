// The sheets of a phone, and what every document owes its reader.
import assert from 'node:assert/strict';
import test from 'node:test';
import { configOf, devices, item, keepPicture, openSheet, phone, settle, snapshot, tap, withPage } from '../support/page.mjs';

const names = ['people', 'oven', 'why', 'share'];
const focused = (page) => page.evaluate(() => document.activeElement.id || document.activeElement.dataset.sheet);

test('each sheet opens with its heading in focus and closes by button, Escape and Back', async () => {
  await withPage({}, async (page) => {
    const ways = {
      button: () => page.locator('#close').click(),
      escape: () => page.keyboard.press('Escape'),
      back: () => page.goBack(),
      again: (name) => page.locator(`#bar [data-sheet="${name}"]`).click(),
    };
    const start = await page.evaluate(() => history.length);
    for (const name of names) {
      for (const [way, close] of Object.entries(ways)) {
        await openSheet(page, name);
        assert.equal(await focused(page), `head-${name}`);
        assert.equal(await page.locator(`#bar [data-sheet="${name}"]`).getAttribute('aria-expanded'), 'true');
        assert.ok(await page.evaluate(() => document.getElementById('stage').inert), 'the canvas is still reachable');
        await close(name);
        await page.locator('#document').waitFor({ state: 'hidden' });
        assert.equal(await focused(page), name, `${way}: the focus is lost`);
        // Closing takes the step in the history back before the next one is made.
        await page.waitForFunction(() => !history.state.sheet);
      }
    }
    assert.ok(await page.evaluate(() => history.length) <= start + 1, 'closed sheets pile up behind Back');
    assert.ok(!await page.evaluate(() => document.getElementById('stage').inert));
  });
});

test('from one sheet to the next, Back still leads to the picture', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'people');
    await openSheet(page, 'why');
    await page.goBack();
    await page.locator('#document').waitFor({ state: 'hidden' });
    assert.equal(page.url().split('#')[0].endsWith('/'), true);
  });
});

test('the page itself never scrolls where the document does', async () => {
  for (const device of [devices.phone, devices.desktop]) {
    await withPage({ device }, async (page) => {
      for (const name of names) {
        await openSheet(page, name);
        await page.evaluate(() => document.getElementById('document').scrollTo(0, 1e6));
        const { height, screen, at } = await page.evaluate(() => ({
          height: document.documentElement.scrollHeight, screen: innerHeight, at: scrollY }));
        assert.ok(height <= screen && at === 0, `${name}: ${height} px high, scrolled by ${at}`);
      }
    });
  }
});

test('a wide screen\u2019s bar shows which part is being read', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    const current = () => page.locator('#bar [aria-current="true"]').evaluateAll((all) => all.map(({ dataset }) => dataset.sheet));
    assert.deepEqual(await current(), ['start']);
    const plain = await page.locator('#bar [data-sheet="why"]').evaluate((button) => getComputedStyle(button).backgroundColor);
    for (const name of [...names, 'people']) {
      await openSheet(page, name);
      await page.waitForFunction((wanted) => document.querySelector('#bar [aria-current="true"]')?.dataset.sheet === wanted, name);
      assert.equal((await current()).length, 1);
      assert.notEqual(await page.locator(`#bar [data-sheet="${name}"]`).evaluate((button) => getComputedStyle(button).backgroundColor), plain);
    }
    await page.setViewportSize({ width: 390, height: 844 });
    await page.waitForFunction(() => !document.querySelector('#bar [aria-current]'));
  });
});

test('on a phone on its side a sheet covers what is beside the picture, and cuts nothing', async () => {
  for (const viewport of [devices.sidePhone.viewport, { width: 740, height: 360 }]) {
    await withPage({ device: { ...devices.sidePhone, viewport } }, async (page) => {
      await settle(page);
      await openSheet(page, 'oven');
      const { left, width } = await page.evaluate(() => {
        const box = document.getElementById('document').getBoundingClientRect();
        return { left: box.left, width: box.width };
      });
      assert.ok(width >= 320, `the sheet is ${width} px wide`);
      const items = (await snapshot(page)).items;
      assert.ok(items.some(({ rect: [x, , w] }) => x + w <= left), 'nothing of the picture is left');
      for (const { id, rect: [x, , w] } of items) assert.ok(x + w <= left + 0.5 || x >= left - 1, `${id} is cut: ${x} to ${x + w}, the sheet from ${left}`);
    });
  }
});

test('Tab stays within sheet and bar while a sheet is open', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'share');
    for (let i = 0; i < 40; ++i) {
      await page.keyboard.press('Tab');
      assert.notEqual(await focused(page), 'canvas');
    }
  });
});

test('the first stop of the keyboard skips the picture', async () => {
  await withPage({ device: { viewport: phone.viewport } }, async (page) => {
    await page.keyboard.press('Tab');
    assert.equal(await focused(page), 'skip');
    await page.keyboard.press('Enter');
    await page.locator('#panel-text').waitFor({ state: 'visible' });
    assert.equal(await focused(page), 'head-text');
    for (const path of ['oven.kind', 'station.oven_base_height_mm', 'view.standoff_mm', 'station.prep_depth_mm']) {
      assert.ok(await page.locator(`#panel-text [data-path="${path}"]`).isVisible(), path);
    }
  });
});

test('every number of the first screen has its reason one tap away', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    const buttons = await page.locator('#headlines .why, #worst .why').all();
    assert.ok(buttons.length >= 2);
    for (const button of buttons) {
      if (!await button.isVisible()) continue;
      await button.click();
      const open = page.locator('#reasons details[open]').last();
      assert.ok(await open.isVisible());
      assert.match(await open.textContent(), /Source: \S+/);
    }
  });
});

test('the line of a cook leads to that cook\'s own part of the people', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await settle(page);
    const { rect: [x, y, w, h] } = await item(page, 'action:people');
    const { cooks } = await configOf(page);
    for (const [index, { name }] of cooks.entries()) {
      await tap(page, [x + w / 2, y + h * (index + 0.5) / cooks.length]);
      const box = page.locator('#cooks > fieldset').nth(index);
      await page.waitForFunction((which) => document.activeElement === document.querySelectorAll('#cooks > fieldset')[which], index);
      assert.equal(await box.locator('legend').textContent(), name);
      // Its head stands under the tools, not below the fold and not behind them.
      const [top, tools] = await Promise.all([box, page.locator('.tools')].map((one) => one.evaluate((element) => {
        const { top: from, bottom } = element.getBoundingClientRect();
        return element.localName === 'fieldset' ? from : bottom;
      })));
      const last = await page.locator('#document').evaluate((element) => element.scrollTop + element.clientHeight >= element.scrollHeight - 1);
      assert.ok(top >= tools - 1 && (last || top < tools + 60), `${name} stands at ${top}`);
      if (index === 1) await keepPicture(page, 'people-second');
      await page.locator('#close').tap();
      await settle(page);
    }
  });
});

test('an input named in a reason leads to its field', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'why');
    const link = page.locator('#reasons .link').first();
    await page.evaluate(() => { for (const one of document.querySelectorAll('#reasons details')) one.open = true; });
    const path = await link.evaluate((element) => element.parentElement.dataset.field);
    await link.click();
    const landed = await page.evaluate(() => document.activeElement.closest('.field')?.dataset.path);
    assert.equal(landed, path);
  });
});

test('licence, notices and what is not claimed are in the Share sheet', async () => {
  await withPage({}, async (page, context) => {
    await openSheet(page, 'share');
    assert.ok(await page.getByText('What this page does not claim').isVisible());
    const [notices] = await Promise.all([
      context.waitForEvent('page'), page.getByRole('link', { name: /Licences/ }).click(),
    ]);
    await notices.waitForLoadState();
    const text = await notices.locator('body').textContent();
    for (const part of ['Hearthsight', 'Dear ImGui', 'Emscripten', 'DejaVu Sans']) {
      assert.ok(text.includes(part), `${part} has no notice`);
    }
  });
});

for (const [width, height] of [[390, 660], [320, 568]]) {
  test(`with text at 200 % nothing leaves a screen ${width} px wide`, async () => {
    await withPage({ device: { ...phone, viewport: { width, height } } }, async (page) => {
      await page.evaluate(() => { document.documentElement.style.fontSize = '200%'; });
      for (const name of names) {
        await openSheet(page, name);
        await page.evaluate(() => { for (const one of document.querySelectorAll('#panels details')) one.open = true; });
        const over = await page.evaluate(() => {
          const sheet = document.getElementById('document');
          // A wide table scrolls in its own box.
          const wide = [...sheet.querySelectorAll('*')].filter((element) => element.offsetParent !== null
            && !element.closest('.scroll, .quiet') && element.getBoundingClientRect().right > innerWidth + 1);
          return { sheet: sheet.scrollWidth - sheet.clientWidth, wide: wide.map((element) => `${element.localName} ${element.textContent.slice(0, 40)}`) };
        });
        assert.deepEqual(over, { sheet: 0, wide: [] }, name);
        await page.locator('#close').click();
        await page.locator('#document').waitFor({ state: 'hidden' });
        await page.waitForFunction(() => !history.state.sheet);
      }
      const bar = await page.locator('#bar').evaluate((element) => element.scrollWidth - element.clientWidth);
      assert.equal(bar, 0, 'the bar is wider than the screen');
    });
  });
}

test('what is tapped in the document is at least 48 px high', async () => {
  await withPage({}, async (page) => {
    for (const name of names) {
      await openSheet(page, name);
      const small = await page.$$eval('#document button, #document select, #document input[type="text"], #document .choice, #document .check, #document .button, #bar button',
        (all) => all.filter((element) => element.offsetParent !== null && element.getBoundingClientRect().height < 47.5)
          .map((element) => `${element.localName} ${element.textContent}`));
      assert.deepEqual(small, [], name);
      await page.locator('#close').click();
      await page.waitForFunction(() => !history.state.sheet);
    }
  });
});

test('with reduced motion nothing moves by itself, and no frame is drawn at rest', async () => {
  await withPage({ extra: { reducedMotion: 'reduce' } }, async (page) => {
    const moving = await page.evaluate(() => [...document.querySelectorAll('*')].filter((element) => {
      const { transitionDuration, animationName } = getComputedStyle(element);
      return transitionDuration !== '0s' || animationName !== 'none';
    }).map((element) => element.id || element.localName));
    assert.deepEqual(moving, []);
    await settle(page);
    const { frame } = await snapshot(page);
    await page.waitForTimeout(800);
    assert.equal((await snapshot(page)).frame, frame);
  });
});

test('dusk colours are chosen by a button and remembered on this device', async () => {
  await withPage({}, async (page) => {
    await openSheet(page, 'share');
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const sun = await ground();
    await page.locator('#theme').click();
    const dusk = await ground();
    assert.notEqual(dusk, sun);
    await page.reload();
    await page.waitForFunction(() => performance.getEntriesByName('hearthsight:ready').length > 0);
    assert.equal(await ground(), dusk);
  });
});

test('in forced colours a chosen part and a verdict can still be told', async () => {
  await withPage({ extra: { forcedColors: 'active' } }, async (page) => {
    await openSheet(page, 'why');
    const [chosen, other] = await page.$$eval('#bar button', (all) =>
      [all.find((one) => one.getAttribute('aria-expanded') === 'true'), all[0]].map((one) => getComputedStyle(one).backgroundColor));
    assert.notEqual(chosen, other);
    for (const text of await page.locator('.verdict:visible').allTextContents()) {
      assert.match(text, /[●▲■◆] \w+/);
    }
  });
});
