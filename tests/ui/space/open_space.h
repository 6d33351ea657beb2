// A view in space with a sample truck in it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <filesystem>

#include "ui/session/session.h"
#include "ui/space/space_view.h"

namespace tackbench::ui {

inline std::filesystem::path sample_file(const std::string& name) {
  return std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" / name /
         (name + ".tack");
}

class OpenSpace {
 public:
  explicit OpenSpace(const std::string& sample = "tender-as-first-tacked", QSize size = {760, 560})
      : view(session) {
    view.resize(size);
    view.show();
    if (!sample.empty()) {
      EXPECT_TRUE(session.open(sample_file(sample)).empty());
    }
    settle();
    view.setFocus();
  }

  // Results in, everything painted.
  void settle() {
    session.wait_until_fresh();
    QApplication::processEvents();
    view.grab();
  }
  QImage picture() { return view.picture().grab().toImage().convertToFormat(QImage::Format_RGB32); }

  QPoint at(const std::string& path) const {
    const auto place = view.point_place(path);
    EXPECT_TRUE(place.has_value()) << path;
    return place.value_or(QPointF()).toPoint();
  }
  void press(const QPoint& p, Qt::KeyboardModifiers held = {},
             Qt::MouseButton button = Qt::LeftButton) {
    QTest::mousePress(&view.picture(), button, held, p);
  }
  void move(const QPoint& p, Qt::KeyboardModifiers held = {}) {
    QMouseEvent event(QEvent::MouseMove, p, view.picture().mapToGlobal(p), Qt::NoButton,
                      Qt::LeftButton, held);
    QApplication::sendEvent(&view.picture(), &event);
  }
  void release(const QPoint& p, Qt::KeyboardModifiers held = {},
               Qt::MouseButton button = Qt::LeftButton) {
    QTest::mouseRelease(&view.picture(), button, held, p);
  }
  void drag(const QPoint& from, const QPoint& to, Qt::KeyboardModifiers held = {},
            Qt::MouseButton button = Qt::LeftButton) {
    press(from, held, button);
    move(from + (to - from) / 2, held);
    move(to, held);
    release(to, held, button);
  }

  Session session;
  SpaceView view;
};

}  // namespace tackbench::ui
