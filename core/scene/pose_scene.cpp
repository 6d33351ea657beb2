// Where each body goes.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/mechanism/body_motion.h"
#include "core/mechanism/solve.h"
#include "core/scene/scene.h"

namespace tackbench {

namespace {

constexpr double kNothing = 1e-9;

// Least turn that carries one unit vector to another.
Mat3 least_turn(const Vec3& from, const Vec3& to) {
  const Vec3 first = square_to(from, to);
  const double angle = angle_between(from, to);
  return turn_about(Vec3(from.cross(first)), angle);
}

class Poser {
 public:
  Poser(const Mechanism& mechanism, const Pose& pose) : mechanism_(mechanism), pose_(pose) {}

  SceneMotion operator()(const RidesBody& rider) const {
    return moved_from_drawn(mechanism_, pose_, rider.body, rider.index);
  }

  SceneMotion operator()(const TurnsWithColumn&) const {
    SceneMotion cab = moved_from_drawn(mechanism_, pose_, Body::cab);
    if (!mechanism_.shaft_line) return cab;
    const ShaftLine& line = *mechanism_.shaft_line;
    if (pose_.shaft_line.cross_count > 0) return (*this)(TurnsWithCross{0, CrossPart::hand_side});
    const Vec3 foot = line.box_input_end.mm;
    return cab * turned_about(foot, line.column_axis.along, -pose_.shaft_line.box_turn);
  }

  SceneMotion operator()(const TurnsWithBoxInput&) const {
    if (!mechanism_.shaft_line) return {};
    const ShaftLine& line = *mechanism_.shaft_line;
    const int count = pose_.shaft_line.cross_count;
    if (count > 0) return (*this)(TurnsWithCross{count - 1, CrossPart::road_side});
    return turned_about(line.box_input_end.mm, line.box_input_axis.along,
                        -pose_.shaft_line.box_turn);
  }

  SceneMotion operator()(const TurnsWithCross& rider) const {
    return cross_motion(mechanism_, pose_, rider.cross, rider.part);
  }

  SceneMotion operator()(const Reaches& rider) const {
    const Vec3 from = moved_place(mechanism_, pose_, rider.from);
    const Vec3 to = moved_place(mechanism_, pose_, rider.to);
    return reach(rider.from.drawn_mm, rider.to.drawn_mm, from, to);
  }

  SceneMotion operator()(const SpinsOnStuds& rider) const {
    const Vec3 from = moved_place(mechanism_, pose_, rider.from);
    const Vec3 to = moved_place(mechanism_, pose_, rider.to);
    if (!mechanism_.steering) return reach(rider.from.drawn_mm, rider.to.drawn_mm, from, to);
    const SceneMotion lever =
        moved_from_drawn(mechanism_, pose_, rider.from.body, rider.from.index);
    return spun_link_motion(mechanism_, pose_, lever, rider.from.drawn_mm, rider.to.drawn_mm, from,
                            to);
  }

  SceneMotion operator()(const TurnsOnBellCrank& rider) const {
    SceneMotion cab = moved_from_drawn(mechanism_, pose_, Body::cab);
    const auto pedal = static_cast<std::size_t>(rider.pedal);
    if (pedal >= mechanism_.pedals.size()) return cab;
    const auto& stages = mechanism_.pedals[pedal].bell_cranks;
    Vec3 driving = pose_.pedals[pedal].rod_pin_mm;
    for (std::size_t i = 0; i < stages.size(); ++i) {
      const LoopAnswer answer = solve_loop(stages[i].loop, driving);
      if (static_cast<int>(i) == rider.bell_crank) {
        const auto& drawn = mechanism_.chassis_from_cab;
        const Crank& crank = stages[i].output;
        return cab * turned_about((drawn * Point<Cab>{crank.foot}).mm,
                                  (drawn * Direction<Cab>{crank.axis}).along, answer.angle);
      }
      driving = stages[i].output.ball(answer.cosine, answer.sine);
    }
    return cab;
  }

  SceneMotion operator()(const BendsWithLeaf& rider) const {
    if (!mechanism_.suspension) return {};
    const LeafDrawing leaf = leaf_drawing(*mechanism_.suspension, rider.side, rider.shackle_half);
    const SceneMotion axle = moved_from_drawn(mechanism_, pose_, Body::axle);
    const Vec3 seat = axle.turn * leaf.seat_mm + axle.shift_mm;
    const double pitch = pose_.axle.pitch;
    return frame_to_frame(leaf_frame(leaf, leaf.seat_mm, 0.0, leaf.bend_at_ride, rider.part),
                          leaf_frame(leaf, seat, pitch, bend_of(leaf, seat, pitch), rider.part));
  }

