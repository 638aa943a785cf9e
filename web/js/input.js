// What hands do: pointers and wheel on the canvas, and every key of the page.
const kinds = { pointerdown: 0, pointermove: 1, pointerup: 2, pointercancel: 3, pointerleave: 3 };
// What a browser makes of a hand on the canvas by itself: scrolling, selecting, menus, files dropped.
const GESTURES = ['touchstart', 'touchmove', 'touchend', 'touchcancel', 'mousedown', 'mouseup', 'wheel',
  'drop', 'dragover', 'contextmenu'];

export function listenToPointers(engine, canvas, frames) {
  const held = new Set();
  const hand = (event) => {
    const kind = kinds[event.type];
    const touch = event.pointerType !== 'mouse';
    // A mouse has other buttons; only the main one acts.
    if (!touch && kind !== 1 && kind !== 3 && event.button !== 0) return;
    if (kind === 0) {
      canvas.setPointerCapture(event.pointerId);
      canvas.focus({ preventScroll: true, focusVisible: false });
      held.add(event.pointerId);
    } else if (event.type === 'pointerleave') {
      // After a touch this is only its own end; for a mouse it ends the hover.
      if (touch || held.has(event.pointerId)) return;
    } else if (kind !== 1) {
      if (!held.delete(event.pointerId)) return;
    } else if (touch && !held.has(event.pointerId)) {
      return;
    }
    event.preventDefault();
    const box = canvas.getBoundingClientRect();
    engine.pointer(kind, event.pointerId, touch, event.clientX - box.left, event.clientY - box.top,
      event.timeStamp);
    frames.wake();
  };
  for (const type of Object.keys(kinds)) canvas.addEventListener(type, hand, { passive: false });
}

export function guardPointers(engine, canvas, frames, active) {
  for (const type of GESTURES) {
    addEventListener(type, (event) => {
      if (event.target !== canvas) return;
      if (event.cancelable) event.preventDefault();
      if (type === 'wheel' && active()) {
        // Lines and pages of the browser, in CSS px.
        const scale = [1, 16, canvas.clientHeight][event.deltaMode] || 1;
        engine.wheel(event.deltaX * scale, event.deltaY * scale);
        frames.wake();
      }
    }, { capture: true, passive: false });
  }
  // A hand anywhere on the page has left the keys: no outline then, also where a tap moves the focus.
  addEventListener('pointerdown', () => { delete document.documentElement.dataset.keys; }, { capture: true });
  canvas.addEventListener('blur', () => {
    if (active()) engine.blur();
    frames.wake();
  });
}

const takesText = (target) => target instanceof HTMLElement
  && target.matches('input[type="text"]:not([readonly]), textarea, [contenteditable="true"]');

// `actions`: { escape() -> used?, undo(), redo() }.
export function guardKeys(engine, canvas, frames, active, actions) {
  const handle = (event) => {
    const down = event.type === 'keydown';
    if (event.isComposing) return;
    if (down) document.documentElement.dataset.keys = '';
    const command = event.ctrlKey || event.metaKey;
    if (down && event.key === 'Escape') {
      if (actions.escape()) event.preventDefault();
      return;
    }
    // Inside a text input these belong to the text.
    if (down && command && !takesText(event.target)) {
      const key = event.key.toLowerCase();
      if (key === 'z' || key === 'y') {
        event.preventDefault();
        if (key === 'y' || event.shiftKey) actions.redo(); else actions.undo();
        return;
      }
    }
    if (event.target !== canvas || !active()) return;
    const modifiers = (event.shiftKey ? 1 : 0) | (event.ctrlKey ? 2 : 0) | (event.altKey ? 4 : 0)
      | (event.metaKey ? 8 : 0);
    if (engine.key(event.code, down, modifiers)) event.preventDefault();
    frames.wake();
  };
  for (const type of ['keydown', 'keyup']) addEventListener(type, handle, { capture: true });
}
