// Runs before the first paint, so it is short: the colours last chosen on this device, and the
// object that em++'s script takes its canvas from and reports to.
(function () {
  'use strict';
  try {
    if (localStorage.getItem('hearthsight:theme') === 'dusk') {
      document.documentElement.dataset.theme = 'dusk';
    }
  } catch (error) {
    // Storage may be switched off; the page then starts in its own colours.
  }
  var started;
  var failed;
  globalThis.Module = {
    // em++'s script writes it back as well.
    get canvas() { return document.getElementById('canvas'); },
    set canvas(same) {},
    // Settles when the C++ functions may be called.
    ready: new Promise(function (resolve, reject) { started = resolve; failed = reject; }),
    onRuntimeInitialized: function () { started(); },
    onAbort: function (what) { failed(new Error(String(what))); },
  };
  // A script that does not arrive says so only here, in the capture phase.
  addEventListener('error', function (event) {
    if (event.target && event.target.localName === 'script') failed(new Error('a script did not load'));
  }, true);
}());
