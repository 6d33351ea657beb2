// Steer angles at the lock, Ackermann and turning circles.
#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/checks/turning.h"
#include "core/findings/build_finding.h"
#include "core/findings/limits.h"
#include "core/findings/lock_side_findings.h"

namespace tackbench {

namespace {

Finding steer(const Mechanism& mechanism, const LockSide& lock) {
  const ShownFor show(mechanism.project);
  const FrontAxleStation& axle = *mechanism.project.front_axle;
  const std::optional<double> wanted =
      lock.steers == Side::left ? axle.wanted_steer_left : axle.wanted_steer_right;
  Limit limit = limit_from(mechanism.project, "lock.steer",
                           {wanted, std::nullopt, say("source.wanted_steer"), Standing::builder});
  limit.given_by = lock.steers == Side::left ? "front_axle.wanted_steer_left_deg"
                                             : "front_axle.wanted_steer_right_deg";
  Finding finding = judged(lock_name(lock, "steer"), Station::front_axle,
                           {quantity("inner_steer", lock.inner_steer, Unit::degree),
                            quantity("outer_steer", lock.outer_steer, Unit::degree)},
                           std::move(limit), show.lengths());
  finding.worst_at = at_lock_end(lock);
  finding.sentence = say("lock.steer", {{"side", side_word(lock.side)},
                                        {"inner", show.degrees(lock.inner_steer)},
                                        {"outer", show.degrees(lock.outer_steer)}});
  finding.trace.formula = "steer angles where the lock ends (see why lock.<side>.end)";
  finding.trace.source = say("source.loop");
  finding.trace.inputs = {quantity("hand_wheel", finding.worst_at->hand_wheel, Unit::degree)};
  finding.trace.steps = {step("steer_at_end", "the linkage solved at the end of the lock",
                              {quantity("inner_steer", lock.inner_steer, Unit::degree),
                               quantity("outer_steer", lock.outer_steer, Unit::degree)})};
  return finding;
}

Finding ackermann(const Mechanism& mechanism, const LockSide& lock, double wheelbase) {
  const ShownFor show(mechanism.project);
  const double pivots = kingpin_distance(*mechanism.steering);
  const double ideal = ideal_outer_steer(lock.inner_steer, pivots, wheelbase);
  const std::optional<double> share =
      ackermann_fraction(lock.inner_steer, lock.outer_steer, pivots, wheelbase);
  Finding finding = judged(lock_name(lock, "ackermann"), Station::front_axle,
                           {quantity("ackermann", share.value_or(std::nan("")), Unit::percent),
                            quantity("outer_steer", lock.outer_steer, Unit::degree),
                            quantity("ideal_outer_steer", ideal, Unit::degree)},
                           limit_for(mechanism.project, "lock.ackermann"), show.lengths());
  finding.worst_at = at_lock_end(lock);
  finding.sentence =
      say("lock.ackermann", {{"side", side_word(lock.side)},
                             {"percent", show.text(finding.numbers.front().value, Unit::percent)},
                             {"outer", show.degrees(lock.outer_steer)},
                             {"ideal", show.degrees(ideal)}});
  finding.trace.formula =
      "cot(ideal outer) = cot(inner) + c / L; Ackermann % = (inner - outer) / "
      "(inner - ideal outer) x 100";
  finding.trace.source = say("source.ackermann");
  finding.trace.inputs = {quantity("kingpin_distance", pivots, Unit::millimetre),
                          quantity("wheelbase", wheelbase, Unit::millimetre),
                          quantity("inner_steer", lock.inner_steer, Unit::degree),
                          quantity("outer_steer", lock.outer_steer, Unit::degree)};
  finding.trace.steps = {
      step("cotangents", "1 / tan(inner); c / L",
           {quantity("cot_inner", 1.0 / std::tan(lock.inner_steer), Unit::number),
            quantity("pivots_over_wheelbase", pivots / wheelbase, Unit::number)}),
      step("ideal_outer", "atan(1 / (cot(inner) + c / L))",
           {quantity("ideal_outer_steer", ideal, Unit::degree)}),
      step("ackermann", "(inner - outer) / (inner - ideal outer) x 100", {finding.numbers[0]})};
  return finding;
}

Vec3 wheel_centre(const Mechanism& mechanism, const Pose& pose, Side side) {
  const KnuckleBody& body =
      side == Side::left ? mechanism.steering->left : mechanism.steering->right;
  return (pose.steering.knuckle(side).chassis_from_knuckle * Point<Knuckle>{body.wheel_centre_mm})
      .mm;
}

// Where the outer tyre's middle stands on the ground: the loaded radius below the wheel's centre,
// square to its spindle.
Vec3 outer_tyre(const Mechanism& mechanism, const Pose& pose, Side side) {
  return wheel_centre(mechanism, pose, side) -
         mechanism.project.front_axle->tyre.loaded_radius *
             square_to(pose.steering.knuckle(side).spindle, Vec3::UnitZ());
}

// The catalogue's names for one wheel's numbers.
struct WheelNames {
  const char* wheel;
  const char* spindle;
  const char* turn_centre;
};
constexpr WheelNames kOuter{"outer_wheel", "outer_spindle", "outer_turn_centre"};
constexpr WheelNames kInner{"inner_wheel", "inner_spindle", "inner_turn_centre"};

TraceStep turn_centre_step(const Mechanism& mechanism, const Pose& pose, Side side,
                           double wheelbase, const WheelNames& names) {
  const Vec3 wheel = wheel_centre(mechanism, pose, side);
  const Vec3& spindle = pose.steering.knuckle(side).spindle;
  const double across = wheel.y() + (-wheelbase - wheel.x()) / spindle.x() * spindle.y();
  std::vector<Quantity> numbers =
      joined(point_numbers(names.wheel, wheel), direction_numbers(names.spindle, spindle));
  numbers =
      joined(std::move(numbers), point_numbers(names.turn_centre, Vec3(-wheelbase, across, 0.0)));
  return step(names.turn_centre,
              "on the rear axle's line x = -L: y = wheel y + (-L - wheel x) spindle y / spindle x",
              std::move(numbers));
}

Finding circle(const Mechanism& mechanism, const LockSide& lock, const TurningCircles& circles) {
  const ShownFor show(mechanism.project);
  const double greatest = std::max(circles.kerb_by_outer, circles.kerb_by_inner);
  std::vector<Quantity> numbers{
      quantity("kerb_radius", 0.5 * greatest, Unit::millimetre),
      quantity("kerb_circle_by_outer", circles.kerb_by_outer, Unit::millimetre),
      quantity("kerb_circle_by_inner", circles.kerb_by_inner, Unit::millimetre),
      quantity("tyre_circle_by_outer", circles.tyre_centre_by_outer, Unit::millimetre)};
  if (circles.wall_by_outer)
    numbers.push_back(quantity("wall_circle_by_outer", *circles.wall_by_outer, Unit::millimetre));
  if (circles.wall_by_inner)
    numbers.push_back(quantity("wall_circle_by_inner", *circles.wall_by_inner, Unit::millimetre));
  Finding finding = judged(lock_name(lock, "circle"), Station::front_axle, std::move(numbers),
                           limit_for(mechanism.project, "lock.circle"), show.lengths());
  finding.worst_at = at_lock_end(lock);
  const WordingFields fields{{"side", capitalised(side_word(lock.side))},
                             {"outer", show.mm(circles.kerb_by_outer)},
                             {"inner", show.mm(circles.kerb_by_inner)}};
  finding.sentence =
      circles.wheels_disagree ? say("lock.circles", fields) : say("lock.circle", fields);
  finding.trace.formula =
      "turning centre: where the wheel's normal in plan meets the rear axle's "
      "line; circle = 2 x distance to the outer tyre's outside edge";
  finding.trace.source = say("source.circle");
  finding.trace.inputs = {
      quantity("wheelbase", *mechanism.project.front_axle->road.wheelbase, Unit::millimetre),
      quantity("inner_steer", lock.inner_steer, Unit::degree),
      quantity("outer_steer", lock.outer_steer, Unit::degree),
      quantity("track", mechanism.project.front_axle->track, Unit::millimetre),
      quantity("tyre_width", mechanism.project.front_axle->tyre.width, Unit::millimetre)};
  const Pose pose = solved_pose(mechanism, *finding.worst_at);
  const double length = *mechanism.project.front_axle->road.wheelbase;
  finding.trace.steps = {
      turn_centre_step(mechanism, pose, other(lock.steers), length, kOuter),
      turn_centre_step(mechanism, pose, lock.steers, length, kInner),
      step("circle_by_outer",
           "2 x (middle of the outer tyre to the outer wheel's centre + half the "
           "tyre's width)",
           joined(point_numbers("outer_tyre", outer_tyre(mechanism, pose, other(lock.steers))),
                  {quantity("kerb_circle_by_outer", circles.kerb_by_outer, Unit::millimetre)})),
      step("circle_by_inner", "the same about the inner wheel's centre",
           {quantity("kerb_circle_by_inner", circles.kerb_by_inner, Unit::millimetre)}),
      step("radius", "greater of both / 2",
           {quantity("kerb_radius", 0.5 * greatest, Unit::millimetre)})};
  return finding;
}

}  // namespace

void add_turning_findings(const Mechanism& mechanism, const LockResult& result,
                          const LockSide& lock, Findings& findings) {
  // Below it the turning centres lie hundreds of metres off and every percentage is noise.
  constexpr double kLeastSteer = 1.0 * kRadiansPerDegree;
  const auto wait = [&](const char* what, const std::string& why) {
    findings.push_back(not_yet(lock_name(lock, what), Station::front_axle, why));
  };
  const std::string side = side_word(lock.side);
  if (!lock.found) {
    for (const char* what : {"steer", "ackermann", "circle"})
      wait(what, say("not_judged.no_lock_end", {{"side", side}}));
    return;
  }
  findings.push_back(steer(mechanism, lock));
  const std::optional<double> wheelbase = mechanism.project.front_axle->road.wheelbase;
  const auto& circles = lock.side == Side::left ? result.circles_left : result.circles_right;
  if (lock.inner_steer < kLeastSteer) {
    const ShownFor show(mechanism.project);
    for (const char* what : {"ackermann", "circle"})
      wait(what, say("not_judged.almost_straight",
                     {{"side", side}, {"steer", show.degrees(lock.inner_steer)}}));
    return;
  }
  if (!wheelbase) {
    for (const char* what : {"ackermann", "circle"}) wait(what, say("not_judged.no_wheelbase"));
    return;
  }
  findings.push_back(ackermann(mechanism, lock, *wheelbase));
  if (circles)
    findings.push_back(circle(mechanism, lock, *circles));
  else
    wait("circle", say("not_judged.no_number"));
}

}  // namespace tackbench
