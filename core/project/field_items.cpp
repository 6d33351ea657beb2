#include "core/project/field_items.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench {

namespace {

constexpr std::size_t kMostJoints = 4;
constexpr std::string_view kJoints = "shaft_line.joints";
constexpr std::string_view kRightKnuckle = "front_axle.right_knuckle";

// Square to no axis, so that a lever's end comes to lie beside its axis: 100 mm and a little, mm.
Vec3 apart(int number) {
  return static_cast<double>(number) * Vec3(20.0, 10.0, -98.0);
}

// Sets the places of one record apart from `start`.
class PlacesApart final : public FieldWalk {
 public:
  explicit PlacesApart(bool fresh) : fresh_(fresh) {}
  bool changes_values() const override { return true; }
  void vector(const NumberField& field, Vec3& value) override {
    if (field.unit != Unit::millimetre || field.least >= 0.0) return;  // a size is no place
    if (fresh_)
      value = apart(number_++);
    else
      value += apart(1);
  }

 private:
  bool fresh_;
  int number_ = 0;
};

// Names of the records of one list; gives a name to one of them.
class NameOfRecord final : public FieldWalk {
 public:
  explicit NameOfRecord(std::optional<std::string> given = std::nullopt)
      : given_(std::move(given)) {}
  bool changes_values() const override { return given_.has_value(); }
  void text(const TextField& field, std::string& value) override {
    if (field.kind != TextKind::name) return;
    if (given_) value = *given_;
    name = value;
  }
  void group_access(const FieldLabel&, GroupAccess&) override {}
  void list_access(const FieldLabel&, ListAccess&) override {}
  std::string name;

 private:
  std::optional<std::string> given_;
};

std::string free_name(ListAccess& list, std::string_view words) {
  std::set<std::string> taken;
  for (std::size_t i = 0; i < list.size(); ++i) {
    NameOfRecord each;
    list.visit(i, each);
    taken.insert(each.name);
  }
  std::size_t number = list.size();
  std::string name;
  do name = fmt::format("{} {}", words, number++);
  while (taken.contains(name));
  return name;
}

// Rows of a table rise: a copied row goes on by a quarter turn.
class RowFurther final : public FieldWalk {
 public:
  bool changes_values() const override { return true; }
  void number(const NumberField& field, double& value) override {
    if (field.key == "input_deg") value += radians_from_degrees(90.0);
  }
};

enum class Work { add_item, remove_item, add_group };

// Goes to one place and does its work there; everything else stays the very same.
class ItemWorker final : public FieldWalk {
 public:
  ItemWorker(Work work, std::string_view target, std::size_t index = 0)
      : work_(work), target_(target), index_(index) {}

  bool changes_values() const override { return true; }
  bool done() const { return done_; }

  void group_access(const FieldLabel& field, GroupAccess& group) override {
    const std::string here = place_of(field);
    if (here == target_ && work_ == Work::add_group && group.optional() && !group.present()) {
      group.set_present(true);
      PlacesApart places(true);
      group.visit(places);
      done_ = true;
    } else if (leads_on(here)) {
      FieldWalk::group_access(field, group);
    }
  }

  void list_access(const FieldLabel& field, ListAccess& list) override {
    const std::string here = place_of(field);
    if (leads_on(here)) return FieldWalk::list_access(field, list);
    if (here != target_) return;
    if (work_ == Work::remove_item && index_ < list.size()) {
      list.remove(index_);
      done_ = true;
    } else if (work_ == Work::add_item) {
      add_to(field, list);
    }
  }

  void points_access(const NumberField& field, PointsAccess& points) override {
    if (place_of(field) != target_) return;
    const std::size_t size = points.size();
    if (work_ == Work::remove_item && index_ < size) {
      for (std::size_t i = index_; i + 1 < size; ++i) points.at(i) = points.at(i + 1);
      points.resize(size - 1);
      done_ = true;
    } else if (work_ == Work::add_item) {
      points.resize(size + 1);
      if (size > 0) points.at(size) = points.at(size - 1) + apart(1);
      done_ = true;
    }
  }

 private:
  bool leads_on(const std::string& here) const {
    return target_.size() > here.size() && target_.starts_with(here) &&
           (target_[here.size()] == '.' || target_[here.size()] == '[');
  }

