// The scene in the real page: hands, eyes, lost contexts, a turned phone, and the painted floor
// measured on the picture itself.
import assert from 'node:assert/strict';
import test from 'node:test';
import { devices, doubleTap, drag, evaluateNatively, fragment, item, keepPicture, middle, settle, snapshot, tap, withPage }
  from '../support/page.mjs';

async function openScene(page) {
  await settle(page);
  for (let i = 0; i < 2; i += 1) await tap(page, middle(await item(page, 'action:picture')));
  await item(page, 'action:scene');
  await settle(page);
}

// The picture's own pixels, without what is written over them.
async function pixels(page) {
  const { rect: [x, y, width, height] } = await item(page, 'action:scene');
  const shot = await page.screenshot({ clip: { x, y, width, height } });
  return [...shot];
}

// How much two pictures differ: the share of pixels that do, by more than a few levels.
const difference = (page, first, second) => page.evaluate(async ([a, b]) => {
  const read = async (bytes) => {
    const image = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
    const copy = new OffscreenCanvas(image.width, image.height).getContext('2d');
    copy.drawImage(image, 0, 0);
    return copy.getImageData(0, 0, image.width, image.height).data;
  };
  const [one, two] = [await read(a), await read(b)];
  if (one.length !== two.length) return 1;
  let different = 0;
  for (let i = 0; i < one.length; i += 4) {
    const off = Math.max(Math.abs(one[i] - two[i]), Math.abs(one[i + 1] - two[i + 1]), Math.abs(one[i + 2] - two[i + 2]));
    if (off > 8) different += 1;
  }
  return different / (one.length / 4);
}, [first, second]);
// Nothing but rounding may differ between two drawings of the same thing.
const same = 0.001;
const other = 0.02;

async function pinch(page, [x, y], from, to) {
  const session = await page.context().newCDPSession(page);
  const send = (type, half) => session.send('Input.dispatchTouchEvent', {
    type, touchPoints: half === null ? [] : [{ x: x - half, y, id: 1 }, { x: x + half, y, id: 2 }],
  });
  await send('touchStart', from);
  for (let i = 1; i <= 8; i += 1) {
    await send('touchMove', from + (to - from) * i / 8);
    await page.waitForTimeout(30);
  }
  await send('touchEnd', null);
  await session.detach();
  await settle(page);
}

// A place on the scene that no button covers.
async function freePlace(page) {
  const { rect: [x, y, w, h] } = await item(page, 'action:scene');
  return [x + w / 2, y + h * 0.4];
}

test('scene: one finger turns, two zoom, a double tap shows all again, and then it rests', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openScene(page);
    const before = await snapshot(page);
    const first = await pixels(page);
    const [x, y] = await freePlace(page);
    await drag(page, [[x, y], [x + 40, y], [x + 80, y - 20]]);
    await settle(page);
    const turned = await pixels(page);
    assert.ok(await difference(page, first, turned) > other, 'a drag did not turn the scene');
    await pinch(page, [x, y], 30, 90);
    const closer = await pixels(page);
    assert.ok(await difference(page, turned, closer) > other, 'a pinch did not zoom');
    await doubleTap(page, [x, y]);
    await settle(page);
    assert.ok(await difference(page, first, await pixels(page)) <= same, 'a double tap did not reset the view');
    const { frame, config } = await snapshot(page);
    assert.deepEqual(config, before.config);
    await page.waitForTimeout(1500);
    assert.equal((await snapshot(page)).frame, frame, 'frames are drawn at rest');
    assert.equal((await snapshot(page)).lastError, '');
  });
});

test('scene: through the eyes of each cook, and the same after the context was lost', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openScene(page);
    await tap(page, middle(await item(page, 'action:through_eyes')));
    const views = [];
    for (const name of ['first', 'second']) {
      await settle(page);
      views.push(await pixels(page));
      await keepPicture(page, `scene-eyes-${name}`);
      await tap(page, middle(await item(page, 'action:person')));
    }
    await settle(page);
    assert.ok(await difference(page, views[0], views[1]) > other, 'two cooks see the same');
    assert.ok(await difference(page, views[0], await pixels(page)) <= same, 'back at the first cook the view has changed');
    const uploads = () => page.evaluate(() => globalThis.Module._hs_debug_uploads());
    const sent = await uploads();
    await page.evaluate(async () => {
      const lost = document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      const back = (type) => new Promise((done) => { document.getElementById('canvas').addEventListener(type, done, { once: true }); });
      const gone = back('webglcontextlost');
      lost.loseContext();
      await gone;
      await new Promise((done) => { setTimeout(done, 50); });
      const again = back('webglcontextrestored');
      lost.restoreContext();
      await again;
    });
    await settle(page);
    assert.ok(await uploads() > sent, 'nothing was made again');
    assert.ok(await difference(page, views[0], await pixels(page)) <= same, 'the picture is not what it was');
    assert.equal((await snapshot(page)).lastError, '');
  });
});

