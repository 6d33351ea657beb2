// Loses heap blocks: the leak sanitizer, which comes with the address sanitizer, has to report
// them.
#include <cstdlib>

int main(int count, char**) {
  void* volatile lost = nullptr;
  // Many, since a forgotten register may still hold the last one.
  for (int i = 0; i < 10 + count; ++i) lost = std::malloc(100);
  lost = nullptr;
  return lost == nullptr ? EXIT_SUCCESS : 2;
}
