// em++'s script takes its canvas from here.
var Module = { canvas: document.getElementById('canvas') };
