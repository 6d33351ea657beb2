#include "ui/motion/swept_places.h"

#include "core/checks/control_reach.h"
#include "core/mechanism/solve.h"

namespace tackbench::ui {

SweptPlaces::SweptPlaces(Session& session, QObject* parent) : QObject(parent), session_(session) {
  connect(&session_, &Session::posed_changed, this, &SweptPlaces::follow);
  connect(&session_, &Session::judged_changed, this, &SweptPlaces::follow);
  connect(&session_, &Session::undo_changed, this, &SweptPlaces::follow);
}

void SweptPlaces::show(bool on) {
  if (on == shown_) return;
  shown_ = on;
  mechanism_.reset();
  poses_.clear();
  follow();
  if (!on || poses_.empty()) Q_EMIT changed();
}

void SweptPlaces::follow() {
  if (!shown_ || session_.dragging()) return;
  const auto& mechanism = session_.posed().mechanism;
  // The locks of the truck before serve until the checks have found the new ones.
  const auto& locks = session_.judged().results.locks;
  const ControlReach reach = control_reach(*mechanism, locks ? &*locks : nullptr);
  if (mechanism == mechanism_ && reach.full_left == left_ && reach.full_right == right_) return;
  mechanism_ = mechanism;
  left_ = reach.full_left;
  right_ = reach.full_right;
  std::vector<Controls> ends;
  if (mechanism->steering) {
    ends.emplace_back().hand_wheel = left_;
    ends.emplace_back().hand_wheel = right_;
  }
  Controls& up = ends.emplace_back();
  up.bump_left = up.bump_right = reach.full_bump;
  up.pedals.fill(1.0);
  Controls& down = ends.emplace_back();
  down.bump_left = down.bump_right = reach.full_droop;
  poses_.clear();
  for (const Controls& controls : ends) {
    Pose pose = solved_pose(*mechanism, controls);
    if (pose.outcome == Outcome::solved) poses_.push_back(std::move(pose));
  }
  Q_EMIT changed();
}

}  // namespace tackbench::ui
