# cmake --install build/release [--prefix FOLDER], and a Debian package: cpack in build/release.
include(GNUInstallDirs)

# Debian packs changes and manual pages; -n: the same file gives the same bytes.
find_program(TACKBENCH_GZIP gzip REQUIRED)
function(tackbench_install_packed file name destination)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
  set(packed ${CMAKE_CURRENT_BINARY_DIR}/packed/${name}.gz)
  file(MAKE_DIRECTORY ${CMAKE_CURRENT_BINARY_DIR}/packed)
  execute_process(COMMAND ${TACKBENCH_GZIP} -9nc ${file} OUTPUT_FILE ${packed}
    COMMAND_ERROR_IS_FATAL ANY)
  install(FILES ${packed} DESTINATION ${destination})
endfunction()

set(from ${PROJECT_SOURCE_DIR}/resources)
install(TARGETS tackbench-cli RUNTIME)
tackbench_install_packed(${from}/package/tackbench-cli.1 tackbench-cli.1
  ${CMAKE_INSTALL_MANDIR}/man1)
if(TACKBENCH_WINDOW)
  install(TARGETS tackbench RUNTIME)
  tackbench_install_packed(${from}/package/tackbench.1 tackbench.1 ${CMAKE_INSTALL_MANDIR}/man1)
  install(FILES ${from}/desktop/tackbench.desktop
    DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
  install(FILES ${from}/desktop/tackbench-project.xml
    DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
  install(FILES ${from}/desktop/org.example.tackbench.metainfo.xml
    DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
  install(FILES ${from}/desktop/tackbench.svg
    DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
  # A project file looks like its program.
  install(FILES ${from}/desktop/tackbench.svg
    DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/mimetypes
    RENAME application-x-tackbench-project.svg)
endif()
install(DIRECTORY ${PROJECT_SOURCE_DIR}/sample-projects/
  DESTINATION ${CMAKE_INSTALL_DATADIR}/tackbench/sample-projects
  FILES_MATCHING PATTERN "*.tack" PATTERN "README.md" PATTERN "expected" EXCLUDE)
install(FILES ${from}/tackbench-project.schema.json DESTINATION ${CMAKE_INSTALL_DATADIR}/tackbench)
install(FILES ${from}/package/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR})
tackbench_install_packed(${from}/package/changelog changelog ${CMAKE_INSTALL_DOCDIR})
tackbench_install_packed(${PROJECT_SOURCE_DIR}/CHANGELOG.md CHANGELOG.md ${CMAKE_INSTALL_DOCDIR})

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME tackbench)
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "drag the points of a cab swap and see the linkage move")
set(CPACK_PACKAGE_DESCRIPTION
"For somebody who sets a different cab on a chassis at home or in a small
shop. Pivots, bearings and joints are dragged on a drawing of the truck;
shaft angles, drag link, locks, bump steer and pedals follow. Then it
hands out a dimensioned cut list.

Steering and brakes can kill. Tackbench computes geometry; it does not
approve parts.")
set(CPACK_PACKAGE_CONTACT "The Tackbench makers <tackbench@example.org>")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# What is loaded while the program runs, so that no library names it; tests/program/package_test.py
# looks at what a running one has loaded.
set(loaded
  "libqt6svg6"           # the program's icon, by Qt's reader of SVG icons
  "libqt63drender6"      # the renderer of the view in space is a plugin in there
  "libgl1-mesa-dri"      # OpenGL itself, the processor's when there is no card
  "fonts-osifont"        # drawings are lettered with it (ISO 3098)
  "fonts-dejavu-core")   # figures of one width where the desktop's own are not
list(JOIN loaded ", " CPACK_DEBIAN_PACKAGE_DEPENDS)
# The window works without: Wayland, colours and dialogs as the desktop has them, its pointers.
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS
  "qt6-wayland, qt6-gtk-platformtheme, libxcursor1, shared-mime-info")
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_STRIP_FILES ON)
include(CPack)
