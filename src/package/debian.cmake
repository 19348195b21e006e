# What `cpack` makes of a build: a Debian package of the program, as Debian's policy wants it.
# Component `program` goes into it and into any other system; `manual` is what Debian wants compressed
# or elsewhere, and `debian` is that, with the papers of a package.
set(debian ${CMAKE_CURRENT_BINARY_DIR}/debian)

# The copyright file quotes the licence, indented, with a dot for an empty line.
file(READ ${PROJECT_SOURCE_DIR}/LICENSE licence)
string(REGEX MATCH "Copyright \\(c\\) ([^\n]*)" ignored "${licence}")
set(copyright_holder ${CMAKE_MATCH_1})
string(REGEX REPLACE "^MIT License\n\nCopyright[^\n]*\n\n" "" licence "${licence}")
string(REGEX REPLACE "\n$" "" licence "${licence}")
string(REGEX REPLACE "\n\n" "\n.\n" licence "${licence}")
string(REPLACE "\n" "\n " licence_text " ${licence}")
configure_file(${CMAKE_CURRENT_LIST_DIR}/debian/copyright.in ${debian}/copyright @ONLY)
configure_file(${CMAKE_CURRENT_LIST_DIR}/debian/changelog.in ${debian}/changelog @ONLY)

# Compressed as policy wants it, without a time in it, so that the same build is the same package.
find_program(GZIP gzip)
if(GZIP)
  add_custom_command(
    OUTPUT ${debian}/made
    COMMAND ${CMAKE_COMMAND} -E rm -rf ${debian}/man1
    COMMAND ${CMAKE_COMMAND} -E copy_directory ${manual}/man1 ${debian}/man1
    COMMAND ${GZIP} -9n -r ${debian}/man1
    COMMAND ${GZIP} -9nkf ${debian}/changelog
    COMMAND ${CMAKE_COMMAND} -E touch ${debian}/made
    DEPENDS ${manual}/made ${debian}/changelog
    COMMENT "Compressing what a Debian package holds"
    VERBATIM)
  add_custom_target(sudsmark_debian ALL DEPENDS ${debian}/made)
endif()
set(documents ${CMAKE_INSTALL_DATADIR}/doc/sudsmark)
install(FILES ${debian}/copyright ${debian}/changelog.gz DESTINATION ${documents}
        COMPONENT debian EXCLUDE_FROM_ALL)
install(DIRECTORY ${debian}/man1 DESTINATION ${CMAKE_INSTALL_MANDIR}
        COMPONENT debian EXCLUDE_FROM_ALL)
install(FILES ${manual}/completion/_sudsmark
        DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions
        COMPONENT debian EXCLUDE_FROM_ALL)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME sudsmark)
set(CPACK_PACKAGE_CONTACT "The sudsmark authors <sudsmark@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "checks formulas of solid bath products")
set(CPACK_PACKAGE_DESCRIPTION
    "sudsmark reads the formula of a bubble bar, a bath fizzy or a shampoo bar,
works out what is really in it, and tells which limits it keeps, which it
breaks and what cannot be decided, each with the figure, the reason, what to
change and the source. It is screening, and no safety assessment.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_COMPONENTS_ALL program debian)
set(CPACK_COMPONENTS_GROUPING ALL_COMPONENTS_IN_ONE)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
if(NOT SUDSMARK_LINK_CLP)
  # opened by the running program, so that no link tells of it
  set(CPACK_DEBIAN_PACKAGE_DEPENDS coinor-libclp1)
endif()
include(CPack)
