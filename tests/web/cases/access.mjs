// WCAG 2.2 A and AA by an independent checker (axe-core, dev dependency only) on the document as it
// stands: each sheet open with all its parts, in each theme, with the picture and without WebGL, with
// readings of the ground, and on paper. What it cannot judge fails too. Then what no checker sees: the
// way through everything by the keyboard alone, where its focus is, and the page at 200 %.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import test from 'node:test';
import { openConfig } from '../support/large.mjs';
import { at, devices, item, keepPicture, mainFields, middle, openSheet, root, settle, snapshot, withPage } from '../support/page.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const sheets = ['people', 'oven', 'why', 'share'];
const survey = JSON.parse(readFileSync(path.join(root, 'presets/stations/garden_shelter.json'), 'utf8'));

const without = () => {
  const get = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function context(kind, ...rest) {
    return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
  };
};
const allowed = [/webgl/i, /context/i];

// Brings the checker in. Left to itself it judges no sign that is not a letter, and nothing on a
// ground with a gradient: the verdicts' shapes are such signs, and boxes that scroll have a shade at
// their edge, which is taken off here so that their text is judged on their paper.
async function bringChecker(page) {
  await page.evaluate(axe);
  await page.evaluate(() => {
    const { options } = globalThis.axe._audit.checks['color-contrast'];
    globalThis.axe.configure({ checks: [{ id: 'color-contrast', options: { ...options, ignoreUnicode: false, ignoreLength: true } }] });
    const plain = new CSSStyleSheet();
    plain.replaceSync('.scroll { background: var(--paper) !important; }');
    document.adoptedStyleSheets = [plain];
  });
}

const chooseTheme = (page, theme) => page.evaluate((name) => {
  if (document.documentElement.dataset.theme !== name) document.getElementById('theme').click();
}, theme);

// Every part open and every picture drawn.
async function openAll(page) {
  await page.evaluate(async () => {
    for (const one of document.querySelectorAll('#panels details')) one.open = true;
    for (const help of document.querySelectorAll('.ask[aria-expanded="false"]')) help.click();
    const late = () => [...document.querySelectorAll('.drawing img')].some((image) => image.offsetParent !== null
      && !(image.src && image.complete));
    for (let i = 0; i < 200 && late(); ++i) await new Promise((done) => { setTimeout(done, 50); });
  });
  await settle(page);
}

