# Finds Emscripten's own toolchain file through em++ on the path, so that no place is named here.
find_program(HEARTHSIGHT_EMXX em++)
if(NOT HEARTHSIGHT_EMXX)
  message(FATAL_ERROR "em++ is missing: scripts/setup installs it (Debian package: emscripten)")
endif()
file(REAL_PATH "${HEARTHSIGHT_EMXX}" emxx)
get_filename_component(EMSCRIPTEN_ROOT_PATH "${emxx}" DIRECTORY)
include("${EMSCRIPTEN_ROOT_PATH}/cmake/Modules/Platform/Emscripten.cmake")
