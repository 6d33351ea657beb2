#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, ShaftSection& r) {
  v.choice(label("kind", "kind of section"), r.kind);
  v.number(mm("diameter_mm", 5, 100, "diameter", "over the round"), r.diameter);
  v.optional_number(mm("across_flats_mm", 3, 100, "distance across the flats", "double-D"),
                    r.across_flats);
  v.optional_whole(count("teeth", 6, 120, "tooth count", "spline; sets the clocking step"),
                   r.teeth);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, ColumnBearing& r) {
  v.text(name_field(), r.name);
  v.number(required(mm("from_hand_wheel_mm", -200, 3000, "distance from the hand wheel",
                       "along the column axis from the hand wheel's centre")),
           r.from_hand_wheel);
  v.choice(label("kind", "kind of column bearing"), r.kind);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, ColumnStation& r) {
  v.point(required(place("hand_wheel_centre_mm", "hand-wheel centre", "cab frame")),
          r.hand_wheel_centre);
  v.number(mm("hand_wheel_diameter_mm", 150, 900, "hand-wheel diameter", "outside"),
           r.hand_wheel_diameter);
  v.point(required(place("output_end_mm", "output end of the column", "cab frame")), r.output_end);
  v.list(label("bearings", "column bearing", "two or more hold the axis"), r.bearings);
  v.optional_number(mm("collapse_stroke_mm", 0, 500, "collapse stroke"), r.collapse_stroke);
  v.group(label("output", "section of the output end"), r.output);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
