// The canvas as web/app/window.cpp sees it: its WebGL 2 context and its size. em++ links this into
// the page's script. GL is em++'s own table of what OpenGL holds.
mergeInto(LibraryManager.library, {
  // 0: no WebGL 2 here. Nothing in the picture has depth, and Dear ImGui smooths edges itself.
  canvas_start__deps: ['$GL'],
  canvas_start: function() {
    var canvas = Module['canvas'];
    var context = GL.createContext(canvas, {
      majorVersion: 2, alpha: false, depth: false, stencil: false, antialias: false,
    });
    if (!context) return 0;
    GL.makeContextCurrent(context);
    canvas.addEventListener('webglcontextlost', function() { Module['_hs_context_lost'](); });
    return 1;
  },
  canvas_set_size: function(width, height) {
    var canvas = Module['canvas'];
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
  },
});
