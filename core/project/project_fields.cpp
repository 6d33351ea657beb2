#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, Project& r) {
  v.text(text_field("name", "name of the project"), r.name);
  v.text(text_field("notes", "notes"), r.notes);
  v.station(label("cab", "cab"), r.cab);
  v.station(label("column", "column"), r.column);
  v.station(label("shaft_line", "shaft line"), r.shaft_line);
  v.station(label("steering_box", "steering box"), r.steering_box);
  v.station(label("drag_link", "drag link"), r.drag_link);
  v.station(label("front_axle", "front axle"), r.front_axle);
  v.station(label("pedals", "pedals"), r.pedals);
  v.station(label("driver", "driver"), r.driver);
  v.station(label("shapes", "shapes"), r.shapes);
  v.station(label("measurements", "measurements"), r.measurements);
  v.station(label("sheet", "sheet"), r.sheet);
  v.station(label("limits", "limits"), r.limits);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Thread& r) {
  v.number(required(mm("diameter_mm", 3, 100, "thread diameter", "major diameter")), r.diameter);
  v.number(required(mm("pitch_mm", 0.25, 6, "thread pitch")), r.pitch);
  v.choice(required(label("hand", "hand of the thread")), r.hand);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, FileReference& r) {
  v.text(required(TextField{{"path", "path of a file", "relative to the folder of the project"},
                            TextKind::relative_path}),
         r.path);
  v.text(required(TextField{{"sha256", "SHA-256 checksum", "64 hex digits"}, TextKind::sha256}),
         r.sha256);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
