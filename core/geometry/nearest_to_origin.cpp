#include "core/geometry/nearest_to_origin.h"

#include <Eigen/Geometry>
#include <cmath>
#include <limits>

namespace tackbench {

namespace {

// Squared sine under which a triangle counts as a line, and a tetrahedron's volume against its
// edges under which it counts as flat.
constexpr double kFlat = 1e-14;

template <Vec3 SimplexCorner::*Where>
Vec3 weighted(const Simplex& simplex) {
  Vec3 sum = Vec3::Zero();
  for (int i = 0; i < simplex.count; ++i) {
    const auto at = static_cast<std::size_t>(i);
    sum += simplex.weights[at] * (simplex.corners[at].*Where);
  }
  return sum;
}

struct Part {
  std::array<int, 4> corners{};
  std::array<double, 4> weights{};
  int count = 0;
  double squared = std::numeric_limits<double>::infinity();
};

class Search {
 public:
  explicit Search(const Simplex& simplex) : simplex_(simplex) {}

  void try_point(int a) { take({{a}, {1.0}, 1, at(a).squaredNorm()}); }

  void try_edge(int a, int b) {
    const Vec3 edge = at(b) - at(a);
    const double length = edge.squaredNorm();
    if (!(length > 0.0)) return;
    const double part = -at(a).dot(edge) / length;
    if (!(part > 0.0) || !(part < 1.0)) return;
    take({{a, b}, {1.0 - part, part}, 2, (at(a) + part * edge).squaredNorm()});
  }

  void try_face(int a, int b, int c) {
    const Vec3 ab = at(b) - at(a);
    const Vec3 ac = at(c) - at(a);
    const Vec3 normal = ab.cross(ac);
    const double area = normal.squaredNorm();
    if (!(area > kFlat * ab.squaredNorm() * ac.squaredNorm())) return;
    // Barycentric weights from the areas that the foot of the origin cuts off.
    const double weight_c = normal.dot(ab.cross(-at(a))) / area;
    const double weight_b = normal.dot((-at(a)).cross(ac)) / area;
    const double weight_a = 1.0 - weight_b - weight_c;
    if (!(weight_a > 0.0) || !(weight_b > 0.0) || !(weight_c > 0.0)) return;
    const Vec3 foot = weight_a * at(a) + weight_b * at(b) + weight_c * at(c);
    take({{a, b, c}, {weight_a, weight_b, weight_c}, 3, foot.squaredNorm()});
  }

  // Whether the whole tetrahedron holds the origin, and the weights that make it.
  bool inside(std::array<double, 4>& weights) const {
    const Vec3 ab = at(1) - at(0);
    const Vec3 ac = at(2) - at(0);
    const Vec3 ad = at(3) - at(0);
    const double volume = ab.dot(ac.cross(ad));
    if (!(std::abs(volume) > kFlat * ab.norm() * ac.norm() * ad.norm())) return false;
    const double b = -at(0).dot(ac.cross(ad)) / volume;
    const double c = -at(0).dot(ad.cross(ab)) / volume;
    const double d = -at(0).dot(ab.cross(ac)) / volume;
    weights = {1.0 - b - c - d, b, c, d};
    return b >= 0.0 && c >= 0.0 && d >= 0.0 && b + c + d <= 1.0;
  }

  const Part& best() const { return best_; }

 private:
  const Vec3& at(int i) const { return simplex_.corners[static_cast<std::size_t>(i)].apart; }
  void take(const Part& part) {
    if (part.squared < best_.squared) best_ = part;
  }

  const Simplex& simplex_;
  Part best_;
};

}  // namespace

Vec3 Simplex::on_first() const {
  return weighted<&SimplexCorner::on_first>(*this);
}
Vec3 Simplex::on_second() const {
  return weighted<&SimplexCorner::on_second>(*this);
}
Vec3 Simplex::apart() const {
  return weighted<&SimplexCorner::apart>(*this);
}

bool reduce_to_nearest(Simplex& simplex) {
  Search search(simplex);
  const int newest = simplex.count - 1;
  if (std::array<double, 4> weights{}; simplex.count == 4 && search.inside(weights)) {
    simplex.weights = weights;
    return true;
  }
  search.try_point(newest);
  for (int i = 0; i < newest; ++i) search.try_edge(i, newest);
  for (int i = 0; i < newest; ++i)
    for (int j = i + 1; j < newest; ++j) search.try_face(i, j, newest);
  const Part& best = search.best();
  Simplex kept;
  kept.count = best.count;
  for (int i = 0; i < best.count; ++i) {
    const auto into = static_cast<std::size_t>(i);
    kept.corners[into] = simplex.corners[static_cast<std::size_t>(best.corners[into])];
    kept.weights[into] = best.weights[into];
  }
  simplex = kept;
  return false;
}

}  // namespace tackbench
