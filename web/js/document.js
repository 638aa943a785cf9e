// The document side of the page as a whole: everything that is read, typed or listed. Loaded after
// the picture, and all there is where a browser has no WebGL.

import { makeBuilt } from './built.js';
import { makeCompare } from './compare.js';
import { makeDesk } from './desk.js';
import { el, ownFile, setHidden } from './dom.js';
import { makeDrawings } from './drawings.js';
import { answeredBy, makeFamily } from './family.js';
import { makeForms } from './forms.js';
import { makeKeep } from './keep.js';
import { workOffline } from './offline.js';
import { listenToPaper, listenToStrips } from './paper.js';
import { openGround, openReason, showResults } from './results.js';
import { makeShare } from './share.js';
import { makeStart } from './start.js';
import { makeStations, nameOf } from './stations.js';
import { makeStock } from './stock.js';
import { makeSurvey } from './survey.js';
import { recall } from './store.js';
import { makeTell } from './tell.js';
import { makeTilt } from './tilt.js';

const find = (id) => document.getElementById(id);

// What the report uses in the place of a height that nobody has given.
function usedInstead(report, path) {
  const cook = /^cooks\.(\d+)\.(eye_height_mm|elbow_height_mm|shoulder_height_mm)$/.exec(path);
  if (cook) return report.cooks[Number(cook[1])]?.[cook[2]];
  const key = {
    'station.counter_height_mm': 'counter_height_mm',
    'station.existing_counter_mm': 'counter_height_mm',
    'station.oven_base_height_mm': 'oven_base_height_mm',
    'trial.at.oven_base_height_mm': 'oven_base_height_mm',
    'trial.at.standoff_mm': 'standoff_mm',
  }[path];
  return report.used?.[key];
}

// Looks that are not needed before the document is there.
function addStyle() {
  document.head.append(el('link', { rel: 'stylesheet', href: ownFile('document.css') }));
}