  void add_to(const FieldLabel& field, ListAccess& list) {
    const std::size_t size = list.size();
    const bool fresh = size == 0;
    if (fresh)
      list.resize(1);
    else
      list.add_copy_of(size - 1);
    NameOfRecord name(free_name(list, field.words));
    list.visit(size, name);
    PlacesApart places(fresh);
    list.visit(size, places);
    RowFurther row;
    if (!fresh) list.visit(size, row);
    done_ = true;
  }

  Work work_;
  std::string_view target_;
  std::size_t index_;
  bool done_ = false;
};

Result<Project> worked(const Project& project, ItemWorker worker, std::string_view path,
                       const char* found, const char* wanted) {
  Project changed = project;
  visit_fields(worker, changed);
  if (!worker.done()) return Problem{"", std::string(path), found, wanted};
  return changed;
}

Vec3 in_chassis(const Project& project, RidesOn rides_on, const Vec3& at) {
  if (rides_on != RidesOn::cab || !project.cab) return at;
  return (chassis_from_cab(*project.cab) * Point<Cab>{at}).mm;
}

Vec3 from_chassis(const Project& project, RidesOn rides_on, const Vec3& at) {
  if (rides_on != RidesOn::cab || !project.cab) return at;
  return (chassis_from_cab(*project.cab).inverse() * Point<Chassis>{at}).mm;
}

// A joint more, halfway from the last joint (or the column's end) to the box.
Result<Project> with_joint_added(const Project& project) {
  if (!project.shaft_line) {
    return Problem{"", "shaft_line", "this project has no shaft line", "add the shaft line first"};
  }
  if (project.shaft_line->joints.size() >= kMostJoints) {
    return Problem{"", std::string(kJoints), "a shaft line has at most 4 joints",
                   "take one away first"};
  }
  Result<Project> added = worked(project, ItemWorker(Work::add_item, kJoints), kJoints, "", "");
  if (!added) return added;
  auto line = std::make_shared<ShaftLineStation>(*added->shaft_line);
  ShaftJoint& joint = line->joints.back();
  const bool first = line->joints.size() == 1;
  if (project.steering_box && (!first || project.column)) {
    const Vec3 from = first ? in_chassis(project, RidesOn::cab, project.column->output_end.mm)
                            : in_chassis(project, line->joints[line->joints.size() - 2].rides_on,
                                         line->joints[line->joints.size() - 2].centre);
    joint.centre =
        from_chassis(project, joint.rides_on, 0.5 * (from + project.steering_box->input_end.mm));
  }
  Project changed = std::move(added).value();
  changed.shaft_line = std::move(line);
  if (first) return changed;
  return worked(changed, ItemWorker(Work::add_item, "shaft_line.shafts"), kJoints, "", "");
}

Result<Project> with_joint_removed(const Project& project, std::size_t index) {
  Result<Project> removed = worked(project, ItemWorker(Work::remove_item, kJoints, index), kJoints,
                                   "there is no such joint", "name one that is there");
  if (!removed) return removed;
  auto line = std::make_shared<ShaftLineStation>(*removed->shaft_line);
  if (!line->shafts.empty()) {
    const std::size_t shaft = std::min(index, line->shafts.size() - 1);
    line->shafts.erase(line->shafts.begin() + static_cast<std::ptrdiff_t>(shaft));
    const int gone = static_cast<int>(shaft);
    std::erase_if(line->supports, [&](const ShaftSupport& each) { return each.shaft == gone; });
    for (ShaftSupport& support : line->supports)
      if (support.shaft > gone) --support.shaft;
  }
  removed.value().shaft_line = std::move(line);
  return removed;
}

}  // namespace

Result<Project> with_item_added(const Project& project, std::string_view list_path) {
  if (list_path == kJoints) return with_joint_added(project);
  return worked(project, ItemWorker(Work::add_item, list_path), list_path, "there is no such list",
                "name a list that is there");
}

Result<Project> with_item_removed(const Project& project, std::string_view list_path,
                                  std::size_t index) {
  if (list_path == kJoints) return with_joint_removed(project, index);
  return worked(project, ItemWorker(Work::remove_item, list_path, index), list_path,
                "there is no such item", "name one that is there");
}

Result<Project> with_group_added(const Project& project, std::string_view path) {
  if (path == kRightKnuckle && project.front_axle && !project.front_axle->right_knuckle) {
    Project freed = project;
    auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
    axle->right_knuckle = knuckle_side(*axle, Side::right);
    freed.front_axle = std::move(axle);
    return freed;
  }
  return worked(project, ItemWorker(Work::add_group, path), path,
                "there is nothing to add there, or it is there already",
                "name a group that may be left out");
}

}  // namespace tackbench
