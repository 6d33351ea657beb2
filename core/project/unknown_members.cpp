#include "core/project/unknown_members.h"

#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench {

namespace {

class UnknownMemberWalk final : public FieldWalk {
 public:
  void unknown_members(UnknownMembers& members) override {
    for (const UnknownMember& member : members) {
      places.push_back(place().empty() ? member.key : place() + "." + member.key);
    }
  }
  std::vector<std::string> places;
};

}  // namespace

std::vector<std::string> unknown_member_places(const Project& project) {
  Project copy = project;  // visiting wants a value of its own; a copy costs nothing
  UnknownMemberWalk walk;
  visit_fields(walk, copy);
  return walk.places;
}

}  // namespace tackbench
