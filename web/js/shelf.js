// The stations that this device keeps, as text in the browser's storage. Each station has two places
// of its own and is written to the older one in turn, so that a write that is cut off leaves the one
// before it. There is no list of them that two tabs could write at once: the list is what is there.
//
// A place holds, with a space between: when (13 digits, so that text sorts by time), which change of
// this station it is, which tab wrote it, a check sum of all the rest, the title and who cooks (as in
// an address, after '='), and the link. store.js reads the first and the last of them.

const prefix = 'hearthsight:station:';
// Its absence says that someone has cleared the storage.
const marker = 'hearthsight:kept';
const places = ['a', 'b'];
// Stations without a title go when there are more, the longest untouched first.
const mostUntitled = 20;

// FNV-1a, 32 bits.
function sum(text) {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; ++i) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}

const words = (text) => `=${encodeURIComponent(text)}`;
function plain(text) {
  try {
    return decodeURIComponent(text.slice(1));
  } catch {
    return '';
  }
}

function written({ time, change, tab, title, people, link }) {
  const rest = [words(title), words(people), link].join(' ');
  const head = [time, change, tab].join(' ');
  return `${head} ${sum(`${head} ${rest}`)} ${rest}`;
}

function read(text) {
  const [time, change, tab, check, title, people, link] = (text || '').split(' ');
  if (!link || check !== sum([time, change, tab, title, people, link].join(' '))) return null;
  return { time: Number(time), change: Number(change), tab, title: plain(title), people: plain(people), link };
}

// Every call may throw where the browser allows no storage or has no room.
export const shelf = {
  // The newer of the two places that can be read, or null.
  find(id) {
    const [a, b] = places.map((place) => read(localStorage.getItem(`${prefix}${id}:${place}`)));
    const newer = !b || (a && a.change > b.change) ? a : b;
    return newer && { ...newer, id, place: newer === a ? 'a' : 'b' };
  },

  // All of them, the last changed first.
  all() {
    const ids = Object.keys(localStorage).filter((key) => key.startsWith(prefix))
      .map((key) => key.slice(prefix.length, -2));
    return [...new Set(ids)].map(shelf.find).filter(Boolean).sort((a, b) => b.time - a.time);
  },

  // `record`: id, change, tab, title, people, link. What it replaces stays in the other place.
  put(record) {
    const before = shelf.find(record.id);
    const place = before?.place === 'a' ? 'b' : 'a';
    const text = written({ time: Date.now(), ...record });
    for (;;) {
      try {
        localStorage.setItem(marker, '1');
        localStorage.setItem(`${prefix}${record.id}:${place}`, text);
        break;
      } catch (error) {
        if (!shelf.drop(1, record.id)) throw error;
      }
    }
    const untitled = shelf.all().filter(({ title }) => !title).length;
    if (untitled > mostUntitled) shelf.drop(untitled - mostUntitled, record.id);
  },

  // Takes away that many of those without a title, the longest untouched first; false: there is none.
  drop(count, but) {
    const old = shelf.all().filter(({ id, title }) => !title && id !== but).slice(-count);
    for (const { id } of old) shelf.remove(id);
    return old.length > 0;
  },

  remove(id) {
    for (const place of places) localStorage.removeItem(`${prefix}${id}:${place}`);
  },

  cleared: () => localStorage.getItem(marker) === null,

  // The station that a change of the storage in another tab is about, or null; '' for all of them.
  changedBy: ({ key }) => (key === null ? '' : key.startsWith(prefix) ? key.slice(prefix.length, -2) : null),

  newId: () => [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => byte.toString(36).padStart(2, '0')).join(''),
};
