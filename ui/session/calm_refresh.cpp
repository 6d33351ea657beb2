#include "ui/session/calm_refresh.h"

#include <utility>

namespace tackbench::ui {

namespace {

constexpr int kBetweenMs = 100;

}  // namespace

CalmRefresh::CalmRefresh(Session& session, QWidget& panel, std::function<void()> refresh)
    : QObject(&panel), session_(session), panel_(panel), refresh_(std::move(refresh)) {
  next_.setSingleShot(true);
  next_.setInterval(kBetweenMs);
  connect(&next_, &QTimer::timeout, this, [this] {
    if (panel_.isVisible()) refresh_();
  });
  // Sent when a drag ends or is given up.
  connect(&session_, &Session::undo_changed, this, &CalmRefresh::drag_may_have_ended);
}

void CalmRefresh::want() {
  const bool first = session_.dragging() && !in_drag_;
  in_drag_ = session_.dragging();
  if (!in_drag_ || first) {
    next_.stop();
    refresh_();
  } else if (!next_.isActive()) {
    next_.start();
  }
}

void CalmRefresh::drag_may_have_ended() {
  if (in_drag_ && !session_.dragging()) want();
}

}  // namespace tackbench::ui
