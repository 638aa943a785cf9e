// From phone to phone by links alone: someone is asked, adds themselves, sees how it suits them and
// sends it back, and the household takes in what it says yes to.
import assert from 'node:assert/strict';
import test from 'node:test';
import {
  change, configOf, devices, fragment, keepPicture, keptSoon, linksKept, openSheet, phone, settle, snapshot, titled, told, withPage, world,
} from '../support/page.mjs';

const sharing = () => {
  navigator.share = (data) => { globalThis.shared = data; return Promise.resolve(); };
};
const phoneOf = (locale, device = phone) => world.browser.newContext({ ...device, locale, serviceWorkers: 'block' });
const stationCount = (page) => page.locator('.stations > li').count();
const sent = async (page, button) => {
  await page.locator(button).tap();
  await page.waitForFunction(() => globalThis.shared);
  return page.evaluate(() => {
    const { url } = globalThis.shared;
    globalThis.shared = null;
    return url.split('#')[1];
  });
};

async function addMe(page, { name, height = '', eye = '', place }) {
  if (place !== undefined) await page.locator('#join-who').selectOption({ label: place });
  await page.locator('#join-name').fill(name);
  await page.locator('#join-height').fill(height);
  if (eye) {
    await page.locator('#join details summary').tap();
    await page.locator('#join-eye').fill(eye);
  }
  await page.getByRole('button', { name: 'Add me and show how it suits me' }).tap();
  await settle(page);
}

// A household with a station of its own, and the link that asks someone to add themselves.
async function household(context, title = 'Behind the shed') {
  let asked;
  await withPage({ context, before: sharing }, async (page) => {
    await change(page, 0.7);
    await titled(page, title);
    await openSheet(page, 'people');
    await page.locator('#ask-someone').scrollIntoViewIfNeeded();
    asked = await sent(page, '#ask-someone');
  });
  assert.match(asked, /^me\./);
  return asked;
}

// Someone else's phone: adds them, and gives the link that they send back.
async function answer(asked, person, { locale = 'en-US', before } = {}) {
  const context = await phoneOf(locale);
  let reply;
  await withPage({ context, fragment: asked, before: sharing }, async (page) => {
    await page.getByRole('button', { name: 'Add me' }).tap();
    await before?.(page);
    await addMe(page, person);
    reply = await sent(page, '#join .card .main');
  });
  await context.close();
  return reply;
}

const lookAtIt = async (page) => {
  await told(page, /answers your station/);
  await page.getByRole('button', { name: 'Look at it' }).tap();
  await page.locator('#reply').waitFor();
  await settle(page);
};
const take = async (page) => {
  await page.locator('#reply button[type="submit"]').tap();
  await settle(page);
  await keptSoon(page);
};

