// What the shop has and what things cost: a row for each board, sheet, can or piece, from the field
// table; in and out as a file for a spreadsheet program.

import { el, setHidden, setText } from './dom.js';
import { makeField } from './fields.js';
import { save } from './files.js';

// A list of forty rows is a few thousand bytes; a larger file is something else.
const largestFile = 1 << 18;
const key = (name) => `stock[].${name}`;

// `actions` as for makeField; `after(problems)` ends every change; it stands before `place`. `engine` is
// the desk's.
export function makeStock(engine, actions, { after, place }) {
  const rows = [];
  let focusNext = false;

  const say = el('p', { role: 'status', id: 'stock-state' });
  const run = (change, done) => {
    const problems = after(change());
    setText(say, problems.length > 0 ? problems.map(({ message }) => message).join(' ') : done);
    say.classList.toggle('error', problems.length > 0);
    return problems.length === 0;
  };
  const picker = el('input', { class: 'quiet', id: 'open-stock', type: 'file', accept: '.csv,text/csv' });
  picker.addEventListener('change', async () => {
    const [file] = picker.files;
    picker.value = '';
    if (!file) return;
    let text = null;
    if (file.size <= largestFile) text = await file.text().catch(() => null);
    if (text === null) {
      run(() => [{ message: `${file.name} is too large for a stock list, or cannot be read.` }]);
    } else {
      run(() => engine.openStock(text), `${file.name} is your list now. Undo brings the one before back.`);
    }
  });
  const title = el('summary', { text: 'Stock and prices' });
  const none = el('p', { text: 'Nothing is listed: the usual sizes are taken, and nothing has a price.' });
  const list = el('div');
  const keep = el('button', {
    type: 'button', class: 'plain', id: 'save-stock', text: 'Save as CSV',
    click: () => save(new Blob([engine.stockCsv()], { type: 'text/csv' }), 'hearthsight-stock.csv'),
  });
  place.before(el('details', { id: 'stock' }, title,
    el('p', { text: 'Boards, sheets, cans and pieces that are in the shop or can be bought, with your own prices. What is in the shop is used first.' }),
    none, list,
    el('div', { class: 'row' },
      el('button', {
        type: 'button', class: 'main', id: 'add-stock', text: 'Add to the list',
        click: () => { focusNext = run(() => engine.addStock(), ''); },
      }),
      keep, picker, el('label', { class: 'plain button', for: 'open-stock', text: 'Open a CSV' })),
    say));

  function makeRow(fields, index) {
    const head = el('summary');
    const controls = fields.map((field) => makeField(field, index, actions));
    const root = el('details', { class: 'stock-row' }, head,
      el('form', { class: 'fields', novalidate: true }, ...controls.map((control) => control.root)),
      el('button', {
        type: 'button', class: 'plain', text: 'Take it off the list',
        click: () => { if (run(() => engine.removeStock(index), 'Taken off. Undo brings it back.')) title.focus(); },
      }));
    return { root, head, controls };
  }
  // "Ply sheet: Sheet, 3 in the shop"; what is not said is left out.
  function nameOf(byPath, index) {
    const said = (name) => byPath.get(key(name)).values[index];
    const kind = byPath.get(key('kind')).choices.find(({ value }) => value === said('kind')).label;
    const there = said('on_hand');
    return [said('name') ? `${said('name')}: ${kind}` : kind, there && `${there} in the shop`].filter(Boolean).join(', ');
  }

  return {
    update(byPath, forget) {
      const fields = [...byPath.values()].filter(({ path }) => path.startsWith('stock[].'));
      const count = byPath.get(key('name')).values.length;
      while (rows.length > count) rows.pop().root.remove();
      while (rows.length < count) {
        const row = makeRow(fields, rows.length);
        rows.push(row);
        list.append(row.root);
      }
      rows.forEach(({ head, controls }, index) => {
        setText(head, nameOf(byPath, index));
        for (const control of controls) {
          if (forget) control.forget();
          control.update(actions.value(control.field, index));
        }
      });
      setText(title, count === 0 ? 'Stock and prices' : `Stock and prices: ${count}`);
      setHidden(none, count > 0);
      setHidden(keep, count === 0);
      if (focusNext && count > 0) {
        rows[count - 1].root.open = true;
        rows[count - 1].controls[0].input.focus();
      }
      focusNext = false;
    },
  };
}
