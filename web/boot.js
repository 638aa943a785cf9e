// Runs before the first paint, so it is short: the colours last chosen on this device, and the
// object that em++'s script takes its canvas and its program from and reports to.
(function () {
  'use strict';
  try {
    if (localStorage.getItem('hearthsight:theme') === 'dusk') {
      document.documentElement.dataset.theme = 'dusk';
    }
  } catch (error) {
    // Storage may be switched off; the page then starts in its own colours.
  }
  // Where this build's files are: the page names one of them.
  var folder = new URL(document.documentElement.dataset.files, document.baseURI);
  var started;
  var failed;
  var first;  // what the first file of the program gives to the second
  // Compiled while it comes in, where the browser and the server's content type allow it.
  function instantiate(name, imports) {
    var place = new URL(name, folder);
    function whole() {
      return fetch(place).then(function (response) {
        if (!response.ok) throw new Error(name + ' did not load');
        return response.arrayBuffer();
      }).then(function (bytes) { return WebAssembly.instantiate(bytes, imports); });
    }
    if (!WebAssembly.instantiateStreaming) return whole();
    return WebAssembly.instantiateStreaming(fetch(place), imports).catch(whole);
  }
  // What stands in for functions of the second file until it is there. Nothing calls them before.
  var absent = new Proxy({}, {
    get: function (none, name) {
      return function () { throw new Error('function ' + name + ' is in later.wasm, which is not here yet'); };
    },
  });
  globalThis.Module = {
    // em++'s script writes it back as well.
    get canvas() { return document.getElementById('canvas'); },
    set canvas(same) {},
    // Settles when the C++ functions may be called: those of the first file.
    ready: new Promise(function (resolve, reject) { started = resolve; failed = reject; }),
    instantiateWasm: function (imports, receive) {
      imports.later = absent;
      instantiate('hearthsight.wasm', imports).then(function (made) {
        first = made.instance.exports;
        receive(made.instance, made.module);
      }).catch(failed);
      return {};
    },
    // Settles when all of them may be. It fills the places in the table that they are called through.
    bringLater: function () { return instantiate('later.wasm', { first: first }); },
    onRuntimeInitialized: function () { started(); },
    onAbort: function (what) { failed(new Error(String(what))); },
  };
  // A script that does not arrive says so only here, in the capture phase.
  addEventListener('error', function (event) {
    if (event.target && event.target.localName === 'script') failed(new Error('a script did not load'));
  }, true);
}());
