// What the tests of the whole window share: a window of its own, with settings and a folder of its
// own.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "ui/windows/bench_window.h"

namespace tackbench::ui {

class BenchTest : public testing::Test {
 protected:
  BenchTest() { QSettings().clear(); }
  ~BenchTest() override {
    window_.reset();
    QSettings().clear();
  }

  // A window with that sample, active and at rest; without a sample none is opened in it.
  void open(const char* sample = "tender-as-first-tacked", const QSize& size = {1440, 900}) {
    window_ = std::make_unique<BenchWindow>(folder_.filePath("recovery").toStdString());
    window_->setAttribute(Qt::WA_DeleteOnClose, false);
    window_->resize(size);
    if (sample != nullptr) window_->open_sample(sample);
    window_->show();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    settle();
  }
  void settle() {
    session().wait_until_fresh();
    for (int i = 0; i < 4; ++i) QApplication::processEvents();
  }
  Session& session() { return window_->session(); }

  QTemporaryDir folder_;
  std::unique_ptr<BenchWindow> window_;
};

}  // namespace tackbench::ui
