// Reads one past the end of a heap block: the address sanitizer has to stop it.
#include <cstdlib>
#include <memory>

int main(int count, char**) {
  const std::size_t size = static_cast<std::size_t>(count) + 7;
  const std::unique_ptr<int[]> block(new int[size]());
  const volatile int* past_the_end = block.get() + size;
  return *past_the_end == 0 ? EXIT_SUCCESS : 2;
}
