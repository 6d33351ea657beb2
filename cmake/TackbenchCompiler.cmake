# One interface target carries what every source of ours is compiled with.
find_program(CCACHE ccache)
if(CCACHE)
  # Without this permission ccache refuses every source that uses a precompiled header.
  set(CMAKE_CXX_COMPILER_LAUNCHER
    ${CMAKE_COMMAND} -E env CCACHE_SLOPPINESS=pch_defines,time_macros ${CCACHE})
endif()

# Our own assertions stay on in the optimised build: a wrong steering figure is worse than a slow
# one. Eigen's, which sit inside the innermost loops, go.
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DEIGEN_NO_DEBUG")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -g -D_GLIBCXX_ASSERTIONS")
# Readable stacks at a bearable speed.
set(CMAKE_CXX_FLAGS_SANITIZE "-O1 -g1 -fno-omit-frame-pointer -D_GLIBCXX_ASSERTIONS")

if(NOT DEFINED CMAKE_COMPILE_WARNING_AS_ERROR)
  set(CMAKE_COMPILE_WARNING_AS_ERROR ON)
endif()

add_library(tackbench_compiler INTERFACE)
target_compile_features(tackbench_compiler INTERFACE cxx_std_20)
target_include_directories(tackbench_compiler INTERFACE ${PROJECT_SOURCE_DIR})
target_compile_options(tackbench_compiler INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wnon-virtual-dtor -Wold-style-cast -Woverloaded-virtual
  -Wcast-align -Wunused -Wdouble-promotion -Wformat=2)
if(TACKBENCH_SANITIZERS)
  target_compile_options(tackbench_compiler INTERFACE
    -fsanitize=${TACKBENCH_SANITIZERS} -fno-sanitize-recover=all)
  target_link_options(tackbench_compiler INTERFACE -fsanitize=${TACKBENCH_SANITIZERS})
endif()
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # In optimised C++20 builds GCC 12 raises these on its own std::string (GCC bugs 105329, 105651),
  # depending even on the length of a path in the source. The sanitizers look for the real thing.
  target_compile_options(tackbench_compiler INTERFACE
    -Wno-array-bounds -Wno-restrict -Wno-stringop-overflow -Wno-stringop-overread)
endif()
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # Lets ccache see which precompiled header a source uses.
  target_compile_options(tackbench_compiler INTERFACE -fpch-preprocess)
endif()

# tackbench_precompiled(<name> HEADERS <header>... LIBRARIES <target>...)
# Eigen's and GoogleTest's headers cost more than our sources, so they are read once a build. Off in
# the presets debug, tidy and fuzz, which therefore find a source that forgot an #include.
function(tackbench_precompiled name)
  cmake_parse_arguments(PRE "" "" "HEADERS;LIBRARIES" ${ARGN})
  set(source ${CMAKE_CURRENT_BINARY_DIR}/${name}.cpp)
  if(NOT EXISTS ${source})
    file(WRITE ${source} "")
  endif()
  add_library(${name} STATIC ${source})
  target_link_libraries(${name} PRIVATE tackbench_compiler ${PRE_LIBRARIES})
  target_precompile_headers(${name} PRIVATE ${PRE_HEADERS})
endfunction()
