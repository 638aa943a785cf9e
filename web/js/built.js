// Pieces as they came out: a box for each measure of the frame, with its drawn size in it. What is
// typed is kept in one text, "base=104.2 dough.box=741" (engine/frame/as_built.h).

import { el, setHidden, setText, setVerdict, syncList, verdictMark } from './dom.js';
import { makeField, numberOf, sixteenthsText } from './fields.js';

const path = 'frame.as_built';
const [least, most] = [1, 7000];
const told = [path, 'frame.top_height'];
const runs = { dough: 'Dough counter', oven: 'Oven counter' };
const sizes = { width: 'width', depth: 'depth', thick: 'thickness', height: 'height' };
// In the order that they are built in.
const stages = ['base', 'box', 'opening', 'substrate', 'riser'];
const stage = ({ name }) => stages.findIndex((word) => name.includes(word));

function wordsOf(name) {
  if (name === 'base') return 'Base, above the ground where feet stand';
  if (name === 'riser.height') return 'Block under the oven, height';
  const [run, ...rest] = name.split('.');
  const size = sizes[rest.at(-1)];
  if (rest[0] === 'box') return `${runs[run]}, height of the boxes`;
  if (rest[0] === 'substrate') return `${runs[run]}, ${size} of the sheets under the metal`;
  return `${runs[run]}, bay ${rest[0]} from the left, ${size} of the opening`;
}

// A length as the other boxes take it: "29 1/8", "2' 5 1/8", "740,5 mm", "74 cm"; in mm, or null.
const scales = { mm: 1, cm: 10, in: 25.4, '"': 25.4, '\u2033': 25.4 };
function mmOf(text, scale) {
  const [, feet, rest, given] = /^(?:(\d+) *(?:ft|['\u2032]) *)?(.*?) *(mm|cm|in|["\u2033])?$/.exec(text.trim().replace(',', '.'));
  const number = numberOf(rest || (feet ? '0' : ''));
  return number === null ? null : Number(((feet ?? 0) * 304.8 + number * (given ? scales[given] : feet ? 25.4 : scale)).toFixed(1));
}

// The text's entries, by name, each as it was typed ("104.2", "4 1/8 in"); those of other stations
// stay in it.
const entriesOf = (text) => new Map([...(text ?? '').matchAll(/(\S+?)=(.*?)(?= +\S+=|$)/g)].map(([, name, size]) => [name, size]));

// `actions` as for makeField; it stands after `place`.
export function makeBuilt(actions, { place }) {
  let unit = null;  // a length's row of the field table
  let measures = new Map();
  let entries = new Map();
  let controls = [];
  let shownFor = '';

  const title = el('summary');
  const list = el('form', { class: 'fields', novalidate: true });
  const comes = el('div', { id: 'built-told' });
  const root = el('details', { id: 'as-built' }, title,
    el('p', { text: 'Measure what is built, and type what differs from the drawing: all that is not built yet follows it. What is left empty is as drawn.' }),
    list, comes,
    el('details', {}, el('summary', { text: 'The same as one text' }), el('form', { class: 'fields', id: 'as-built-text', novalidate: true })));
  place.after(root);

  const inInches = () => unit.unit === 'in';
  const shown = (mm) => (inInches() ? sixteenthsText(mm / unit.scale) : String(Number((mm / unit.scale).toFixed(1))));
  const nameOf = (where) => where.slice(path.length + 1);

  const refused = (where, message) => [{ path: where, message }];
  function put(where, mm) {
    const next = new Map(entries);
    if (mm === null) next.delete(nameOf(where)); else next.set(nameOf(where), mm);
    return actions.set(path, [...next].map((entry) => entry.join('=')).join(' '))
      .flatMap(({ message }) => refused(where, message.replace(`${path}: `, '')));
  }
  const own = {
    ...actions,
    set(where, text) {
      const mm = mmOf(text, unit.scale);
      if (mm === null) return refused(where, `Not a length: type it like ${inInches() ? '29 1/8' : '740.5'} or ${inInches() ? '740 mm' : '29 1/8 in'}.`);
      if (mm < least || mm > most) return refused(where, `A piece measures ${shown(least)} to ${shown(most)} ${unit.unit}.`);
      return put(where, mm);
    },
    clear: (where) => put(where, null),
    start: (where) => measures.get(nameOf(where))?.planned_mm,
    value({ path: where }) {
      const name = nameOf(where);
      const mm = mmOf(entries.get(name) ?? '', 1);
      return {
        text: mm === null ? null : shown(mm),
        unit: unit.unit, scale: unit.scale, offset: 0, usual: null, placeholder: 'as drawn',
      };
    },
  };

  return {
    update(byPath, report, page, forget) {
      unit = byPath.get('station.counter_height_mm');
      entries = entriesOf(byPath.get(path).values[0]);
      const all = [...report.frame?.measures ?? []].sort((a, b) => stage(a) - stage(b));
      measures = new Map(all.map((measure) => [measure.name, measure]));
      const count = all.filter(({ as_built }) => as_built).length;
      setText(title, `Which pieces came out other than drawn?${count > 0 ? ` ${count}` : ''}`);
      setHidden(root, all.length === 0 && entries.size === 0);
      const names = [...measures.keys()].join(' ');
      if (shownFor !== names) {
        shownFor = names;
        controls = all.map(({ name }) => makeField({
          path: `${path}.${name}`, label: wordsOf(name), question: wordsOf(name), measure: '', kind: 'length',
          absent: 'unknown', min: least, max: most, step: 1, choices: [],
        }, 0, own));
        list.replaceChildren(...controls.map((control) => control.root));
      }
      controls.forEach((control, index) => {
        if (forget) control.forget();
        setText(control.root.firstElementChild, `${control.field.label}: drawn ${`${shown(all[index].planned_mm)} ${unit.unit}`.replaceAll(' ', '\u00A0')}`);
        control.update(own.value(control.field));
      });
      const items = count === 0 ? [] : page.sections.flatMap((section) => section.items ?? []).filter(({ why }) => told.includes(why));
      syncList(comes, items, () => el('p', {}, verdictMark(), ' ', el('span')), (line, item) => {
        setVerdict(line.firstElementChild, item.verdict);
        setText(line.lastElementChild, item.sentence);
      });
    },
  };
}
