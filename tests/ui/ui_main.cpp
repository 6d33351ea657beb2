// main() of every test program with Qt: one application, the platform as the caller set it.
#include <gtest/gtest.h>

#include <QApplication>

int main(int argc, char** argv) {
  // Listing the tests must work without a display too.
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  QApplication::setApplicationName("tackbench-tests");
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
