#include "core/project/starting_guesses.h"

#include "core/project/field_walk.h"
#include "core/project/fields.h"
#include "core/project/starting_truck.h"

namespace tackbench {

namespace {

// Every figure of a project by its member path, a single number as a vector's first part.
class Figures final : public FieldWalk {
 public:
  struct Figure {
    std::string path;
    Vec3 value;
  };

  void number(const NumberField& field, double& value) override {
    keep(field, Vec3(value, 0.0, 0.0));
  }
  void optional_number(const NumberField& field, std::optional<double>& value) override {
    if (value) keep(field, Vec3(*value, 0.0, 0.0));
  }
  void vector(const NumberField& field, Vec3& value) override { keep(field, value); }
  void direction(const FieldLabel& field, Vec3& value) override { keep(field, value); }

  const std::vector<Figure>& all() const { return all_; }

 private:
  void keep(const FieldLabel& field, const Vec3& value) {
    if (value.isZero(0.0)) return;
    std::string path = place_of(field);
    if (station_of(path)) all_.push_back({std::move(path), value});
  }

  std::vector<Figure> all_;
};

Figures figures_of(Project project) {
  Figures figures;
  visit_fields(figures, project);
  return figures;
}

}  // namespace

std::vector<std::string> starting_guesses(const Project& project) {
  if (!project.sheet || !project.sheet->start) return {};
  std::map<std::string, Vec3> start;
  const Figures began = figures_of(starting_truck(start_answers(project)));
  for (const auto& figure : began.all()) start[figure.path] = figure.value;
  std::vector<std::string> paths;
  const Figures now = figures_of(project);
  for (const auto& figure : now.all()) {
    const auto found = start.find(figure.path);
    // What a file keeps is rounded in its last digit.
    if (found != start.end() && found->second.isApprox(figure.value, 1e-9))
      paths.push_back(figure.path);
  }
  return paths;
}

std::map<Station, int> guesses_by_station(const Project& project) {
  std::map<Station, int> counts;
  for (const std::string& path : starting_guesses(project)) ++counts[*station_of(path)];
  return counts;
}

}  // namespace tackbench
