// Who cooks here, from phone to phone by links: someone who was sent a station adds themselves and
// sends it back, and the household decides what of the link that comes back it takes in. What there
// is to decide is the program's to say (engine/share/merge.h); nothing is taken in unasked.

import { el, setHidden, setText, setVerdict, syncList, verdictMark } from './dom.js';
import { fillTable, makeTable } from './results.js';
import { nameOf } from './stations.js';

const find = (id) => document.getElementById(id);
const words = (problems) => problems.map(({ path, message }) => message.replace(`${path}: `, '')).join(' ');

// Those of these kept stations that a link from elsewhere answers: the same station with someone new
// in it, or with other numbers for someone.
export const answeredBy = (engine, link, records) =>
  records.filter((record) => record.link !== link && engine.reply(record.link, link));

function entry(id, question, attributes = {}) {
  const error = el('p', { class: 'error', id: `${id}-error` });
  const input = el('input', { id, type: 'text', autocomplete: 'off', spellcheck: 'false', 'aria-describedby': error.id, ...attributes });
  const root = el('div', { class: 'field' }, el('label', { for: id, text: question }), el('div', { class: 'entry' }, input), error);
  return { root, input, error };
}

// Adding oneself. `host` as for makeFamily.
function makeJoin(engine, host) {
  const boxes = {
    name: entry('join-name', 'Your name', { autocapitalize: 'words' }),
    stature_mm: entry('join-height', 'How tall are you, barefoot? For example 5 ft 6 in, or 168 cm'),
    eye_height_mm: entry('join-eye', 'Eye height in your shoes, if measured'),
    elbow_height_mm: entry('join-elbow', 'Elbow height in your shoes, if measured'),
  };
  // Who was entered by height alone may be the one who answers now.
  const who = el('select', { id: 'join-who' });
  const whoField = el('div', { class: 'field' }, el('label', { for: who.id, text: 'Are you one of these already?' }), who);
  const refused = el('p', { class: 'error', role: 'alert' });
  const mark = verdictMark();
  const line = el('p', { id: 'joined-line' });
  const heights = el('ul', { class: 'bare' });
  const said = el('p', { role: 'status' });
  let joined = null;  // the name, once it is in

  const result = el('div', { class: 'card', tabindex: '-1', hidden: true }, mark, line, heights,
    el('div', { class: 'row' },
      el('button', { type: 'button', class: 'main', text: 'Send it back', click: async ({ currentTarget: button }) => setText(said, await host.send({ invite: false, button })) }),
      el('button', { type: 'button', class: 'plain', text: 'Change my numbers', click: () => host.reveal(`cooks.${place()}.stature_mm`) }),
      el('button', { type: 'button', class: 'plain', text: 'Measure me with a phone', click: () => host.measureEye(place()) })), said,
    el('p', { class: 'soft', text: 'What you typed is on this device only. The link that you send holds it; who opens it decides whether to take it in.' }));

  const form = el('form', { class: 'fields', novalidate: true, submit: add }, whoField, boxes.name.root, boxes.stature_mm.root,
    el('details', {}, el('summary', { text: 'Measured, or no idea how tall' }),
      el('p', { class: 'soft', text: 'A measured height beats an estimate. With an eye height the body height may stay empty. No idea at all? Say it roughly now; a phone helps afterwards.' }),
      boxes.eye_height_mm.root, boxes.elbow_height_mm.root),
    refused, el('button', { type: 'submit', class: 'main', text: 'Add me and show how it suits me' }));
  const root = el('details', { id: 'join' }, el('summary', { text: 'Add me to this station' }), form, result);

  const place = () => host.names().indexOf(joined);

  function add(event) {
    event.preventDefault();
    const typed = Object.values(boxes).map(({ input }) => input.value);
    const row = who.value === '' ? -1 : Number(who.value);
    const problems = host.change(() => engine.addPerson(...typed, row));
    for (const [key, box] of Object.entries(boxes)) {
      const own = problems.filter(({ path }) => path.endsWith(`.${key}`));
      setText(box.error, words(own));
      if (own.length > 0) box.input.setAttribute('aria-invalid', 'true'); else box.input.removeAttribute('aria-invalid');
    }
    const keys = Object.keys(boxes);
    setText(refused, words(problems.filter(({ path }) => !keys.some((key) => path.endsWith(`.${key}`)))));
    form.querySelector('[aria-invalid]')?.focus();
    if (problems.length > 0) return;
    joined = host.names().at(row);  // a new one is the last
    for (const { input } of Object.values(boxes)) input.value = '';
    setText(said, '');
    host.look(place());
    result.focus();
  }

  return {
    root,
    open() {
      root.open = true;
      root.scrollIntoView({ block: 'start' });
      boxes.name.input.focus({ preventScroll: true });
    },
    update(page) {
      const own = joined === null ? undefined : page.cooks.find(({ name }) => name === joined);
      setHidden(result, !own);
      setHidden(form, Boolean(own));
      const standIns = page.cooks.map(({ name, stand_in: is }, row) => ({ name, is, row })).filter(({ is }) => is);
      setHidden(whoField, standIns.length === 0);
      syncList(who, [{ name: 'No, I am new here', row: '' }, ...standIns], () => el('option'), (option, { name, row }) => {
        option.value = String(row);
        setText(option, row === '' ? name : `Yes: ${name}`);
      });
      for (const box of Object.values(boxes)) box.input.inputMode = page.units === 'mm' && box !== boxes.name ? 'decimal' : 'text';
      if (!own) {
        joined = null;
        return;
      }
      setVerdict(mark, own.verdict);
      setText(line, `${own.name}: ${own.line}`);
      syncList(heights, page.headlines, () => el('li'), (item, { label, value, yours }) => setText(item, [`${label} ${value}`, yours].filter(Boolean).join(', ')));
    },
  };
}

