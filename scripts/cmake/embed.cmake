# hearthsight_embed(<target> <symbol> <file>)
# Compiles a file's bytes into a target. The header "<symbol>.h" then declares
#   namespace hearthsight::embedded { std::string_view <symbol>(); }
# so that a program needs no files beside itself.
set(HEARTHSIGHT_EMBED_SCRIPT "${CMAKE_CURRENT_LIST_DIR}/write_embedded.cmake")

function(hearthsight_embed target symbol file)
  set(folder "${CMAKE_CURRENT_BINARY_DIR}/embedded/${target}")
  add_custom_command(
    OUTPUT "${folder}/${symbol}.cpp" "${folder}/${symbol}.h"
    COMMAND "${CMAKE_COMMAND}" "-DINPUT=${file}" "-DFOLDER=${folder}" "-DSYMBOL=${symbol}"
            -P "${HEARTHSIGHT_EMBED_SCRIPT}"
    DEPENDS "${file}" "${HEARTHSIGHT_EMBED_SCRIPT}"
    COMMENT "Embedding ${symbol}"
    VERBATIM)
  target_sources(${target} PRIVATE "${folder}/${symbol}.cpp")
  target_include_directories(${target} PRIVATE "${folder}")
endfunction()
