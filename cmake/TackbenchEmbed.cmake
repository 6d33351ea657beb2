# tackbench_embed(<target> <function> <file>)
# Puts a text file into the program, so that no path is needed at run time: defines
# `std::string_view tackbench::<function>()`, which the using source declares itself.
set(TACKBENCH_EMBED_SCRIPT ${CMAKE_CURRENT_LIST_DIR}/embed_text.cmake)
function(tackbench_embed target function file)
  set(source ${CMAKE_CURRENT_BINARY_DIR}/embedded/${function}.cpp)
  add_custom_command(
    OUTPUT ${source}
    COMMAND ${CMAKE_COMMAND} -D FUNCTION=${function} -D FROM=${file} -D INTO=${source}
            -P ${TACKBENCH_EMBED_SCRIPT}
    DEPENDS ${file} ${TACKBENCH_EMBED_SCRIPT}
    COMMENT "Embedding ${file}"
    VERBATIM)
  target_sources(${target} PRIVATE ${source})
endfunction()
