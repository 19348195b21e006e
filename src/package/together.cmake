# Three quarters of a build is reading headers, the same ones for each of hundreds of small files. So what
# many files read is compiled once a target (precompiled), and neighbours are compiled together (batches.awk).
# Neither may hide an include that is missing: without SUDSMARK_TOGETHER, the default, every file stands by
# itself, as in the build of the page. A compiler cache wants single files too.
option(SUDSMARK_TOGETHER "Compile files in batches, with precompiled headers: clean builds are quick" OFF)
if(CMAKE_CXX_COMPILER_LAUNCHER MATCHES "ccache$")
  set(SUDSMARK_TOGETHER OFF)
endif()

# The headers of the standard that most files read.
set(standard_headers <algorithm> <array> <cmath> <cstdint> <functional> <limits> <map> <memory> <optional>
    <set> <span> <string> <string_view> <tuple> <utility> <variant> <vector>)

# What follows `target` is passed to target_precompile_headers.
function(sudsmark_read_once target)
  if(SUDSMARK_TOGETHER)
    target_precompile_headers(${target} ${ARGN})
  endif()
endfunction()

# Compiles the files of `target` together; what follows is passed to target_precompile_headers.
function(sudsmark_together target)
  if(NOT SUDSMARK_TOGETHER)
    return()
  endif()
  sudsmark_read_once(${target} ${ARGN})
  get_target_property(sources ${target} SOURCES)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${sources})  # a new name, other batches
  # Grammars take so long that each is better compiled beside the others than behind them.
  list(FILTER sources EXCLUDE REGEX "/grammar[a-z_]*\\.cpp$")
  execute_process(COMMAND awk -v most=12 -f ${PROJECT_SOURCE_DIR}/src/package/batches.awk ${sources}
                  OUTPUT_VARIABLE rows OUTPUT_STRIP_TRAILING_WHITESPACE
                  COMMAND_ERROR_IS_FATAL ANY)
  string(REPLACE "\n" ";" rows "${rows}")
  while(rows)
    list(POP_FRONT rows file batch)
    set_source_files_properties(${file} PROPERTIES UNITY_GROUP ${batch})
  endwhile()
  set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
endfunction()