const answers = {
  new: [['t', 'Add'], ['o', 'Leave out']],
  standIn: (name) => [['p', `In place of ${name}`], ['t', `Add beside ${name}`], ['o', 'Leave out']],
  cook: [['o', 'Keep yours'], ['t', 'Take theirs'], ['b', 'Keep both']],
  station: [['o', 'Keep yours'], ['t', 'Take theirs']],
};
const asked = {
  new: ({ name }) => `${name} is new`,
  cook: ({ name }) => `${name} has other numbers`,
  station: ({ rows }) => rows.map(({ label }) => label).join(', '),
  ground: () => 'The readings of the ground',
  stock: () => 'The stock list',
};

// What of an answer is taken in.
function makeReply(engine, host) {
  const title = el('h3', { tabindex: '-1' });
  const into = el('select', { id: 'reply-into', change: () => ask(Number(into.value)) });
  const pick = el('div', { class: 'field' }, el('label', { for: 'reply-into', text: 'Which of your stations does it answer?' }), into);
  const questions = el('div');
  const stay = el('p');
  const error = el('p', { class: 'error', role: 'alert' });
  const take = el('button', { type: 'submit', class: 'main' });
  const form = el('form', { novalidate: true, submit: (event) => { event.preventDefault(); merge(); } }, pick, questions, stay, error,
    el('div', { class: 'row' }, take, el('button', { type: 'button', class: 'plain', text: 'Leave it all', click: () => look(null) })));
  const root = el('section', { id: 'reply', class: 'card', hidden: true }, title,
    el('p', { text: 'Nothing of it is in your station before you say so.' }), form);
  let theirs = '';
  let own = [];      // the stations that it may answer
  let chosen = null;  // that of them, as it was when the questions were asked
  let units = '';

  function question(data, index) {
    const choices = data.stand_in ? answers.standIn(data.stand_in) : answers[data.kind] || answers.station;
    const table = makeTable();
    const isNew = data.kind === 'new';
    fillTable(table, {
      caption: '', columns: isNew ? ['', 'Theirs'] : ['', 'Yours', 'Theirs'],
      rows: data.rows.map(({ label, here, there }) => (isNew ? [label, there] : [label, here, there])),
    });
    table.setAttribute('aria-label', asked[data.kind](data));
    setHidden(table, data.rows.length === 0);
    return el('fieldset', {}, el('legend', { text: asked[data.kind](data) }), table,
      ...choices.map(([value, text]) => el('label', { class: 'choice' },
        // Who is new is what the link was sent for; all else is the household's to say.
        el('input', { type: 'radio', name: `reply-${index}`, value, checked: isNew && value === choices[0][0] }), text)));
  }

  function ask(which) {
    chosen = own[which];
    const data = chosen && engine.reply(chosen.link, theirs);
    if (!data) return look(null);
    const name = nameOf(chosen);
    setText(title, `An answer for ${name}`);
    setText(take, `Take this into ${name}`);
    setText(stay, data.stay.length === 0 ? '' : `Only in yours, and stays: ${data.stay.join(', ')}.`);
    setText(error, '');
    questions.replaceChildren(...data.questions.map(question));
    setHidden(pick, own.length < 2);
    syncList(into, own, () => el('option'), (option, record, index) => {
      option.value = String(index);
      setText(option, nameOf(record));
    });
    into.value = String(which);
    return true;
  }

  // A link that may answer a kept station, or null. True: it does.
  function look(link) {
    theirs = link || '';
    own = link ? answeredBy(engine, link, host.kept()) : [];
    chosen = null;
    setHidden(root, own.length === 0);
    return own.length > 0 && ask(0);
  }

  function merge() {
    const sets = [...questions.children];
    const said = sets.map((set) => set.querySelector('input:checked')?.value ?? '');
    const open = said.indexOf('');
    if (open >= 0) {
      setText(error, 'Say for each what is to be in your station.');
      sets[open].querySelector('input').focus();
      return;
    }
    // It may have changed since it was asked about, in another tab or here.
    const now = host.kept().find(({ id }) => id === chosen.id);
    if (now?.link !== chosen.link) {
      look(theirs);
      setText(error, 'Your station has changed meanwhile: look again, then say so again.');
      return;
    }
    const name = nameOf(now);
    const link = engine.merged(now.link, theirs, said.join(''));
    if (Array.isArray(link)) {
      setText(error, link.map(({ message }) => message).join(' '));
      return;
    }
    look(null);
    host.openMerged(now, link);
    host.tell(said.every((one) => one === 'o') ? `${name} is as it was.` : `What you took over is in your station now: ${name}. Undo brings back what was there.`);
  }

  return {
    root, look,
    update(page) {
      if (units !== page.units && chosen) ask(own.indexOf(chosen));
      units = page.units;
    },
    open() {
      root.scrollIntoView({ block: 'start' });
      title.focus({ preventScroll: true });
    },
    name: () => nameOf(chosen),
  };
}