test('scene: a phone that is turned and turned back shows what it showed', async () => {
  await withPage({ device: devices.tallPhone }, async (page) => {
    await openScene(page);
    const first = await pixels(page);
    await page.setViewportSize(devices.sidePhone.viewport);
    await settle(page);
    await keepPicture(page, 'scene-turned');
    const { rect: [, , w, h] } = await item(page, 'action:scene');
    assert.ok(w > 150 && h > 120, 'no room for the scene on its side');
    await page.setViewportSize(devices.tallPhone.viewport);
    await settle(page);
    assert.ok(await difference(page, first, await pixels(page)) <= same);
  });
});

test('scene: without motion it is there at once', async () => {
  await withPage({ extra: { reducedMotion: 'reduce' } }, async (page) => {
    await openScene(page);
    const { frame } = await snapshot(page);
    await tap(page, middle(await item(page, 'action:through_eyes')));
    const drawn = (await snapshot(page)).frame - frame;
    assert.ok(drawn <= 10, `${drawn} frames for a move without motion`);
  });
});

// The floor from straight above fills the whole picture: seen is white, unseen blue, what is not
// floor red.
async function floorShare(page) {
  await page.evaluate(() => { globalThis.Module._hs_debug_floor(1); globalThis.hsHost.wake(); });
  await settle(page);
  // Corners are drawn over by the picture's own frame and tools; so the pixels come from GL.
  const counts = await page.evaluate(async () => {
    const canvas = document.getElementById('canvas');
    const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d');
    await new Promise((done) => { requestAnimationFrame(() => { globalThis.Module._hs_frame(performance.now()); copy.drawImage(canvas, 0, 0); done(); }); });
    const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
    let seen = 0, unseen = 0;
    for (let i = 0; i < data.length; i += 4) {
      const [r, g, b] = [data[i], data[i + 1], data[i + 2]];
      // Edges are smoothed; each pixel counts for as much of it as is seen.
      if (b === 255 && r === g) { seen += r / 255; unseen += 1 - r / 255; }
    }
    return { seen, unseen };
  });
  await page.evaluate(() => { globalThis.Module._hs_debug_floor(0); globalThis.hsHost.wake(); });
  await settle(page);
  assert.ok(counts.seen + counts.unseen > 20000, 'the floor is not on the picture');
  return counts.seen / (counts.seen + counts.unseen);
}

test('scene: the painted floor has the seen share that the engine computes, within 1 %', async () => {
  await withPage({ device: devices.desktop }, async (page) => {
    await settle(page);
    await page.evaluate(() => { globalThis.Module._hs_set_picture(2); globalThis.hsHost.wake(); });
    await settle(page);
    const shares = [];
    for (let step = 0; step < 3; step += 1) {
      const { report } = await snapshot(page);
      const computed = report.cooks[0].upright.visible_floor_fraction;
      const painted = await floorShare(page);
      assert.ok(Math.abs(painted - computed) <= 0.01, `painted ${painted.toFixed(4)}, computed ${computed}`);
      shares.push(computed);
      const native = evaluateNatively(await fragment(page));
      if (native) assert.equal(native.cooks[0].upright.visible_floor_fraction, computed);
      for (let i = 0; i < 4; i += 1) await page.mouse.click(...middle(await item(page, 'action:view.standoff_mm.less')));
      await settle(page);
    }
    assert.ok(Math.abs(shares[0] - shares[2]) > 0.02, 'the shares are all alike, so they show nothing');
  });
});

for (const [name, device] of Object.entries({ tallPhone: devices.tallPhone, sidePhone: devices.sidePhone, tablet: devices.tablet, desktop: devices.desktop })) {
  for (const light of ['sun', 'dusk']) {
    // A plain run takes each screen in one theme; HEARTHSIGHT_GALLERY=whole in both.
    if (process.env.HEARTHSIGHT_GALLERY !== 'whole' && (light === 'dusk') !== ['sidePhone', 'desktop'].includes(name)) continue;
    test(`scene: pictures, ${name}, ${light}`, async () => {
      const before = light === 'dusk' ? () => { localStorage.setItem('hearthsight:theme', 'dusk'); } : undefined;
      await withPage({ device, before }, async (page) => {
        await settle(page);
        await page.evaluate(() => { globalThis.Module._hs_set_picture(2); globalThis.hsHost.wake(); });
        await settle(page);
        const { width, height } = device.viewport;
        await keepPicture(page, `${width}x${height}-${light}-scene`);
        const outside = await pixels(page);
        const at = middle(await item(page, 'action:through_eyes'));
        if (device.hasTouch) await page.touchscreen.tap(...at); else await page.mouse.click(...at);
        await settle(page);
        await keepPicture(page, `${width}x${height}-${light}-scene-eyes`);
        assert.ok(await difference(page, outside, await pixels(page)) > 0.1);
      });
    });
  }
}