async function check(page, what) {
  const told = await page.evaluate(async (runOnly) => {
    // From the top: further down the tools, which stay in sight, lie on what is half scrolled away.
    document.getElementById('document').scrollTop = 0;
    const { violations, incomplete, passes } = await globalThis.axe.run(document, { runOnly });
    // Whether a name in words holds a sign like + it does not say; no person says the sign.
    const isSign = (id, { target }) => id === 'label-content-name-mismatch'
      && /^[+\u2212\u00D7?]$/.test(document.querySelector(target[0]).textContent);
    // Nor does it judge a word inside one of our own how-to drawings, which has the colours of any
    // other text: ink on its paper.
    const isDrawn = (id, { target }) => id === 'color-contrast' && document.querySelector(target[0])?.matches('.howto text');
    const short = (list) => list.flatMap(({ id, nodes }) => nodes.filter((node) => !isSign(id, node))
      .map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary}`));
    return { faults: short(violations), unsure: short(incomplete.map((rule) => ({ ...rule, nodes: rule.nodes.filter((node) => !isDrawn(rule.id, node)) }))), passes: passes.length };
  }, tags);
  assert.deepEqual(told.faults.slice(0, 8), [], `${what}: ${told.faults.length} faults: ${told.faults.slice(0, 8).join('; ')}`);
  assert.deepEqual(told.unsure.slice(0, 8), [], `${what}: ${told.unsure.length} not judged: ${told.unsure.slice(0, 8).join('; ')}`);
  // A checker that looked at nothing finds nothing.
  assert.ok(told.passes >= 15, `${what}: only ${told.passes} rules had something to look at`);
}

for (const theme of ['sun', 'dusk']) {
  test(`a checker finds no fault against WCAG 2.2 AA in any sheet of a phone, ${theme}`, async () => {
    await withPage({}, async (page) => {
      await bringChecker(page);
      await chooseTheme(page, theme);
      await check(page, 'the first screen');
      for (const name of ['text', ...sheets]) {
        if (name === 'text') await page.evaluate(() => document.getElementById('skip').click());
        else await openSheet(page, name);
        await openAll(page);
        await check(page, name);
      }
    });
  });

  test(`nor on a wide screen with readings of the ground and something refused, nor on paper, ${theme}`, async () => {
    await withPage({ device: devices.desktop }, async (page) => {
      await openConfig(page, survey);
      await bringChecker(page);
      await chooseTheme(page, theme);
      const input = page.locator('[data-path="cooks.0.stature_mm"] input');
      await input.fill('9000 mm');
      await input.press('Enter');
      await openAll(page);
      assert.equal(await page.locator('section[data-section="ground"] table').count() > 2, true, 'no table of the ground');
      assert.ok(await page.locator('[aria-invalid="true"]').isVisible(), 'nothing is refused');
      await check(page, 'the wide screen');
      await page.emulateMedia({ media: 'print' });
      await settle(page);
      await check(page, 'paper');
    });
  });

  test(`nor without WebGL, ${theme}`, async () => {
    await withPage({ before: without, allowed }, async (page) => {
      await bringChecker(page);
      await chooseTheme(page, theme);
      await openAll(page);
      await check(page, 'the document');
    });
  });
}

test('the checker sees a fault where there is one', async () => {
  await withPage({}, async (page) => {
    await bringChecker(page);
    await openSheet(page, 'share');
    await page.evaluate(() => document.querySelector('label[for="link-text"]').remove());
    await assert.rejects(check(page, 'share'), /label/);
    await page.evaluate(() => {
      document.getElementById('panel-share').querySelector('p').style.color = '#999';
    });
    await assert.rejects(check(page, 'share'), /color-contrast/);
  });
});

// What the keyboard is on, and whether a person can see that.
const focusNow = (page) => page.evaluate(() => {
  const element = document.activeElement;
  const style = getComputedStyle(element);
  // A link that goes on in the next line has a box for each.
  const [box] = element.getClientRects();
  // A file input shows its focus on its label.
  const ring = element.matches('.quiet') ? getComputedStyle(element.nextElementSibling) : style;
  const at = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
  return {
    name: `${element.localName}#${element.id} ${(element.getAttribute('aria-label') || element.labels?.[0]?.textContent || element.textContent).slice(0, 40)}`,
    key: element.dataset.stop, ring: ring.outlineStyle !== 'none' && Number.parseFloat(ring.outlineWidth) >= 2,
    inside: element.matches('.quiet') || (box.bottom > 0 && box.top < innerHeight
      && (box.height > innerHeight / 2 || element.contains(at) || Boolean(element.labels && [...element.labels].some((label) => label.contains(at))))),
  };
});

// Numbers everything that Tab should stop at, and says how many there are.
const numberStops = (page, within) => page.evaluate((place) => {
  let next = 0;
  const radios = new Set();
  for (const element of document.querySelectorAll(place)) {
    delete element.dataset.stop;
    if (!element.matches('button, input, select, textarea, a[href], summary, [tabindex="0"]')) continue;
    // What is folded away has a size, and is not to be seen.
    if (element.disabled || element.getClientRects().length === 0 || !element.checkVisibility()) continue;
    if (element.type === 'radio') {
      if (radios.has(element.name)) continue;
      const chosen = document.querySelector(`input[name="${element.name}"]:checked`) || element;
      radios.add(element.name);
      chosen.dataset.stop = next++;
      continue;
    }
    element.dataset.stop = next++;
  }
  return next;
}, within);

// One way round each: every stop costs a frame. What folds stays folded, its head is a stop.
for (const [what, way, options] of [['Tab, with the picture', 'Tab', {}], ['Shift+Tab, without WebGL', 'Shift+Tab', { before: without, allowed }]]) {
  test(`by the key alone every control is reached, and its focus is seen: ${what}`, async () => {
    await withPage({ device: devices.desktop, ...options }, async (page) => {
      const wanted = await numberStops(page, 'body *');
      assert.ok(wanted > 100, `only ${wanted} stops`);
      await page.locator('#skip').evaluate((element) => { element.style.transition = 'none'; });
      const met = new Set();
      const faults = [];
      // The picture has stops of its own inside.
      const inside = (await snapshot(page)).items.length;
      for (let i = 0; i <= wanted + inside + 2; ++i) {
        await page.keyboard.press(way);
        const stop = await focusNow(page);
        if (stop.key === undefined) continue;
        met.add(stop.key);
        if (!stop.ring) faults.push(`no ring: ${stop.name}`);
        if (!stop.inside) faults.push(`covered: ${stop.name}`);
      }
      assert.deepEqual(faults.slice(0, 8), [], `${faults.length} faults`);
      const missed = await page.evaluate((keys) => [...document.querySelectorAll('[data-stop]')]
        .filter((element) => !keys.includes(element.dataset.stop)).map((element) => `${element.localName}#${element.id} ${element.textContent.slice(0, 30)}`), [...met]);
      assert.deepEqual(missed, []);
    });
  });
}

