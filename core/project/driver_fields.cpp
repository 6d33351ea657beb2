#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, Boots& r) {
  v.number(mm("sole_mm", 0, 100, "boot sole", "common practice 30 to 40"), r.sole);
  v.number(mm("length_mm", 0, 100, "boot length", "added to the foot; common practice 30 to 40"),
           r.length);
  v.number(mm("breadth_mm", 0, 100, "boot breadth", "added to the foot; common practice 15 to 25"),
           r.breadth);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, DrawnPerson& r) {
  v.text(name_field(), r.name);
  v.flag(label("woman", "choice of a woman's row"), r.woman);
  v.number(plain("stature_percentile", 0, 100, "rank of stature", "percentile, 0 to 100"),
           r.stature_percentile);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, DriverStation& r) {
  v.point(required(place("seat_reference_mm", "seat reference point",
                         "cab frame, in the middle of its travels")),
          r.seat_reference);
  v.number(mm("seat_fore_aft_mm", 0, 600, "fore-aft travel of the seat", "whole travel"),
           r.seat_fore_aft);
  v.number(mm("seat_height_mm", 0, 400, "height travel of the seat", "whole travel"),
           r.seat_height);
  v.number(deg("back_angle_deg", -20, 60, "back angle", "from vertical, rearward positive"),
           r.back_angle);
  v.point(required(place("heel_point_mm", "heel point", "cab frame")), r.heel_point);
  v.number(required(mm("floor_height_mm", -5000, 5000, "floor height",
                       "Z of the floor under the pedals, cab frame")),
           r.floor_height);
  v.optional_number(mm("roof_height_mm", -5000, 5000, "roof height", "Z, cab frame"),
                    r.roof_height);
  v.optional_number(mm("thigh_gap_wanted_mm", 0, 200, "wanted thigh gap", "thigh to rim"),
                    r.thigh_gap_wanted);
  v.number(plain("women_share", 0, 1, "share of women", "of the group of people, 0 to 1"),
           r.women_share);
  v.group(label("boots", "boots", "what a boot adds to a bare foot"), r.boots);
  v.number(mm("clothing_mm", 0, 100, "clothing", "added all round"), r.clothing);
  v.list(label("drawn", "drawn person", "up to three"), r.drawn);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
