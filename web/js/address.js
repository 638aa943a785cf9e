// The address's fragment is the record: always the present station, and whatever a person puts
// there is opened. Also the page's own steps in the browser's history (an open sheet is one).

import { remember } from './store.js';

// Safari refuses more than about a hundred changes in half a minute.
const leastGapMs = 300;

export const fragment = () => location.hash.replace(/^#/, '');

// What is wrong with a link, without the link itself, which says nothing to a person.
export function refusal(problems) {
  if (problems.some(({ path, given }) => path === 'link' && given.includes('newer version'))) {
    return 'This link was made by a newer version of the page: load the page again, then open the link.';
  }
  if (problems.some(({ path }) => path === 'link')) {
    return 'This link is damaged or was cut short: ask for it again, or copy all of it.';
  }
  return `This link cannot be opened. ${problems.map(({ message }) => message).join(' ')}.`;
}

// Every entry of ours carries this mark; one without it was typed or pasted.
const entry = (sheet) => ({ hearthsight: true, sheet: sheet || null });

// `open(text)` opens a pasted link; `show(sheet or null)` follows the Back button.
export function makeAddress(engine, { open, show, sheet }) {
  let written = performance.now() - leastGapMs;
  let timer = 0;
  // A link that could not be opened stays in the address until the person changes something: the
  // station's own link of then, or nothing.
  let kept = '';
  let leaving = false;

  const write = () => {
    clearTimeout(timer);
    timer = 0;
    if (kept) return;
    const link = engine.link();
    written = performance.now();
    if (fragment() !== link) history.replaceState(entry(sheet()), '', `#${link}`);
    remember('last-good-link', link);
  };
  const flush = () => {
    if (timer) write();
  };

  const follow = () => {
    if (leaving) {
      // The step back that closing a sheet asked for: the entry below carries an older link.
      leaving = false;
      write();
      return;
    }
    const text = fragment();
    if (!history.state?.hearthsight) {
      history.replaceState(entry(sheet()), '');
      kept = '';
      if (text && text !== engine.link()) open(text);
      return;
    }
    const wanted = history.state.sheet;
    if (wanted !== sheet()) {
      // Back out of a sheet: what was changed inside it stays.
      show(wanted);
      write();
    } else if (text && !kept && text !== engine.link()) {
      open(text);
    }
  };

  addEventListener('popstate', follow);
  addEventListener('hashchange', follow);
  addEventListener('pagehide', flush);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flush();
  });

  history.replaceState(entry(null), '');
  return {
    write,
    keep() { kept = engine.link(); },
    // Something changed: at once when the last change is long ago, else at the end of the gap.
    changed() {
      if (kept === engine.link()) return;  // more is known of the same station
      kept = '';
      if (timer) return;
      const wait = written + leastGapMs - performance.now();
      if (wait <= 0) write(); else timer = setTimeout(write, wait);
    },
    pushSheet(name) { history.pushState(entry(name), ''); },
    // Takes the sheet's own entry away, so that Back never meets a closed sheet again.
    leaveSheet() {
      leaving = true;
      history.back();
    },
    // The entry of the present sheet becomes another sheet's, so that Back leaves both.
    swapSheet(name) { history.replaceState(entry(name), ''); },
  };
}
