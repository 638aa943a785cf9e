// Two or three kept stations side by side, and only what differs between them. Every word comes from
// the program (engine/report/compare.h).

import { el, setHidden, setText, syncList } from './dom.js';
import { fillTable, makeTable } from './results.js';
import { nameOf } from './stations.js';

const most = 3;

// `list()`: the kept stations, that on the screen among them; `units()`.
export function makeCompare(place, engine, { list, units }) {
  const picks = el('div');
  const tables = el('div');
  const same = el('p', { role: 'status' });
  const intro = el('p', { text: 'Tick two or three; only what differs is shown.' });
  const root = el('section', { id: 'compare' }, el('h3', { text: 'Side by side' }), intro, picks, tables, same);
  const picked = new Set();
  let shown = '';
  place.append(root);

  const pick = ({ target }) => {
    if (target.checked) picked.add(target.value); else picked.delete(target.value);
    update();
  };

  // Names that are the same get a number, as columns need heads of their own.
  function columns(records) {
    const seen = new Map();
    return records.map((record) => {
      const name = nameOf(record);
      seen.set(name, (seen.get(name) || 0) + 1);
      return `${record.link} ${name}${seen.get(name) > 1 ? ` (${seen.get(name)})` : ''}`;
    }).join('\n');
  }

  function update() {
    const records = list();
    setHidden(root, records.length < 2);
    for (const id of picked) if (!records.some((record) => record.id === id)) picked.delete(id);
    syncList(picks, records, () => el('label', { class: 'choice' }, el('input', { type: 'checkbox', change: pick }), el('span')), (label, record) => {
      const [box, name] = label.children;
      box.value = record.id;
      box.checked = picked.has(record.id);
      box.disabled = !box.checked && picked.size >= most;
      setText(name, nameOf(record));
    });
    const chosen = records.filter(({ id }) => picked.has(id));
    const lines = chosen.length < 2 ? '' : columns(chosen);
    // Hidden, it costs nothing; shown, only where it changed.
    if (root.offsetParent === null && lines) return;
    const key = `${units()} ${lines}`;
    if (key === shown) return;
    shown = key;
    const found = lines ? engine.compare(lines) : { tables: [], same: '' };
    syncList(tables, found.tables, makeTable, (box, table) => {
      box.setAttribute('aria-label', table.caption);
      fillTable(box, table);
    });
    setText(same, found.same);
  }
  return { update };
}
