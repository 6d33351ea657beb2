#include "core/project/front_axle.h"
#include "core/project/grip_list.h"

namespace tackbench::grip_list {

namespace {

void add_knuckle_grips(const FrontAxleStation& axle, Side side, std::vector<Grip>& list) {
  const bool mirrored = side == Side::right && !axle.right_knuckle;
  const KnuckleSide knuckle = knuckle_side(axle, side);
  const std::string path =
      side == Side::left ? "front_axle.left_knuckle" : "front_axle.right_knuckle";
  const std::string where = side == Side::left ? "left " : "right ";
  const Body body = side == Side::left ? Body::left_knuckle : Body::right_knuckle;
  const auto add = [&](Grip made) {
    made.mirrored = mirrored;
    list.push_back(std::move(made));
  };
  Grip kingpin = grip(path + ".kingpin_point_mm", where + "kingpin", Station::front_axle,
                      Body::axle, knuckle.kingpin_point.mm);
  give_line(kingpin, kingpin_axis(knuckle, side).along);
  add(kingpin);
  add(grip(path + ".tie_rod_ball_mm", where + "tie-rod ball", Station::front_axle, body,
           knuckle.tie_rod_ball.mm));
  for (std::size_t i = 0; i < knuckle.stops.size(); ++i) {
    const LockStop& stop = knuckle.stops[i];
    const std::string at = item(path + ".stops", i);
    Grip tip = grip(at + ".tip_centre_mm", "bolt of the stop \"" + stop.name + '"',
                    Station::front_axle, body, stop.tip_centre.mm);
    give_line(tip, stop.bolt_axis);
    add(tip);
    Grip pad = grip(at + ".pad_centre_mm", "pad of the stop \"" + stop.name + '"',
                    Station::front_axle, Body::axle, stop.pad_centre.mm);
    give_line(pad, stop.pad_normal);
    add(pad);
  }
}

}  // namespace

void add_front_axle_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.front_axle) return;
  const FrontAxleStation& axle = *project.front_axle;
  add_knuckle_grips(axle, Side::left, list);
  add_knuckle_grips(axle, Side::right, list);
  const auto add = [&](const char* path, const char* words, Body body, const Vec3& at) {
    list.push_back(grip(path, words, Station::front_axle, body, at));
  };
  if (const auto& leaf = axle.suspension.leaf) {
    add("front_axle.suspension.leaf.fixed_eye_mm", "fixed spring eye", Body::chassis,
        leaf->fixed_eye.mm);
    add("front_axle.suspension.leaf.seat_mm", "spring seat", Body::axle, leaf->seat.mm);
  }
  if (const auto& arms = axle.suspension.radius_arms) {
    add("front_axle.suspension.radius_arms.chassis_pivot_mm", "radius-arm pivot", Body::chassis,
        arms->chassis_pivot.mm);
    add("front_axle.suspension.radius_arms.lateral_rod_chassis_mm",
        "chassis end of the lateral rod", Body::chassis, arms->lateral_rod_chassis.mm);
    add("front_axle.suspension.radius_arms.lateral_rod_axle_mm", "axle end of the lateral rod",
        Body::axle, arms->lateral_rod_axle.mm);
  }
  for (std::size_t i = 0; i < axle.road.body_corners.size(); ++i)
    list.push_back(grip(item("front_axle.road.body_corners_mm", i), "outer corner of the body",
                        Station::front_axle, Body::chassis, axle.road.body_corners[i].mm));
}

}  // namespace tackbench::grip_list
