#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, LimitChoice& r) {
  v.text(required(
             TextField{{"name", "name of the limit", "as in the list of limits"}, TextKind::name}),
         r.name);
  constexpr double kMost = 1e9;
  v.optional_number(plain("least", -kMost, kMost, "least value", "in the limit's shown unit"),
                    r.least);
  v.optional_number(plain("most", -kMost, kMost, "greatest value", "in the limit's shown unit"),
                    r.most);
  v.optional_number(
      plain("least_inner", -kMost, kMost, "inner least value", "a value short of this is close"),
      r.least_inner);
  v.optional_number(
      plain("most_inner", -kMost, kMost, "inner greatest value", "a value beyond this is close"),
      r.most_inner);
  v.text(text_field("source", "source of the limit"), r.source);
  v.choice(label("standing", "standing of the limit", "how far it may be trusted"), r.standing);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, LimitsStation& r) {
  v.list(label("choices", "chosen limit"), r.choices);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
