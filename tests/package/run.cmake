# Installs a build into a folder of its own, and configures, builds and runs the consumer against
# it: cmake -D BUILD=… -D SOURCE=… -D FOLDER=… -D CXX=… -P run.cmake
function(run)
  execute_process(COMMAND ${ARGV} COMMAND_ECHO STDOUT RESULT_VARIABLE result)
  if(NOT result EQUAL 0)
    message(FATAL_ERROR "this ended with ${result}: ${ARGV}")
  endif()
endfunction()

file(REMOVE_RECURSE ${FOLDER})
set(ENV{CXXFLAGS} "")
run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${FOLDER}/installed)
run(${CMAKE_COMMAND} -G Ninja -S ${SOURCE} -B ${FOLDER}/build -DCMAKE_PREFIX_PATH=${FOLDER}/installed
    -DCMAKE_CXX_COMPILER=${CXX} -DCMAKE_EXE_LINKER_FLAGS=${LINKER_FLAGS})
run(${CMAKE_COMMAND} --build ${FOLDER}/build)
run(${FOLDER}/build/consumer)
