#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, Backdrop& r) {
  v.text(name_field(), r.name);
  v.choice(label("view", "view that the photograph lies behind"), r.view);
  v.group(label("file", "photograph"), r.file);
  v.vector(plain("first_pixel", 0, 100000, "first pixel", "x, y in the picture; the third is 0"),
           r.first_pixel);
  v.vector(plain("second_pixel", 0, 100000, "second pixel", "x, y in the picture; the third is 0"),
           r.second_pixel);
  v.vector(place("first_point_mm", "point of the first pixel", "chassis frame"), r.first_point);
  v.number(mm("known_distance_mm", 1, 20000, "known distance", "between the two"),
           r.known_distance);
  v.number(deg("level_angle_deg", -180, 180, "level angle", "the picture's turn"), r.level_angle);
  v.number(plain("fade", 0, 1, "fade", "0 gone to 1 full"), r.fade);
  v.flag(label("locked", "lock on the photograph"), r.locked);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, SheetNote& r) {
  v.text(name_field(), r.name);
  v.text(text_field("from", "near point"), r.from);
  v.text(text_field("corner", "corner of an angle", "empty for a distance"), r.corner);
  v.text(text_field("to", "far point"), r.to);
  v.text(text_field("text", "text"), r.text);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, StartOfProject& r) {
  v.choice(label("drive", "side of the hand wheel"), r.drive);
  v.flag(label("box_ahead", "box ahead of the front axle"), r.box_ahead);
  v.text(text_field("moved", "what is moved"), r.moved);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, SheetSettings& r) {
  v.choice(label("unit", "shown unit of length"), r.unit);
  v.choice(label("projection", "projection"), r.projection);
  v.list(label("backdrops", "photograph behind a view"), r.backdrops);
  v.list(label("notes", "note on the sheet"), r.notes);
  v.optional_group(label("start", "answers of a bare start"), r.start);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
