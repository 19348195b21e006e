# yaml-cpp calls its target yaml-cpp up to 0.7 and yaml-cpp::yaml-cpp later: here it is always the
# latter, so that a target that is missing is an error and no library of that name by chance.
if(NOT TARGET yaml-cpp::yaml-cpp)
  add_library(yaml-cpp::yaml-cpp INTERFACE IMPORTED)
  set_target_properties(yaml-cpp::yaml-cpp PROPERTIES INTERFACE_LINK_LIBRARIES yaml-cpp)
endif()
