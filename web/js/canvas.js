// The canvas's size and its frames. The box comes from the style sheet, and a frame is drawn only
// while C++ asks for one.

// Beyond two device pixels per CSS pixel a phone pays for what no eye resolves.
const highestRatio = 2;

const ratio = () => Math.min(globalThis.devicePixelRatio || 1, highestRatio);

// How much of the canvas lies under a notch or a rounded corner, CSS px. Only the edges that the
// canvas shares with the screen count: the bar keeps clear of its own.
function insets(canvas) {
  const probe = getComputedStyle(document.getElementById('safe-area'));
  const box = canvas.getBoundingClientRect();
  const near = (a, b) => Math.abs(a - b) < 1;
  const at = (touches, side) => (touches ? Number.parseFloat(probe[`padding${side}`]) || 0 : 0);
  return {
    top: at(near(box.top, 0), 'Top'),
    right: at(near(box.right, innerWidth), 'Right'),
    bottom: at(near(box.bottom, innerHeight), 'Bottom'),
    left: at(near(box.left, 0), 'Left'),
  };
}

// Frames on demand. `drawn` is told after each one.
export function makeFrames(engine, drawn) {
  let asked = 0;
  let running = false;
  let stopped = false;
  const draw = (time) => {
    asked = 0;
    running = true;
    const more = engine.frame(time);
    running = false;
    drawn();
    if (more > 0) wake();
  };
  // C++ may ask for a frame while it draws one; it then also says so by what hs_frame returns.
  function wake() {
    if (!asked && !running && !stopped) asked = requestAnimationFrame(draw);
  }
  return {
    wake,
    // A canvas whose size has changed is empty: filled before it is shown.
    drawNow(time) {
      if (running || stopped) return;
      cancelAnimationFrame(asked);
      draw(time);
    },
    stop() {
      stopped = true;
      cancelAnimationFrame(asked);
      asked = 0;
    },
    go() {
      stopped = false;
      wake();
    },
  };
}

// Starts the picture. False: no WebGL 2 here, and the document is the page.
export function startCanvas(engine, canvas) {
  return engine.startCanvas(canvas.clientWidth, canvas.clientHeight, ratio());
}

// Follows the canvas's box, the pixel ratio and the insets; at most one change a frame, because
// some phones lose the context when a canvas changes its size many times in a row.
export function followSize(engine, canvas, frames) {
  let last = '';
  let asked = 0;
  const measure = (time) => {
    asked = 0;
    const width = canvas.clientWidth;
    const height = canvas.clientHeight;
    if (!width || !height) return;
    const inset = insets(canvas);
    const now = [width, height, ratio(), ...Object.values(inset)].join();
    if (now === last) return;
    last = now;
    engine.resizeCanvas(width, height, ratio(), inset);
    frames.drawNow(time);
  };
  const soon = () => {
    if (!asked) asked = requestAnimationFrame(measure);
  };
  new ResizeObserver(soon).observe(canvas);
  addEventListener('resize', soon);
  addEventListener('orientationchange', soon);
  globalThis.visualViewport?.addEventListener('resize', soon);
  globalThis.visualViewport?.addEventListener('scroll', soon);
  // A media query for one ratio changes once; the next one needs its own.
  const watchRatio = () => {
    matchMedia(`(resolution: ${globalThis.devicePixelRatio}dppx)`)
      .addEventListener('change', () => { soon(); watchRatio(); }, { once: true });
  };
  watchRatio();
  measure(performance.now());
}

// A phone takes the context away when the page is in the background. Nothing but the picture is
// lost: the station lives outside GL. After two failures the document takes over.
export function followContext(engine, canvas, frames, giveUp) {
  let failures = 0;
  canvas.addEventListener('webglcontextlost', (event) => {
    event.preventDefault();
    frames.stop();
  });
  canvas.addEventListener('webglcontextrestored', () => {
    if (startCanvas(engine, canvas)) {
      frames.go();
    } else if (++failures >= 2) {
      giveUp();
    }
  });
}
