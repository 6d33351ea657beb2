#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, LockStop& r) {
  v.text(name_field(), r.name);
  v.choice(required(label("lock", "lock that the stop ends")), r.lock);
  v.point(required(place("tip_centre_mm", "centre of the tip's rounding", "wheels straight")),
          r.tip_centre);
  v.direction(required(label("bolt_axis", "bolt axis", "along the bolt towards its tip")),
              r.bolt_axis);
  v.number(mm("tip_radius_mm", 0.5, 100, "tip radius"), r.tip_radius);
  v.point(required(place("pad_centre_mm", "centre of the pad", "on its face")), r.pad_centre);
  v.direction(required(label("pad_normal_direction", "pad normal", "out of the pad")),
              r.pad_normal);
  v.number(mm("pad_radius_mm", 1, 200, "pad radius", "outline of the pad's face"), r.pad_radius);
  v.number(mm("bolt_adjustment_mm", 0, 200, "bolt adjustment",
              "how far the bolt can be screwed out or in"),
           r.bolt_adjustment);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, KnuckleSide& r) {
  v.point(required(place("kingpin_point_mm", "kingpin point", "any point on the kingpin axis")),
          r.kingpin_point);
  v.number(required(deg("kingpin_inclination_deg", -30, 30, "kingpin inclination",
                        "top inward positive")),
           r.kingpin_inclination);
  v.number(required(deg("caster_deg", -30, 30, "caster", "top rearward positive")), r.caster);
  v.number(deg("camber_deg", -15, 15, "camber", "wheel top outward positive, straight ahead"),
           r.camber);
  v.point(required(place("tie_rod_ball_mm", "tie-rod ball")), r.tie_rod_ball);
  v.list(label("stops", "lock stop"), r.stops);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Tyre& r) {
  v.number(required(mm("diameter_mm", 200, 2500, "tyre diameter", "unloaded")), r.diameter);
  v.number(required(mm("width_mm", 50, 1000, "tyre width")), r.width);
  v.number(
      mm("shoulder_radius_mm", 0, 300, "shoulder radius", "rounding between tread and side wall"),
      r.shoulder_radius);
  v.number(required(mm("loaded_radius_mm", 80, 1250, "loaded radius", "wheel centre to ground")),
           r.loaded_radius);
  v.number(mm("growth_mm", 0, 100, "growth allowance", "flex and growth (common practice 15)"),
           r.growth);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, LeafSpring& r) {
  v.point(required(place("fixed_eye_mm", "centre of the fixed eye", "at ride height")),
          r.fixed_eye);
  v.point(required(place("seat_mm", "spring seat",
                         "middle of the clamped seat at mid-thickness of the main leaf")),
          r.seat);
  v.number(required(mm("fixed_half_mm", 100, 2000, "length of the fixed half",
                       "active: fixed eye to the clamped seat")),
           r.fixed_half);
  v.number(required(mm("shackle_half_mm", 100, 2000, "length of the shackle half",
                       "active: clamped seat to the shackle eye")),
           r.shackle_half);
  v.number(mm("eye_offset_mm", -100, 100, "eye offset",
              "eye centre above mid-thickness of the main leaf; eye rolled upward positive"),
           r.eye_offset);
  v.number(mm("camber_mm", -400, 400, "spring camber",
              "rise of the free end of the fixed half over its seat at ride height"),
           r.camber);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, RadiusArms& r) {
  v.point(required(place("chassis_pivot_mm", "chassis pivot", "of the left arm")), r.chassis_pivot);
  v.point(required(place("lateral_rod_chassis_mm", "chassis end of the lateral rod")),
          r.lateral_rod_chassis);
  v.point(required(place("lateral_rod_axle_mm", "axle end of the lateral rod")),
          r.lateral_rod_axle);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Suspension& r) {
  v.choice(required(label("kind", "kind of suspension",
                          "beam axles only: independent suspension is not computed")),
           r.kind);
  v.optional_group(label("leaf", "leaf spring", "the left one; the right is its mirror image"),
                   r.leaf);
  v.optional_group(
      label("radius_arms", "radius arms", "the left one; the right is its mirror image"),
      r.radius_arms);
  v.number(required(mm("bump_mm", 0, 500, "bump", "wheel up from ride height to its stop")),
           r.bump);
  v.number(required(mm("droop_mm", 0, 500, "droop", "wheel down, positive")), r.droop);
  v.number(deg("roll_deg", 0, 30, "roll", "greatest roll of the axle either way"), r.roll);
  v.number(deg("wind_up_deg", 0, 20, "brake wind-up", "greatest, top forward"), r.wind_up);
  v.number(mm("heave_empty_mm", -500, 500, "heave when empty",
              "axle against ride height, bump positive"),
           r.heave_empty);
  v.number(mm("heave_laden_mm", -500, 500, "heave when laden",
              "axle against ride height, bump positive"),
           r.heave_laden);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Road& r) {
  v.optional_number(mm("wheelbase_mm", 500, 15000, "wheelbase"), r.wheelbase);
  v.optional_number(mm("rear_track_mm", 500, 4000, "rear track"), r.rear_track);
  v.optional_number(mm("rear_loaded_radius_mm", 80, 1250, "rear loaded radius"),
                    r.rear_loaded_radius);
  v.optional_number(mm("rear_wheel_height_empty_mm", -3000, 3000, "rear wheel height when empty",
                       "wheel centre's Z in the chassis frame"),
                    r.rear_wheel_height_empty);
  v.optional_number(mm("rear_wheel_height_laden_mm", -3000, 3000, "rear wheel height when laden",
                       "wheel centre's Z in the chassis frame"),
                    r.rear_wheel_height_laden);
  v.points(place("body_corners_mm", "outer corner of the body", "in plan, for wall to wall"),
           r.body_corners);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, FrontAxleStation& r) {
  v.number(required(mm("track_mm", 500, 4000, "track",
                       "between the tyres' mid-planes at wheel-centre height")),
           r.track);
  v.number(required(mm("wheel_centre_height_mm", -3000, 3000, "wheel-centre height",
                       "Z at ride height")),
           r.wheel_centre_height);
  v.number(mm("hub_offset_mm", -500, 500, "hub offset",
              "how much other rims or spacers set each tyre outboard"),
           r.hub_offset);
  v.number(deg("toe_deg", -5, 5, "toe", "right steer less left steer, toe-in positive"), r.toe);
  v.group(label("left_knuckle", "left knuckle"), r.left_knuckle);
  v.optional_group(
      label("right_knuckle", "right knuckle", "only where it is not the left one's mirror image"),
      r.right_knuckle);
  v.optional_number(
      mm("tie_rod_length_mm", 50, 4000, "tie-rod length", "ball to ball; without it as drawn"),
      r.tie_rod_length);
  v.flag(label("driven", "drive to the front axle"), r.driven);
  v.optional_number(deg("outer_joint_limit_deg", 1, 90, "outer joint's angle limit",
                        "driven axle, from its maker"),
                    r.outer_joint_limit);
  v.group(required(label("tyre", "tyre")), r.tyre);
  v.group(required(label("suspension", "suspension")), r.suspension);
  v.group(label("road", "road"), r.road);
  v.optional_number(deg("wanted_steer_left_deg", 1, 80, "wanted steer at left lock", "inner wheel"),
                    r.wanted_steer_left);
  v.optional_number(
      deg("wanted_steer_right_deg", 1, 80, "wanted steer at right lock", "inner wheel"),
      r.wanted_steer_right);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
