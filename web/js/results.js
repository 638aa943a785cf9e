// Prints page_json (engine/report/page_json.cpp): every word and number comes from there. The
// elements stay and only their text changes, so that focus, open parts and scroll places last.

import { el, setHidden, setText, setVerdict, syncList, verdictMark } from './dom.js';

const find = (id) => document.getElementById(id);

function whyButton(openRule) {
  return el('button', { type: 'button', class: 'plain why', text: 'Why', click: (event) => openRule(event.currentTarget.dataset.rule) });
}

// `of` says what the button explains; a list of buttons that all say "Why" helps nobody.
function setWhy(button, rule, of) {
  setHidden(button, !rule);
  if (!rule) return;
  button.dataset.rule = rule;
  button.setAttribute('aria-label', `Why: ${of}`);
}

function headlines(page, openRule) {
  syncList(find('headlines'), page.headlines, () => el('div', { class: 'card' },
    el('h3', { class: 'name' }), el('p', { class: 'figure' }), el('p'), el('p'), el('p', { class: 'soft' }),
    el('div', { class: 'row' }, verdictMark(), whyButton(openRule))),
  (card, headline) => {
    const [name, figure, yours, band, note, row] = card.children;
    card.dataset.id = headline.id;
    setText(name, headline.label);
    setText(figure, headline.value);
    setText(yours, headline.yours);
    setHidden(yours, !headline.yours);
    setText(band, headline.band);
    setText(note, headline.note);
    setVerdict(row.firstElementChild, headline.verdict);
    setWhy(row.lastElementChild, headline.why, headline.label);
  });
}

export function makeItem(openRule) {
  return el('div', { class: 'finding' }, el('h4', {}, verdictMark(), ' ', el('span')), whyButton(openRule), el('p'));
}

export function fillItem(element, item) {
  const [head, why, sentence] = element.children;
  const [mark, title] = head.children;
  setHidden(mark, !item.verdict);
  if (item.verdict) setVerdict(mark, item.verdict);
  setText(title, item.title);
  setText(sentence, item.sentence);
  setWhy(why, item.why, item.title || item.sentence);
}

// What is fine is counted and folded away where it would bury the rest.
const fewFine = 2;

function fillItems(box, fine, items, openRule) {
  const good = items.filter(({ verdict }) => verdict === 'ok');
  const folded = good.length > fewFine;
  const make = () => makeItem(openRule);
  syncList(box, folded ? items.filter(({ verdict }) => verdict !== 'ok') : items, make, fillItem);
  setHidden(fine, !folded);
  setText(fine.firstElementChild, `${good.length} that are fine`);
  syncList(fine.lastElementChild, folded ? good : [], make, fillItem);
}

export function fillTable(box, table) {
  const element = box.firstElementChild;
  const [caption, head, body] = element.children;
  setText(caption, table.caption);
  syncList(head.firstElementChild, table.columns, () => el('th', { scope: 'col' }), setText);
  syncList(body, table.rows, () => el('tr'), (row, cells) => {
    // The first cell names its row.
    syncList(row, cells, (cell, index) => (index === 0 ? el('th', { scope: 'row' }) : el('td')),
      (cell, words) => {
        setText(cell, words);
        // What is read as words is not to stand one under the other.
        cell.dataset.words = words.length > 40 ? 'many' : words.length > 12 ? 'some' : 'few';
      });
  });
}

// On which sides a box that scrolls sideways goes on, for its looks to say so. A few pixels are only
// the room beside the last column.
const unseen = 8;
function mark(box) {
  const fits = box.scrollWidth - box.clientWidth < unseen;
  const left = !fits && box.scrollLeft > 1 ? 'left' : '';
  const right = !fits && box.scrollLeft + box.clientWidth < box.scrollWidth - 1 ? 'right' : '';
  const more = `${left} ${right}`.trim();
  if (box.dataset.more !== more) box.dataset.more = more;
}
const sizes = new ResizeObserver((entries) => entries.forEach(({ target }) => mark(target.closest('.scroll'))));
export function scroller(content) {
  const box = el('div', { class: 'scroll', tabindex: '0', role: 'group' }, content);
  box.addEventListener('scroll', () => mark(box), { passive: true });
  for (const part of [box, content]) sizes.observe(part);
  return box;
}

// A wide table scrolls inside its own box, which a keyboard can reach.
export const makeTable = () => scroller(el('table', {},
  el('caption'), el('thead', {}, el('tr')), el('tbody')));

