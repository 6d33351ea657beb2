// Exact entry of a point: X, Y, Z, or its distance to another point.
#pragma once

#include <QComboBox>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <array>
#include <functional>

#include "core/project/grips.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class ExactEntry : public QFrame {
  Q_OBJECT

 public:
  explicit ExactEntry(Session& session, QWidget* parent);

  // Opens for the grip beside `at` (parent's pixels), inside `room`. `first`: text already typed,
  // which goes to the coordinate `axis`.
  void open_for(const std::string& path, const QPointF& at, const QRectF& room, int axis,
                const QString& first);
  bool is_open() const { return isVisible(); }
  const std::string& path() const { return path_; }
  void close_entry();

 Q_SIGNALS:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void fill();
  void accept();
  bool accept_place();
  bool accept_distance();
  void show_distance();
  void say(const QString& why, QLineEdit* where);
  // `off`: how far a place is from what was typed, mm.
  void move_to(const Grip& grip, const Vec3& drawn_mm, QLineEdit* from,
               const std::function<double(const Vec3&)>& off);

  Session& session_;
  std::string path_;
  ShownUnit lengths_ = ShownUnit::millimetre;  // what the numbers were written in
  QLabel* name_;
  std::array<QLineEdit*, 3> axes_;
  std::array<QString, 3> shown_;  // what stood there on opening
  QComboBox* other_;
  QLineEdit* distance_;
  QString shown_distance_;
  QLabel* reason_;
};

}  // namespace tackbench::ui
