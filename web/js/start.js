// The first minute: three answers, and the station is one's own. Only while the invented household is
// on the screen; whoever wants to look round first leaves it alone.

import { el, setHidden, setText, syncList } from './dom.js';

const find = (id) => document.getElementById(id);
const words = (problems) => problems.map(({ path, message }) => message.replace(`${path}: `, '')).join(' ');

// `host`: open(body) shows another station and gives the problems.
export function makeStart(engine, host) {
  const kind = el('select', { id: 'start-kind' });
  const tall = el('input', { id: 'start-tall', type: 'text', autocomplete: 'off', 'aria-describedby': 'start-help start-error' });
  const short = el('input', { id: 'start-short', type: 'text', autocomplete: 'off', 'aria-describedby': 'start-help start-error' });
  const error = el('p', { class: 'error', id: 'start-error', role: 'alert' });
  const field = (input, text) => el('div', { class: 'field' }, el('label', { for: input.id, text }), input);
  const form = el('form', { class: 'fields', novalidate: true, submit: start },
    field(kind, 'Which oven is it to be?'),
    field(tall, 'How tall is the tallest who cooks?'),
    field(short, 'And the shortest? Alone, leave it empty'),
    el('p', { class: 'soft', id: 'start-help', text: 'Barefoot: 5 ft 10 in, 70 in, 178 cm or 1.78 are all read. Not sure? Say it roughly, and measure later under People.' }),
    error, el('button', { type: 'submit', class: 'main', text: 'Show my heights' }));
  find('panel-start').append(form);

  function start(event) {
    event.preventDefault();
    const problems = host.open(() => engine.startOwn(tall.value, short.value, kind.value));
    setText(error, words(problems));
    const wrong = (input, key) => {
      const bad = problems.some(({ path }) => path.startsWith(key));
      if (bad) input.setAttribute('aria-invalid', 'true'); else input.removeAttribute('aria-invalid');
    };
    wrong(tall, 'cooks.0');
    wrong(short, 'cooks.1');
    form.querySelector('[aria-invalid]')?.focus();
  }

  return {
    update(isExample, field, units) {
      for (const part of [find('panel-start'), document.querySelector('#bar [data-sheet="start"]')]) setHidden(part, !isExample);
      for (const input of [tall, short]) input.inputMode = units === 'mm' ? 'decimal' : 'text';
      if (kind.children.length > 0) return;
      syncList(kind, field.choices, () => el('option'), (option, { value, label }) => {
        option.value = value;
        setText(option, label);
      });
      [kind.value] = field.values;
    },
  };
}
