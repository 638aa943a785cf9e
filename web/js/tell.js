// What the page has to say by itself, above everything else: one sentence, and at most one thing to
// do about it. One at a time: a newer one takes the place of what it makes old, and what still holds
// afterwards (`waits`) has its turn when the other is closed.

import { el, setHidden, setText } from './dom.js';

const find = (id) => document.getElementById(id);

// `notice(text)` shows the sentence; '' takes it away.
export function makeTell(notice) {
  const box = find('notice');
  const close = find('notice-close');
  const button = el('button', { type: 'button', class: 'plain', hidden: true });
  const waiting = [];
  let shown = null;  // { text, label, action, waits }, or null: nothing, or what was said before this

  function put(one) {
    shown = one;
    notice(one?.text ?? '');
    setText(button, one?.label ?? '');
    setHidden(button, !one?.label);
    setText(close, one?.label ? 'Not now' : 'Got it');
    box.classList.add('over');
  }
  const next = () => put(waiting.shift() ?? null);

  button.addEventListener('click', () => {
    const { action } = shown;
    put(null);
    action();
    if (box.hidden) next();
  });
  close.before(button);
  close.addEventListener('click', next);

  return (text, { label = '', action = null, waits = false } = {}) => {
    const one = { text, label, action, waits };
    const before = box.hidden ? null : shown;
    if (text === '') {
      if (!before?.waits) next();
    } else if (waits && !box.hidden && before?.text !== text) {
      if (!waiting.some((other) => other.text === text)) waiting.push(one);
    } else {
      if (before?.waits && before.text !== text) waiting.unshift(before);
      put(one);
    }
  };
}
