# The libraries of a build for the machine itself.
if(SUDSMARK_STATIC)
  set(CMAKE_FIND_LIBRARY_SUFFIXES .a)  # whatever is found from here on is an archive
endif()
list(APPEND CMAKE_MODULE_PATH ${PROJECT_SOURCE_DIR}/src/package)
find_package(Boost 1.74 REQUIRED)
find_package(Threads REQUIRED)
find_package(yaml-cpp REQUIRED)
include(yaml_cpp_target)
# What makers run starts sooner the less there is to load: of yaml-cpp the archive is taken where there
# is one.
find_library(YAML_CPP_ARCHIVE ${CMAKE_STATIC_LIBRARY_PREFIX}yaml-cpp.a)
mark_as_advanced(YAML_CPP_ARCHIVE)
if(SUDSMARK_STATIC AND NOT YAML_CPP_ARCHIVE)
  message(FATAL_ERROR "a static program needs an archive of yaml-cpp")
endif()
if(YAML_CPP_ARCHIVE AND (SUDSMARK_STATIC OR CMAKE_BUILD_TYPE STREQUAL "Release"))
  set_target_properties(yaml-cpp::yaml-cpp PROPERTIES INTERFACE_LINK_LIBRARIES ${YAML_CPP_ARCHIVE})
endif()
find_package(nlohmann_json REQUIRED)
find_package(fmt REQUIRED)
find_path(FAST_FLOAT_INCLUDE_DIR fast_float/fast_float.h REQUIRED)
mark_as_advanced(FAST_FLOAT_INCLUDE_DIR)
find_package(Clp REQUIRED)
