// The page without a network: a worker (web/service-worker.js) keeps one whole version of it. It is
// registered once everything is on the screen, and a newer version waits until a person takes it.

import { el, setText } from './dom.js';

const hour = 3600e3;

// `host`: tell(text, options), leave() before the page is loaded again.
export async function workOffline(place, host) {
  const note = el('p', { class: 'soft', role: 'status' });
  place.append(note);
  document.head.append(el('link', { rel: 'apple-touch-icon', href: 'icons/512.png' }));
  const { serviceWorker } = navigator;
  if (!serviceWorker) {
    setText(note, 'Without a network this page opens only where it comes over https.');
    return;
  }
  const ready = () => setText(note, 'This page now opens without a network too, on this device.');
  let asked = false;
  const again = () => {
    host.leave();
    location.reload();
  };
  const offer = (take) => host.tell('A newer version of this page is here. Your station stays as it is.', { label: 'Use it now', action: take, waits: true });

  try {
    // The page's policy asks for a policy of its own for each place that a script comes from.
    const scripts = globalThis.trustedTypes?.createPolicy('worker', { createScriptURL: (text) => text });
    const name = 'service-worker.js';
    const registration = await serviceWorker.register(scripts ? scripts.createScriptURL(name) : name);
    if (!registration) return;

    const waiting = (worker) => offer(() => {
      asked = true;
      worker.postMessage('take over');
    });
    const follow = (worker) => {
      if (!worker) return;
      const look = () => {
        if (worker.state === 'activated') ready();
        // The first one ever has nothing to wait for.
        if (worker.state === 'installed' && registration.active) waiting(worker);
      };
      worker.addEventListener('statechange', look);
      look();
    };
    if (registration.active) ready();
    follow(registration.waiting || registration.installing);
    registration.addEventListener('updatefound', () => follow(registration.installing));
    // Another tab may have taken the newer version: this one goes on with its own until it is asked.
    let mine = serviceWorker.controller;
    serviceWorker.addEventListener('controllerchange', () => {
      if (asked) again(); else if (mine) offer(again);
      mine = serviceWorker.controller;
    });
    let looked = Date.now();
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState !== 'visible' || Date.now() - looked < hour) return;
      looked = Date.now();
      registration.update().catch(() => {});  // no network: the next time
    });
  } catch {
    setText(note, 'This browser does not keep the page for use without a network.');
  }
}