// `host`: units(), unitsAre(name) (told), setUnits(name) (chosen here), openSheet(name), afterChange(),
// say(text), notice(text), step(open) as address.js has it; `opened`, the link that the
// page opened with; `byLink`, whether that was the address's; `invited`, whether that asked who opens
// it to add themselves.
export function makeDocument(program, host) {
  const engine = makeDesk(program);
  let table = null;
  let report = null;
  let byPath = new Map();
  let person = 0;
  let forgetNext = false;
  addStyle();
  // The first screen's own heading went with it.
  find('document').prepend(el('h1', { class: 'quiet', text: document.title }));

  const read = () => {
    table = engine.fields();
    report = engine.report();
    byPath = new Map(table.fields.map((field) => [field.path, field]));
  };

  const cooks = () => byPath.get('cooks[].name').values;

  // Every change ends here; the engine tells the host, and the host asks for an update.
  const after = (problems) => {
    read();
    return problems;
  };
  const replace = (problems) => {
    if (problems.length === 0) forgetNext = true;
    return after(problems);
  };

  const actions = {
    units: host.units,
    set: (path, text) => after(path === 'oven.kind' ? engine.loadOven(text) : engine.setField(path, text)),
    clear: (path) => after(engine.clearField(path)),
    setBuilt: (name, size) => after(engine.setBuilt(name, size)),
    start: (path) => usedInstead(report, path),
    value(field, index) {
      const row = byPath.get(field.path) || field;
      return {
        text: row.values[index] ?? null,
        unit: row.unit,
        scale: row.scale,
        offset: row.offset,
        usual: row.usual[index] ?? null,
        placeholder: field.path === 'station.counter_height_mm' || field.path === 'station.oven_base_height_mm'
          ? 'recommended' : 'not known',
      };
    },
    removeCook(index) {
      const name = cooks()[index];
      if (replace(engine.removeCook(index)).length > 0) return;
      host.say(`${name} removed. Undo brings them back.`);
      // The place on the page is kept: the one who stands there now, or the last one.
      update();
      forms.focusCook(Math.min(index, cooks().length - 1));
    },
    looking(index) {
      person = index;
      engine.setPerson(index);
      host.afterChange();
    },
  };
  const forms = makeForms(actions);

  const tell = makeTell(host.notice);
  let stations = null;
  let compare = null;
  const listChanged = () => {
    stations?.update();
    compare?.update();
  };
  const example = engine.example();
  const keep = makeKeep(engine, example, host.opened, {
    tell, listChanged, invited: host.invited,
    toOther: ({ id }) => ({
      label: 'Show the other',
      action() {
        const record = keep.list().find((one) => one.id === id);
        if (record) openKept(record);
      },
    }),
    changedElsewhere(id) {
      tell('This station was changed in another tab too; here it is as it was before.', {
        label: 'Show the change', waits: true,
        action() {
          const newest = keep.newest(id);
          if (newest) host.step(() => keep.opening(() => replace(engine.openLink(newest.link)), id).opened);
        },
      });
    },
    passing: (link, records) => answeredBy(engine, link, records).length > 0,
  });
  const backTo = (record) => ({ label: 'Back to it', action: () => openKept(record) });

  const isKept = 'The station you had before is kept.';

  // Shows another station, as a step that Back takes back; the problems, if any.
  function openOther(open, id, invited = false) {
    let result = null;
    host.step(() => {
      result = keep.opening(() => replace(open()), id, invited);
      return result.opened;
    });
    const { opened, isNew, back, problems } = result;
    if (opened && !(isNew && family.greet(engine.link(), invited, back ? isKept : ''))) tell(back ? isKept : '', back ? backTo(back) : {});
    return problems;
  }
  const openKept = ({ id, link }) => openOther(() => engine.openLink(link), id);

  const share = makeShare(engine, {
    openLink: (text, invited) => openOther(() => engine.openLink(text), undefined, invited),
    openSheet: () => host.openSheet('share'),
    openJson: (text) => openOther(() => engine.openJson(text)),
    setUnits: host.setUnits,
    units: host.units,
  });
  share.heedDrops(tell);
  const paper = listenToPaper(engine, host.units, (rule) => openRule(rule));
  listenToStrips(engine, host.units);
  const survey = makeSurvey(engine, actions, {
    after, place: find('ground'),
    openResult(name) {
      host.openSheet('why');
      openGround(name);
    },
  });
  const built = makeBuilt(actions, { place: find('strips') });
  const stock = makeStock(engine, actions, { after, place: find('ground') });

  const shelfPlace = el('section', { id: 'kept' });
  find('share-fields').after(shelfPlace);
  stations = makeStations(shelfPlace, keep, {
    open: openKept,
    startNew: () => openOther(() => engine.openLink(example.link)),
    title: (text) => after(text === '' ? engine.clearField('title') : engine.setField('title', text)),
  });
  const family = makeFamily(engine, {
    tell,
    change: (body) => {
      const problems = after(body());
      update();
      return problems;
    },
    names: cooks,
    look(index) {
      actions.looking(index);
      update();
    },
    reveal: (path) => forms.reveal(path),
    measureEye(index) {
      host.openSheet('oven');
      tilt.measureEye(index);
    },
    openPeople: () => host.openSheet('people'),
    kept: keep.list,
    send(how) {
      keep.hold();
      return share.hand(how);
    },
    openMerged(record, link) {
      openKept(record);
      replace(engine.openLink(link));
      keep.tookOver();
    },
  });
  const before = host.byLink && keep.before();
  const greeted = host.byLink && !keep.wasKept
    && family.greet(host.opened, host.invited, before ? `Yours is kept: ${nameOf(before)}.` : '');
  if (before && !greeted) tell(`This link is a station of its own here. Yours is kept: ${nameOf(before)}.`, { ...backTo(before), label: 'Show it' });
  compare = makeCompare(shelfPlace, engine, { list: keep.list, units: host.units });
  workOffline(shelfPlace, { tell, leave: keep.flush });

  const start = makeStart(engine, {
    open: (body) => openOther(body), openSheet: host.openSheet, setUnits: host.setUnits,
    unitsChosen: () => recall('units') !== null,
  });
  const tilt = makeTilt(engine, { names: cooks, put: actions.set, reveal: (path) => openField(path) });
  const drawings = makeDrawings(engine);

  const openRule = (rule) => {
    host.openSheet('why');
    openReason(rule);
  };
  const openReadings = () => {
    host.openSheet('oven');
    survey.reveal();
  };
  const openCook = (index) => {
    host.openSheet('people');
    forms.showCook(index);
  };
  const openField = (path) => {
    const panel = forms.panelOf(path);
    if (!panel) return;
    host.openSheet(panel);
    forms.reveal(path);
  };

  find('add-cook').addEventListener('click', () => {
    const problems = after(engine.addCook());
    if (problems.length > 0) {
      host.say(problems.map(({ message }) => message).join(' '));
      return;
    }
    update();
    forms.reveal(`cooks.${cooks().length - 1}.name`);
  });
  find('accept-trial').addEventListener('click', () => {
    const problems = after(engine.acceptTrial());
    host.say(problems.length === 0 ? 'The correction is in use.' : problems.map(({ message }) => message).join(' '));
    find('trial').querySelector('input').focus();
  });
  const step = (which) => {
    if (which === 'undo' ? engine.undo() : engine.redo()) forgetNext = true;
  };
  find('undo').addEventListener('click', () => step('undo'));
  find('redo').addEventListener('click', () => step('redo'));

  function update() {
    read();
    const page = engine.page();
    host.unitsAre(page.units);
    person = Math.min(engine.person(), cooks().length - 1);
    showResults(page, { openRule, openField, openReadings });
    drawings.update(page);
    family.update(page);
    start.update(byPath.get('title').values[0] === example.title, byPath.get('oven.kind'), page.units);
    tilt.update();
    keep.changed();
    forms.update(table, person, forgetNext);
    survey.update(byPath, report, page);
    stock.update(byPath, forgetNext);
    built.update(byPath, report, page, forgetNext);
    setHidden(find('strips'), !report.survey?.base);
    forgetNext = false;
    share.update();
    paper.update(report, page);
    compare.update();
    find('undo').disabled = !engine.canUndo();
    find('redo').disabled = !engine.canRedo();
    setHidden(find('accept-trial'), !report.trial || report.trial.agrees || report.trial.corrected_mm === null);
    setHidden(find('waiting'), true);
    setHidden(find('panels'), false);
  }

  return {
    update,
    live: () => engine.page().live,
    // What the canvas asks for: a rule's reason, or a cook by number.
    openPart: (part) => (/^\d+$/.test(part) ? openCook(Number(part)) : openRule(part)),
    tell,
    // From the address: the step in the history is there already.
    // Gives the problems; what the link asks is said a moment later, over what the host says.
    openLink(text, invited) {
      const { problems, isNew } = keep.opening(() => replace(engine.openLink(text)), undefined, invited);
      if (isNew) setTimeout(() => family.greet(engine.link(), invited, ''));
      return problems;
    },
    replaced() { forgetNext = true; },
    // For tests where there is no canvas: the controls as they stand on the screen.
    items: () => forms.controls.filter(({ root }) => root.offsetParent !== null).map((control) => {
      const box = control.input.getBoundingClientRect();
      return {
        id: `field:${control.path}`, label: control.field.label,
        rect: [box.x, box.y, box.width, box.height],
        value: control.input.type === 'checkbox' ? control.input.checked : control.input.value,
      };
    }),
  };
}
