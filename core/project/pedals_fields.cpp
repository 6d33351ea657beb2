#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, ReturnSpring& r) {
  v.text(name_field(), r.name);
  v.point(required(place("pedal_point_mm", "spring's point on the pedal", "turns with the pedal")),
          r.pedal_point);
  v.point(required(place("fixed_point_mm", "spring's fixed point")), r.fixed_point);
  v.optional_number(number_field(Unit::newton_per_mm, "rate_n_per_mm", 0.001, 1000, "spring rate"),
                    r.rate);
  v.optional_number(mm("free_length_mm", 1, 2000, "free length"), r.free_length);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, BellCrank& r) {
  v.text(name_field(), r.name);
  v.point(required(place("pivot_mm", "bell-crank pivot")), r.pivot);
  v.axis(label("axis", "bell-crank axis"), r.axis);
  v.point(required(place("input_pin_mm", "input pin")), r.input_pin);
  v.point(required(place("output_pin_mm", "output pin")), r.output_pin);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, PedalRod& r) {
  v.point(required(place("pedal_pin_mm", "rod pin on the pedal", "turns with the pedal")),
          r.pedal_pin);
  v.list(label("bell_cranks", "bell-crank", "in order of motion"), r.bell_cranks);
  v.point(required(place("cylinder_pin_mm", "cylinder pin", "rod's far end at rest")),
          r.cylinder_pin);
  v.axis(required(label("cylinder_axis", "cylinder axis", "the way the piston is pushed")),
         r.cylinder_axis);
  v.optional_number(mm("free_play_mm", 0, 50, "free play", "rod travel before the piston moves"),
                    r.free_play);
  v.optional_number(mm("full_stroke_mm", 1, 500, "full stroke", "of the piston, from the maker"),
                    r.full_stroke);
  v.optional_number(mm("bore_mm", 5, 200, "bore"), r.bore);
  v.optional_number(plain("booster_gain", 1, 20, "booster gain", "force out over force in"),
                    r.booster_gain);
  v.optional_number(
      mm("release_stroke_mm", 0, 500, "release stroke", "clutch: stroke at which it is released"),
      r.release_stroke);
  v.optional_number(deg("swing_limit_deg", 0.1, 90, "swing limit",
                        "rod from the cylinder's axis, from the maker"),
                    r.swing_limit);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, EngineLever& r) {
  v.point(required(place("pivot_mm", "engine-lever pivot", "chassis frame")), r.pivot);
  v.axis(label("axis", "engine-lever axis", "chassis frame"), r.axis);
  v.point(required(place("pin_mm", "engine-lever pin", "chassis frame, closed throttle")), r.pin);
  v.optional_number(deg("full_angle_deg", 1, 180, "full angle", "turn from closed to full"),
                    r.full_angle);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, PedalCable& r) {
  v.point(required(place("pedal_pin_mm", "cable pin on the pedal", "turns with the pedal")),
          r.pedal_pin);
  v.point(required(place("cab_exit_mm", "cable's exit at the cab", "where the outer starts")),
          r.cab_exit);
  v.points(place("route_mm", "route point", "chassis frame; the outer passes it, in order"),
           r.route);
  v.point(required(place("engine_exit_mm", "cable's exit at the engine",
                         "chassis frame; where the outer ends")),
          r.engine_exit);
  v.group(label("engine_lever", "engine lever"), r.engine_lever);
  v.optional_number(mm("least_bend_radius_mm", 5, 2000, "least bend radius", "from the maker"),
                    r.least_bend_radius);
  v.optional_number(
      plain("friction", 0, 1, "friction coefficient", "inner in outer, from the maker"),
      r.friction);
  v.optional_number(mm("inner_length_mm", 10, 20000, "inner length"), r.inner_length);
  v.optional_number(mm("outer_length_mm", 10, 20000, "outer length"), r.outer_length);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Pedal& r) {
  v.text(name_field(), r.name);
  v.choice(required(label("use", "use of the pedal")), r.use);
  v.point(required(place("pivot_mm", "pedal pivot", "cab frame")), r.pivot);
  v.axis(label("axis", "pedal axis", "cab frame"), r.axis);
  v.choice(label("pressed_turns", "way the pedal turns when pressed",
                 "seen with the axis pointing at the eye"),
           r.pressed_turns);
  v.point(required(place("pad_centre_mm", "pad centre", "middle of the face, cab frame, at rest")),
          r.pad_centre);
  v.number(mm("pad_width_mm", 10, 400, "pad width", "across the foot"), r.pad_width);
  v.number(mm("pad_height_mm", 10, 400, "pad height", "along the foot"), r.pad_height);
  v.number(deg("pad_angle_deg", -90, 90, "pad angle", "face from vertical, top forward positive"),
           r.pad_angle);
  v.number(mm("pad_thickness_mm", 0, 50, "pad thickness"), r.pad_thickness);
  v.number(required(deg("full_travel_deg", 0, 120, "full travel",
                        "turn from rest to the pedal's own stop")),
           r.full_travel);
  v.points(place("arm_path_mm", "point of the arm's middle line", "from pivot to pad"), r.arm_path);
  v.number(mm("arm_width_mm", 1, 200, "arm width", "across the middle line"), r.arm_width);
  v.number(mm("arm_thickness_mm", 1, 200, "arm thickness"), r.arm_thickness);
  v.list(label("springs", "return spring"), r.springs);
  v.optional_group(label("rod", "push rod", "to a master cylinder or booster"), r.rod);
  v.optional_group(label("cable", "cable"), r.cable);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, PedalsStation& r) {
  v.list(label("pedals", "pedal", "one brake, at most one clutch and one accelerator"), r.pedals);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
