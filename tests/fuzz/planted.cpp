// Reads past the end for inputs that begin with "tack": tests/fuzz/run insists that the fuzzer
// finds it, or its silence about the other targets would prove nothing.
#include <cstddef>
#include <cstdint>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::vector<std::uint8_t> copy(data, data + size);
  if (size >= 4 && copy[0] == 't' && copy[1] == 'a' && copy[2] == 'c' && copy[3] == 'k') {
    const volatile std::uint8_t* past_the_end = copy.data() + size;
    return *past_the_end == 0 ? 0 : -1;
  }
  return 0;
}
