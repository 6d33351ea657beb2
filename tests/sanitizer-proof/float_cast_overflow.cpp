// Casts a number to an int that cannot hold it: the undefined-behaviour sanitizer has to stop it.
int main(int count, char**) {
  volatile double number = 1e20 * count;
  volatile int whole = static_cast<int>(number);
  return whole == 1 ? 2 : 0;
}