test('the whole way round: asked, added, judged at once, sent back, taken in', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const away = await phoneOf('en-US');
  let reply;
  await withPage({ context: away, fragment: asked, before: sharing }, async (page) => {
    await told(page, /asked to add yourself/);
    await keepPicture(page, 'family-asked');
    await page.getByRole('button', { name: 'Add me' }).tap();
    await page.locator('#join-name').waitFor();
    assert.ok(await page.locator('#join-name').evaluate((input) => input === document.activeElement));
    const before = await configOf(page);
    // What is missing is said beside its field, and nothing is changed.
    await page.getByRole('button', { name: 'Add me and show how it suits me' }).tap();
    assert.match(await page.locator('#join-name-error').textContent(), /name/);
    await page.locator('#join-name').fill('Mia');
    await page.locator('#join-height').fill('17');
    await page.getByRole('button', { name: 'Add me and show how it suits me' }).tap();
    assert.match(await page.locator('#join-height-error').textContent(), /ft|in/);
    assert.deepEqual(await configOf(page), before);
    await keepPicture(page, 'family-refused');
    await addMe(page, { name: 'Mia', height: '5\' 2"' });
    const { config: now, report } = await snapshot(page);
    const mia = now.cooks.at(-1);
    assert.equal(mia.name, 'Mia');
    assert.equal(mia.stature_mm, 1574.8);
    assert.equal(now.cooks.length, before.cooks.length + 1);
    // Her own verdict, and the picture is hers.
    const line = await page.locator('#joined-line').textContent();
    assert.match(line, /^Mia: ./);
    assert.equal(report.cooks.at(-1).name, 'Mia');
    assert.equal(await page.locator('#looking').inputValue(), String(now.cooks.length - 1));
    assert.match(await page.locator('#join .card li').first().textContent(), /in/);
    await keepPicture(page, 'family-verdict');
    reply = await sent(page, '#join .card .main');
    assert.ok(!reply.startsWith('me.'));
    assert.ok(reply.length <= 500);
  });
  await away.close();

  let household0;
  await withPage({ context: home }, async (page) => { household0 = await configOf(page); });
  await withPage({ context: home, fragment: reply }, async (page) => {
    const kept = await linksKept(page);
    assert.ok(!kept.includes(reply), 'a reply is kept before anyone said yes');
    await told(page, /answers your station Behind the shed/);
    await keepPicture(page, 'family-reply-told');
    await lookAtIt(page);
    assert.equal(await page.locator('#reply fieldset').count(), 1);
    const text = await page.locator('#reply').innerText();
    assert.match(text, /Mia is new/);
    // Her feet and inches are told in this phone's millimetres.
    assert.match(text, /1574\.8 mm|1575 mm/);
    assert.doesNotMatch(text, / in\b.*ft/);
    await keepPicture(page, 'family-reply');
    await take(page);
    const now = await configOf(page);
    assert.deepEqual(now.cooks.slice(0, -1), household0.cooks);
    assert.equal(now.cooks.at(-1).name, 'Mia');
    assert.deepEqual({ ...now, cooks: [] }, { ...household0, cooks: [] });
    await told(page, /What you took over is in your station now/);
    assert.equal(await stationCount(page), 1, 'the household has one station, with Mia in it');
    assert.ok((await linksKept(page)).includes(await fragment(page)));
    // One step of undo.
    await page.keyboard.press('Control+z');
    await settle(page);
    assert.deepEqual(await configOf(page), household0);
    await page.keyboard.press('Control+y');
    await settle(page);
    assert.equal((await configOf(page)).cooks.at(-1).name, 'Mia');
    await keptSoon(page);
  });
  // Opened again, the bare address is the household's; the same link has nothing more to say.
  await withPage({ context: home }, async (page) => assert.equal((await configOf(page)).cooks.at(-1).name, 'Mia'));
  await withPage({ context: home, fragment: reply }, async (page) => {
    assert.ok(!await page.locator('#reply').isVisible());
  });
  await home.close();
});

test('the same name with other numbers, and a station changed meanwhile, are asked and never overwritten', async () => {
  for (const [choice, expected] of [['Keep yours', 1], ['Take theirs', 2], ['Keep both', 3]]) {
    const home = await phoneOf('en-GB');
    const asked = await household(home);
    const first = (await (async () => {
      let name;
      await withPage({ context: home }, async (page) => { name = (await configOf(page)).cooks[0].name; });
      return name;
    })());
    // Someone adds themselves, and puts another's height right on the way.
    const reply = await answer(asked, { name: 'Tom', height: '188 cm' }, {
      async before(page) {
        await page.locator('[data-path="cooks.0.stature_mm"] input').fill('1700.5 mm');
        await page.locator('[data-path="cooks.0.stature_mm"] input').press('Enter');
        await settle(page);
      },
    });
    // Meanwhile the household changes its station.
    await withPage({ context: home }, async (page) => change(page, 0.3));
    let ours;
    await withPage({ context: home }, async (page) => { ours = await configOf(page); });
    await withPage({ context: home, fragment: reply }, async (page) => {
      await lookAtIt(page);
      const legends = await page.locator('#reply legend').allTextContents();
      assert.equal(legends.length, 3, legends.join(', '));
      assert.equal(legends[0], 'Tom is new');
      assert.equal(legends[1], `${first} has other numbers`);
      if (choice === 'Keep both') {
        await page.locator('#reply fieldset').nth(1).scrollIntoViewIfNeeded();
        await keepPicture(page, 'family-conflict');
      }
      // Nothing is chosen for the household, and without a choice nothing happens.
      assert.equal(await page.locator('#reply fieldset:not(:first-of-type) input:checked').count(), 0);
      await take(page);
      assert.match(await page.locator('#reply [role="alert"]').textContent(), /Say for each/);
      await page.locator('#reply fieldset').nth(1).getByText(choice).tap();
      await page.locator('#reply fieldset').nth(2).getByText('Keep yours').tap();
      await take(page);
      const now = await configOf(page);
      assert.deepEqual(now.view, ours.view, 'the station was overwritten');
      assert.equal(now.title, ours.title);
      const named = (name) => now.cooks.find((cook) => cook.name === name);
      assert.equal(named('Tom').stature_mm, 1880);
      assert.equal(named(first).stature_mm, expected === 2 ? 1700.5 : ours.cooks[0].stature_mm);
      assert.equal(named(`${first} 2`)?.stature_mm, expected === 3 ? 1700.5 : undefined);
      assert.equal(await stationCount(page), 1);
    });
    await home.close();
  }
});

