// The motion that the sheet and the view in space show together, beside the pose itself.
#pragma once

#include "ui/motion/swept_places.h"
#include "ui/motion/wander_play.h"

namespace tackbench::ui {

struct ShownMotion {
  explicit ShownMotion(Session& session) : swept(session), wander(session) {}

  SweptPlaces swept;
  WanderPlay wander;
};

}  // namespace tackbench::ui
