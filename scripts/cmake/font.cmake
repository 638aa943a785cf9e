# Where the page's font is: DejaVu Sans, which is cut down and compiled into the page.
# Debian's package says where its font and licence are; other systems set these two by hand.
execute_process(COMMAND dpkg -L fonts-dejavu-core
  OUTPUT_VARIABLE listing ERROR_QUIET OUTPUT_STRIP_TRAILING_WHITESPACE)
string(REGEX MATCH "[^\n]*/DejaVuSans\\.ttf" font "${listing}")
string(REGEX MATCH "[^\n]*/copyright" font_licence "${listing}")
get_filename_component(font_folder "${font}" DIRECTORY)
set(HEARTHSIGHT_FONT_DIR "${font_folder}" CACHE PATH "Folder of DejaVuSans.ttf and DejaVuSans-Bold.ttf")
set(HEARTHSIGHT_FONT_LICENCE "${font_licence}" CACHE FILEPATH "Licence text of that font")
foreach(file "${HEARTHSIGHT_FONT_DIR}/DejaVuSans.ttf" "${HEARTHSIGHT_FONT_DIR}/DejaVuSans-Bold.ttf"
    "${HEARTHSIGHT_FONT_LICENCE}")
  if(NOT EXISTS "${file}")
    message(FATAL_ERROR "The font DejaVu Sans or its licence is missing ('${file}'): run scripts/setup (Debian package: fonts-dejavu-core), or set HEARTHSIGHT_FONT_DIR and HEARTHSIGHT_FONT_LICENCE")
  endif()
endforeach()