test('left alone, an answer changes nothing, and what was kept is one tap away', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const reply = await answer(asked, { name: 'Mia', height: '1.62' });
  let ours;
  await withPage({ context: home }, async (page) => { ours = await configOf(page); });
  await withPage({ context: home, fragment: reply }, async (page) => {
    await lookAtIt(page);
    await page.getByRole('button', { name: 'Leave it all' }).tap();
    assert.ok(!await page.locator('#reply').isVisible());
    await openSheet(page, 'share');
    await page.getByRole('button', { name: 'Open: Behind the shed' }).tap();
    await settle(page);
    assert.deepEqual(await configOf(page), ours);
  });
  await withPage({ context: home }, async (page) => assert.deepEqual(await configOf(page), ours));
  await home.close();
});

test('a reply pasted under Share is asked about as well; another household\'s link is no reply', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const reply = await answer(asked, { name: 'Mia', height: '162' });
  const other = await phoneOf('en-GB');
  const foreign = await household(other, 'Elsewhere');
  await other.close();
  await withPage({ context: home }, async (page) => {
    const paste = async (text) => {
      await openSheet(page, 'share');
      await page.locator('#paste-text').fill(text);
      await page.locator('#open-link button').tap();
      await settle(page);
    };
    await paste(`${world.url}#${reply}`);
    await lookAtIt(page);
    await take(page);
    assert.equal((await configOf(page)).cooks.at(-1).name, 'Mia');
    await page.locator('#notice-close').tap();
    await paste(`${world.url}#${foreign}`);
    await told(page, /asked to add yourself/);
    assert.ok(!await page.locator('#reply').isVisible());
    assert.equal((await configOf(page)).title, 'Elsewhere');
  });
  await home.close();
});

test('two answers come in one after the other, into the same station', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const replies = [await answer(asked, { name: 'Mia', height: '5 ft 2 in' }), await answer(asked, { name: 'Tom', height: '6\' 1"' })];
  for (const reply of replies) {
    await withPage({ context: home, fragment: reply }, async (page) => {
      await lookAtIt(page);
      await take(page);
    });
  }
  await withPage({ context: home }, async (page) => {
    assert.deepEqual((await configOf(page)).cooks.slice(-2).map(({ name }) => name), ['Mia', 'Tom']);
    assert.equal(await stationCount(page), 1);
  });
  await home.close();
});

test('units are the person\'s and the device\'s: neither a link nor an answer changes them', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const units = (page) => page.evaluate(() => globalThis.Module._hs_units());
  const guest = await phoneOf('en-US');
  let reply;
  await withPage({ context: guest, fragment: asked, before: sharing }, async (page) => {
    assert.equal(await units(page), 0, 'inches, as this phone has them');
    await page.getByRole('button', { name: 'Add me' }).tap();
    // A metric height on a phone that shows inches: what is typed says its unit.
    await addMe(page, { name: 'Mia', height: '162' });
    assert.equal((await configOf(page)).cooks.at(-1).stature_mm, 1620);
    assert.equal(await units(page), 0);
    reply = await sent(page, '#join .card .main');
  });
  await guest.close();
  await withPage({ context: home, fragment: reply }, async (page) => {
    assert.equal(await units(page), 1, 'millimetres, as this phone has them');
    await lookAtIt(page);
    await take(page);
    assert.equal(await units(page), 1);
  });
  await home.close();
});

