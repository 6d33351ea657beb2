#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

namespace {

constexpr NumberField length_accuracy() {
  return mm("accuracy_mm", 0.01, 500, "accuracy", "one standard deviation");
}

}  // namespace

void visit_fields(FieldVisitor& v, DatumPoint& r) {
  v.text(name_field(), r.name);
  v.point(required(place("at_mm", "datum point")), r.at);
  v.number(length_accuracy(), r.accuracy);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, TapeReading& r) {
  v.text(name_field(), r.name);
  v.text(required(text_field("from", "near point", "a datum's name or a member path")), r.from);
  v.text(required(text_field("to", "far point", "a datum's name or a member path")), r.to);
  v.number(required(mm("distance_mm", 0, 50000, "distance")), r.distance);
  v.number(length_accuracy(), r.accuracy);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, PlumbReading& r) {
  v.text(name_field(), r.name);
  v.text(required(text_field("from", "upper point", "a datum's name or a member path")), r.from);
  v.text(text_field("to", "lower point", "a datum's name or a member path; empty = the floor"),
         r.to);
  v.number(required(mm("drop_mm", -10000, 10000, "drop", "along gravity, downward positive")),
           r.drop);
  v.number(length_accuracy(), r.accuracy);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, AngleReading& r) {
  v.text(name_field(), r.name);
  v.text(required(text_field("from", "near point", "a datum's name or a member path")), r.from);
  v.text(required(text_field("to", "far point", "a datum's name or a member path")), r.to);
  v.number(required(deg("angle_deg", -90, 90, "angle",
                        "of the line between the points against gravity's horizontal")),
           r.angle);
  v.number(deg("accuracy_deg", 0.001, 45, "accuracy", "one standard deviation"), r.accuracy);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, AsBuilt& r) {
  v.optional_number(plain("turns_left", 0, 20, "number of turns to left lock"), r.turns_left);
  v.optional_number(plain("turns_right", 0, 20, "number of turns to right lock"), r.turns_right);
  v.optional_number(deg("inner_steer_left_deg", 0, 90, "inner steer at left lock"),
                    r.inner_steer_left);
  v.optional_number(deg("inner_steer_right_deg", 0, 90, "inner steer at right lock"),
                    r.inner_steer_right);
  v.optional_number(mm("drag_link_length_mm", 50, 5000, "drag-link length", "ball to ball"),
                    r.drag_link_length);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, MeasurementsStation& r) {
  v.number(deg("rail_slope_forward_deg", -30, 30, "slope of the rails", "front end low positive"),
           r.rail_slope_forward);
  v.number(deg("rail_slope_left_deg", -30, 30, "slope across the rails", "left rail low positive"),
           r.rail_slope_left);
  v.list(label("datums", "datum point"), r.datums);
  v.list(label("tapes", "tape reading"), r.tapes);
  v.list(label("plumbs", "plumb reading"), r.plumbs);
  v.list(label("angles", "angle reading"), r.angles);
  v.group(label("as_built", "figures as built", "what the finished truck measures"), r.as_built);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
