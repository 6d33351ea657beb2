// The sheet of a project in which nothing is drawn yet: a faint truck with the seven things to
// measure first. Each of them, and its number on the truck, begins that station and opens it.
#pragma once

#include <QWidget>
#include <array>
#include <optional>
#include <string>

#include "ui/session/session.h"

class QPushButton;

namespace tackbench::ui {

// How far one of the seven is.
struct BareThing {
  std::string path;  // of the member that is to be begun or measured: "front_axle", "shapes.rails"
  bool begun = false;
  int guesses = 0;  // values that still stand as the program put them in

  bool done() const { return begun && guesses == 0; }
};

inline constexpr std::size_t kBareThings = 7;
std::array<BareThing, kBareThings> bare_things(const Project& project);

class BareSheet : public QWidget {
  Q_OBJECT

 public:
  explicit BareSheet(Session& session, QWidget* parent);

  // Why nothing of the project can be drawn; empty for a project with nothing in it.
  void show_why(const QString& why);
  // Where the number stands on the faint truck.
  QPointF number_place(std::size_t index) const;

 Q_SIGNALS:
  void begin_wanted(const QString& path);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;

 private:
  void refresh();
  void place_lines();
  double line_height() const;
  QRectF list() const;
  double list_left() const;
  double scale() const;
  QPointF corner() const;  // of the faint truck
  std::optional<std::size_t> number_at(const QPointF& at) const;
  void choose(std::size_t index);

  Session& session_;
  QString why_;
  std::array<BareThing, kBareThings> things_;
  std::array<QPushButton*, kBareThings> lines_{};
};

}  // namespace tackbench::ui
