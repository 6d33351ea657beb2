// A view in space with a sample truck in it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <cmath>
#include <filesystem>
#include <optional>

#include "core/scene/pick.h"
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
      : view(session, motion) {
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
  QImage picture() const {
    return view.picture().grab().toImage().convertToFormat(QImage::Format_RGB32);
  }

  QPoint at(const std::string& path) const {
    const auto place = view.point_place(path);
    EXPECT_TRUE(place.has_value()) << path;
    return place.value_or(QPointF()).toPoint();
  }
  void press(const QPoint& p, Qt::KeyboardModifiers held = {},
             Qt::MouseButton button = Qt::LeftButton) const {
    send(QEvent::MouseButtonPress, p, held, button);
  }
  void move(const QPoint& p, Qt::KeyboardModifiers held = {}) const {
    QMouseEvent event(QEvent::MouseMove, p, view.picture().mapToGlobal(p), Qt::NoButton,
                      Qt::LeftButton, held);
    QApplication::sendEvent(&view.touched(), &event);
  }
  void send(QEvent::Type type, const QPoint& p, Qt::KeyboardModifiers held,
            Qt::MouseButton button) const {
    QMouseEvent event(type, p, view.picture().mapToGlobal(p), button,
                      type == QEvent::MouseButtonPress ? button : Qt::NoButton, held);
    QApplication::sendEvent(&view.touched(), &event);
  }
  void release(const QPoint& p, Qt::KeyboardModifiers held = {},
               Qt::MouseButton button = Qt::LeftButton) const {
    send(QEvent::MouseButtonRelease, p, held, button);
  }
  void drag(const QPoint& from, const QPoint& to, Qt::KeyboardModifiers held = {},
            Qt::MouseButton button = Qt::LeftButton) const {
    press(from, held, button);
    move(from + (to - from) / 2, held);
    move(to, held);
    release(to, held, button);
  }

  // A place on the picture where the part in front is that one, with no point near it.
  std::optional<QPoint> where_seen(const std::string& part) const {
    const QSize size = view.picture().size();
    for (int y = 4; y < size.height(); y += 6)
      for (int x = 4; x < size.width(); x += 6)
        if (part_at({x, y}) == part) return QPoint(x, y);
    return std::nullopt;
  }
  // Of the part in front; empty near a point.
  std::string part_at(const QPoint& p) const {
    const QSize size = view.picture().size();
    const PictureSize picture{static_cast<double>(size.width()),
                              static_cast<double>(size.height())};
    const SpaceShown& shown = view.shown();
    const auto hit =
        pick(*shown.scene, shown.motions, shown.camera.ray({p.x() + 0.0, p.y() + 0.0}, picture));
    if (!hit) return {};
    for (const SpacePoint& point : shown.points) {
      const auto at = view.place_of(point.posed_mm);
      if (at && std::hypot(at->x() - p.x(), at->y() - p.y()) < 14.0) return {};
    }
    return shown.scene->bodies[hit->body].pieces[hit->piece].part;
  }

  Session session;
  ShownMotion motion{session};
  SpaceView view;
};

}  // namespace tackbench::ui
