# Writes a source whose FUNCTION returns the text of FROM. Byte values rather than a raw string:
# no text can close it early.
file(READ ${FROM} bytes HEX)
string(LENGTH "${bytes}" digits)
math(EXPR size "${digits} / 2")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${bytes}")
string(REGEX REPLACE "(('[^']*',)('[^']*',)('[^']*',)('[^']*',)('[^']*',)('[^']*',)('[^']*',)('[^']*',))"
       "\\1\n" bytes "${bytes}")
if(size EQUAL 0)
  set(bytes "'\\0'")
endif()
file(WRITE ${INTO} "#include <string_view>
namespace tackbench {
std::string_view ${FUNCTION}();
static constexpr char kText[] = {
${bytes}};
std::string_view ${FUNCTION}() {
  return {kText, ${size}};
}
}  // namespace tackbench
")
