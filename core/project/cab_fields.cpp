#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, CabShake& r) {
  v.number(mm("forward_mm", 0, 200, "shake forward"), r.forward);
  v.number(mm("rearward_mm", 0, 200, "shake rearward"), r.rearward);
  v.number(mm("left_mm", 0, 200, "shake to the left"), r.left);
  v.number(mm("right_mm", 0, 200, "shake to the right"), r.right);
  v.number(mm("up_mm", 0, 200, "shake upward"), r.up);
  v.number(mm("down_mm", 0, 200, "shake downward"), r.down);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, CabStation& r) {
  v.vector(place("place_mm", "place of the cab", "cab origin in the chassis frame"), r.place);
  v.number(deg("pitch_deg", -30, 30, "pitch of the cab", "top forward positive"), r.pitch);
  v.group(label("shake", "cab shake", "on its mounts, from the drawn place"), r.shake);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
