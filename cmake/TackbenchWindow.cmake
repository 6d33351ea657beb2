# tackbench_ui(<name> [SEES <ui room>...] [CORE <room>...] [LIBRARIES <target>...])
# One folder of ui/ is one static library with Qt; its Q_OBJECT headers go through moc.
function(tackbench_ui name)
  cmake_parse_arguments(UI "" "" "SEES;CORE;LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS
    ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp ${CMAKE_CURRENT_SOURCE_DIR}/*.h)
  add_library(tackbench_ui_${name} STATIC ${sources})
  # Without the dependency a header that is new since the last build is not seen.
  set_target_properties(tackbench_ui_${name} PROPERTIES AUTOMOC ON AUTOGEN_TARGET_DEPENDS "${sources}")
  target_compile_definitions(tackbench_ui_${name} PUBLIC QT_NO_KEYWORDS)
  target_link_libraries(tackbench_ui_${name} PUBLIC
    tackbench_compiler Qt6::Widgets ${UI_LIBRARIES})
  target_precompile_headers(tackbench_ui_${name} REUSE_FROM precompiled_ui)
  foreach(room IN LISTS UI_CORE)
    string(REPLACE "-" "_" seen ${room})
    target_link_libraries(tackbench_ui_${name} PUBLIC tackbench_${seen})
  endforeach()
  foreach(room IN LISTS UI_SEES)
    target_link_libraries(tackbench_ui_${name} PUBLIC tackbench_ui_${room})
  endforeach()
endfunction()

# tackbench_ui_tests(<name> [SEES <ui room>...] [LIBRARIES <target>...])
# One folder of tests/ui/ is one program of QTest events inside GoogleTest, run without a display.
function(tackbench_ui_tests name)
  cmake_parse_arguments(TESTS "" "" "SEES;LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS
    ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp ${CMAKE_CURRENT_SOURCE_DIR}/*.h)
  add_executable(tests_ui_${name} ${sources} ${PROJECT_SOURCE_DIR}/tests/ui/ui_main.cpp)
  set_target_properties(tests_ui_${name} PROPERTIES AUTOMOC ON AUTOGEN_TARGET_DEPENDS "${sources}")
  target_link_libraries(tests_ui_${name} PRIVATE
    tackbench_compiler Qt6::Test GTest::gtest ${TESTS_LIBRARIES})
  foreach(room IN LISTS TESTS_SEES)
    target_link_libraries(tests_ui_${name} PRIVATE tackbench_ui_${room})
  endforeach()
  target_compile_definitions(tests_ui_${name} PRIVATE
    TACKBENCH_SOURCE_FOLDER="${PROJECT_SOURCE_DIR}" QT_NO_KEYWORDS)
  add_dependencies(ui_tests tests_ui_${name})
  # Ten thousand edits under the sanitizers take minutes on a busy machine.
  set(timeout)
  if(TACKBENCH_SANITIZERS)
    set(timeout TIMEOUT 900)
  endif()
  gtest_discover_tests(tests_ui_${name} TEST_PREFIX "${TACKBENCH_TEST_PREFIX}ui.${name}." DISCOVERY_MODE PRE_TEST
    NO_PRETTY_VALUES PROPERTIES LABELS whole ${timeout} ENVIRONMENT "QT_QPA_PLATFORM=offscreen")
endfunction()
