// The drawings and plots: each a part to open, with the picture, a way to save it as a file and a way
// to see it alone, where its text can be selected. A picture is drawn only while its part is open. It
// is shown as an image made from the engine's SVG text; nothing here parses markup. A plot stands
// beside the section it belongs to, with its values as a table under it.

import { el, setHidden, setText, syncList } from './dom.js';
import { fillTable, makeTable, scroller } from './results.js';

const find = (id) => document.getElementById(id);
// While something is dragged, a picture waits for the hand to rest.
const restMs = 250;

const type = 'image/svg+xml';
const fileOf = (text) => URL.createObjectURL(new Blob([text], { type }));

export function makeDrawings(engine) {
  const places = [...document.querySelectorAll('[data-drawings]')];
  const list = find('drawings');
  const root = document.documentElement;
  const person = () => engine.person();

  function save({ name }) {
    const place = fileOf(engine.drawing(name, person(), 'file').svg);
    el('a', { href: place, download: `hearthsight-${name}.svg` }).click();
    // Some browsers read it only after this turn.
    setTimeout(() => URL.revokeObjectURL(place), 60000);
  }

  function make() {
    const part = el('details', { class: 'drawing' },
      el('summary'),
      el('figure', {},
        scroller(el('img')),
        el('figcaption')),
      el('div', { class: 'row' },
        el('button', { type: 'button', class: 'plain', text: 'Save drawing', click: () => save(part.dataset) }),
        el('a', { class: 'plain button', target: '_blank', rel: 'noopener', text: 'Open it alone' })),
      el('div', { class: 'values' }));
    part.addEventListener('toggle', () => draw(part));
    return part;
  }

  // Only what is open and on the screen; what is the same stays.
  function draw(part) {
    if (!part.open || part.offsetParent === null) return;
    const { title, description, svg, table } = engine.drawing(part.dataset.name, person(), root.dataset.theme);
    if (part.shown === svg) return;
    part.shown = svg;
    const image = part.querySelector('img');
    const old = image.src;
    image.src = fileOf(svg);
    image.alt = `${title}. ${description}`;
    part.querySelector('a').href = image.src;
    if (old) URL.revokeObjectURL(old);
    // What a plot shows is said under it, for who sees it and who does not.
    if (part.dataset.section) setText(part.querySelector('figcaption'), description);
    const values = part.querySelector('.values');
    setHidden(values, !table);
    syncList(values, table ? [table] : [], makeTable, (box, data) => {
      box.setAttribute('aria-label', data.caption);
      fillTable(box, data);
    });
  }

  const drawAll = () => { for (const part of places.flatMap((place) => [...place.children])) draw(part); };
  let timer = 0;
  const drawSoon = () => {
    clearTimeout(timer);
    timer = setTimeout(drawAll, restMs);
  };
  new MutationObserver(drawSoon).observe(root, { attributes: true, attributeFilter: ['data-theme'] });

  return {
    update(page) {
      for (const place of places) {
        const wanted = page.drawings.filter(({ section }) => section === place.dataset.drawings);
        syncList(place, wanted, make, (part, { name, title, caption, section }) => {
          Object.assign(part.dataset, { name, section });
          setText(part.querySelector('summary'), title);
          if (!part.shown) {
            setText(part.querySelector('figcaption'), caption);
            part.querySelector('img').alt = title;
          }
          part.querySelector('.scroll').setAttribute('aria-label', title);
        });
      }
      // Where there is no picture to drag, the drawings stand open under the heights.
      if (root.classList.contains('no-canvas') && find('drawings-part').parentElement !== find('panel-text')) {
        find('cook-lines').after(find('drawings-part'));
        for (const part of list.children) part.open = true;
        drawAll();
        return;
      }
      drawSoon();
    },
  };
}
