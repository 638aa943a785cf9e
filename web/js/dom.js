// Making and updating elements. All text goes in as text: nothing here parses markup.

function filled(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name === 'text') element.textContent = value;
    else if (typeof value === 'function') element.addEventListener(name, value);
    else element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children.filter(Boolean));
  return element;
}

// el('p', { class: 'note', text: 'Hello' }, child, ...). Functions become listeners: { click }.
export const el = (tag, attributes = {}, ...children) => filled(document.createElement(tag), attributes, children);

// The same in a drawing: svgEl('path', { d: 'M0 0h9' }).
export const svgEl = (tag, attributes = {}, ...children) =>
  filled(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);

// Touches the document only when something differs, so that a reader's place and a selection stay.
export function setText(element, text) {
  const wanted = text ?? '';
  if (element.textContent !== wanted) element.textContent = wanted;
}

export function setHidden(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}

// Brings the children of `parent` in line with `items`: the first item keeps the first child.
// `make()` gives an empty child, `update(child, item, index)` fills it.
export function syncList(parent, items, make, update) {
  while (parent.children.length > items.length) parent.lastElementChild.remove();
  items.forEach((item, index) => {
    if (index >= parent.children.length) parent.append(make(item, index));
    update(parent.children[index], item, index);
  });
}

// Says on the button that was pressed, where the finger still is, how that went, for some seconds.
const saidMs = 4000;
const saying = new Map();
export function sayOn(button, words) {
  const label = saying.get(button)?.label ?? button.textContent;
  clearTimeout(saying.get(button)?.timer);
  // What stands beside it stays where it is.
  button.style.minWidth = `${button.offsetWidth}px`;
  setText(button, words);
  const timer = setTimeout(() => {
    saying.delete(button);
    setText(button, label);
    button.style.minWidth = '';
  }, saidMs);
  saying.set(button, { label, timer });
}

const verdicts = {
  ok: ['\u25CF', 'Good'],
  warn: ['\u25B2', 'Watch'],
  fail: ['\u25A0', 'Does not work'],
  unknown: ['\u25C6', 'Not known'],
};

// A verdict is a shape and a word; the style sheet's colour only repeats them.
export const verdictMark = () => el('span', { class: 'verdict' },
  el('span', { 'aria-hidden': 'true' }), ' ', el('span'));

export function setVerdict(element, verdict) {
  const [shape, word] = verdicts[verdict] || verdicts.unknown;
  if (element.dataset.verdict !== verdict) element.dataset.verdict = verdict;
  setText(element.firstElementChild, shape);
  setText(element.lastElementChild, word);
}

// Where a file of this build is.
export const ownFile = (name) => new URL(name, new URL(document.documentElement.dataset.files, document.baseURI)).href;
