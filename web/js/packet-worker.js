// The same program once more, without a page: it makes the packet (packet.js) and hands the files
// over. It takes the files of its own build, so what it makes is what the page would.

import { makeDesk } from './desk.js';
import { makeEngine } from './engine.js';
import { makeFiles } from './packet.js';

const place = (name) => new URL(`../${name}`, globalThis.location.href);
const scripts = globalThis.trustedTypes?.createPolicy('program', { createScriptURL: (text) => text });

async function instantiate(name, imports) {
  const answer = await fetch(place(name));
  if (!answer.ok) throw new Error(`${name} did not load`);
  return WebAssembly.instantiate(await answer.arrayBuffer(), imports);
}

// As boot.js does for the page.
function loadProgram() {
  return new Promise((resolve, reject) => {
    let first;
    const absent = new Proxy({}, { get: (none, name) => () => { throw new Error(`function ${name} is not here yet`); } });
    globalThis.Module = {
      instantiateWasm(imports, receive) {
        imports.later = absent;
        instantiate('hearthsight.wasm', imports).then(({ instance, module }) => {
          first = instance.exports;
          receive(instance, module);
        }).catch(reject);
        return {};
      },
      bringLater: () => instantiate('later.wasm', { first }),
      onRuntimeInitialized: () => resolve(globalThis.Module),
      onAbort: (what) => reject(new Error(String(what))),
    };
    // Nobody looks on.
    globalThis.hsHost = { changed() {}, wake() {}, openSheet() {}, cursor() {} };
    const script = place('hearthsight.js').href;
    globalThis.importScripts(scripts ? scripts.createScriptURL(script) : script);
  });
}

let stopped = false;
async function make({ config, units, address, letter }) {
  const engine = makeEngine(await loadProgram());
  engine.start(null, units);
  await engine.bringDesk();
  const desk = makeDesk(engine);
  const problems = desk.openJson(config);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  const files = await makeFiles(desk, address, letter,
    (progress) => globalThis.postMessage({ progress }), () => stopped);
  globalThis.postMessage({ files }, files.map(({ bytes }) => bytes.buffer));
}

globalThis.onmessage = ({ data }) => {
  if (data === 'stop') {
    stopped = true;
    return;
  }
  make(data).catch((error) => globalThis.postMessage({ failed: String(error) }));
};
