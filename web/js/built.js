// Pieces as they came out: a box for each measure of the frame, with its drawn size in it. What is
// typed is kept in one text, "base=104.2 dough.box=741" (engine/frame/as_built.h).

import { el, setHidden, setText, setVerdict, syncList, verdictMark } from './dom.js';
import { makeField, sixteenthsText } from './fields.js';

const path = 'frame.as_built';
const told = [path, 'frame.top_height'];
const runs = { dough: 'Dough counter', oven: 'Oven counter' };
const sizes = { width: 'width', depth: 'depth', thick: 'thickness', height: 'height' };
// In the order that they are built in.
const stages = ['base', 'box', 'opening', 'substrate', 'riser'];
const stage = ({ name }) => stages.findIndex((word) => name.includes(word));

function wordsOf(name) {
  if (name === 'base') return 'Base, above the ground where feet stand';
  if (name === 'riser.height') return 'Block under the oven with its bed, height';
  const [run, ...rest] = name.split('.');
  const size = sizes[rest.at(-1)];
  if (rest[0] === 'box') return `${runs[run]}, height of the boxes`;
  if (rest[0] === 'substrate') return `${runs[run]}, ${size} of the sheets under the metal`;
  return `${runs[run]}, bay ${rest[0]} from the left, ${size} of the opening`;
}

// `actions` as for makeField, and setBuilt(name, size) with the reader's text of a size; it stands after
// `place`.
export function makeBuilt(actions, { place }) {
  let unit = null;  // a length's row of the field table
  let measures = new Map();
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

  const own = {
    ...actions,
    set: (where, text) => actions.setBuilt(nameOf(where), text),
    clear: (where) => actions.setBuilt(nameOf(where), ''),
    start: (where) => measures.get(nameOf(where))?.planned_mm,
    value({ path: where }) {
      // What was left out as too far from the drawing stays to be seen and mended.
      const { as_built: built, used_mm: used, ignored_mm: ignored } = measures.get(nameOf(where)) ?? {};
      const mm = built ? used : ignored ?? null;
      return {
        text: mm === null ? null : shown(mm),
        unit: unit.unit, scale: unit.scale, offset: 0, usual: null, placeholder: 'as drawn',
      };
    },
  };

  return {
    update(byPath, report, page, forget) {
      unit = byPath.get('station.counter_height_mm');
      const all = [...report.frame?.measures ?? []].sort((a, b) => stage(a) - stage(b));
      measures = new Map(all.map((measure) => [measure.name, measure]));
      const count = all.filter(({ as_built }) => as_built).length;
      setText(title, `Which pieces came out other than drawn?${count > 0 ? ` ${count}` : ''}`);
      setHidden(root, all.length === 0 && !byPath.get(path).values[0]);
      const names = [...measures.keys()].join(' ');
      if (shownFor !== names) {
        shownFor = names;
        controls = all.map(({ name }) => makeField({
          path: `${path}.${name}`, label: wordsOf(name), question: wordsOf(name), measure: '', kind: 'length',
          absent: 'unknown', min: 1, max: 7000, step: 1, choices: [],
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
