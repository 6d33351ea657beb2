#include "core/project/field_walk.h"

namespace tackbench {

std::string FieldWalk::place_of(const FieldLabel& field) const {
  return place_.empty() ? std::string(field.key) : place_ + "." + std::string(field.key);
}

void FieldWalk::group_access(const FieldLabel& field, GroupAccess& group) {
  if (!group.present()) return;
  const std::string outer = std::exchange(place_, place_of(field));
  group.visit(*this);
  place_ = outer;
}

void FieldWalk::list_access(const FieldLabel& field, ListAccess& list) {
  const std::string outer = place_;
  const std::string list_place = place_of(field);
  for (std::size_t i = 0; i < list.size(); ++i) {
    place_ = list_place + "[" + std::to_string(i) + "]";
    list.visit(i, *this);
  }
  place_ = outer;
}

}  // namespace tackbench
