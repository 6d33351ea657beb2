// What of a project may still be begun: for tests that begin everything.
#pragma once

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "core/project/field_items.h"
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

// Begins everything from nothing: stations and groups, two items in each list, and again what
// stands in those. Calls `take(project, path)` after each; gives the paths.
template <class Take>
std::set<std::string> begin_everything(Take&& take) {
  Project project;
  std::set<std::string> begun;
  const auto keep = [&](const Result<Project>& after, const std::string& path) {
    project = *after;
    begun.insert(path);
    take(project, path);
  };
  for (bool more = true; more;) {
    const WhatMayBegin left = what_may_begin(project);
    more = false;
    for (const std::string& group : left.groups) {
      const auto after = with_group_added(project, group);
      EXPECT_TRUE(after.ok()) << group;
      if (!after.ok()) continue;
      keep(after, group);
      more = true;
    }
    for (const std::string& list : left.lists) {
      if (begun.contains(list)) continue;
      for (int items = 0; items < 2; ++items) {
        const auto after = with_item_added(project, list);
        if (!after.ok()) break;  // full
        keep(after, list);
        more = true;
      }
      begun.insert(list);
    }
  }
  return begun;
}

}  // namespace tackbench