// `host`: change(body) runs a change and returns its problems; names() of the cooks; look(index)
// shows one, measureEye(index) measures one; reveal(path); kept() the stations of this device;
// send({ invite, button }) hands the link on and says how that went; openMerged(record, link) opens a station
// and changes it to what the link says; tell(text, { label, action }); openPeople().
export function makeFamily(engine, host) {
  const join = makeJoin(engine, host);
  const reply = makeReply(engine, host);
  find('cooks').before(reply.root, join.root);
  const asking = el('p', { role: 'status' });
  find('add-cook').after(el('button', {
    type: 'button', class: 'plain', id: 'ask-someone', text: 'Ask someone to add themselves',
    click: async ({ currentTarget: button }) => setText(asking, await host.send({ invite: true, button })),
  }), asking);
  // Who looks for it among what is sent finds it there too.
  find('send-link').after(el('button', {
    type: 'button', class: 'plain', id: 'ask-by-link', text: 'Ask someone to add themselves',
    click: async ({ currentTarget: button }) => setText(find('copy-state'), await host.send({ invite: true, button })),
  }));

  const openJoin = () => {
    host.openPeople();
    join.open();
  };
  return {
    update(page) {
      join.update(page);
      reply.update(page);
    },
    // A station that is new here was opened by this link: says what the link is for, and `after`
    // where it also asks something. False: it asks nothing.
    greet(link, invited, after) {
      if (!invited && reply.look(link)) {
        host.tell(`This link answers your station ${reply.name()}. You see their version; yours is kept as it was until you take something in.`,
          { label: 'Look at it', action() { host.openPeople(); reply.open(); } });
        return true;
      }
      if (!invited) return false;
      host.tell(`You are asked to add yourself to this station. ${after}`, { label: 'Add me', action: openJoin });
      return true;
    },
  };
}
