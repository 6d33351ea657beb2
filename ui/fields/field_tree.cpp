#include "ui/fields/field_tree.h"

#include <utility>

#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench::ui {

namespace {

QString words_of_field(std::string_view words) {
  return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

class TreeBuilder final : public FieldWalk {
 public:
  explicit TreeBuilder(std::string_view root) : root_(root) {}

  FieldGroup taken() { return std::move(found_); }

  void text(const TextField& field, std::string& value) override {
    if (field.kind == TextKind::name && group_ != nullptr && group_->kind == GroupKind::item)
      group_->name = QString::fromStdString(value);
    FieldEntry entry = entry_of(field, EntryKind::text);
    entry.text_kind = field.kind;
    add(std::move(entry));
  }
  void flag(const FieldLabel& field, bool&) override { add(entry_of(field, EntryKind::flag)); }
  void number(const NumberField& field, double&) override {
    add(number_entry(field, EntryKind::number));
  }
  void optional_number(const NumberField& field, std::optional<double>&) override {
    add(optional(number_entry(field, EntryKind::number)));
  }
  void whole(const NumberField& field, int&) override {
    add(number_entry(field, EntryKind::whole));
  }
  void optional_whole(const NumberField& field, std::optional<int>&) override {
    add(optional(number_entry(field, EntryKind::whole)));
  }
  void vector(const NumberField& field, Vec3&) override {
    add(number_entry(field, EntryKind::point));
  }
  void direction(const FieldLabel& field, Vec3&) override {
    add(entry_of(field, EntryKind::direction));
  }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>&) override {
    add(optional(entry_of(field, EntryKind::direction)));
  }
  void choice_index(const FieldLabel& field, ChoiceWords words, int&) override {
    add(choice_entry(field, words));
  }
  void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                             std::optional<int>&) override {
    add(optional(choice_entry(field, words)));
  }

  void points_access(const NumberField& field, PointsAccess& points) override {
    if (group_ == nullptr) return;
    FieldGroup list = group_of(field, GroupKind::points);
    for (std::size_t i = 0; i < points.size(); ++i) {
      FieldEntry point = number_entry(field, EntryKind::point);
      point.path += "[" + std::to_string(i) + "]";
      point.words += QStringLiteral(" %1").arg(i + 1);
      list.members.emplace_back(std::move(point));
    }
    group_->members.emplace_back(std::move(list));
  }

  void group_access(const FieldLabel& field, GroupAccess& group) override {
    if (group_ == nullptr && field.key != root_) return;
    FieldGroup made = group_of(field, group.optional() ? GroupKind::optional : GroupKind::record);
    made.present = group.present();
    if (made.present) go_into(made, [&] { group.visit(*this); });
    if (group_ == nullptr) {
      found_ = std::move(made);
    } else {
      group_->members.emplace_back(std::move(made));
    }
  }

  void list_access(const FieldLabel& field, ListAccess& list) override {
    if (group_ == nullptr) return;
    FieldGroup made = group_of(field, GroupKind::list);
    for (std::size_t i = 0; i < list.size(); ++i) {
      FieldGroup item = group_of(field, GroupKind::item);
      item.path += "[" + std::to_string(i) + "]";
      item.index = i;
      go_into(item, [&] { list.visit(i, *this); });
      made.members.emplace_back(std::move(item));
    }
    group_->members.emplace_back(std::move(made));
  }

 private:
  std::string path_of(const FieldLabel& field) const {
    const std::string key(field.key);
    return group_ == nullptr ? key : group_->path + "." + key;
  }

  FieldEntry entry_of(const FieldLabel& field, EntryKind kind) const {
    FieldEntry entry;
    entry.kind = kind;
    entry.path = path_of(field);
    entry.words = words_of_field(field.words);
    entry.note = words_of_field(field.note);
    return entry;
  }
  FieldEntry number_entry(const NumberField& field, EntryKind kind) const {
    FieldEntry entry = entry_of(field, kind);
    entry.unit = field.unit;
    entry.least = field.least;
    entry.most = field.most;
    return entry;
  }
  FieldEntry choice_entry(const FieldLabel& field, ChoiceWords words) const {
    FieldEntry entry = entry_of(field, EntryKind::choice);
    entry.choices.assign(words.begin(), words.end());
    return entry;
  }
  static FieldEntry optional(FieldEntry entry) {
    entry.optional = true;
    return entry;
  }
  FieldGroup group_of(const FieldLabel& field, GroupKind kind) const {
    FieldGroup group;
    group.kind = kind;
    group.path = path_of(field);
    group.words = words_of_field(field.words);
    group.note = words_of_field(field.note);
    return group;
  }

  void add(FieldEntry entry) {
    if (group_ != nullptr) group_->members.emplace_back(std::move(entry));
  }

  template <class Visit>
  void go_into(FieldGroup& group, Visit visit) {
    FieldGroup* const outer = std::exchange(group_, &group);
    visit();
    group_ = outer;
  }

  std::string_view root_;
  FieldGroup* group_ = nullptr;  // the one being filled
  FieldGroup found_;
};

}  // namespace

FieldGroup field_group(const Project& project, const std::string& root) {
  Project copy = project;
  TreeBuilder builder(root);
  visit_fields(builder, copy);
  return builder.taken();
}

std::string structure_of(const FieldGroup& group) {
  std::string text = group.path + (group.present ? "{" : "-{");
  for (const auto& member : group.members) {
    if (const auto* entry = std::get_if<FieldEntry>(&member)) {
      text += entry->path + ";";
    } else {
      text += structure_of(std::get<FieldGroup>(member));
    }
  }
  return text + "}";
}

std::vector<FieldEntry> entries_of(const FieldGroup& group) {
  std::vector<FieldEntry> entries;
  for (const auto& member : group.members) {
    if (const auto* entry = std::get_if<FieldEntry>(&member)) {
      entries.push_back(*entry);
    } else {
      const auto inner = entries_of(std::get<FieldGroup>(member));
      entries.insert(entries.end(), inner.begin(), inner.end());
    }
  }
  return entries;
}

}  // namespace tackbench::ui
