# What links sudsmark::sudsmark needs what the library was built from.
include(CMakeFindDependencyMacro)
list(PREPEND CMAKE_MODULE_PATH ${CMAKE_CURRENT_LIST_DIR})
find_dependency(Threads)
find_dependency(yaml-cpp)
if(EXISTS ${CMAKE_CURRENT_LIST_DIR}/FindClp.cmake)  # else it is opened by the running program
  find_dependency(Clp)
endif()
list(POP_FRONT CMAKE_MODULE_PATH)
include(${CMAKE_CURRENT_LIST_DIR}/yaml_cpp_target.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/sudsmark_targets.cmake)
