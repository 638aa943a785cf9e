// The list of the stations that this device keeps: open, name, delete, and undo of that.

import { el, setHidden, setText, syncList } from './dom.js';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
export const nameOf = ({ title, people }) => title || people || 'No name yet';

// `keep`: makeKeep's. `host`: open(record), startNew(), title(text) for the one on the screen, with
// its problems.
export function makeStations(place, keep, host) {
  const list = el('ul', { class: 'bare stations' });
  const none = el('p', { text: 'None yet: a station is kept from its first change on.' });
  const gone = el('p', { role: 'status' });
  const undo = el('button', { type: 'button', class: 'plain', text: 'Bring it back', hidden: true });
  let deleted = null;
  let naming = null;  // the id of the one whose name is being typed

  place.append(el('h3', { text: 'Kept on this device' }),
    el('p', { text: 'Each change is kept here by itself, and nowhere else.' }),
    list, none, el('div', { class: 'row' }, gone, undo),
    el('button', { type: 'button', class: 'plain', text: 'Start with the example', click: host.startNew }));

  const recordOf = (event) => keep.list().find(({ id }) => id === event.target.closest('li').dataset.id);

  const actions = {
    open(event) {
      const record = recordOf(event);
      if (record) host.open(record);
    },
    name(event) {
      naming = event.target.closest('li').dataset.id;
      update();
      const input = list.querySelector('form:not([hidden]) input');
      input.value = recordOf({ target: input })?.title ?? '';
      input.focus();
    },
    save(event) {
      event.preventDefault();
      const { target } = event;
      const record = recordOf(event);
      const title = target.querySelector('input').value.trim();
      const problems = !record ? [] : keep.isHere(record.id) ? host.title(title) : keep.retitle(record, title);
      setText(target.querySelector('.error'), problems.map(({ message }) => message).join(' '));
      if (problems.length > 0) return;
      actions.done(target.closest('li'));
    },
    done(row) {
      naming = null;
      update();
      row.querySelector('[data-act="name"]').focus();
    },
    remove(event) {
      deleted = recordOf(event);
      if (!deleted) return;
      keep.remove(deleted.id);
      setText(gone, `${nameOf(deleted)} is deleted from this device.`);
      undo.hidden = false;
      undo.focus();
    },
  };
  undo.addEventListener('click', () => {
    keep.restore(deleted);
    undo.hidden = true;
    setText(gone, `${nameOf(deleted)} is back.`);
    list.querySelector(`[data-id="${deleted.id}"] button`)?.focus();
  });

  const button = (act) => el('button', { type: 'button', class: 'plain', 'data-act': act, click: actions[act] });
  const make = (record, index) => el('li', { class: 'card' },
    el('p', {}, el('strong'), ' ', el('span')),
    el('p', { class: 'soft' }),
    el('div', { class: 'row' }, button('open'), button('name'), button('remove')),
    el('form', { class: 'field', novalidate: true, submit: actions.save },
      el('label', { for: `station-name-${index}`, text: 'Name of this station' }),
      el('div', { class: 'entry' },
        el('input', { type: 'text', id: `station-name-${index}`, autocomplete: 'off' }),
        el('button', { type: 'submit', class: 'plain', text: 'Save name' }),
        el('button', { type: 'button', class: 'plain', text: 'Leave it', click: (event) => actions.done(event.target.closest('li')) })),
      el('p', { class: 'error', role: 'alert' })));

  function fill(row, record) {
    const [head, note, buttons, form] = row.children;
    const [open, name, remove] = buttons.children;
    const present = keep.isHere(record.id);
    const called = nameOf(record);
    row.dataset.id = record.id;
    setText(head.firstElementChild, called);
    setText(head.lastElementChild, present ? 'is on the screen' : '');
    setText(note, [record.title && record.people, `changed ${when.format(record.time)}`].filter(Boolean).join(', '));
    for (const [control, word] of [[open, 'Open'], [name, record.title ? 'Rename' : 'Name'], [remove, 'Delete']]) {
      setText(control, word);
      control.setAttribute('aria-label', `${word}: ${called}`);
    }
    setHidden(open, present);
    setHidden(remove, present);
    setHidden(buttons, naming === record.id);
    setHidden(form, naming !== record.id);
    if (naming !== record.id) setText(form.lastElementChild, '');
  }

  function update() {
    const records = keep.list();
    syncList(list, records, make, fill);
    setHidden(none, records.length > 0);
  }
  update();
  return { update };
}
