// Keeps a panel up to date without holding back the hand that drags: outside a drag at once; in a
// drag at its first change, then ten times a second, and when it ends.
#pragma once

#include <QTimer>
#include <QWidget>
#include <functional>

#include "ui/session/session.h"

namespace tackbench::ui {

class CalmRefresh : public QObject {
 public:
  // `refresh` brings `panel` up to date; both live as long as this.
  CalmRefresh(Session& session, QWidget& panel, std::function<void()> refresh);

  // What the panel shows may have changed.
  void want();
  // A drag has changed something and goes on. What the panel shows is then of a moment ago at best
  // and must not look fresh.
  bool in_drag() const { return in_drag_; }

 private:
  void drag_may_have_ended();

  Session& session_;
  QWidget& panel_;
  std::function<void()> refresh_;
  QTimer next_;
  bool in_drag_ = false;
};

}  // namespace tackbench::ui
