# Third-party sources, under the names that FetchContent knows them by. scripts/setup puts the
# pinned ones in build/deps; -DFETCHCONTENT_SOURCE_DIR_IMGUI=... (or an environment variable of that
# name) points at another copy. Nothing is downloaded here.
include(FetchContent)

function(hearthsight_source name)
  string(TOUPPER "${name}" upper)
  set(variable "FETCHCONTENT_SOURCE_DIR_${upper}")
  if(DEFINED ENV{${variable}})
    set(place "$ENV{${variable}}")
  else()
    set(place "${CMAKE_SOURCE_DIR}/build/deps/${name}")
  endif()
  set(${variable} "${place}" CACHE PATH "Unpacked sources of ${name}")
  if(NOT EXISTS "${${variable}}")
    message(FATAL_ERROR "${name} is not in ${${variable}}: run scripts/setup, or set ${variable} to your own copy")
  endif()
  # The sources' own build files are not used: no such subdirectory exists.
  FetchContent_Declare(${name} SOURCE_SUBDIR "no-build-files")
  FetchContent_MakeAvailable(${name})
  set(${name}_SOURCE_DIR "${${name}_SOURCE_DIR}" PARENT_SCOPE)
endfunction()

hearthsight_source(imgui)
hearthsight_source(catch2)
hearthsight_source(json)
hearthsight_source(qrcodegen)

# Every user sees the same macro, so that no inline function exists in two forms.
add_library(json INTERFACE)
target_include_directories(json SYSTEM INTERFACE "${json_SOURCE_DIR}/single_include")
target_compile_definitions(json INTERFACE JSON_NOEXCEPTION JSON_USE_IMPLICIT_CONVERSIONS=0)

# The C form: it allocates nothing and throws nothing.
add_library(qrcodegen STATIC EXCLUDE_FROM_ALL "${qrcodegen_SOURCE_DIR}/c/qrcodegen.c")
target_include_directories(qrcodegen SYSTEM PUBLIC "${qrcodegen_SOURCE_DIR}/c")
target_compile_definitions(qrcodegen PRIVATE NDEBUG)
target_compile_options(qrcodegen PRIVATE $<IF:$<BOOL:${EMSCRIPTEN}>,-Oz,-O2>)

# Compiled once, without the sanitizers: they would add over a minute and check nothing of ours.
add_library(catch2 STATIC EXCLUDE_FROM_ALL "${catch2_SOURCE_DIR}/extras/catch_amalgamated.cpp")
target_include_directories(catch2 SYSTEM PUBLIC "${catch2_SOURCE_DIR}/extras")
target_compile_options(catch2 PRIVATE -O1)
if(EMSCRIPTEN)
  # A failed assertion is an exception, which em++ leaves out unless it is told.
  target_compile_options(catch2 PUBLIC -fexceptions)
  target_compile_definitions(catch2 PUBLIC CATCH_CONFIG_NO_POSIX_SIGNALS)
endif()
