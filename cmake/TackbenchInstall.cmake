# cmake --install, and a Debian package by CPack (cpack --config build/release/CPackConfig.cmake).
include(GNUInstallDirs)
install(TARGETS tackbench-cli RUNTIME)
if(TACKBENCH_WINDOW)
  install(TARGETS tackbench RUNTIME)
  set(from ${PROJECT_SOURCE_DIR}/resources/desktop)
  install(FILES ${from}/tackbench.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
  install(FILES ${from}/tackbench-project.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
  install(FILES ${from}/tackbench.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
  install(FILES ${from}/tackbench.svg
    DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
endif()
install(DIRECTORY ${PROJECT_SOURCE_DIR}/sample-projects/
  DESTINATION ${CMAKE_INSTALL_DATADIR}/tackbench/sample-projects
  FILES_MATCHING PATTERN "*.tack" PATTERN "README.md" PATTERN "expected" EXCLUDE)
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME tackbench)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "Tack a cab swap on the screen before you tack it in steel")
set(CPACK_PACKAGE_CONTACT "The Tackbench makers <tackbench@example.org>")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Loaded while it runs, so no library names them.
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "fonts-osifont, libgl1-mesa-dri")
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_STRIP_FILES ON)
include(CPack)
