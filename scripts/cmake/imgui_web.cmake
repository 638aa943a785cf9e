# Dear ImGui with its GLFW and OpenGL backends for the browser, and the flags that every page of
# ours is compiled and linked with. The app and the empty page share both.

# Measured: the demo and debug windows are 109 KB of the download; files do not exist in a page.
add_library(imgui STATIC EXCLUDE_FROM_ALL
  "${imgui_SOURCE_DIR}/imgui.cpp"
  "${imgui_SOURCE_DIR}/imgui_draw.cpp"
  "${imgui_SOURCE_DIR}/imgui_tables.cpp"
  "${imgui_SOURCE_DIR}/imgui_widgets.cpp"
  "${imgui_SOURCE_DIR}/backends/imgui_impl_glfw.cpp"
  "${imgui_SOURCE_DIR}/backends/imgui_impl_opengl3.cpp")
target_include_directories(imgui SYSTEM PUBLIC
  "${imgui_SOURCE_DIR}" "${imgui_SOURCE_DIR}/backends")
target_compile_definitions(imgui PUBLIC
  IMGUI_IMPL_OPENGL_ES3
  IMGUI_DISABLE_OBSOLETE_FUNCTIONS
  IMGUI_DISABLE_FILE_FUNCTIONS
  $<$<NOT:$<CONFIG:Debug>>:IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS>)
target_compile_options(imgui PRIVATE
  -fno-exceptions -fno-rtti $<IF:$<CONFIG:Debug>,-O1,-Oz>)

# Small code for the interface: it is drawn a few times a second, and downloaded on one bar of
# signal. Closure shrinks the script by more than a third.
add_library(hearthsight_web INTERFACE)
target_compile_options(hearthsight_web INTERFACE $<IF:$<CONFIG:Debug>,-O1,-Oz>)
target_link_options(hearthsight_web INTERFACE
  $<IF:$<CONFIG:Debug>,-O1,-Oz>
  $<IF:$<CONFIG:Debug>,-sASSERTIONS=1,-sASSERTIONS=0>
  $<$<CONFIG:Debug>:-g2>
  "$<$<NOT:$<CONFIG:Debug>>:SHELL:--closure 1>"
  -sUSE_GLFW=3
  -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
  -sENVIRONMENT=web
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
