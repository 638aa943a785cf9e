// Keeps the station on the screen: each change a moment after it, and all of it when the page is
// left. Each tab keeps a station of its own; where two tabs have the same one, the second to change
// it goes on with a copy. Opening another station never touches the one before.

import { shelf } from './shelf.js';

const restMs = 400;
const ownStation = 'hearthsight:station';  // of this tab, so that loading the page again finds it

const told = {
  forbidden: 'This browser keeps nothing for this page: copy the link, which holds the whole station, before you leave.',
  full: 'There is no room left on this device: the link still holds the station, so copy it, or delete a kept station under Share.',
  cleared: 'What this page had kept on this device was cleared: this station is kept again, any other is only in the links you have.',
  twice: 'This station was changed in another tab too: both are kept, and what you see here goes on as a copy.',
};

// "Ana, Ben": how a station without a title is told from another.
const namesOf = (config) => (config.cooks || []).map(({ name }) => name).filter(Boolean).join(', ');

// `example`: { link, title }; `opened`: the link that the page opened with. `host`: tell(text),
// listChanged(), toOther(record), the label and action that lead to what another tab made of it,
// changedElsewhere(id), invited, whether the page opened with an invitation, and passing(link, records):
// whether this link, new here, is only to be looked at before something in it changes.
export function makeKeep(engine, example, opened, host) {
  const tab = shelf.newId();
  let here = null;   // id, change and tab as last seen on the shelf (change 0: not there), link as last seen on the screen
  let left = null;   // the station that the last opening left
  let timer = 0;
  let trouble = '';

  const tellOnce = (kind) => {
    if (trouble !== kind) host.tell(told[kind], { waits: true });
    trouble = kind;
  };

  // What is read where the storage may be switched off.
  const safely = (body, otherwise) => {
    try {
      return body();
    } catch {
      return otherwise;
    }
  };
  // What is written where there may also be no room; only then is it told.
  const put = (body) => {
    try {
      body();
      trouble = '';
    } catch (error) {
      tellOnce(/quota/i.test(error.name) ? 'full' : 'forbidden');
    }
    host.listChanged();
  };

  const fresh = (link) => ({ id: shelf.newId(), change: 0, tab, link });

  // What is on the shelf under this tab's id was written by another tab.
  const isForeign = (found) => found && (found.change !== here.change || found.tab !== here.tab);

  // Another tab has changed this tab's station. What was changed here as well becomes a copy at once;
  // where nothing was, the person is told, and goes on with the other form or with a copy of this one.
  let heard = '';
  function heedOthers() {
    const found = safely(() => shelf.find(here.id), null);
    const link = engine.link();
    if (!isForeign(found) || found.link === link) return;
    if (timer || link !== here.link) {
      write();
    } else if (heard !== here.id) {
      heard = here.id;
      host.changedElsewhere(here.id);
    }
  }

  const claim = () => safely(() => sessionStorage.setItem(ownStation, here.id));

  function write() {
    clearTimeout(timer);
    timer = 0;
    put(() => {
      const link = engine.link();
      let found = shelf.find(here.id);
      if (isForeign(found)) {
        host.tell(told.twice, host.toOther(found));
        here = fresh(link);
        found = null;
      } else if (!found && here.change > 0 && shelf.cleared()) {
        host.tell(told.cleared, { waits: true });
      }
      here.link = link;
      if (found?.link === link) return;
      const config = engine.config();
      // The example's own title is nobody's name for a station.
      const title = config.title === example.title ? '' : config.title || '';
      shelf.put({ id: here.id, change: here.change + 1, tab, title, people: namesOf(config), link });
      here.change += 1;
      here.tab = tab;
      claim();
    });
  }

  // Finds the station on the screen among the kept ones; a new one is kept from now on, but not the
  // example, which everyone has. True: it was there.
  function settle(link, wanted, invited) {
    const records = safely(() => shelf.all(), []);
    const same = records.filter((one) => one.link === link);
    const found = same.find(({ id }) => id === wanted) || same[0];
    heard = '';
    here = found ? { id: found.id, change: found.change, tab: found.tab, link } : fresh(link);
    if (found) claim(); else if (link !== example.link && (invited || !host.passing(link, records))) write();
    return Boolean(found);
  }

  const wasKept = settle(opened, safely(() => sessionStorage.getItem(ownStation), null), host.invited);

  // The station on the screen may be another one.
  function changed() {
    const link = engine.link();
    if (link === here.link) return;
    // Undo leads back over an opening, and redo forth again.
    if (left && link === left.link) {
      clearTimeout(timer);
      timer = 0;
      [here, left] = [left, here];
      claim();
      host.listChanged();
      return;
    }
    here.link = link;
    if (!timer) timer = setTimeout(write, restMs);
  }

  // The document hears of a change a moment after the finger; who leaves at once has not waited for it.
  const flush = () => {
    changed();
    if (timer) write();
  };
  addEventListener('pagehide', flush);
  document.addEventListener('visibilitychange', () => {
    // A phone tells a page in the background nothing of what other tabs do.
    if (document.visibilityState === 'hidden') flush(); else heedOthers();
  });
  addEventListener('storage', (event) => {
    const id = shelf.changedBy(event);
    if (id === null) return;
    if (id === here.id) heedOthers();
    host.listChanged();
  });

  return {
    flush,
    // The one that this device kept last, where the page has opened with another; or undefined.
    before: () => (wasKept ? undefined
      : safely(() => shelf.all().find(({ id }) => id !== here.id), undefined)),
    wasKept,
    isHere: (id) => id === here.id,
    // The station on the screen is kept from now on, also the example.
    hold() {
      if (here.change === 0) write();
    },
    list: () => safely(() => shelf.all(), []),
    // A station as it was last kept, by whichever tab.
    newest: (id) => safely(() => shelf.find(id), null),

    changed,

    // The station on the screen was made what the one left by the last opening is: from now on that
    // form is this one's.
    tookOver() {
      if (left?.link === engine.link()) left = null;
    },

    // Runs `open`, which shows another station and returns the problems that kept it from that.
    // `id`: which of the kept ones it is; `invited`: whether its link asks who opens it to add
    // themselves. `opened`: there is another one on the screen; `isNew`: which was not kept before.
    opening(open, id, invited) {
      flush();
      const before = { ...here, link: engine.link() };
      const problems = open();
      const opened = problems.length === 0 && engine.link() !== before.link;
      let isNew = false;
      if (opened) {
        left = before;
        isNew = !settle(engine.link(), id, invited) && engine.link() !== example.link;
        host.listChanged();
      }
      return { problems, opened, isNew, back: opened && before.change > 0 ? before : null };
    },

    // Gives a kept station another title; the problems, if any.
    retitle(record, title) {
      const link = engine.retitled(record.link, title);
      if (Array.isArray(link)) return link;
      put(() => shelf.put({ ...record, time: Date.now(), change: record.change + 1, tab, title, link }));
      return [];
    },
    remove(id) {
      put(() => shelf.remove(id));
    },
    // Brings back what `remove` took.
    restore(record) {
      put(() => shelf.put(record));
    },
  };
}
