// A display without a screen (Xvfb), the native window on it, and hands (xdotool).
import assert from 'node:assert/strict';
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
export const program = path.join(root, 'build/native/hearthsight-window');
const longestWaitMs = 60000;

export const pause = (ms) => new Promise((done) => { setTimeout(done, ms); });

// Asks until `ask` gives something; a busy machine may take its time.
export async function until(what, ask) {
  const end = Date.now() + longestWaitMs;
  for (;;) {
    const found = await ask();
    if (found) return found;
    if (Date.now() > end) assert.fail(`waited a minute for ${what}`);
    await pause(100);
  }
}

// What is on the screen, from its upper left corner on: Xvfb keeps it in a file in the X Window Dump
// format (XWDFile.h), whose header is 32-bit numbers, highest byte first.
function readScreen(file, width, height) {
  const bytes = readFileSync(file);
  const number = (index) => bytes.readUInt32BE(4 * index);
  assert.equal(number(7), 0, 'pixels with the lowest byte first');
  assert.equal(number(11), 32, 'bits in a pixel');
  const start = number(0) + 12 * number(19);
  const data = Buffer.alloc(3 * width * height);
  for (let y = 0; y < height; ++y) {
    for (let x = 0; x < width; ++x) {
      const from = start + y * number(12) + 4 * x;
      const to = 3 * (y * width + x);
      data[to] = bytes[from + 2];
      data[to + 1] = bytes[from + 1];
      data[to + 2] = bytes[from];
    }
  }
  return { width, height, data };
}

// On a free display number, which the server tells on its third descriptor; `folder` holds its screen.
export async function startDisplay(folder) {
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1700x1300x24', '-nolisten', 'tcp', '-noreset',
    '-fbdir', folder], { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  server.on('error', (error) => assert.fail(`Xvfb does not start (Debian package: xvfb): ${error.message}`));
  let number = '';
  server.stdio[3].on('data', (bytes) => { number += bytes; });
  await until('Xvfb', () => number.endsWith('\n'));
  // Mesa's own rasteriser, also where there is a graphics card: the same picture everywhere.
  // GLFW 3.4 looks for a Wayland server first, whose library complains where a session has no folder.
  const env = { ...process.env, DISPLAY: `:${number.trim()}`, LIBGL_ALWAYS_SOFTWARE: '1',
    XDG_SESSION_TYPE: 'x11', XDG_RUNTIME_DIR: folder };
  delete env.WAYLAND_DISPLAY;
  return {
    env,
    screen: (width, height) => readScreen(path.join(folder, 'Xvfb_screen0'), width, height),
    async stop() {
      server.kill();
      if (server.exitCode === null && server.signalCode === null) await once(server, 'exit');
    },
  };
}

// Runs the window to its end; for pictures and for what it refuses.
export const runWindow = (display, args) =>
  spawnSync(program, args, { env: display.env, encoding: 'utf8', timeout: 2 * longestWaitMs, maxBuffer: 1 << 26 });

// Processor time that a process has used, in ticks of 10 ms (proc(5): fields 14 and 15).
function ticks(pid) {
  const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  return Number(fields[11]) + Number(fields[12]);
}

// An open window, with hands on it.
export async function openWindow(display, args) {
  const child = spawn(program, args, { env: display.env });
  let out = '';
  let errors = '';
  child.stdout.setEncoding('utf8').on('data', (text) => { out += text; });
  child.stderr.setEncoding('utf8').on('data', (text) => { errors += text; });
  const xdo = (...words) => execFileSync('xdotool', words.map(String), { env: display.env, encoding: 'utf8' });
  const id = await until('the window', () => {
    assert.equal(child.exitCode, null, `the window ended: ${errors}`);
    const found = spawnSync('xdotool', ['search', '--pid', String(child.pid)], { env: display.env, encoding: 'utf8' });
    return found.stdout.trim().split('\n').at(-1);
  });
  const self = {
    // Lines that it printed since the last call, once there is one.
    async lines() {
      const end = await until('a line on stdout', () => (out.endsWith('\n') ? out.length : 0));
      const found = out.slice(0, end).trim().split('\n');
      out = out.slice(end);
      return found;
    },
    ticks: () => ticks(child.pid),
    // Until it has drawn what it wanted: its processor time stands still.
    async rest() {
      let last = -1;
      await until('the window to rest', async () => {
        const now = self.ticks();
        const still = now === last;
        last = now;
        if (!still) await pause(150);
        return still;
      });
    },
    async key(...names) {
      xdo('key', '--window', id, '--delay', 60, ...names);
      await self.rest();
    },
    // A key that ends it: the window may be gone before the key is up.
    lastKey(name) {
      spawnSync('xdotool', ['keydown', '--window', id, name], { env: display.env });
      spawnSync('xdotool', ['keyup', name], { env: display.env });
    },
    move: (x, y) => xdo('mousemove', '--window', id, Math.round(x), Math.round(y)),
    async click(x, y) {
      self.move(x, y);
      await self.rest();
      xdo('mousedown', 1);
      await self.rest();
      xdo('mouseup', 1);
      await self.rest();
    },
    async drag([x, y], [toX, toY], steps = 6) {
      self.move(x, y);
      await self.rest();
      xdo('mousedown', 1);
      for (let i = 1; i <= steps; ++i) {
        self.move(x + ((toX - x) * i) / steps, y + ((toY - y) * i) / steps);
        await pause(60);
      }
      await pause(200);
      xdo('mouseup', 1);
      await self.rest();
    },
    async wheel(x, y, notches) {
      self.move(x, y);
      for (let i = 0; i < Math.abs(notches); ++i) xdo('click', notches < 0 ? 4 : 5);
      await self.rest();
    },
    async resize(width, height) {
      xdo('windowsize', '--sync', id, width, height);
      await self.rest();
    },
    // How it ended, once it has.
    async ended() {
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
      return { code: child.exitCode, errors };
    },
    stop() { child.kill(); },
  };
  // Without a window manager nothing has the keyboard by itself.
  await self.rest();
  xdo('windowfocus', '--sync', id);
  await self.rest();
  return self;
}
