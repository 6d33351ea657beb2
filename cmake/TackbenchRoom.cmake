# tackbench_room(<name> [SEES <room>...] [LIBRARIES <target>...])
# One folder of core/ is one static library; every source in the folder belongs to it.
function(tackbench_room name)
  cmake_parse_arguments(ROOM "" "" "SEES;LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  string(REPLACE "-" "_" target ${name})
  add_library(tackbench_${target} STATIC ${sources})
  target_link_libraries(tackbench_${target} PUBLIC tackbench_compiler ${ROOM_LIBRARIES})
  target_precompile_headers(tackbench_${target} REUSE_FROM precompiled_core)
  foreach(room IN LISTS ROOM_SEES)
    string(REPLACE "-" "_" seen ${room})
    target_link_libraries(tackbench_${target} PUBLIC tackbench_${seen})
  endforeach()
endfunction()

# tackbench_tests(<name> [NOT_CORE] [SEES <room>...] [LIBRARIES <target>...])
# One folder of tests/ is one GoogleTest program. It runs under the sanitizers too (label and target
# `core`, `core_tests`) unless marked NOT_CORE: for programs about the command line, or ones whose
# libraries are not built with sanitizers.
function(tackbench_tests name)
  cmake_parse_arguments(TESTS "NOT_CORE" "" "SEES;LIBRARIES" ${ARGN})
  if(TESTS_NOT_CORE AND TACKBENCH_SANITIZERS)
    return()
  endif()
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  string(REPLACE "-" "_" target ${name})
  add_executable(tests_${target} ${sources})
  target_link_libraries(tests_${target} PRIVATE
    tackbench_compiler GTest::gtest_main GTest::gmock ${TESTS_LIBRARIES})
  foreach(room IN LISTS TESTS_SEES)
    string(REPLACE "-" "_" seen ${room})
    target_link_libraries(tests_${target} PRIVATE tackbench_${seen})
  endforeach()
  target_precompile_headers(tests_${target} REUSE_FROM precompiled_tests)
  if(TACKBENCH_SANITIZERS AND CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # Under a sanitizer GCC 12 mistakes members of its own std::regex for uninitialised; the
    # optimised build, where the warning stays on, sees the same sources.
    target_compile_options(tests_${target} PRIVATE -Wno-maybe-uninitialized)
  endif()
  target_compile_definitions(tests_${target} PRIVATE
    TACKBENCH_SOURCE_FOLDER="${PROJECT_SOURCE_DIR}")
  if(TESTS_NOT_CORE)
    set(label whole)
  else()
    set(label core)
    add_dependencies(core_tests tests_${target})
  endif()
  # NO_PRETTY_VALUES: names of parameterised tests stay the same from run to run.
  gtest_discover_tests(tests_${target} TEST_PREFIX "${TACKBENCH_TEST_PREFIX}${name}." DISCOVERY_MODE PRE_TEST NO_PRETTY_VALUES
    PROPERTIES LABELS ${label})
endfunction()

# tackbench_fuzz(<name> [SEES <room>...])
# <name>.cpp holds LLVMFuzzerTestOneInput; its kept inputs live in corpus/<name>/ beside it.
function(tackbench_fuzz name)
  cmake_parse_arguments(FUZZ "" "" "SEES" ${ARGN})
  string(REPLACE "-" "_" target ${name})
  add_executable(fuzz_${target} ${name}.cpp)
  target_link_libraries(fuzz_${target} PRIVATE tackbench_compiler)
  foreach(room IN LISTS FUZZ_SEES)
    string(REPLACE "-" "_" seen ${room})
    target_link_libraries(fuzz_${target} PRIVATE tackbench_${seen})
  endforeach()
  # Not -fsanitize=fuzzer at compile time: only the link brings libFuzzer's main().
  target_link_options(fuzz_${target} PRIVATE -fsanitize=fuzzer)
  add_dependencies(fuzz_targets fuzz_${target})
endfunction()
