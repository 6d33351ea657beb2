#include "core/mechanism/part_motion.h"

namespace tackbench {

namespace {

constexpr double kNothing = 1e-9;

}  // namespace

Vec3 direction_between(const Vec3& from, const Vec3& to, const Vec3& otherwise) {
  const Vec3 step = to - from;
  const double length = step.norm();
  return length > kNothing ? Vec3(step / length) : otherwise;
}

PartMotion frame_at(const Vec3& origin, const Vec3& along, const Vec3& across) {
  PartMotion made;
  made.shift_mm = origin;
  made.turn.col(0) = along;
  made.turn.col(1) = square_to(along, across);
  made.turn.col(2) = along.cross(made.turn.col(1));
  return made;
}

PartMotion frame_to_frame(const PartMotion& drawn, const PartMotion& posed) {
  return posed * drawn.inverse();
}

PartMotion cross_motion(const Mechanism& mechanism, const Pose& pose, int cross, CrossPart part) {
  if (!mechanism.shaft_line || cross >= pose.shaft_line.cross_count) return {};
  const auto index = static_cast<std::size_t>(cross);
  const DrawnCross& drawn = mechanism.shaft_line->crosses[index];
  const CrossPose& posed = pose.shaft_line.crosses[index];
  switch (part) {
    case CrossPart::hand_side:
      return frame_to_frame(frame_at(drawn.centre_mm, drawn.geometry.in_direction, drawn.in_pin),
                            frame_at(posed.centre_mm, posed.in_direction, posed.in_pin));
    case CrossPart::road_side:
      return frame_to_frame(frame_at(drawn.centre_mm, drawn.geometry.out_direction, drawn.out_pin),
                            frame_at(posed.centre_mm, posed.out_direction, posed.out_pin));
    case CrossPart::spider:
      break;
  }
  return frame_to_frame(frame_at(drawn.centre_mm, drawn.in_pin, drawn.out_pin),
                        frame_at(posed.centre_mm, posed.in_pin, posed.out_pin));
}

PartMotion spun_link_motion(const Mechanism& mechanism, const Pose& pose, const PartMotion& lever,
                            const Vec3& drawn_from, const Vec3& drawn_to, const Vec3& from,
                            const Vec3& to) {
  const Vec3& stud = mechanism.steering->arm_stud;
  const Vec3 drawn_along = direction_between(drawn_from, drawn_to, Vec3::UnitX());
  const Vec3 along = direction_between(from, to, drawn_along);
  const Vec3 across = turned(square_to(along, lever.turn * stud), along, pose.ball_swing.spin);
  return frame_to_frame(frame_at(drawn_from, drawn_along, stud), frame_at(from, along, across));
}

}  // namespace tackbench
