// Overflows a signed int: the undefined-behaviour sanitizer has to stop it.
#include <limits>

int main(int count, char**) {
  volatile int sum = std::numeric_limits<int>::max();
  sum = sum + count;
  return sum == 0 ? 2 : 0;
}
