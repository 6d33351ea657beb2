#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, PlateHole& r) {
  v.number(mm("across_mm", -10000, 10000, "hole's place across",
              "from the plate's middle along its own X"),
           r.across);
  v.number(mm("up_mm", -10000, 10000, "hole's place up", "from the plate's middle along its own Y"),
           r.up);
  v.number(mm("diameter_mm", 1, 5000, "hole diameter"), r.diameter);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Shape& r) {
  v.text(name_field(), r.name);
  v.choice(label("kind", "kind of shape"), r.kind);
  v.choice(label("rides_on", "body that carries the shape"), r.rides_on);
  v.vector(place("place_mm", "place of the shape",
                 "middle of a box or plate; middle of the near end of a tube or cylinder"),
           r.place);
  v.vector(
      mm("size_mm", 0.1, 20000, "size", "box: along its X, Y, Z; plate: along X, Y and thickness"),
      r.size);
  v.vector(deg("turn_deg", -360, 360, "turn", "roll, pitch, yaw of a box, plate or mesh"), r.turn);
  v.vector(place("end_mm", "far end", "tube and cylinder: middle of the far end"), r.end);
  v.number(mm("diameter_mm", 0.1, 5000, "diameter", "tube and cylinder"), r.diameter);
  v.number(mm("wall_mm", 0, 200, "wall thickness", "tube"), r.wall);
  v.number(mm("rounding_mm", 0, 500, "edge radius"), r.rounding);
  v.flag(label("hot", "heat tag", "an exhaust or the like"), r.hot);
  v.list(label("holes", "hole", "plate"), r.holes);
  v.optional_group(label("mesh", "scan file", "a mesh"), r.mesh);
  v.number(plain("mesh_scale", 1e-6, 1e6, "scale of the scan", "mm per unit of the scan"),
           r.mesh_scale);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, AnchoredPoint& r) {
  v.choice(label("rides_on", "body that carries the point"), r.rides_on);
  v.vector(required(place("at_mm", "point",
                          "in that body's frame as drawn (axle and knuckles: chassis axes at ride "
                          "height, wheels straight)")),
           r.at);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, StretchPair& r) {
  v.text(name_field(), r.name);
  v.group(label("from", "near end"), r.from);
  v.group(label("to", "far end"), r.to);
  v.optional_number(mm("least_mm", 0, 20000, "closed length"), r.least);
  v.optional_number(mm("greatest_mm", 0, 20000, "open length"), r.greatest);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Rails& r) {
  v.number(mm("outside_width_mm", 200, 3000, "width over both rails"), r.outside_width);
  v.number(mm("flange_mm", 1, 500, "rail width", "of one rail"), r.flange);
  v.number(mm("depth_mm", 1, 1000, "rail depth"), r.depth);
  v.number(mm("front_end_mm", -20000, 20000, "front end of the rails", "X"), r.front_end);
  v.number(mm("rear_end_mm", -20000, 20000, "rear end of the rails", "X"), r.rear_end);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, ShapesStation& r) {
  v.optional_group(label("rails", "rails"), r.rails);
  v.list(label("shapes", "shape"), r.shapes);
  v.list(
      label("stretch_pairs", "stretch pair", "two points whose least and greatest distance matter"),
      r.stretch_pairs);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
