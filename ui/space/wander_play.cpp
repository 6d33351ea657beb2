#include "ui/space/wander_play.h"

#include <cmath>

#include "core/basics/units.h"
#include "core/scene/wandering_pose.h"

namespace tackbench::ui {

namespace {

constexpr int kTick = 40;              // ms
constexpr double kSwingTime = 2400.0;  // ms, once to either side
constexpr double kReach = 35.0;        // mm at the joint that moves most: enough to be seen

}  // namespace

WanderPlay::WanderPlay(Session& session, QObject* parent) : QObject(parent), session_(session) {
  timer_.setInterval(kTick);
  connect(&timer_, &QTimer::timeout, this, [this] { set_phase(phase_ + kTick / kSwingTime); });
  connect(&session_, &Session::judged_changed, this, &WanderPlay::follow);
  connect(&session_, &Session::project_changed, this, [this](const Change&) {
    play(false);
    follow();
  });
  follow();
}

bool WanderPlay::possible() const {
  return ways() > 0;
}

int WanderPlay::ways() const {
  const auto& wandering = session_.judged().results.wandering;
  if (!session_.judged_fresh() || !wandering) return 0;
  return static_cast<int>(wandering->ways.size());
}

void WanderPlay::follow() {
  if (!possible()) play(false);
  if (possible() == was_possible_) return;
  was_possible_ = possible();
  Q_EMIT possible_changed();
}

void WanderPlay::play(bool on) {
  if (on == playing() || (on && !possible())) return;
  phase_ = 0.0;
  if (on)
    timer_.start();
  else
    timer_.stop();
  Q_EMIT playing_changed(on);
  Q_EMIT moved();
}

void WanderPlay::set_phase(double phase) {
  phase_ = phase;
  Q_EMIT moved();
}

Pose WanderPlay::pose() const {
  const PosedTruck& truck = session_.posed();
  if (!playing() || !possible()) return truck.pose;
  const auto& ways = session_.judged().results.wandering->ways;
  const WanderingWay& way = ways[static_cast<std::size_t>(phase_) % ways.size()];
  const double far = kReach * std::sin(kRadiansPerTurn * (phase_ - std::floor(phase_)));
  std::vector<Vec3> shifts = way.cross_shift_mm;
  for (Vec3& shift : shifts) shift *= far;
  return wandered(*truck.mechanism, truck.pose, shifts, far * way.hand_wheel_shift_mm);
}

}  // namespace tackbench::ui