  SceneMotion operator()(const HangsShackle& rider) const {
    if (!mechanism_.suspension) return {};
    const LeafDrawing leaf = leaf_drawing(*mechanism_.suspension, rider.side, true);
    const SceneMotion eye = (*this)(BendsWithLeaf{rider.side, true, 1.0});
    const Vec3 drawn = (leaf_frame(leaf, leaf.seat_mm, 0.0, leaf.bend_at_ride, 1.0) *
                        Point<Chassis>{Vec3(0.0, 0.0, leaf.eye_offset)})
                           .mm;
    return reach(drawn, rider.hanger_mm, eye.turn * drawn + eye.shift_mm, rider.hanger_mm);
  }

 private:
  static SceneMotion turned_about(const Vec3& foot, const Vec3& axis, double angle) {
    const Mat3 turn = turn_about(axis, angle);
    return {turn, foot - turn * foot};
  }

  static SceneMotion reach(const Vec3& drawn_from, const Vec3& drawn_to, const Vec3& from,
                           const Vec3& to) {
    const Vec3 drawn_along = direction_between(drawn_from, drawn_to, Vec3::UnitX());
    const Mat3 turn = least_turn(drawn_along, direction_between(from, to, drawn_along));
    return {turn, from - turn * drawn_from};
  }

  // Bend at which the half's eye keeps its height over the chassis:
  // cos(pitch) h - towards sin(pitch) a = eye height - seat height, h and a of the eye seen from
  // the seat. Newton with the slope of the flat leaf, which is near enough to converge.
  static double bend_of(const LeafDrawing& leaf, const Vec3& seat, double pitch) {
    constexpr int kSteps = 12;
    const double cosine = std::cos(pitch);
    const double sine = leaf.towards * std::sin(pitch);
    double bend = leaf.bend_at_ride;
    for (int i = 0; i < kSteps; ++i) {
      const EyePlace eye = eye_from_seat(leaf.length, leaf.eye_offset, bend);
      const double over = cosine * eye.height - sine * eye.along - (leaf.eye_height - seat.z());
      bend = std::clamp(bend - over / (0.5 * leaf.length), -kMostLeafBend, kMostLeafBend);
    }
    return bend;
  }

  const Mechanism& mechanism_;
  const Pose& pose_;
};

}  // namespace

Vec3 moved_place(const Mechanism& mechanism, const Pose& pose, const ScenePlace& place) {
  const auto pedal = static_cast<std::size_t>(place.index);
  SceneMotion motion;
  switch (place.carrier) {
    case ScenePlace::Carrier::body:
      motion = moved_from_drawn(mechanism, pose, place.body, place.index);
      break;
    case ScenePlace::Carrier::bell_crank:
      motion = Poser(mechanism, pose)(TurnsOnBellCrank{place.index, place.bell_crank});
      break;
    case ScenePlace::Carrier::piston:
      if (pedal < mechanism.pedals.size() && mechanism.pedals[pedal].has_rod)
        return (pose.chassis_from_cab * Point<Cab>{pose.pedals[pedal].cylinder_pin_mm}).mm;
      motion = moved_from_drawn(mechanism, pose, Body::cab);
      break;
  }
  return motion.turn * place.drawn_mm + motion.shift_mm;
}

void pose_scene(const Scene& scene, const Mechanism& mechanism, const Pose& pose,
                std::vector<SceneMotion>& motions) {
  const Poser poser(mechanism, pose);
  motions.resize(scene.bodies.size());
  for (std::size_t i = 0; i < scene.bodies.size(); ++i)
    motions[i] = std::visit(poser, scene.bodies[i].rider);
}

LeafDrawing leaf_drawing(const SuspensionPath& path, Side side, bool shackle_half) {
  const LeafPath& leaf = path.leaf[side == Side::left ? 0 : 1];
  LeafDrawing made;
  made.seat_mm = path.origin_mm + leaf.seat_offset_mm;
  made.length = shackle_half ? leaf.shackle_half : leaf.fixed_half;
  made.eye_offset = leaf.eye_offset;
  made.towards = shackle_half ? -leaf.towards_fixed : leaf.towards_fixed;
  // Both halves share one curvature.
  made.bend_at_ride = leaf.fixed_half > kNothing ? leaf.bend_at_ride * made.length / leaf.fixed_half
                                                 : leaf.bend_at_ride;
  made.eye_height =
      made.seat_mm.z() + eye_from_seat(made.length, made.eye_offset, made.bend_at_ride).height;
  return made;
}

Placement<Chassis, Chassis> leaf_frame(const LeafDrawing& leaf, const Vec3& seat_mm, double pitch,
                                       double bend, double part) {
  // The arc to there is that of a shorter leaf bent by as much less.
  const EyePlace at = eye_from_seat(leaf.length * part, 0.0, bend * part);
  SceneMotion made;
  const Mat3 seat_turn = pitch_turn(pitch);
  made.turn = seat_turn * pitch_turn(-leaf.towards * bend * part);
  made.shift_mm = seat_mm + seat_turn * Vec3(leaf.towards * at.along, 0.0, at.height);
  return made;
}

}  // namespace tackbench
