// Starts the page: the engine and the station first, then the picture, then the document.

import { fragment, isInvitation, makeAddress, refusal } from './address.js';
import { followContext, followSize, makeFrames, startCanvas } from './canvas.js';
import { makeEngine } from './engine.js';
import { guardKeys, guardPointers, listenToPointers } from './input.js';
import { isWide, makeSheets } from './sheets.js';
import { keptLinks, preferredTheme, preferredUnits, remember } from './store.js';

const find = (id) => document.getElementById(id);
const canvas = find('canvas');
const root = document.documentElement;

// A screen reader is told the result once the hand has come to rest.
const restMs = 500;
// While something is dragged, open text follows a few times a second.
const dragMs = 250;
// What lies under a closed sheet follows when the hand rests, and before the reader is told.
const unseenMs = 400;
const longMs = 150;

let engine = null;
let address = null;
let opened = '';       // the link of the station that the page opened with
let byLink = false;    // that was the address's
let invited = false;   // which asks who opens it to add themselves
let drawing = false;   // there is a canvas
let pages = null;      // the document, once loaded
let frames = null;
let units = preferredUnits();
let ready = false;

// The report as the command line gives it, once the later part is here. The packet in it takes a
// while, so it is worked out when it is read, once for each state of the station.
let known = null;
function reported() {
  if (!pages) return engine.report();
  const revision = engine.revision();
  if (known?.revision !== revision) known = { revision, report: engine.wholeReport() };
  return known.report;
}

globalThis.hearthsight = {
  snapshot() {
    if (!engine) return { frame: 0, config: null, report: null, focus: '', items: [], lastError: '' };
    const box = canvas.getBoundingClientRect();
    const items = drawing
      ? engine.items().map((item) => ({ ...item, rect: [item.rect[0] + box.x, item.rect[1] + box.y, item.rect[2], item.rect[3]] }))
      : pages?.items() ?? [];
    return {
      frame: engine.frameCount(), config: engine.config(), get report() { return reported(); },
      focus: engine.focus(), items, lastError: engine.lastError(),
    };
  },
};

function notice(text) {
  find('notice').hidden = text === '';
  find('notice-text').textContent = text;
}
find('notice-close').addEventListener('click', () => {
  notice('');
  canvas.focus({ preventScroll: true });
});

let liveTimer = 0;
function say(text) {
  clearTimeout(liveTimer);
  find('live').textContent = text;
}

// The document is drawn at once when it can be seen, else when the hand rests.
let updateTimer = 0;
function update() {
  clearTimeout(updateTimer);
  updateTimer = 0;
  // It takes a slow phone some tenths of a second, and the address keeps its time: first that.
  const due = address?.due();
  if (due && due < longMs) {
    updateTimer = setTimeout(update, due);
    return;
  }
  pages?.update();
}
function afterChange(dragging) {
  clearTimeout(liveTimer);
  liveTimer = setTimeout(() => {
    const live = pages?.live() ?? '';
    if (live && find('live').textContent !== live) find('live').textContent = live;
  }, restMs);
  frames?.wake();
  // What nobody sees costs the finger nothing.
  const unseen = dragging && drawing && !isWide() && sheets.current() === null;
  if (updateTimer && dragging && !unseen) return;
  clearTimeout(updateTimer);
  updateTimer = setTimeout(update, unseen ? unseenMs : dragging ? dragMs : 0);
}

function setTheme(theme) {
  root.dataset.theme = theme;
  find('theme').setAttribute('aria-pressed', String(theme === 'dusk'));
  document.querySelector('meta[name="theme-color"]').content = getComputedStyle(root).getPropertyValue('--paper').trim();
  engine.setTheme(theme);
  frames?.wake();
}

function unitsAre(name) {
  if (name === units) return;
  units = name;
  remember('units', name);
}

function setUnits(name) {
  unitsAre(name);
  engine.setUnits(name);
  afterChange(false);
}

// The station that the page opens with: the address's, else the last one of this device, else the
// example. Returns true when the address's own link was refused.
function openStation() {
  const given = fragment();
  const problems = given ? engine.start(given, units) : [];
  if (given && problems.length === 0) return false;
  const usesLast = keptLinks().some((link) => engine.start(link, units).length === 0);
  if (!usesLast) engine.start(null, units);
  if (given) {
    notice(`${refusal(problems)} ${usesLast
      ? 'Shown instead: the last station on this device.' : 'Shown instead: an example household.'} The address keeps the link until you change something.`);
  }
  return Boolean(given);
}

