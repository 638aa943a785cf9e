# The target `window`: build/native/hearthsight-window. There is none where its libraries are
# missing; everything else builds without them.
find_package(glfw3 3.3 CONFIG QUIET)
find_library(HEARTHSIGHT_GLES GLESv2)
find_path(HEARTHSIGHT_GLES_HEADERS GLES3/gl3.h)
if(NOT glfw3_FOUND OR NOT HEARTHSIGHT_GLES OR NOT HEARTHSIGHT_GLES_HEADERS)
  message(STATUS "No native window: GLFW 3.3 or OpenGL ES is missing (libglfw3-dev, libgles-dev)")
  return()
endif()

add_library(imgui_gles STATIC EXCLUDE_FROM_ALL "${imgui_SOURCE_DIR}/backends/imgui_impl_opengl3.cpp")
target_include_directories(imgui_gles SYSTEM PUBLIC
  "${imgui_SOURCE_DIR}/backends" "${HEARTHSIGHT_GLES_HEADERS}")
target_compile_definitions(imgui_gles PUBLIC IMGUI_IMPL_OPENGL_ES3)
target_compile_options(imgui_gles PRIVATE -fno-exceptions -fno-rtti)
target_link_libraries(imgui_gles PUBLIC imgui "${HEARTHSIGHT_GLES}")

file(GLOB native_files CONFIGURE_DEPENDS "${CMAKE_CURRENT_LIST_DIR}/*.cpp"
  "${CMAKE_CURRENT_LIST_DIR}/../render/*.cpp")
add_executable(window EXCLUDE_FROM_ALL ${native_files})
target_link_libraries(window PRIVATE hearthsight_own hearthsight_lean web_core imgui_gles glfw)
# The whole faces: nobody waits for them to arrive.
hearthsight_embed(window font_sans "${HEARTHSIGHT_FONT_DIR}/DejaVuSans.ttf")
hearthsight_embed(window font_sans_bold "${HEARTHSIGHT_FONT_DIR}/DejaVuSans-Bold.ttf")
hearthsight_embed_shaders(window)
set_target_properties(window PROPERTIES OUTPUT_NAME hearthsight-window
  RUNTIME_OUTPUT_DIRECTORY "${CMAKE_BINARY_DIR}")
