#include "ui/motion/wander_play.h"

#include <cmath>

#include "core/basics/units.h"
#include "core/scene/wandering_pose.h"

namespace tackbench::ui {

namespace {

constexpr int kTick = 40;              // ms
constexpr double kSwingTime = 2400.0;  // ms, once to either side
constexpr double kReach = 60.0;        // mm at the joint that moves most: enough to be seen

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

void WanderPlay::run() {
  if (playing_ && !still_)
    timer_.start();
  else
    timer_.stop();
}

void WanderPlay::play(bool on) {
  if (on == playing_ || (on && !possible())) return;
  playing_ = on;
  phase_ = 0.0;
  run();
  Q_EMIT playing_changed(on);
  Q_EMIT moved();
}

void WanderPlay::set_still(bool still) {
  if (still == still_) return;
  still_ = still;
  run();
  if (playing_) Q_EMIT moved();
}

void WanderPlay::set_phase(double phase) {
  phase_ = phase;
  Q_EMIT moved();
}

WanderPlay::LedOff WanderPlay::led_off_by(std::size_t way, double far_mm) const {
  const PosedTruck& truck = session_.posed();
  const WanderingWay& by = session_.judged().results.wandering->ways[way];
  std::vector<Vec3> shifts = by.cross_shift_mm;
  for (Vec3& shift : shifts) shift *= far_mm;
  const Vec3 wheel_shift = far_mm * by.hand_wheel_shift_mm;
  LedOff led{wandered(*truck.mechanism, truck.pose, shifts, wheel_shift), {}};
  if (!truck.mechanism->shaft_line) return led;
  const ShaftLine& line = *truck.mechanism->shaft_line;
  led.line_mm.push_back((led.pose.chassis_from_cab * line.column.hand_wheel_centre).mm +
                        wheel_shift);
  for (int i = 0; i < led.pose.shaft_line.cross_count; ++i)
    led.line_mm.push_back(led.pose.shaft_line.crosses[static_cast<std::size_t>(i)].centre_mm);
  led.line_mm.push_back(line.box_input_end.mm);
  return led;
}

std::vector<WanderPlay::LedOff> WanderPlay::led_off() const {
  std::vector<LedOff> led;
  if (!playing_ || !possible()) return led;
  const auto count = static_cast<std::size_t>(ways());
  if (!still_) {
    led.push_back(led_off_by(static_cast<std::size_t>(phase_) % count,
                             kReach * std::sin(kRadiansPerTurn * (phase_ - std::floor(phase_)))));
    return led;
  }
  for (std::size_t way = 0; way < count; ++way)
    for (const double far_mm : {kReach, -kReach}) led.push_back(led_off_by(way, far_mm));
  return led;
}

Pose WanderPlay::pose() const {
  if (still_) return session_.posed().pose;
  std::vector<LedOff> led = led_off();
  return led.empty() ? session_.posed().pose : std::move(led.front().pose);
}

}  // namespace tackbench::ui