// Everything usable is on the screen and answers.
function markReady() {
  if (ready) return;
  ready = true;
  find('shell').remove();
  performance.mark('hearthsight:ready');
}

// The document and the part of the program behind it come after the picture.
async function bringDocument() {
  const [{ makeDocument }] = await Promise.all([import('./document.js'), engine.bringDesk()]);
  pages = makeDocument(engine, {
    units: () => units, unitsAre, setUnits, say, afterChange: () => afterChange(false),
    openSheet: (name) => sheets.open(name), notice,
    // Another station from within the page: the picture shows it.
    step(open) {
      if (address.step(open)) sheets.show(null);
    },
    opened, byLink, invited,
  });
  update();
  sheets.arrived();
}

// Asked for by the first picture and again where the picture is given up: its forms are made once.
let bringing = null;
function loadDocument() {
  bringing = bringing ? bringing.then(update) : bringDocument();
  return bringing;
}

const sheets = makeSheets({ shown: () => update() });

function withoutCanvas() {
  drawing = false;
  frames.stop();
  root.classList.add('no-canvas');
  sheets.remark();
}

async function start() {
  await globalThis.Module.ready;
  engine = makeEngine(globalThis.Module);
  let told = -1;
  globalThis.hsHost = {
    // Also when only the view changed, units for one: then the station is the same.
    changed(revision, dragging) {
      if (revision !== told) address?.changed();
      told = revision;
      afterChange(Boolean(dragging));
    },
    wake() { frames?.wake(); },
    openSheet(name) {
      const [sheet, part] = name.split(':');
      if (part && pages) pages.openPart(part); else sheets.open(sheet);
    },
    cursor(name) { canvas.style.cursor = name; },
  };

  const refused = openStation();
  opened = engine.link();
  byLink = fragment() === opened;
  invited = byLink && isInvitation(location.hash);
  address = makeAddress(engine, {
    open(text) {
      const problems = pages ? pages.openLink(text, isInvitation(location.hash)) : engine.openLink(text);
      if (problems.length > 0) address.keep();
      (pages?.tell ?? notice)(problems.length > 0 ? `${refusal(problems)} Your station is as it was.` : '');
    },
    show: sheets.show,
    sheet: sheets.current,
  });
  sheets.use(address);
  if (!isWide()) sheets.show(address.reopened);
  if (refused) address.keep(); else if (!fragment()) address.write();

  setTheme(preferredTheme());
  find('theme').addEventListener('click', () => {
    const theme = root.dataset.theme === 'dusk' ? 'sun' : 'dusk';
    remember('theme', theme);
    setTheme(theme);
  });

  frames = makeFrames(engine, () => {
    // The first frame is measured and hidden; the second one shows everything.
    if (!ready && engine.frameCount() >= 2) {
      markReady();
      loadDocument();
    }
  });
  const active = () => drawing;
  guardPointers(engine, canvas, frames, active);
  guardKeys(engine, canvas, frames, active, {
    escape() {
      if (sheets.close()) return true;
      if (document.activeElement !== canvas) return false;
      find('bar').querySelector('button').focus();
      return true;
    },
    undo() { if (engine.undo()) pages?.replaced(); },
    redo() { if (engine.redo()) pages?.replaced(); },
  });

  drawing = startCanvas(engine, canvas);
  if (!drawing) {
    withoutCanvas();
    await loadDocument();
    markReady();
    return;
  }
  const still = matchMedia('(prefers-reduced-motion: reduce)');
  const heedMotion = () => { engine.setStill(still.matches); frames.wake(); };
  still.addEventListener('change', heedMotion);
  heedMotion();
  listenToPointers(engine, canvas, frames);
  followSize(engine, canvas, frames);
  followContext(engine, canvas, frames, async () => {
    withoutCanvas();
    await loadDocument();
    markReady();
  });
  frames.wake();
}

start().catch((error) => {
  find('shell-state')?.replaceChildren('The page could not start. Load it again; if that does not help, this browser may be too old for it.');
  throw error;
});

// The keyboard of a phone covers what it does not resize: sheets end above it.
globalThis.visualViewport?.addEventListener('resize', () => {
  const { height } = globalThis.visualViewport;
  const covered = innerHeight - height > 120 && !isWide();
  document.getElementById('document').style.maxHeight = covered ? `${Math.round(height)}px` : '';
});
