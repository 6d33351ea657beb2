#include "core/project/project_difference.h"

#include <set>

#include "core/project/field_path.h"
#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench {

namespace {

// Member paths of everything that is written as one value.
class MemberPaths final : public FieldWalk {
 public:
  void text(const TextField& field, std::string&) override { add(field); }
  void flag(const FieldLabel& field, bool&) override { add(field); }
  void number(const NumberField& field, double&) override { add(field); }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    if (value) add(field);
  }
  void whole(const NumberField& field, int&) override { add(field); }
  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    if (value) add(field);
  }
  void vector(const NumberField& field, Vec3&) override { add(field); }
  void direction(const FieldLabel& field, Vec3&) override { add(field); }
  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override {
    if (value) add(field);
  }
  void choice_index(const FieldLabel& field, ChoiceWords, int&) override { add(field); }
  void optional_choice_index(const FieldLabel& field, ChoiceWords,
                             std::optional<int>& index) override {
    if (index) add(field);
  }
  void points_access(const NumberField& field, PointsAccess& points) override {
    for (std::size_t i = 0; i < points.size(); ++i)
      paths.push_back(place_of(field) + '[' + std::to_string(i) + ']');
  }

  std::vector<std::string> paths;

 private:
  void add(const FieldLabel& field) { paths.push_back(place_of(field)); }
};

std::vector<std::string> member_paths(const Project& project) {
  MemberPaths walk;
  Project copy = project;  // the walk changes nothing, but takes what it could change
  visit_fields(walk, copy);
  return walk.paths;
}

std::string words_of(const Project& project, const std::string& path) {
  const Result<std::string> words = field_words(project, path);
  return words ? *words : path;
}

std::string text_at(const Project& project, const std::string& path) {
  const Result<std::string> text = field_text(project, path);
  return text ? *text : std::string();
}

}  // namespace

std::vector<FieldDifference> differences(const Project& before, const Project& after) {
  std::vector<FieldDifference> found;
  const std::vector<std::string> old_paths = member_paths(before);
  std::set<std::string> only_old(old_paths.begin(), old_paths.end());
  for (const std::string& path : member_paths(after)) {
    const std::string old_text = only_old.erase(path) > 0 ? text_at(before, path) : std::string();
    std::string new_text = text_at(after, path);
    if (old_text != new_text)
      found.push_back({path, words_of(after, path), old_text, std::move(new_text)});
  }
  for (const std::string& path : old_paths)
    if (only_old.contains(path))
      found.push_back({path, words_of(before, path), text_at(before, path), {}});
  return found;
}

}  // namespace tackbench
