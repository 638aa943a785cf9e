// Keeps one whole version of the page on the device. The build writes the list of its files, each
// with its hash, in the place below; the version is the hash of that list. A version is used when
// every file of it is here and is what the list says, so script and program are never of two builds.
'use strict';

const version = /* the build's version */ '';
const files = /* the build's list: [name, sha256 in base64] */ [];

// Two pages of one host do not touch each other's files.
const prefix = `hearthsight ${registration.scope} `;
const mine = prefix + version;

const place = (name) => new URL(name, registration.scope).href;

// Asked for as a person does: some hosts send index.html elsewhere. What is in a folder named after
// its content may come from the browser's own cache.
const request = ([name, hash]) => new Request(place(name === 'index.html' ? './' : name), {
  integrity: `sha256-${hash}`,
  cache: name.startsWith('v-') ? 'default' : 'no-cache',
  credentials: 'same-origin',
});

async function fill() {
  const cache = await caches.open(mine);
  try {
    await Promise.all(files.map(async (file) => {
      const answer = await fetch(request(file));
      if (!answer.ok || answer.redirected) throw new Error(`${file[0]}: ${answer.status}`);
      await cache.put(place(file[0]), answer);
    }));
  } catch (error) {
    // Nothing half filled stays.
    await caches.delete(mine);
    throw error;
  }
}

// The two versions before stay for tabs that still run them; older ones go.
async function clear() {
  const ours = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== mine);
  await Promise.all(ours.slice(0, -2).map((name) => caches.delete(name)));
}

async function answer(request) {
  const url = new URL(request.url);
  const asked = url.origin + url.pathname;
  const cache = await caches.open(mine);
  return await cache.match(asked === registration.scope ? place('index.html') : asked)
    // A file of a version before, for a tab that runs it.
    || await caches.match(asked) || fetch(request);
}

addEventListener('install', (event) => event.waitUntil(fill()));
// The page that a first visit came with is this worker's too: else a newer one would not wait for it.
addEventListener('activate', (event) => event.waitUntil(clear().then(() => clients.claim())));
addEventListener('message', ({ data }) => {
  if (data === 'take over') skipWaiting();
});
addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && event.request.url.startsWith(registration.scope)) event.respondWith(answer(event.request));
});
