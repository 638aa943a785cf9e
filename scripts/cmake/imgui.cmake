# Dear ImGui. For the browser with its GLFW and OpenGL backends; natively its core alone, on which
# the tests run the panels without a window.
function(hearthsight_imgui target)
  add_library(${target} STATIC EXCLUDE_FROM_ALL
    "${imgui_SOURCE_DIR}/imgui.cpp"
    "${imgui_SOURCE_DIR}/imgui_draw.cpp"
    "${imgui_SOURCE_DIR}/imgui_tables.cpp"
    "${imgui_SOURCE_DIR}/imgui_widgets.cpp")
  target_include_directories(${target} SYSTEM PUBLIC "${imgui_SOURCE_DIR}")
  target_compile_definitions(${target} PUBLIC
    IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_FILE_FUNCTIONS ${ARGN})
  target_compile_options(${target} PRIVATE -fno-exceptions -fno-rtti)
  if(EMSCRIPTEN)
    target_sources(${target} PRIVATE
      "${imgui_SOURCE_DIR}/backends/imgui_impl_glfw.cpp"
      "${imgui_SOURCE_DIR}/backends/imgui_impl_opengl3.cpp")
    target_include_directories(${target} SYSTEM PUBLIC "${imgui_SOURCE_DIR}/backends")
    # Measured: the demo and debug windows are 109 KB of the download.
    target_compile_definitions(${target} PUBLIC
      IMGUI_IMPL_OPENGL_ES3
      $<$<NOT:$<CONFIG:Debug>>:IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS>)
    target_compile_options(${target} PRIVATE $<IF:$<CONFIG:Debug>,-O1,-Oz>)
  endif()
endfunction()

# The page brings its own lettering.
hearthsight_imgui(imgui IMGUI_DISABLE_DEFAULT_FONT)
