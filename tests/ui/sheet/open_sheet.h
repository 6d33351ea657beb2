// A drawing sheet with a sample truck on it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <filesystem>

#include "ui/session/session.h"
#include "ui/sheet/sheet_card.h"

namespace tackbench::ui {

inline std::filesystem::path sample_file(const std::string& name) {
  return std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" / name /
         (name + ".tack");
}

class OpenSheet {
 public:
  explicit OpenSheet(const std::string& sample = "tender-as-first-tacked", QSize size = {1000, 640})
      : card(session, motion) {
    card.resize(size);
    card.show();
    if (!sample.empty()) {
      EXPECT_TRUE(session.open(sample_file(sample)).empty());
    }
    settle();
    card.setFocus();
  }

  // Results in, everything painted.
  void settle() {
    session.wait_until_fresh();
    QApplication::processEvents();
    card.grab();
  }

  QPoint at(const std::string& path, SheetView view) const {
    const auto place = card.grip_place(path, view);
    EXPECT_TRUE(place.has_value()) << path;
    return place.value_or(QPointF()).toPoint();
  }

  void press(const QPoint& p, Qt::KeyboardModifiers held = {}) {
    QTest::mousePress(&card, Qt::LeftButton, held, p);
  }
  void move(const QPoint& p, Qt::KeyboardModifiers held = {}) {
    QMouseEvent event(QEvent::MouseMove, p, card.mapToGlobal(p), Qt::NoButton, Qt::LeftButton,
                      held);
    QApplication::sendEvent(&card, &event);
  }
  void release(const QPoint& p, Qt::KeyboardModifiers held = {}) {
    QTest::mouseRelease(&card, Qt::LeftButton, held, p);
  }
  void drag(const QPoint& from, const QPoint& to, Qt::KeyboardModifiers held = {}) {
    press(from, held);
    move(from + (to - from) / 2, held);
    move(to, held);
    release(to, held);
  }

  Session session;
  ShownMotion motion{session};
  SheetCard card;
};

}  // namespace tackbench::ui