test('a screen zoomed to 200 % loses nothing sideways, and its sheets open and close', async () => {
  // A browser window of 1280 x 800 at 200 % is one of 640 x 400 with twice the pixels.
  await withPage({ device: { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 } }, async (page) => {
    for (const name of sheets) {
      await openSheet(page, name);
      await openAll(page);
      const over = await page.evaluate(() => {
        const sheet = document.getElementById('document');
        return {
          page: document.documentElement.scrollWidth - innerWidth,
          sheet: sheet.scrollWidth - sheet.clientWidth,
          wide: [...sheet.querySelectorAll('button, input, select, h2, h3, p, summary')].filter((element) => element.offsetParent !== null
            && !element.closest('.scroll, .quiet') && element.getBoundingClientRect().right > innerWidth + 1).map(({ textContent }) => textContent.slice(0, 40)),
        };
      });
      assert.deepEqual(over, { page: 0, sheet: 0, wide: [] }, name);
      await page.locator('#close').click();
      await page.locator('#document').waitFor({ state: 'hidden' });
      await page.waitForFunction(() => !history.state.sheet);
    }
    const before = (await snapshot(page)).frame;
    assert.ok(before > 0, 'no picture at 200 %');
  });
});

test('a wide table says where it goes on, and its rows keep their heads and their words together', async () => {
  for (const [device, text] of [[devices.tallPhone, 100], [devices.tallPhone, 200], [devices.desktop, 100]]) {
    await withPage({ device, extra: { locale: 'en-US' } }, async (page) => {
      await page.evaluate((size) => { document.documentElement.style.fontSize = `${size}%`; }, text);
      for (const name of ['why', 'people', 'oven']) {
        if (device !== devices.desktop) await openSheet(page, name);
        await page.waitForTimeout(200);
        const boxes = await page.locator(`#panel-${name} .scroll:visible`).evaluateAll(async (all) => {
          const frame = () => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); });
          const found = [];
          for (const box of all) {
            const cue = () => getComputedStyle(box, '::before').content;
            const wide = box.scrollWidth > box.clientWidth + 1;
            const head = box.querySelector('tbody th');
            const caption = box.querySelector('caption');
            const one = { label: box.getAttribute('aria-label'), tab: box.tabIndex, wide, before: cue() };
            one.caption = caption.getBoundingClientRect().right <= box.getBoundingClientRect().right + 1;
            // The longest run of lines of a row's head, counted in words that could stand beside each other.
            one.heads = [...box.querySelectorAll('tbody th')].map((cell) => {
              const range = document.createRange();
              range.selectNodeContents(cell);
              const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
              return [cell.textContent, lines, cell.textContent.split(/\s+/).length];
            });
            if (wide) {
              box.scrollLeft = 1e6;
              await frame();
              await frame();
              one.after = cue();
              one.head = Math.abs(head.getBoundingClientRect().left - box.getBoundingClientRect().left) < 2;
              one.share = head.offsetWidth / box.clientWidth;
              box.scrollLeft = 0;
            }
            found.push(one);
          }
          return found;
        });
        for (const box of boxes) {
          const which = `${name} ${text} %: ${box.label}`;
          assert.ok(box.label && box.tab === 0, which);
          assert.ok(box.caption, `${which}: the caption is cut off`);
          if (box.wide) {
            assert.match(box.before, /right/, which);
            assert.match(box.after, /left/, which);
            assert.ok(box.head, `${which}: the rows lose their heads`);
            assert.ok(box.share <= 0.62, `${which}: the heads leave no room, ${box.share}`);
          } else {
            assert.ok(!/More/.test(box.before), which);
          }
          if (text === 100) for (const [words, lines, count] of box.heads) assert.ok(count < 3 || lines < count, `${which}: a word a line in "${words}"`);
        }
        if (device !== devices.desktop && boxes.length > 0) {
          await page.locator(`#panel-${name} .scroll:visible`).first().scrollIntoViewIfNeeded();
          await keepPicture(page, `table-${name}-${text}`);
        }
      }
    });
  }
});

