# The flags that every page of ours is compiled and linked with: the app and the empty page.

# Small code for the interface: it is drawn a few times a second, and downloaded on one bar of
# signal. Closure shrinks the script by more than a third.
add_library(hearthsight_web INTERFACE)
target_compile_options(hearthsight_web INTERFACE $<IF:$<CONFIG:Debug>,-O1,-Oz>)
target_link_options(hearthsight_web INTERFACE
  $<IF:$<CONFIG:Debug>,-O1,-Oz>
  $<IF:$<CONFIG:Debug>,-sASSERTIONS=1,-sASSERTIONS=0>
  $<$<CONFIG:Debug>:-g2>
  "$<$<NOT:$<CONFIG:Debug>>:SHELL:--closure 1>"
  # wasm-opt puts functions of one caller into it; into one whose locals then need two bytes each
  # that makes more code, not less (measured: 2 KB of the download). Never ignore-implicit-traps: with
  # it the optimiser reads through an index that is not there yet, and the program stops (seen on
  # Debian 13: the page did not open).
  $<$<NOT:$<CONFIG:Debug>>:-sBINARYEN_EXTRA_PASSES=one-caller-inline-max-function-size=60>
  -sUSE_GLFW=3
  -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
  -sENVIRONMENT=web,worker
  -sFILESYSTEM=0
  -sDYNAMIC_EXECUTION=0
  -sMALLOC=emmalloc
  -sALLOW_MEMORY_GROWTH=1
  -sTOTAL_STACK=1MB
  -sEXIT_RUNTIME=0)

# em++ 3.1.6 always gives the page its views of the memory; newer ones must be asked.
set(HEARTHSIGHT_HEAP_EXPORTS "")
if(EMSCRIPTEN_VERSION VERSION_GREATER_EQUAL "3.1.40")
  set(HEARTHSIGHT_HEAP_EXPORTS ",HEAPU8,HEAPF64")
endif()
