# The flags of our own targets. Third-party code gets none of them.

# Results must not depend on whether a compiler fuses a multiply with an add.
add_library(hearthsight_fp INTERFACE)
target_compile_options(hearthsight_fp INTERFACE -ffp-contract=off)

add_library(hearthsight_warnings INTERFACE)
target_compile_options(hearthsight_warnings INTERFACE
  -Werror
  -Wall -Wextra -Wpedantic
  -Wshadow              # a name that hides another one misleads a reader
  -Wconversion          # a double that silently becomes an int loses its fraction
  -Wsign-conversion     # size_t is 32 bits in WebAssembly and 64 natively
  -Wdouble-promotion    # the engine is in double; a float here is a slip
  -Wold-style-cast
  -Wnull-dereference
  -Wswitch              # every enumerator is handled, so a new one is noticed
  -Wnon-virtual-dtor
  -Wformat=2)

if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # g++ sees null pointers inside std::streambuf, and g++ 12 overlapping copies inside std::string,
  # where there are none. em++ keeps both warnings.
  target_compile_options(hearthsight_warnings INTERFACE -Wno-null-dereference)
  if(CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
    target_compile_options(hearthsight_warnings INTERFACE -Wno-restrict)
  endif()
endif()

# What ships throws nothing and asks no object for its type: that is smaller, and the browser
# build would abort at a throw anyway.
add_library(hearthsight_lean INTERFACE)
target_compile_options(hearthsight_lean INTERFACE -fno-exceptions -fno-rtti)

# The checks stop at the first fault. The vptr check needs type information, which the engine
# does without.
add_library(hearthsight_checks INTERFACE)
if(HEARTHSIGHT_SANITIZE)
  set(checks -fsanitize=address,undefined -fno-sanitize=vptr -fno-sanitize-recover=all)
  target_compile_options(hearthsight_checks INTERFACE ${checks} -fno-omit-frame-pointer)
  target_link_options(hearthsight_checks INTERFACE ${checks})
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # The checks hide from g++ that a variant's inactive members are never read.
    target_compile_options(hearthsight_checks INTERFACE -Wno-maybe-uninitialized)
  endif()
endif()

add_library(hearthsight_own INTERFACE)
target_link_libraries(hearthsight_own INTERFACE
  hearthsight_fp hearthsight_warnings hearthsight_checks)
# Includes are written from the root of the repository: "engine/cook/body.h".
target_include_directories(hearthsight_own INTERFACE "${CMAKE_SOURCE_DIR}")
