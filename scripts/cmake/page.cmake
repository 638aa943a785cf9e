# From a linked program and the static files to a folder that a web host can serve.
find_program(HEARTHSIGHT_NODE node REQUIRED)
set(HEARTHSIGHT_LIB "${CMAKE_SOURCE_DIR}/scripts/lib")

# The characters that the page shows. It draws text at any size itself, so hinting and layout
# tables are left out.
set(characters
  U+20-7E        # ASCII
  U+A0-17F       # Latin: degree, plus-minus, multiplication, quarters; people's names
  U+2010-2015    # hyphens and dashes
  U+2018-201F    # quotation marks
  U+2022,U+2026  # bullet, ellipsis
  U+2032-2033    # feet and inches
  U+2044         # fraction slash: a sixteenth is superscript, slash, subscript
  U+2070-208E    # superscripts and subscripts
  U+2150-215E    # fractions of one character
  U+2190-2195    # arrows
  U+2212         # minus
  U+2248,U+2260-2265  # about equal, not equal, at most, at least
  U+25B2-25BF    # triangles that open and close
  U+26A0         # warning sign
  U+2713-2717)   # check and cross
list(JOIN characters "," characters)
# What is set in bold: our own words and heights. The canvas takes all else, a name's accents for
# one, from the regular face.
set(bold_characters
  U+20-7E
  U+B0,U+B2-B3,U+B9,U+BC-BE  # degree, superscripts, quarters
  U+2013,U+2032-2033         # range, feet and inches
  U+2044,U+2070,U+2074-2079,U+2080-2089,U+215B-215E)
list(JOIN bold_characters "," bold_characters)

find_program(HEARTHSIGHT_PYFTSUBSET pyftsubset)
if(NOT HEARTHSIGHT_PYFTSUBSET)
  message(FATAL_ERROR "pyftsubset is missing: run scripts/setup (Debian package: fonttools)")
endif()
function(subset_font variable source characters)
  set(out "${CMAKE_BINARY_DIR}/fonts/${source}")
  add_custom_command(OUTPUT "${out}"
    COMMAND "${CMAKE_COMMAND}" -E make_directory "${CMAKE_BINARY_DIR}/fonts"
    COMMAND "${HEARTHSIGHT_PYFTSUBSET}" "${HEARTHSIGHT_FONT_DIR}/${source}" "--output-file=${out}"
            "--unicodes=${characters}" --no-hinting --layout-features= --notdef-outline
            --name-IDs=0 --drop-tables+=FFTM,GDEF,GSUB,GPOS,kern,gasp
    DEPENDS "${HEARTHSIGHT_FONT_DIR}/${source}"
    COMMENT "Subsetting ${source}" VERBATIM)
  set(${variable} "${out}" PARENT_SCOPE)
endfunction()
subset_font(HEARTHSIGHT_FONT_SANS DejaVuSans.ttf "${characters}")
subset_font(HEARTHSIGHT_FONT_SANS_BOLD DejaVuSans-Bold.ttf "${bold_characters}")
# A target makes the files known in every folder below.
add_custom_target(hearthsight_fonts DEPENDS "${HEARTHSIGHT_FONT_SANS}" "${HEARTHSIGHT_FONT_SANS_BOLD}")

# The notices of everything that ships in the page. The step fails when one is missing or empty.
set(HEARTHSIGHT_NOTICES "${CMAKE_BINARY_DIR}/notices.txt")
execute_process(COMMAND dpkg -L emscripten
  OUTPUT_VARIABLE listing ERROR_QUIET OUTPUT_STRIP_TRAILING_WHITESPACE)
string(REGEX MATCH "[^\n]*/doc/emscripten/copyright" emscripten_copyright "${listing}")
add_custom_command(OUTPUT "${HEARTHSIGHT_NOTICES}"
  COMMAND "${HEARTHSIGHT_NODE}" "${HEARTHSIGHT_LIB}/write_notices.mjs"
          --out "${HEARTHSIGHT_NOTICES}"
          --own "${CMAKE_SOURCE_DIR}/LICENSE"
          --imgui "${imgui_SOURCE_DIR}"
          --qrcodegen "${qrcodegen_SOURCE_DIR}"
          --emscripten "${EMSCRIPTEN_ROOT_PATH}"
          --emscripten-copyright "${emscripten_copyright}"
          --font-licence "${HEARTHSIGHT_FONT_LICENCE}"
  DEPENDS "${HEARTHSIGHT_LIB}/write_notices.mjs" "${CMAKE_SOURCE_DIR}/LICENSE"
  COMMENT "Writing the third-party notices" VERBATIM)
