// What hands do: pointers and wheel on the canvas, and every key of the page.
//
// GLFW's own layer presses twice for one tap, never drags, and takes Backspace and Tab from every
// input of the page. So it sees nothing: capturing listeners on the window, in place before GLFW
// puts its own there, hand each event on and stop it.

const kinds = { pointerdown: 0, pointermove: 1, pointerup: 2, pointercancel: 3, pointerleave: 3 };
const GLFW_EVENTS = ['touchstart', 'touchmove', 'touchend', 'touchcancel', 'mousedown', 'mousemove',
  'mouseup', 'mouseenter', 'mouseleave', 'wheel', 'mousewheel', 'drop', 'dragover', 'contextmenu'];

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

// Both of these come before hs_canvas_start, which starts GLFW.
export function guardPointers(engine, canvas, frames, active) {
  for (const type of GLFW_EVENTS) {
    addEventListener(type, (event) => {
      if (event.target !== canvas) return;
      event.stopImmediatePropagation();
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
    event.stopImmediatePropagation();  // the browser's own action still follows
    const down = event.type === 'keydown';
    if (event.isComposing || event.type === 'keypress') return;
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
  for (const type of ['keydown', 'keypress', 'keyup']) addEventListener(type, handle, { capture: true });
}
