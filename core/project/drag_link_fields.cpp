#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, LinkEnd& r) {
  v.choice(label("kind", "kind of link end"), r.kind);
  v.optional_number(
      mm("shank_length_mm", 5, 400, "shank length", "ball centre to the end of the threaded shank"),
      r.shank_length);
  v.optional_group(label("thread", "thread in the tube"), r.thread);
  v.optional_number(
      mm("thread_engagement_mm", 1, 300, "thread engagement", "shank inside the tube as made"),
      r.thread_engagement);
  v.optional_number(mm("lock_nut_thickness_mm", 0, 50, "lock-nut thickness"), r.lock_nut_thickness);
  v.optional_number(deg("swing_limit_deg", 0.1, 90, "swing limit",
                        "stud from its housing's axis, from the maker's sheet"),
                    r.swing_limit);
  v.optional_direction(
      label("stud_axis", "stud axis",
            "out of the housing, box at its centre and wheels straight; without it "
            "the lever's own turning axis"),
      r.stud_axis);
  v.optional_number(
      plain("taper", 0.01, 0.5, "taper", "diameter change over length: 0.1 for 1 in 10"), r.taper);
  v.optional_number(mm("stud_large_diameter_mm", 5, 60, "large diameter of the stud's cone"),
                    r.stud_large_diameter);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, LinkTube& r) {
  v.number(required(mm("outside_diameter_mm", 10, 120, "outside diameter")), r.outside_diameter);
  v.number(required(mm("wall_mm", 1, 20, "wall thickness")), r.wall);
  v.optional_number(number_field(Unit::megapascal, "yield_mpa", 50, 2000, "yield strength",
                                 "from the certificate"),
                    r.yield);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, LinkForces& r) {
  v.optional_number(number_field(Unit::newton, "assist_limit_n", 0, 500000, "assist limit",
                                 "greatest that the assist can push along the link"),
                    r.assist_limit);
  v.optional_number(number_field(Unit::newton, "two_handed_rim_n", 0, 5000, "two-handed rim force",
                                 "at the hand-wheel rim, sum of both hands"),
                    r.two_handed_rim);
  v.optional_number(
      number_field(Unit::newton, "kerb_strike_n", 0, 500000, "kerb-strike force", "along the link"),
      r.kerb_strike);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, DragLinkStation& r) {
  v.choice(label("knuckle", "knuckle that it drives"), r.knuckle);
  v.point(required(place("knuckle_ball_mm", "steering-arm ball", "wheels straight")),
          r.knuckle_ball);
  v.group(label("arm_end", "end at the arm"), r.arm_end);
  v.group(label("knuckle_end", "end at the knuckle"), r.knuckle_end);
  v.optional_number(deg("stud_clocking_deg", -360, 360, "stud clocking",
                        "from the arm-end housing's axis to the knuckle-end housing's, seen along "
                        "the link from arm to knuckle, right-handed; without it both studs are "
                        "centred straight ahead"),
                    r.stud_clocking);
  v.optional_group(label("tube", "tube"), r.tube);
  v.number(mm("bend_offset_mm", 0, 500, "offset of the bend",
              "of the tube's middle from the line of the balls"),
           r.bend_offset);
  v.optional_number(mm("given_length_mm", 50, 5000, "given length",
                       "ball to ball of the real link; without it as drawn"),
                    r.given_length);
  v.number(mm("adjustment_mm", 0, 200, "adjustment", "wanted each way"), r.adjustment);
  v.optional_number(mm("tolerance_mm", 0, 50, "tolerance", "plus-minus on the length"),
                    r.tolerance);
  v.whole(count("quantity", 1, 1000, "quantity"), r.quantity);
  v.group(label("forces", "forces along the link"), r.forces);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