test('who knows only their eye height adds themselves by that', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const context = await phoneOf('en-GB');
  await withPage({ context, fragment: asked, before: sharing }, async (page) => {
    await page.getByRole('button', { name: 'Add me' }).tap();
    await addMe(page, { name: 'Mia', eye: '1525' });
    const mia = (await configOf(page)).cooks.at(-1);
    assert.equal(mia.eye_height_mm, 1525);
    // Eye to vertex of adults is 100 to 125 mm, and a shoe of 25 mm is in the eye height.
    assert.ok(mia.stature_mm > 1525 - 25 + 95 && mia.stature_mm < 1525 - 25 + 130, String(mia.stature_mm));
  });
  await context.close();
  await home.close();
});

test('who has no idea how tall they are says it roughly and lets a phone help', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const context = await phoneOf('en-GB');
  await withPage({ context, fragment: asked, before: sharing }, async (page) => {
    await page.getByRole('button', { name: 'Add me' }).tap();
    await addMe(page, { name: 'Mia', height: '170' });
    await page.getByRole('button', { name: 'Measure me with a phone' }).tap();
    const eye = page.locator('.tilt[data-use="eye"]');
    await eye.getByRole('button', { name: 'At the feet' }).waitFor();
    assert.equal(await eye.locator('select').evaluate((select) => select.selectedOptions[0].text), 'Mia');
  });
  await context.close();
  await home.close();
});

test('adding oneself fits and can be tapped on every screen', async () => {
  const home = await phoneOf('en-GB');
  const asked = await household(home);
  const reply = await answer(asked, { name: 'Mia', height: '5\' 2"' });
  const [storage] = (await home.storageState()).origins;
  await home.close();
  for (const name of ['tallPhone', 'sidePhone', 'tablet', 'desktop']) {
    const click = name === 'desktop' ? 'click' : 'tap';
    await withPage({ device: devices[name], fragment: asked }, async (page) => {
      await page.getByRole('button', { name: 'Add me' })[click]();
      await page.waitForTimeout(200);
      await keepPicture(page, `family-join-${name}`);
      const wide = await page.evaluate(() => [...document.querySelectorAll('#join button, #join input')].filter((one) => one.offsetParent).map((one) => {
        const box = one.getBoundingClientRect();
        return [one.id || one.textContent, box.height, box.left, box.right <= innerWidth];
      }));
      for (const [what, height, left, fits] of wide) assert.ok(height >= 48 && left >= 0 && fits, `${name}: ${what} is ${height} high`);
    });
    const context = await world.browser.newContext({ ...devices[name], serviceWorkers: 'block', storageState: { cookies: [], origins: [storage] } });
    await withPage({ context, fragment: reply }, async (page) => {
      await told(page, /answers your station/);
      await page.getByRole('button', { name: 'Look at it' })[click]();
      await page.waitForTimeout(200);
      await keepPicture(page, `family-reply-${name}`);
    });
    await context.close();
  }
});

test('who was entered by height alone answers under a name, and is counted once', async () => {
  const home = await phoneOf('en-GB');
  let asked;
  await withPage({ context: home, before: sharing }, async (page) => {
    await openSheet(page, 'start');
    await page.locator('#start-tall').fill('188 cm');
    await page.locator('#start-short').fill('162 cm');
    await page.getByRole('button', { name: 'Show my heights' }).tap();
    await settle(page);
    await titled(page, 'Behind the shed');
    await openSheet(page, 'people');
    await page.locator('#ask-someone').scrollIntoViewIfNeeded();
    asked = await sent(page, '#ask-someone');
  });
  const reply = await answer(asked, { name: 'Ana', place: 'Yes: Shortest', height: '163 cm' });
  await withPage({ context: home, fragment: reply }, async (page) => {
    await lookAtIt(page);
    const text = await page.locator('#reply').innerText();
    assert.match(text, /In place of Shortest/);
    assert.doesNotMatch(text, /stays: .*Shortest/);
    await keepPicture(page, 'family-in-place');
    await take(page);
    const { cooks } = await configOf(page);
    assert.deepEqual(cooks.map(({ name, stature_mm }) => [name, stature_mm]), [['Tallest', 1880], ['Ana', 1630]]);
  });
  await home.close();
});
