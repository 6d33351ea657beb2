// Ear clipping of an outline with holes.
#include <Eigen/Geometry>
#include <algorithm>
#include <limits>

#include "core/scene/mesh_flat.h"

namespace tackbench {

namespace {

using Point2 = Eigen::Vector2d;

double cross(const Point2& a, const Point2& b) {
  return a.x() * b.y() - a.y() * b.x();
}

double turn_at(const Point2& a, const Point2& b, const Point2& c) {
  return cross(b - a, c - b);
}

bool inside(const Point2& p, const Point2& a, const Point2& b, const Point2& c) {
  return cross(b - a, p - a) >= 0.0 && cross(c - b, p - b) >= 0.0 && cross(a - c, p - c) >= 0.0;
}

// One loop of numbered points that gets shorter.
class Clipping {
 public:
  Clipping(const Outline& outline, const std::vector<Outline>& holes) : points_(outline) {
    for (std::uint32_t i = 0; i < outline.size(); ++i) loop_.push_back(i);
    std::vector<std::vector<std::uint32_t>> hole_loops;
    for (const Outline& hole : holes) {
      auto& numbers = hole_loops.emplace_back();
      for (const Point2& p : hole) {
        numbers.push_back(static_cast<std::uint32_t>(points_.size()));
        points_.push_back(p);
      }
    }
    // From the right: a bridge to the right of a hole then meets no hole that is still to come.
    std::sort(hole_loops.begin(), hole_loops.end(), [this](const auto& a, const auto& b) {
      return rightmost(a).second > rightmost(b).second;
    });
    for (const auto& hole : hole_loops) bridge(hole);
  }

  std::vector<std::array<std::uint32_t, 3>> triangles() {
    std::vector<std::array<std::uint32_t, 3>> made;
    while (loop_.size() > 3) {
      const std::size_t ear = best_ear();
      made.push_back({before(ear), loop_[ear], after(ear)});
      loop_.erase(loop_.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    if (loop_.size() == 3) made.push_back({loop_[0], loop_[1], loop_[2]});
    return made;
  }

 private:
  std::uint32_t before(std::size_t i) const { return loop_[(i + loop_.size() - 1) % loop_.size()]; }
  std::uint32_t after(std::size_t i) const { return loop_[(i + 1) % loop_.size()]; }

  std::pair<std::size_t, double> rightmost(const std::vector<std::uint32_t>& hole) const {
    std::size_t best = 0;
    for (std::size_t i = 1; i < hole.size(); ++i)
      if (points_[hole[i]].x() > points_[hole[best]].x()) best = i;
    return {best, points_[hole[best]].x()};
  }

  // Whether the straight line between two points crosses no side of the loop.
  bool sees(const Point2& from, std::uint32_t to) const {
    const Point2& target = points_[to];
    for (std::size_t i = 0; i < loop_.size(); ++i) {
      const std::uint32_t a = loop_[i];
      const std::uint32_t b = after(i);
      if (a == to || b == to) continue;
      const double side_a = cross(target - from, points_[a] - from);
      const double side_b = cross(target - from, points_[b] - from);
      const double side_from = cross(points_[b] - points_[a], from - points_[a]);
      const double side_to = cross(points_[b] - points_[a], target - points_[a]);
      if (side_a * side_b <= 0.0 && side_from * side_to <= 0.0) return false;
    }
    return true;
  }

  // Joins the hole into the loop by two coincident sides from its rightmost point to the nearest
  // point of the loop that it sees and that opens towards it.
  void bridge(const std::vector<std::uint32_t>& hole) {
    const std::size_t start = rightmost(hole).first;
    const Point2& from = points_[hole[start]];
    std::size_t best = loop_.size();
    double nearest = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < loop_.size(); ++i) {
      const double distance = (points_[loop_[i]] - from).squaredNorm();
      if (distance >= nearest || !opens_towards(i, from) || !sees(from, loop_[i])) continue;
      nearest = distance;
      best = i;
    }
    if (best == loop_.size()) return;  // outside the outline: left uncut
    std::vector<std::uint32_t> inserted;
    for (std::size_t i = 0; i <= hole.size(); ++i)
      inserted.push_back(hole[(start + i) % hole.size()]);
    inserted.push_back(loop_[best]);
    loop_.insert(loop_.begin() + static_cast<std::ptrdiff_t>(best) + 1, inserted.begin(),
                 inserted.end());
  }

  bool opens_towards(std::size_t i, const Point2& from) const {
    const Point2& at = points_[loop_[i]];
    const Point2& last = points_[before(i)];
    const Point2& next = points_[after(i)];
    const bool left_of_in = cross(at - last, from - last) > 0.0;
    const bool left_of_out = cross(next - at, from - at) > 0.0;
    return turn_at(last, at, next) >= 0.0 ? left_of_in && left_of_out : left_of_in || left_of_out;
  }

  bool is_ear(std::size_t i) const {
    const Point2& a = points_[before(i)];
    const Point2& b = points_[loop_[i]];
    const Point2& c = points_[after(i)];
    if (turn_at(a, b, c) <= 0.0) return false;
    for (const std::uint32_t other : loop_) {
      const Point2& p = points_[other];
      // A bridge passes each of its ends twice.
      if (p == a || p == b || p == c) continue;
      if (inside(p, a, b, c)) return false;
    }
    return true;
  }

  // The ear with the widest least angle, so that triangles stay compact; where rounding leaves no
  // ear, the corner that turns left most.
  std::size_t best_ear() const {
    std::size_t best = 0;
    double quality = -std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < loop_.size(); ++i) {
      const Point2& a = points_[before(i)];
      const Point2& b = points_[loop_[i]];
      const Point2& c = points_[after(i)];
      const double longest =
          std::max({(b - a).squaredNorm(), (c - b).squaredNorm(), (a - c).squaredNorm()});
      const double own = turn_at(a, b, c) / std::max(longest, 1e-12) + (is_ear(i) ? 10.0 : 0.0);
      if (own <= quality) continue;
      quality = own;
      best = i;
    }
    return best;
  }

  Outline points_;
  std::vector<std::uint32_t> loop_;
};

}  // namespace

std::vector<std::array<std::uint32_t, 3>> triangles_of(const Outline& outline,
                                                       const std::vector<Outline>& holes) {
  return Clipping(outline, holes).triangles();
}

}  // namespace tackbench
