// The first minute: three answers, and the station is one's own. It stands in the bar while the
// invented household is on the screen; afterwards a button leads back to it.

import { el, setHidden, setText, syncList } from './dom.js';

const find = (id) => document.getElementById(id);
const words = (problems) => problems.map(({ path, message }) => message.replace(`${path}: `, '')).join(' ');

// A height in metres, centimetres or millimetres: it says so, or it can be nothing else ("178", "1.78").
function isMetric(text) {
  if (/\d\s*([cm]?m|(centi|milli)?met(re|er)s?)(?![a-z])/i.test(text)) return true;
  const bare = Number(text.trim().replace(',', '.'));
  return bare >= 100 || (bare > 0 && bare < 2.6);
}

// `host`: open(body) shows another station and gives the problems; openSheet(name); setUnits(name);
// unitsChosen(), whether a person has done that here before.
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
    if (problems.length === 0) {
      again = false;
      // Who says metres is answered in millimetres.
      if (isMetric(tall.value) && !host.unitsChosen()) host.setUnits('mm');
    }
    setText(error, words(problems));
    const wrong = (input, key) => {
      const bad = problems.some(({ path }) => path.startsWith(key));
      if (bad) input.setAttribute('aria-invalid', 'true'); else input.removeAttribute('aria-invalid');
    };
    wrong(tall, 'cooks.0');
    wrong(short, 'cooks.1');
    form.querySelector('[aria-invalid]')?.focus();
  }

  const panel = find('panel-start');
  const intro = panel.querySelector('p');
  const invented = intro.textContent;
  let again = false;
  let ofExample = true;
  // The way back to it, where people and where kept stations are looked for.
  const buttons = [find('cooks'), find('kept')].map((place) => {
    const button = el('button', {
      type: 'button', class: 'plain start-again', text: 'Start again with three answers', hidden: true,
      click() {
        again = true;
        show();
        host.openSheet('start');
      },
    });
    if (place.id === 'cooks') place.before(button); else place.append(button);
    return button;
  });

  function show() {
    // Loaded again with it open, it is open.
    if (panel.classList.contains('open')) again = true;
    setHidden(panel, !ofExample && !again);
    setHidden(document.querySelector('#bar [data-sheet="start"]'), !ofExample);
    for (const button of buttons) setHidden(button, ofExample);
    setText(intro, ofExample ? invented : 'Three answers begin another station. The one you have is kept on this device.');
  }

  return {
    update(isExample, field, units) {
      ofExample = isExample;
      show();
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
