// main() of every test program with Qt: one application, the platform as the caller set it.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

int main(int argc, char** argv) {
  // Listing the tests must work without a display too.
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  // Tests run side by side: none finds the settings that another one keeps.
  const QTemporaryDir home;
  qputenv("HOME", home.path().toLocal8Bit());
  for (const char* place : {"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"}) qunsetenv(place);
  const QApplication application(argc, argv);
  QApplication::setApplicationName("tackbench-tests");
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
