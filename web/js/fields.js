// One labelled control for one row of the field table (hs_fields_json). Its question, how to
// measure the answer, its choices, range and value all come from the table.

import { el, setHidden, setText } from './dom.js';
import { howTo } from './howto.js';

let made = 0;

// What an absent value means, in a list of choices.
const absentWords = { unknown: 'Not known', derived: 'As usual' };

// A number as it is shown, or null: "41 3/8", "1051", "0.5".
export function numberOf(text) {
  const parts = /^(-?)(\d+(?:\.\d+)?)?(?:\s*(\d+)\/(\d+))?$/.exec(text ?? '');
  if (!parts || !(parts[2] || parts[3])) return null;
  const size = Number(parts[2] || 0) + (parts[3] ? Number(parts[3]) / Number(parts[4]) : 0);
  return parts[1] ? -size : size;
}

// Into the unit that is shown (`value` as a field's update() takes it) from the field's own.
const fromOwn = (value, own) => (own - value.offset) / value.scale;

// The next value up or down, as text; a length with its unit. `present` is in the unit that is shown.
// In inches the steps are those of a folding rule.
export function stepped(field, value, present, direction) {
  const inches = value.unit === 'in';
  const step = inches ? (field.step <= 5 ? 0.25 : 0.5) : field.step;
  const count = present / step;
  // From between two steps the first press goes to the next one.
  const whole = Math.abs(count - Math.round(count)) < 0.02 ? Math.round(count) + direction
    : direction > 0 ? Math.ceil(count) : Math.floor(count);
  // An end of the range is given in the field's own unit, or as what is shown lies within it.
  const [low, high] = [fromOwn(value, field.min), fromOwn(value, field.max)];
  const next = whole * step;
  if (field.kind !== 'length') {
    const within = Math.min(Math.floor(high * 100 + 0.01) / 100, Math.max(Math.ceil(low * 100 - 0.01) / 100, next));
    return String(Number(within.toFixed(2)));
  }
  if (next < low || next > high) return `${next < low ? field.min : field.max} mm`;
  return `${Number(next.toFixed(2))} ${value.unit}`;
}

const inInches = (field, units) => field.kind === 'length' && units === 'inch';

// The keypad of a number has no minus.
const inputMode = (field) => (field.kind === 'text' || field.min < 0 ? 'text' : 'decimal');

// Nor has it a fraction bar: in inches these stand under the number while it is typed. Each is in the
// number or not; together they say every sixteenth.
const sixteenths = [8, 4, 2, 1];
const fraction = (parts) => {
  let [over, under] = [parts, 16];
  for (; over > 0 && over % 2 === 0; over /= 2) under /= 2;
  return over > 0 ? `${over}/${under}` : '';
};
// Whole inches and sixteenths, to the nearest.
const split = (inches) => {
  const parts = Math.round(inches * 16);
  return [Math.floor(parts / 16), parts % 16];
};

// "29 1/8", to the nearest sixteenth.
export function sixteenthsText(inches) {
  const [whole, parts] = split(inches);
  return [whole || '', fraction(parts)].filter(Boolean).join(' ') || '0';
}

// All of the text is selected once the hand that came in is up again, which would else undo it.
function selectOnEntry(input) {
  let entered = false;
  input.addEventListener('focus', () => {
    entered = true;
    input.select();
  });
  input.addEventListener('blur', () => { entered = false; });
  input.addEventListener('click', () => {
    if (entered && input.selectionStart === input.selectionEnd) input.select();
    entered = false;
  });
}

function makeChoice(field, id, error, commit) {
  const input = el('select', { id, 'aria-describedby': error, change: () => commit(input.value) });
  const choices = field.kind === 'flag'
    ? [{ value: 'true', label: 'Yes' }, { value: 'false', label: 'No' }] : field.choices;
  if (field.absent !== 'default') {
    input.append(el('option', { value: '', text: absentWords[field.absent] }));
  }
  for (const { value, label } of choices) input.append(el('option', { value, text: label }));
  return input;
}

