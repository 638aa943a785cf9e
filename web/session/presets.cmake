# hearthsight_embed_presets(<target>)
# Compiles presets/ovens/*.json and presets/demo.json into a target, as links, for
# web/session/presets.h.
add_executable(write_presets EXCLUDE_FROM_ALL "${CMAKE_CURRENT_LIST_DIR}/../tools/write_presets.cpp")
target_link_libraries(write_presets PRIVATE engine)
if(EMSCRIPTEN)
  target_link_options(write_presets PRIVATE -sENVIRONMENT=node -sNODERAWFS=1 -sEXIT_RUNTIME=1)
  set_target_properties(write_presets PROPERTIES SUFFIX ".js")
endif()

function(hearthsight_embed_presets target)
  file(GLOB files CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/presets/ovens/*.json"
    "${CMAKE_SOURCE_DIR}/presets/demo.json")
  set(folder "${CMAKE_CURRENT_BINARY_DIR}/embedded/${target}")
  file(MAKE_DIRECTORY "${folder}")
  add_custom_command(
    OUTPUT "${folder}/presets_embedded.cpp"
    COMMAND write_presets "${folder}/presets_embedded.cpp" "${CMAKE_SOURCE_DIR}/presets" ${files}
    DEPENDS ${files} write_presets
    COMMENT "Embedding the presets"
    VERBATIM)
  target_sources(${target} PRIVATE "${folder}/presets_embedded.cpp")
endfunction()
