// The parts of the document: on a phone one at a time as a sheet over the canvas, closed by its
// button, by Escape and by Back; on a wide screen all of them, always open.

const wideScreen = matchMedia('(min-width: 1000px)');

export const isWide = () => wideScreen.matches || document.documentElement.classList.contains('no-canvas');

const panel = (name) => document.getElementById(`panel-${name}`);
const head = (name) => document.getElementById(`head-${name}`);
const buttons = () => document.querySelectorAll('#bar [data-sheet]');

// `address` comes later, because it asks for the open sheet; `shown(name)` runs when one appears.
export function makeSheets({ shown }) {
  const sheet = document.getElementById('document');
  const stage = document.getElementById('stage');
  let open = null;
  let opener = null;
  let address = null;

  const mark = () => {
    for (const button of buttons()) {
      button.setAttribute('aria-expanded', String(button.dataset.sheet === open));
    }
    const covered = open !== null && !isWide();
    document.body.classList.toggle('sheet-open', covered);
    stage.inert = covered;
    if (covered) {
      sheet.setAttribute('role', 'dialog');
      sheet.setAttribute('aria-labelledby', `head-${open}`);
    } else {
      sheet.removeAttribute('role');
      sheet.removeAttribute('aria-labelledby');
    }
    for (const element of document.querySelectorAll('.panel')) {
      element.classList.toggle('open', element.id === `panel-${open}`);
    }
  };

  // Puts a sheet, or none, on the screen; touches no history.
  const show = (name) => {
    if (name !== null && !panel(name)) return;
    const was = open;
    open = name;
    mark();
    if (name !== null) {
      shown(name);
      if (!isWide()) sheet.scrollTop = 0;
      head(name).focus({ preventScroll: !isWide() });
    } else if (was !== null) {
      const back = opener?.isConnected ? opener : document.querySelector(`#bar [data-sheet="${was}"]`);
      opener = null;
      (back || document.getElementById('canvas')).focus({ preventScroll: true });
    }
  };

  // On a wide screen all parts are open: the bar shows the one that is being read.
  const markRead = () => {
    const read = isWide() ? [...buttons()].filter((button) => {
      const { top, height } = panel(button.dataset.sheet).getBoundingClientRect();
      return height > 0 && top <= innerHeight / 3;
    }).at(-1) : null;
    for (const button of buttons()) {
      if (button === read) button.setAttribute('aria-current', 'true'); else button.removeAttribute('aria-current');
    }
  };
  addEventListener('scroll', markRead, { capture: true, passive: true });

  wideScreen.addEventListener('change', () => {
    if (isWide()) open = null;
    mark();
    markRead();
  });

  const api = {
    use(given) { address = given; },
    current: () => open,
    show,
    open(name) {
      if (!panel(name)) return;
      if (isWide()) {
        shown(name);
        head(name).scrollIntoView({ block: 'start' });
        head(name).focus({ preventScroll: true });
        return;
      }
      if (open === null) {
        opener = document.activeElement;
        address.pushSheet(name);
      } else if (open !== name) {
        address.swapSheet(name);
      }
      show(name);
    },
    close() {
      if (open === null) return false;
      show(null);
      address.leaveSheet();
      return true;
    },
    remark: mark,
    // The document came after its sheet was opened: only now can its heading take the focus.
    arrived() {
      markRead();
      if (open !== null) head(open).focus({ preventScroll: true });
    },
  };

  for (const button of buttons()) {
    button.addEventListener('click', () => {
      if (open === button.dataset.sheet) api.close(); else api.open(button.dataset.sheet);
    });
  }
  document.getElementById('close').addEventListener('click', api.close);
  document.getElementById('skip').addEventListener('click', () => api.open('text'));
  return api;
}
