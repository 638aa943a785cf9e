// The address's fragment is the record: always the present station, and whatever a person puts
// there is opened. Also the page's own steps in the browser's history (an open sheet is one).

// Safari refuses more than about a hundred changes in half a minute.
const leastGapMs = 300;

// An address may ask who opens it to add themselves: then this stands before the link.
const asks = 'me.';
export const invitation = (link) => asks + link;
// From an address, or a link that someone pasted: the link alone.
export const linkIn = (text) => {
  const link = text.slice(text.indexOf('#') + 1).trim();
  return link.startsWith(asks) ? link.slice(asks.length) : link;
};
export const isInvitation = (text) => text.slice(text.indexOf('#') + 1).trim().startsWith(asks);

export const fragment = () => linkIn(location.hash);

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
  let leaving = null;  // what to do once the entry of the closed sheet is left

  const write = () => {
    clearTimeout(timer);
    timer = 0;
    if (kept) return;
    const link = engine.link();
    written = performance.now();
    if (fragment() !== link) history.replaceState(entry(sheet()), '', `#${link}`);
  };
  const flush = () => {
    if (timer) write();
  };

  // Takes the sheet's own entry away, so that Back never meets a closed sheet again.
  const leave = (then) => {
    leaving = then;
    history.back();
  };

  const follow = () => {
    if (leaving) {
      leaving();
      leaving = null;
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

  // Loaded again with a sheet open: the entry is the sheet's, and Back closes it.
  const reopened = history.state?.hearthsight ? history.state.sheet : null;
  history.replaceState(entry(reopened), '');
  return {
    reopened,
    write,
    keep() { kept = engine.link(); },
    // Runs `open`, which says whether it shows another station now: that one gets a step of its own,
    // in the place of an open sheet's, so that Back leads to the station before.
    step(open) {
      flush();
      const before = `#${engine.link()}`;
      timer = -1;  // nothing is written meanwhile
      const opened = open();
      timer = 0;
      const go = () => {
        history.replaceState(entry(null), '', before);
        history.pushState(entry(null), '', `#${engine.link()}`);
      };
      if (opened && sheet()) leave(go); else if (opened) go();
      return opened;
    },
    // Something changed: at once when the last change is long ago, else at the end of the gap.
    changed() {
      if (kept === engine.link()) return;  // more is known of the same station
      kept = '';
      if (timer) return;
      const wait = written + leastGapMs - performance.now();
      if (wait <= 0) write(); else timer = setTimeout(write, wait);
    },
    // Milliseconds until it is written; 0 where nothing waits.
    due: () => (timer ? Math.max(1, written + leastGapMs - performance.now()) : 0),
    pushSheet(name) { history.pushState(entry(name), ''); },
    // The entry below the sheet's carries an older link.
    leaveSheet() { leave(write); },
    // The entry of the present sheet becomes another sheet's, so that Back leaves both.
    swapSheet(name) { history.replaceState(entry(name), ''); },
  };
}
