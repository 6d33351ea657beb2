// The truck's parts, each drawn by one small source. Inside this room only.
#pragma once

#include <string>

#include "core/drawing/truck_pen.h"
#include "core/mechanism/body_motion.h"

namespace tackbench {

// What every part needs: the build, and how its bodies moved from where they are drawn.
struct TruckAtPose {
  TruckAtPose(const Mechanism& built, const Pose& posed);

  const Mechanism& mechanism;
  const Project& project;
  const Pose& pose;
  Placement<Chassis, Chassis> cab;  // each from the drawn position to the pose
  Placement<Chassis, Chassis> axle;
  Placement<Chassis, Chassis> left_knuckle;
  Placement<Chassis, Chassis> right_knuckle;
  Placement<Chassis, Chassis> arm;

  const Placement<Chassis, Chassis>& knuckle(Side side) const {
    return side == Side::left ? left_knuckle : right_knuckle;
  }
  const Placement<Chassis, Chassis>& body(RidesOn rides_on) const;
  // Turn of the hand wheel, left positive, rad.
  double hand_wheel() const;
  // Of a place in the cab's own frame.
  Vec3 in_cab(const Point<Cab>& place) const { return (pose.chassis_from_cab * place).mm; }
  // Of a place given in the frame of what it rides on, mm: cab places in the cab's, all others in
  // the chassis' as drawn.
  Vec3 riding(RidesOn rides_on, const Vec3& mm) const;
};

[[nodiscard]] inline Vec3 moved(const Placement<Chassis, Chassis>& motion, const Vec3& chassis_mm) {
  return (motion * Point<Chassis>{chassis_mm}).mm;
}
inline std::string item(const char* list, std::size_t index) {
  return std::string(list) + '[' + std::to_string(index) + ']';
}

// What stands still, from the back to the front.
void draw_shapes(const TruckAtPose& truck, TruckPen& pen);
void draw_rails(const TruckAtPose& truck, TruckPen& pen);
void draw_suspension(const TruckAtPose& truck, TruckPen& pen);
void draw_axle(const TruckAtPose& truck, TruckPen& pen);
void draw_driver(const TruckAtPose& truck, TruckPen& pen);
void draw_steering_box(const TruckAtPose& truck, TruckPen& pen);
void draw_supports(const TruckAtPose& truck, TruckPen& pen);
void draw_column(const TruckAtPose& truck, TruckPen& pen);

// What moves.
void draw_wheels(const TruckAtPose& truck, TruckPen& pen);
void draw_stretch_pairs(const TruckAtPose& truck, TruckPen& pen);
void draw_tie_rod(const TruckAtPose& truck, TruckPen& pen);
void draw_links_and_arms(const TruckAtPose& truck, TruckPen& pen);
void draw_pedals(const TruckAtPose& truck, TruckPen& pen);
void draw_shafts(const TruckAtPose& truck, TruckPen& pen);
void draw_hand_wheel(const TruckAtPose& truck, TruckPen& pen);

// The ground under everything drawn so far; empty `through` when the axle does not say where.
DrawnLine ground_line(const TruckAtPose& truck, const TruckView& drawn);

}  // namespace tackbench