test('in forced colours edges, focus and what is off can still be told', async () => {
  await withPage({ device: devices.desktop, extra: { forcedColors: 'active' } }, async (page) => {
    await openAll(page);
    const bare = await page.$$eval('#document button, #document input[type="text"], #document select, #bar button',
      (all) => all.filter((element) => element.offsetParent !== null).filter((element) => {
        const { borderTopStyle, borderTopWidth } = getComputedStyle(element);
        return borderTopStyle === 'none' || Number.parseFloat(borderTopWidth) < 1;
      }).map((element) => element.textContent));
    assert.deepEqual(bare, []);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    const stop = await focusNow(page);
    assert.ok(stop.ring, stop.name);
  });
});

// What a screen reader is given, as the browser itself works it out.
async function readerTree(page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  const property = (node, name) => node.properties?.find((one) => one.name === name)?.value.value;
  return nodes.filter((node) => !node.ignored).map((node) => ({
    role: node.role?.value, name: node.name?.value ?? '', level: property(node, 'level'), live: property(node, 'live'),
  }));
}

test('a screen reader finds one order of headings, named groups, labelled inputs, tables with captions and what is new', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await openConfig(page, survey);
    await openAll(page);
    const tree = await readerTree(page);
    const of = (...roles) => tree.filter(({ role }) => roles.includes(role));
    const levels = of('heading').map(({ level }) => level);
    assert.equal(levels.filter((level) => level === 1).length, 1);
    assert.equal(levels[0], 1);
    levels.forEach((level, i) => assert.ok(i === 0 || level <= levels[i - 1] + 1, `a heading of level ${level} under one of level ${levels[i - 1]}: ${of('heading')[i].name}`));
    for (const title of ['Heights', 'People', 'Oven and station', 'Why', 'Share and print', 'Height and distance', 'Where everything stands', 'What is built', 'The ground and the base']) {
      assert.ok(of('heading').some(({ name }) => name === title), `no heading ${title}`);
    }
    assert.ok(of('image').some(({ name }) => /line of sight into the oven/.test(name)), 'the canvas has no words');
    assert.equal(of('main').length, 1);
    assert.ok(of('navigation').every(({ name }) => name !== ''));
    for (const { role, name } of of('textbox', 'combobox', 'checkbox', 'radio', 'button', 'link', 'image', 'dialog', 'region')) {
      assert.notEqual(name.trim(), '', `a ${role} without a name`);
    }
    assert.ok(of('textbox').length > 50 && of('combobox').length > 5, 'half of the form is missing');
    // A part that opens is a group too, and its name is its summary's.
    const nameless = await page.$$eval('#panels fieldset, #panels [role="group"], #panels details', (all) => all
      .filter((group) => !(group.getAttribute('aria-label') ?? group.querySelector(':scope > legend, :scope > summary')?.textContent ?? '').trim())
      .map(({ outerHTML }) => outerHTML.slice(0, 80)));
    assert.deepEqual(nameless, []);
    assert.ok(await page.locator('#panels fieldset legend').count() >= 6);
    const tables = of('table', 'grid');
    assert.ok(tables.length >= 20, `${tables.length} tables`);
    assert.ok(tables.every(({ name }) => name.trim() !== ''), 'a table without a caption');
    assert.ok(of('status').some(({ live }) => live === 'polite'));
    // Each table says the words of its columns and rows.
    const bare = await page.$$eval('#panels table', (all) => all.filter((table) => [...table.rows].some((row) => row.cells.length === 0
      || row.cells[0].localName !== 'th')).map((table) => table.caption?.textContent));
    assert.deepEqual(bare, []);
  });
});

test('fit map, scene, cabinets and ground are in the document as tables, and follow the station', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await openConfig(page, survey);
    const tables = () => page.$$eval('section[data-section]', (all) => Object.fromEntries(all
      .map((section) => [section.dataset.section, [...section.querySelectorAll('table')].map(({ innerText }) => innerText)])));
    const before = await tables();
    for (const [name, count] of Object.entries({ fit: 2, station: 2, build: 3, ground: 4 })) {
      assert.equal(before[name]?.length, count, name);
    }
    for (const path of ['station.oven_base_height_mm', 'station.counter_height_mm']) {
      await page.locator(`[data-path="${path}"]`).first().getByRole('button', { name: /^More/ }).click();
      await settle(page);
    }
    // The cabinets are built again once the hand rests.
    await page.waitForFunction((old) => document.querySelector('section[data-section="build"] table').innerText !== old, before.build[0]);
    const after = await tables();
    for (const name of ['fit', 'station', 'build', 'ground']) assert.notDeepEqual(after[name], before[name], name);
  });
});