function section(element, data, openRule) {
  const [title, intro, back, tables, items, fine] = element.children;
  setHidden(back, data.id !== 'ground');
  element.dataset.section = data.id;
  setText(title, data.title);
  setText(intro, data.intro);
  setHidden(intro, !data.intro);
  syncList(tables, data.tables || [], makeTable, (box, table) => {
    box.setAttribute('aria-label', table.caption || data.title);
    fillTable(box, table);
  });
  fillItems(items, fine, data.items || [], openRule);
}

function sections(page, openRule, openReadings) {
  const places = [...document.querySelectorAll('[data-sections]')];
  const named = new Set(places.flatMap((place) => place.dataset.sections.split(' ')));
  for (const place of places) {
    const names = place.dataset.sections.split(' ');
    // The place named "*" takes what no other place asks for: a new section is never lost.
    const wanted = names[0] === '*'
      ? page.sections.filter(({ id }) => !named.has(id))
      : names.flatMap((name) => page.sections.filter(({ id }) => id === name));
    syncList(place, wanted, () => el('section', {}, el('h3'), el('p'),
      el('button', { type: 'button', class: 'plain', text: 'The readings, point by point', click: openReadings }), el('div'), el('div'), el('details', {}, el('summary'), el('div'))),
      (element, data) => section(element, data, openRule));
  }
}

function reasons(page, openField) {
  syncList(find('reasons'), Object.entries(page.why), () => el('details', { class: 'reason' },
    el('summary'), el('p'), el('dl'), el('p', { class: 'source' }), el('p')),
  (element, [rule, why]) => {
    const [title, words, inputs, source, caution] = element.children;
    element.id = `why-${rule}`;
    setText(title, why.title);
    setText(words, why.words);
    syncList(inputs, (why.inputs || []).flatMap((input) => [{ label: input.label, field: input.field }, { value: input.value }]),
      (part) => el(part.value === undefined ? 'dt' : 'dd'),
      (part, data) => {
        if (data.value !== undefined) {
          setText(part, data.value);
        } else if (part.textContent !== data.label || part.dataset.field !== data.field) {
          // The name of an input leads to the field that holds it.
          part.dataset.field = data.field || '';
          part.replaceChildren(data.field
            ? el('button', { type: 'button', class: 'link', text: data.label, click: () => openField(data.field) })
            : data.label);
        }
      });
    setHidden(inputs, inputs.children.length === 0);
    setText(source, ['Source: ', [why.source, why.clause, why.basis && `(${why.basis})`].filter(Boolean).join(', ')].join(''));
    setText(caution, why.caution);
    setHidden(caution, !why.caution);
  });
}

export function openReason(rule) {
  const reason = find(`why-${rule}`);
  if (!reason) return false;
  reason.open = true;
  // A long one from its head on: its middle alone says nothing.
  reason.scrollIntoView({ block: reason.offsetHeight > innerHeight / 2 ? 'start' : 'center' });
  reason.firstElementChild.focus({ preventScroll: true });
  return true;
}

// What comes of the readings of the ground: a table of the section, or what is said of a rule.
export function openGround(name) {
  const section = document.querySelector('[data-section="ground"]');
  const tables = section.querySelectorAll('.scroll');
  const fall = section.querySelector('[data-rule="survey.drainage"]');
  const part = name === 'The cuts' ? tables[1] : (name === 'The fall' && fall) || tables[0];
  const folded = part.closest('details');
  if (folded) folded.open = true;
  // With the way back above it.
  (part === tables[0] ? section : part).scrollIntoView({ block: part === fall ? 'center' : 'start' });
  part.focus({ preventScroll: true });
}

export function showResults(page, { openRule, openField, openReadings }) {
  headlines(page, openRule);
  syncList(find('worst'), page.worst?.text ? [page.worst] : [], () => makeItem(openRule),
    (element, worst) => fillItem(element, { verdict: worst.verdict, title: 'Look at this first', sentence: worst.text, why: worst.rule }));
  setText(find('feet-line'), page.feet_line);
  syncList(find('cook-lines'), page.cooks, () => el('li', {}, verdictMark(), ' ', el('span')),
    (element, cook) => {
      setVerdict(element.firstElementChild, cook.verdict);
      setText(element.lastElementChild, `${cook.name}: ${cook.line}`);
    });
  sections(page, openRule, openReadings);
  reasons(page, openField);
}
