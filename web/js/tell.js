// What the page has to say by itself, above everything else: one sentence, and at most one thing to
// do about it.

import { el } from './dom.js';

const find = (id) => document.getElementById(id);

// `notice(text)` shows the sentence; '' takes it away.
export function makeTell(notice) {
  const button = el('button', { type: 'button', class: 'plain', hidden: true });
  let act = null;
  const hide = () => { button.hidden = true; };
  button.addEventListener('click', () => {
    const todo = act;
    hide();
    notice('');
    todo();
  });
  find('notice-close').before(button);
  find('notice-close').addEventListener('click', hide);

  return (text, { label = '', action = null } = {}) => {
    notice(text);
    act = action;
    button.textContent = label;
    button.hidden = !label || !text;
    find('notice').classList.add('over');
  };
}
