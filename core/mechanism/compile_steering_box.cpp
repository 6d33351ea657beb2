// Steering box, pitman arm and relays become cranks and link loops.
#include <fmt/core.h>

#include "core/mechanism/compile_parts.h"

namespace tackbench {

namespace {

constexpr double kLeastLever = 1.0;  // mm

void need_lever(const Crank& crank, const std::string& place, Problems& problems) {
  if (crank.radius >= kLeastLever) return;
  problems.push_back(
      {"", place, fmt::format("the ball lies {:.3g} mm from the axis it turns about", crank.radius),
       "give a lever of at least 1 mm"});
}

}  // namespace

void compile_box_and_relays(const SteeringBoxStation& box, Steering& steering, Problems& problems) {
  if (!box.ratio && box.ratio_table.empty()) {
    problems.push_back({"", "steering_box.ratio", "neither a ratio nor a ratio table is given",
                        "give turns of the input for one of the output"});
    return;
  }
  steering.box = box.ratio_table.empty() ? BoxRatio(*box.ratio) : BoxRatio(box.ratio_table);
  steering.travel_left = box.travel_left;
  steering.travel_right = box.travel_right;
  steering.assist_cut_left = box.assist_cut_left;
  steering.assist_cut_right = box.assist_cut_right;

  // The arm's axis points so that a left turn of the hand wheel is right-handed about it.
  const bool along = box.left_turns_arm == TurnSense::anticlockwise;
  const Vec3 axis = along ? box.output_axis.along : Vec3(-box.output_axis.along);
  steering.arm = crank_through(box.output_point.mm, axis, arm_ball_at_centre(box).mm);
  need_lever(steering.arm, "steering_box.arm.length_mm", problems);
  // The stud points from the ball to the arm it sits in.
  steering.arm_stud = (box.arm.offset > 0.0 ? -1.0 : 1.0) * box.output_axis.along;

  steering.relays.clear();
  Vec3 driving_ball = steering.arm.ball(0.0);
  for (std::size_t i = 0; i < box.relays.size(); ++i) {
    const Relay& relay = box.relays[i];
    const std::string place = fmt::format("steering_box.relays[{}]", i);
    RelayStage stage;
    stage.name = relay.name;
    const Crank input = crank_through(relay.pivot.mm, relay.axis.along, relay.input_ball.mm);
    stage.output = crank_through(relay.pivot.mm, relay.axis.along, relay.output_ball.mm);
    need_lever(input, place + ".input_ball_mm", problems);
    need_lever(stage.output, place + ".output_ball_mm", problems);
    stage.link_drawn = (relay.input_ball.mm - driving_ball).norm();
    if (stage.link_drawn < kLeastLever) {
      problems.push_back({"", place + ".input_ball_mm", "the link that drives it has no length",
                          "move one of its balls"});
    }
    const double length = relay.link_length.value_or(stage.link_drawn);
    stage.from_arm = loop_as_drawn(input, length, driving_ball);
    driving_ball = relay.output_ball.mm;
    steering.arm_stud = relay.axis.along;
    steering.relays.push_back(stage);
  }
}

}  // namespace tackbench
