# usage: cmake -DCOMPILER=… -DCORE=… -DSNIPPET=… -P check_snippet.cmake
function(compile result)
  execute_process(COMMAND ${COMPILER} -std=c++20 -fsyntax-only -I${CORE} ${ARGN} ${SNIPPET}
                  RESULT_VARIABLE code ERROR_VARIABLE words)
  set(${result} ${code} PARENT_SCOPE)
  set(words "${words}" PARENT_SCOPE)
endfunction()

compile(right)
if(NOT right EQUAL 0)
  message(FATAL_ERROR "the right form does not compile, so the wrong one proves nothing:\n${words}")
endif()
compile(wrong -DWRONG)
if(wrong EQUAL 0)
  message(FATAL_ERROR "the wrong form compiles")
endif()
if(NOT words MATCHES "error:")
  message(FATAL_ERROR "the compiler stopped without an error of its own:\n${words}")
endif()
