#include "core/project/grip_list.h"

namespace tackbench::grip_list {

namespace {

Vec3 drawn(const Project& project, RidesOn rides_on, const Vec3& mm) {
  return rides_on == RidesOn::cab ? (drawn_cab(project) * Point<Cab>{mm}).mm : mm;
}

}  // namespace

void add_shape_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.shapes) return;
  const ShapesStation& station = *project.shapes;
  if (station.rails) {
    const Rails& rails = *station.rails;
    const auto end = [&](const char* path, const char* words, double x) {
      Grip made = grip(path, words, Station::shapes, Body::chassis,
                       Vec3(x, rails.outside_width / 2.0, -rails.depth / 2.0));
      give_line(made, Vec3::UnitX());
      made.freedom = GripFreedom::on_line;
      list.push_back(made);
    };
    end("shapes.rails.front_end_mm", "front end of the rails", rails.front_end);
    end("shapes.rails.rear_end_mm", "rear end of the rails", rails.rear_end);
  }
  for (std::size_t i = 0; i < station.shapes.size(); ++i) {
    const Shape& shape = station.shapes[i];
    const std::string path = item("shapes.shapes", i);
    const Body body = body_of(shape.rides_on);
    const bool long_one = shape.kind == ShapeKind::tube || shape.kind == ShapeKind::cylinder;
    const Vec3 place = drawn(project, shape.rides_on, shape.place);
    const Vec3 far_end = drawn(project, shape.rides_on, shape.end);
    Grip whole = grip(path, '"' + shape.name + '"', Station::shapes, body,
                      long_one ? Vec3((place + far_end) / 2.0) : place);
    whole.moves_several = true;
    list.push_back(whole);
    if (!long_one) continue;
    list.push_back(
        grip(path + ".place_mm", "start of \"" + shape.name + '"', Station::shapes, body, place));
    list.push_back(
        grip(path + ".end_mm", "end of \"" + shape.name + '"', Station::shapes, body, far_end));
  }
  for (std::size_t i = 0; i < station.stretch_pairs.size(); ++i) {
    const StretchPair& pair = station.stretch_pairs[i];
    const std::string path = item("shapes.stretch_pairs", i);
    list.push_back(grip(path + ".from.at_mm", "start of \"" + pair.name + '"', Station::shapes,
                        body_of(pair.from.rides_on),
                        drawn(project, pair.from.rides_on, pair.from.at)));
    list.push_back(grip(path + ".to.at_mm", "end of \"" + pair.name + '"', Station::shapes,
                        body_of(pair.to.rides_on), drawn(project, pair.to.rides_on, pair.to.at)));
  }
}

}  // namespace tackbench::grip_list
