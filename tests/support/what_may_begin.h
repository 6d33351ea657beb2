// What of a project may still be begun: for tests that begin everything.
#pragma once

#include <string>
#include <vector>

#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench {

// Member paths of all that may be begun: absent groups and stations, and lists.
class WhatMayBegin final : public FieldWalk {
 public:
  void points_access(const NumberField& field, PointsAccess& points) override {
    static_cast<void>(points);
    lists.push_back(place_of(field));
  }
  void group_access(const FieldLabel& field, GroupAccess& group) override {
    if (!group.present()) {
      groups.push_back(place_of(field));
    } else {
      FieldWalk::group_access(field, group);
    }
  }
  void list_access(const FieldLabel& field, ListAccess& list) override {
    lists.push_back(place_of(field));
    FieldWalk::list_access(field, list);
  }
  std::vector<std::string> groups;
  std::vector<std::string> lists;
};

inline WhatMayBegin what_may_begin(Project project) {
  WhatMayBegin found;
  visit_fields(found, project);
  return found;
}

}  // namespace tackbench