add_custom_target(hearthsight_notices DEPENDS "${HEARTHSIGHT_NOTICES}")

# hearthsight_split(<target> <list>)
# Cuts a program's wasm in two, <folder>/split/<output name>.wasm and later.wasm, which its property
# HEARTHSIGHT_WASM then names. A Debug build stays whole, with names, and its later.wasm is empty.
find_program(HEARTHSIGHT_WASM_SPLIT wasm-split HINTS "${EMSCRIPTEN_ROOT_PATH}/../bin" REQUIRED)
find_program(HEARTHSIGHT_WASM_DIS wasm-dis HINTS "${EMSCRIPTEN_ROOT_PATH}/../bin" REQUIRED)
function(hearthsight_split target list)
  set(folder "${CMAKE_CURRENT_BINARY_DIR}/split")
  get_target_property(name ${target} OUTPUT_NAME)
  set(parts "${folder}/${name}.wasm" "${folder}/later.wasm")
  target_link_options(${target} PRIVATE $<$<NOT:$<CONFIG:Debug>>:--profiling-funcs>)
  add_custom_command(OUTPUT ${parts}
    COMMAND "${CMAKE_COMMAND}" -E make_directory "${folder}"
    COMMAND "${HEARTHSIGHT_NODE}" "${HEARTHSIGHT_LIB}/split_program.mjs"
            --wasm "$<TARGET_FILE_DIR:${target}>/${name}.wasm"
            --first "${folder}/${name}.wasm" --later "${folder}/later.wasm"
            "$<$<NOT:$<CONFIG:Debug>>:--list;${list};--report;${folder}/functions.txt;--wasm-split;${HEARTHSIGHT_WASM_SPLIT};--wasm-dis;${HEARTHSIGHT_WASM_DIS}>"
    DEPENDS ${target} "$<TARGET_FILE:${target}>" "${list}" "${HEARTHSIGHT_LIB}/split_program.mjs"
    COMMENT "Splitting ${name}.wasm" COMMAND_EXPAND_LISTS VERBATIM)
  set_target_properties(${target} PROPERTIES HEARTHSIGHT_WASM "${parts}")
endfunction()

# hearthsight_page(<name> <program> <folder> <root of the static files> <static files...>)
function(hearthsight_page name program folder static_root)
  set(list_file "${CMAKE_CURRENT_BINARY_DIR}/${name}.files")
  list(JOIN ARGN "\n" lines)
  file(CONFIGURE OUTPUT "${list_file}" CONTENT "${lines}\n")
  get_target_property(wasm ${program} HEARTHSIGHT_WASM)
  set(split "")
  if(wasm)
    set(split ${wasm})
  else()
    set(wasm "$<TARGET_FILE_DIR:${program}>/$<TARGET_FILE_BASE_NAME:${program}>.wasm")
  endif()
  list(JOIN wasm "|" joined)
  add_custom_command(OUTPUT "${folder}/index.html"
    COMMAND "${HEARTHSIGHT_NODE}" "${HEARTHSIGHT_LIB}/assemble_page.mjs"
            --out "${folder}" --root "${static_root}" --files "${list_file}"
            --program "$<TARGET_FILE:${program}>|${joined}" --notices "${HEARTHSIGHT_NOTICES}"
            "$<$<NOT:$<CONFIG:Debug>>:--compiler;${HEARTHSIGHT_LIB}/bin/closure-compiler>"
    DEPENDS ${program} "$<TARGET_FILE:${program}>" ${split} "${HEARTHSIGHT_LIB}/assemble_page.mjs"
            "${HEARTHSIGHT_LIB}/bundle.mjs" "${HEARTHSIGHT_LIB}/draw_icons.mjs"
            "${HEARTHSIGHT_LIB}/worker_list.mjs" "${HEARTHSIGHT_NOTICES}" "${list_file}" ${ARGN}
    COMMENT "Assembling ${folder}" COMMAND_EXPAND_LISTS VERBATIM)
  add_custom_target(${name} DEPENDS "${folder}/index.html")
endfunction()