for (const field of mainFields) {
  test(`changed in the document ${field} is on the canvas, and the other way round`, async () => {
    await withPage({ device: devices.desktop }, async (page) => {
      await settle(page);
      const control = page.locator(`#main-controls [data-path="${field}"]`);
      const shown = () => control.locator('input, select').first().inputValue();
      const drawn = async () => (await item(page, `field:${field}`)).value;
      const start = [await shown(), await drawn()];
      if (field === 'oven.kind') await control.locator('select').selectOption('steel_cabinet');
      else await control.getByRole('button', { name: /^More/ }).click();
      await settle(page);
      const typed = [await shown(), await drawn()];
      assert.notEqual(typed[1], start[1], 'the canvas does not follow');
      const { config } = await snapshot(page);
      if (field !== 'oven.kind') assert.equal(typed[1], at(config, field));
      await page.mouse.click(...middle(await item(page, `action:${field}.${field === 'oven.kind' ? 'next' : 'more'}`)));
      await settle(page);
      assert.notEqual(await drawn(), typed[1]);
      assert.notEqual(await shown(), typed[0], 'the document does not follow');
    });
  });
}

// Tab until the focus is on what `place` names.
async function tabTo(page, place, way = 'Tab') {
  for (let i = 0; i < 400; ++i) {
    await page.keyboard.press(way);
    if (await page.evaluate((wanted) => document.activeElement.matches(wanted), place)) return;
  }
  assert.fail(`${way} never leads to ${place}`);
}

test('the whole job is done by the keyboard alone, on a small screen', async () => {
  await withPage({ device: { viewport: devices.phone.viewport }, extra: { permissions: ['clipboard-read', 'clipboard-write'] } }, async (page) => {
    const press = (...keys) => keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
    // Past the picture: the kind of oven, a height, and what they make of it.
    await tabTo(page, '#skip');
    await press('Enter');
    await page.locator('#panel-text').waitFor({ state: 'visible' });
    const told = () => page.locator('#headlines').innerText();
    const before = await told();
    const { cooks } = (await snapshot(page)).config;
    await tabTo(page, '#main-controls [data-path="oven.kind"] select');
    await press('ArrowDown');
    await tabTo(page, '#main-controls [data-path="station.prep_depth_mm"] .step:last-of-type');
    await press('Enter', 'Enter');
    await settle(page);
    assert.notEqual(await told(), before);
    // Who cooks: a name, a measured height, a third person.
    await press('Escape');
    await page.locator('#document').waitFor({ state: 'hidden' });
    await tabTo(page, '#bar [data-sheet="people"]');
    await press('Enter');
    await tabTo(page, '[data-path="cooks.0.name"] input');
    await press('Control+a');
    await page.keyboard.type('Noor');
    await tabTo(page, '.cook:first-child summary');
    await press('Enter');
    await tabTo(page, '[data-path="cooks.0.eye_height_mm"] input');
    await press('Control+a');
    await page.keyboard.type('61 3/8');
    await press('Enter');
    await tabTo(page, '#add-cook');
    await press('Enter');
    await settle(page);
    const { config, report } = await snapshot(page);
    assert.equal(config.cooks[0].name, 'Noor');
    assert.equal(config.cooks[0].eye_height_mm, 1558.9);
    assert.equal(config.cooks.length, cooks.length + 1);
    // Why, and where a number comes from.
    await press('Escape');
    await page.locator('#document').waitFor({ state: 'hidden' });
    await tabTo(page, '#bar [data-sheet="why"]');
    await press('Enter');
    await tabTo(page, '[data-sections~="findings"] .why');
    await press('Enter');
    assert.match(await page.evaluate(() => document.activeElement.closest('.reason')?.textContent ?? ''), /Source: \S+/);
    // Away with it: the link.
    await press('Escape');
    await page.locator('#document').waitFor({ state: 'hidden' });
    await tabTo(page, '#bar [data-sheet="share"]');
    await press('Enter');
    await tabTo(page, '#copy-link');
    await press('Enter');
    await page.waitForFunction(() => document.getElementById('copy-state').textContent !== '');
    const link = await page.evaluate(() => navigator.clipboard.readText());
    await withPage({ fragment: link.split('#')[1] }, async (other) => {
      assert.deepEqual((await snapshot(other)).config, config);
      assert.deepEqual((await snapshot(other)).report.recommended, report.recommended);
    });
  });
});