// `index` is the cook's, or 0. `actions`: set(path, text), clear(path), both returning problems;
// value(field, index) as `update` takes it; units(); start(path) the value in the field's own unit
// that a stepper begins from when nobody has given one. `keys`: the fractions have a row of their own
// at all times, where readings are typed one after another.
export function makeField(field, index, actions, keys = false) {
  const path = field.path.replace('[]', `.${index}`);
  const id = `field-${++made}`;
  const errorId = `${id}-error`;
  const error = el('p', { class: 'error', id: errorId });
  const name = field.label.toLowerCase();
  const chosen = field.kind === 'choice' || (field.kind === 'flag' && field.absent !== 'default');
  const stepper = !chosen && field.kind !== 'flag' && field.kind !== 'text';
  // Text that was refused, or is still being typed, is the person's own.
  let dirty = false;
  let shown = null;
  let input;

  const report = (problems) => {
    const bad = problems.length > 0;
    // Beside its own field a message need not name it.
    setText(error, problems.map(({ path: where, message }) =>
      (where === path ? message.replace(`${path}: `, '') : message)).join(' '));
    if (bad) input.setAttribute('aria-invalid', 'true'); else input.removeAttribute('aria-invalid');
    return !bad;
  };
  const commit = (text) => {
    const trimmed = text.trim();
    const problems = trimmed === '' && field.absent !== 'default'
      ? actions.clear(path) : actions.set(path, trimmed);
    dirty = !report(problems);
    if (!dirty) api.update(actions.value(field, index));
  };
  const clear = () => {
    dirty = !report(actions.clear(path));
    if (!dirty) api.update(actions.value(field, index));
    input.focus();
  };
  const step = (direction) => {
    const value = actions.value(field, index);
    const start = actions.start(path);
    const present = numberOf(shown) ?? (typeof start === 'number' ? fromOwn(value, start) : null);
    if (present === null) return;
    dirty = false;
    report(actions.set(path, stepped(field, value, present, direction)));
    api.update(actions.value(field, index));
  };

  if (chosen) {
    input = makeChoice(field, id, errorId, commit);
  } else if (field.kind === 'flag') {
    input = el('input', { id, type: 'checkbox', 'aria-describedby': errorId, change: () => commit(String(input.checked)) });
  } else {
    input = el('input', {
      id, type: 'text', autocomplete: 'off', autocapitalize: field.kind === 'text' ? 'words' : 'off',
      spellcheck: 'false', enterkeyhint: 'done', 'aria-describedby': stepper ? `${id}-unit ${errorId}` : errorId,
      input: () => { dirty = true; },
      // A value put back by hand is no change, but its complaint has to go.
      change: () => commit(input.value),
    });
  }

  // A name that is tapped is meant to be another one: the first letter takes its place.
  if (field.path === 'cooks[].name' || field.path === 'title') selectOnEntry(input);

  // The inches in the field, or in use in their place; null for what is not read here ("5' 10").
  const inchesNow = () => {
    const start = actions.start(path);
    const inches = input.value.trim() !== '' ? numberOf(input.value.trim())
      : typeof start === 'number' ? fromOwn(actions.value(field, index), start) : 0;
    return inches !== null && inches >= 0 ? split(inches) : null;
  };
  const flip = (part) => {
    const [whole, parts] = inchesNow() ?? [];
    if (whole === undefined) return;
    input.value = sixteenthsText(whole + (parts ^ part) / 16);
    commit(input.value);
    mark();
  };
  const chips = stepper && field.kind === 'length' && el('div', { class: keys ? 'chips own-row' : 'chips', role: 'group', hidden: true, 'aria-label': `Fractions of an inch: ${name}` },
    // A keyboard has the bar, and needs no stop for each of them.
    ...sixteenths.map((part) => el('button', { type: 'button', tabindex: '-1', text: fraction(part), click: () => flip(part) })));
  const mark = () => {
    const [, parts] = inchesNow() ?? [0, 0];
    [...chips.children].forEach((chip, i) => chip.setAttribute('aria-pressed', String((parts & sixteenths[i]) > 0)));
  };
  if (chips) {
    // The field keeps the focus, and with it the keypad.
    chips.addEventListener('mousedown', (event) => event.preventDefault());
    input.addEventListener('input', mark);
    input.addEventListener('blur', () => setHidden(chips, !keys || !inInches(field, actions.units())));
    input.addEventListener('focus', () => {
      setHidden(chips, !inInches(field, actions.units()));
      mark();
    });
  }

  const buttons = stepper && [
    el('button', { type: 'button', class: 'step', text: '\u2212', 'aria-label': `Less: ${name}`, click: () => step(-1) }),
    el('button', { type: 'button', class: 'step', text: '+', 'aria-label': `More: ${name}`, click: () => step(1) }),
  ];
  const clearButton = !chosen && field.absent === 'unknown' && field.kind !== 'flag'
    && el('button', { type: 'button', class: 'clear', text: '\u00D7', 'aria-label': `Not known: ${name}`, click: clear });
  const unit = stepper && el('span', { class: 'unit', id: `${id}-unit` });
  const help = field.measure && el('div', { class: 'help', id: `${id}-help`, hidden: true }, el('p', { text: field.measure }), howTo(field.path));
  const ask = help && el('button', {
    type: 'button', class: 'ask', text: '?', 'aria-expanded': 'false', 'aria-controls': help.id,
    'aria-label': `${stepper ? 'How to measure' : 'What this means'}: ${name}`,
    click: () => {
      setHidden(help, !help.hidden);
      ask.setAttribute('aria-expanded', String(!help.hidden));
    },
  });

  const label = field.kind === 'flag' && !chosen
    ? el('label', { class: 'check', for: id }, input, field.question)
    : el('label', { for: id, text: field.question });
  const entry = label.contains(input) ? null
    : el('div', { class: 'entry' }, buttons && buttons[0], input, unit, buttons && buttons[1], clearButton, chips);
  const root = el('div', { class: 'field' }, label, ask, help, entry, error);
  root.dataset.path = path;

  const api = {
    path, root, input, field, index,
    // `value`: { text or null, unit, scale, offset (own = shown * scale + offset), placeholder, usual: the choice that an absent one means or null }. A field being typed in keeps what is in it.
    update(value) {
      if (clearButton) setHidden(clearButton, value.text === null);
      // With nothing to begin from there is nothing to step.
      const begins = value.text !== null || typeof actions.start(path) === 'number';
      for (const button of buttons || []) setHidden(button, !begins);
      if (unit) setText(unit, value.unit);
      if (keys) setHidden(chips, !inInches(field, actions.units()));
      if (value.usual) setText(input.firstElementChild, `${value.usual} (usual)`);
      if (input.type === 'text') {
        input.inputMode = inputMode(field);
        const placeholder = value.text === null ? value.placeholder : '';
        if (input.placeholder !== placeholder) input.placeholder = placeholder;
      }
      if (dirty && (input === document.activeElement || input.hasAttribute('aria-invalid'))) return;
      if (dirty) {
        dirty = false;
        shown = null;
      }
      if (input.type === 'checkbox') {
        input.checked = value.text === 'true';
      } else if (shown !== (value.text ?? '')) {
        shown = value.text ?? '';
        if (input.value !== shown) input.value = shown;
        if (keys) mark();
      }
    },
    // The whole station was replaced: what was refused belongs to the old one.
    forget() {
      dirty = false;
      shown = null;
      report([]);
    },
  };
  return api;
}
