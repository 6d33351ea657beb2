// Two threads write one int with nothing between them: the thread sanitizer has to report it.
#include <thread>

int main() {
  int shared = 0;
  const auto write_often = [&shared] {
    for (int i = 0; i < 100000; ++i) shared += i;
  };
  std::thread first(write_often);
  std::thread second(write_often);
  first.join();
  second.join();
  return shared == 1 ? 2 : 0;
}
