// The packet, made in goes: between them whoever waits hears how far it is and may stop it, which
// keeps the best plans so far. A worker makes it, so that the page stays under the finger; where none
// can be had, the page does it itself.

// So many steps of a search are some 20 ms of a desktop computer.
const stepsAtOnce = 20000;
const rest = () => new Promise((done) => { setTimeout(done, 0); });

// `desk` is makeDesk's. `told(progress)` after every go, `stopped()` before it.
export async function makeFiles(desk, address, letter, told, stopped) {
  desk.beginPacket();
  for (let more = true; more && !stopped();) {
    const progress = desk.advancePacket(stepsAtOnce);
    ({ more } = progress);
    told(progress);
    await rest();
  }
  return desk.packetFiles(address, letter);
}

// What the page holds on to: { files, stop() }; `files` settles with [{ name, bytes }]. `script`: where
// packet-worker.js is.
export function makePacket(desk, { script, address, letter, units, told }) {
  let stopped = false;
  let worker = null;
  const here = () => makeFiles(desk, address, letter, told, () => stopped);
  const there = () => new Promise((resolve, reject) => {
    // The page's policy asks for a policy of its own for each place that a script comes from.
    const scripts = globalThis.trustedTypes?.createPolicy('packet', { createScriptURL: (text) => text });
    worker = new Worker(scripts ? scripts.createScriptURL(script) : script);
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error('no worker'));
    };
    worker.onmessage = ({ data }) => {
      if (data.progress) told(data.progress);
      if (data.files) resolve(data.files);
      if (data.failed) reject(new Error(data.failed));
    };
    worker.postMessage({ config: desk.configText(), units, address, letter });
    if (stopped) worker.postMessage('stop');
  });
  const files = there().catch(here).finally(() => worker?.terminate());
  return {
    files,
    stop() {
      stopped = true;
      worker?.postMessage('stop');
    },
  };
}
