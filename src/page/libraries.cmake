# The libraries of a build for the browser. What is headers alone comes from the packages of the
# machine, by links, since the rest of its headers belongs to another system. What has to be
# compiled comes as source packages, which src/page/fetch_sources unpacks into SUDSMARK_SOURCES.
set(SUDSMARK_SOURCES ${PROJECT_SOURCE_DIR}/.build/sources CACHE PATH
    "Where the source packages of Clp, CoinUtils and yaml-cpp are unpacked")

# Emscripten's linker asks node for acorn, which Debian keeps where only Debian's own node looks.
set_property(GLOBAL PROPERTY RULE_LAUNCH_LINK "${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs")

set(machine_headers ${PROJECT_BINARY_DIR}/machine_headers)
file(MAKE_DIRECTORY ${machine_headers})
foreach(library boost nlohmann fmt fast_float)
  if(NOT EXISTS /usr/include/${library})
    message(FATAL_ERROR "The headers of ${library} are not installed")
  endif()
  file(CREATE_LINK /usr/include/${library} ${machine_headers}/${library} SYMBOLIC)
endforeach()
set(Boost_INCLUDE_DIRS ${machine_headers})
set(FAST_FLOAT_INCLUDE_DIR ${machine_headers})
foreach(target nlohmann_json::nlohmann_json fmt::fmt-header-only Threads::Threads)
  add_library(${target} INTERFACE IMPORTED)
  target_include_directories(${target} SYSTEM INTERFACE ${machine_headers})
endforeach()
target_compile_definitions(fmt::fmt-header-only INTERFACE FMT_HEADER_ONLY=1)

function(find_unpacked package result)
  file(GLOB found ${SUDSMARK_SOURCES}/${package}-*/)
  if(NOT found)
    message(FATAL_ERROR "No sources of ${package} in ${SUDSMARK_SOURCES}: src/page/fetch_sources")
  endif()
  list(GET found 0 first)
  set(${result} ${first} PARENT_SCOPE)
endfunction()

# Other people's code: their warnings are theirs, and so is their C++ (with `register` in it).
function(add_unpacked name)
  add_library(${name} STATIC ${ARGN})
  target_compile_options(${name} PRIVATE -w)
  set_target_properties(${name} PROPERTIES UNITY_BUILD OFF CXX_STANDARD 14)
endfunction()

find_unpacked(yaml-cpp yaml_cpp)
file(GLOB yaml_cpp_sources ${yaml_cpp}/src/*.cpp)
add_unpacked(unpacked_yaml_cpp ${yaml_cpp_sources})
target_include_directories(unpacked_yaml_cpp SYSTEM PUBLIC ${yaml_cpp}/include)
target_compile_definitions(unpacked_yaml_cpp PUBLIC YAML_CPP_STATIC_DEFINE)
add_library(yaml-cpp::yaml-cpp ALIAS unpacked_yaml_cpp)

find_unpacked(coinutils coinutils)
file(GLOB coinutils_sources ${coinutils}/CoinUtils/src/*.cpp)
# its readers of command lines need a terminal
list(FILTER coinutils_sources EXCLUDE REGEX "/CoinParam")
add_unpacked(unpacked_coinutils ${coinutils_sources})
target_include_directories(unpacked_coinutils SYSTEM PUBLIC
  ${CMAKE_CURRENT_LIST_DIR}/coin ${coinutils}/CoinUtils/src)
target_compile_definitions(unpacked_coinutils PRIVATE COINUTILS_BUILD)

find_unpacked(clp clp)
file(GLOB clp_sources ${clp}/Clp/src/*.cpp)
# another solver beside Clp, factorings by libraries that are not here, and programs
list(FILTER clp_sources EXCLUDE REGEX
     "/(Abc|CoinAbc|CbcOrClp|ClpMain|Clp_ampl|unitTest|MyEvent|MyMessage|ClpSolver|ClpCholesky(Mumps|Pardiso|Taucs|Ufl|Wssmp))")
add_unpacked(unpacked_clp ${clp_sources})
target_compile_definitions(unpacked_clp PRIVATE CLP_BUILD)
target_link_libraries(unpacked_clp PUBLIC unpacked_coinutils)
# as the headers lie on a machine where Clp is installed
file(MAKE_DIRECTORY ${machine_headers}/clp)
file(CREATE_LINK ${clp}/Clp/src ${machine_headers}/clp/coin SYMBOLIC)
target_include_directories(unpacked_clp SYSTEM PUBLIC ${machine_headers}/clp ${clp}/Clp/src)
add_library(Clp::Clp ALIAS unpacked_clp)
