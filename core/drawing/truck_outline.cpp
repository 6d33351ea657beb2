#include "core/drawing/truck_outline.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr double kSamePoint = 0.01;  // mm

// A disc as the view sees it: its centre, and its axis' part in the view.
struct FlatDisc {
  ViewPoint centre;
  ViewPoint axis;
  double depth = 0.0;  // the axis' part along the line of sight
  double radius = 0.0;

  ViewPoint furthest(const ViewPoint& way) const {
    const double along = way.x * axis.x + way.y * axis.y;
    // Sine of the angle between way and axis, from their product: 1 - along^2 would cancel.
    const double rest = std::hypot(way.x * axis.y - way.y * axis.x, depth);
    if (rest < 1e-12) return centre;
    const double reach = radius / rest;
    return {centre.x + reach * (way.x - along * axis.x),
            centre.y + reach * (way.y - along * axis.y)};
  }
};

// Directions over a quarter turn from the first disc's axis, by rising angle. Even steps serve the
// rounded shoulders; even steps along the disc's ellipse serve its rim, however narrow it is seen.
class QuarterWays {
 public:
  QuarterWays(double narrowness, int shoulder_steps, int rim_steps) {
    // Both sides of the jump from one flat to the next.
    constexpr double kHair = 1e-7;
    std::array<ViewPoint, kMost> shoulder;
    std::array<ViewPoint, kMost> rim;
    std::size_t shoulders = 0;
    std::size_t rims = 0;
    for (int i = 0; i <= shoulder_steps; ++i) {
      const double angle = kHair + (kPi / 2.0 - 2.0 * kHair) * i / shoulder_steps;
      shoulder[shoulders++] = {std::cos(angle), std::sin(angle)};
    }
    for (int i = 1; i < rim_steps; ++i) {
      const double angle = kPi / 2.0 * i / rim_steps;
      const ViewPoint way{std::cos(angle), narrowness * std::sin(angle)};
      const double length = std::hypot(way.x, way.y);
      if (length > 1e-9) rim[rims++] = {way.x / length, way.y / length};
    }
    const auto* const end = std::merge(
        shoulder.begin(), shoulder.begin() + std::ptrdiff_t(shoulders), rim.begin(),
        rim.begin() + std::ptrdiff_t(rims), ways_.begin(),
        [](const ViewPoint& a, const ViewPoint& b) { return a.x * b.y - a.y * b.x > 0.0; });
    count_ = static_cast<std::size_t>(end - ways_.begin());
  }

  std::size_t count() const { return count_; }
  const ViewPoint& operator[](std::size_t i) const { return ways_[i]; }

 private:
  static constexpr std::size_t kMost = 32;
  std::array<ViewPoint, 2 * kMost> ways_;
  std::size_t count_ = 0;
};

class OutlineWalk {
 public:
  OutlineWalk(std::span<const FlatDisc> discs, double rounding, std::vector<ViewPoint>& points)
      : discs_(discs), rounding_(rounding), points_(points) {}

  void add(const ViewPoint& way) {
    ViewPoint best = discs_.front().furthest(way);
    double most = best.x * way.x + best.y * way.y;
    for (const FlatDisc& disc : discs_.subspan(1)) {
      const ViewPoint place = disc.furthest(way);
      const double reach = place.x * way.x + place.y * way.y;
      if (reach > most) {
        most = reach;
        best = place;
      }
    }
    best.x += rounding_ * way.x;
    best.y += rounding_ * way.y;
    if (!points_.empty() && std::abs(points_.back().x - best.x) < kSamePoint &&
        std::abs(points_.back().y - best.y) < kSamePoint)
      return;
    points_.push_back(best);
  }

 private:
  std::span<const FlatDisc> discs_;
  double rounding_;
  std::vector<ViewPoint>& points_;
};

double across(const ViewPoint& origin, const ViewPoint& a, const ViewPoint& b) {
  return (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
}

}  // namespace

std::vector<ViewPoint> outline(SheetView view, std::span<const Disc> discs, double rounding,
                               OutlineGrain grain) {
  constexpr std::size_t kMostDiscs = 8;
  std::array<FlatDisc, kMostDiscs> flat;
  const std::size_t count = std::min(discs.size(), kMostDiscs);
  if (count == 0) return {};
  for (std::size_t i = 0; i < count; ++i)
    flat[i] = {seen(view, discs[i].centre_mm), seen(view, discs[i].axis),
               discs[i].axis.dot(sight(view)), discs[i].radius};

  ViewPoint main = flat[0].axis;
  const double in_view = std::hypot(main.x, main.y);
  main = in_view > 1e-9 ? ViewPoint{main.x / in_view, main.y / in_view} : ViewPoint{1.0, 0.0};
  const double narrowness = std::sqrt(std::max(0.0, 1.0 - in_view * in_view));
  const bool fine = grain == OutlineGrain::fine;
  const int shoulder_steps = rounding > 0.0 ? (fine ? 8 : 4) : 1;
  const QuarterWays ways(narrowness, shoulder_steps, fine ? 16 : 6);

  std::vector<ViewPoint> points;
  points.reserve(4 * ways.count());
  OutlineWalk walk({flat.data(), count}, rounding, points);
  const auto turned = [&](double along, double sideways) {
    walk.add({along * main.x - sideways * main.y, along * main.y + sideways * main.x});
  };
  for (std::size_t i = 0; i < ways.count(); ++i) turned(ways[i].x, ways[i].y);
  for (std::size_t i = ways.count(); i-- > 0;) turned(-ways[i].x, ways[i].y);
  for (std::size_t i = 0; i < ways.count(); ++i) turned(-ways[i].x, -ways[i].y);
  for (std::size_t i = ways.count(); i-- > 0;) turned(ways[i].x, -ways[i].y);
  return points;
}

std::vector<ViewPoint> hull(std::vector<ViewPoint> points) {
  // Andrew's monotone chain.
  std::sort(points.begin(), points.end(), [](const ViewPoint& a, const ViewPoint& b) {
    return a.x < b.x || (a.x == b.x && a.y < b.y);
  });
  std::vector<ViewPoint> chain;
  chain.reserve(points.size() + 1);
  const auto extend = [&chain](const ViewPoint& point, std::size_t least) {
    while (chain.size() >= least + 2 &&
           across(chain[chain.size() - 2], chain.back(), point) <= 1e-9)
      chain.pop_back();
    chain.push_back(point);
  };
  for (const ViewPoint& point : points) extend(point, 0);
  const std::size_t lower = chain.size() - (chain.empty() ? 0 : 1);
  for (std::size_t i = points.size(); i-- > 0;) extend(points[i], lower);
  if (chain.size() > 1) chain.pop_back();
  return chain;
}

std::vector<ViewPoint> cut_below(const std::vector<ViewPoint>& closed, double least_y) {
  std::vector<ViewPoint> kept;
  kept.reserve(closed.size() + 2);
  for (std::size_t i = 0; i < closed.size(); ++i) {
    const ViewPoint& here = closed[i];
    const ViewPoint& next = closed[(i + 1) % closed.size()];
    if (here.y >= least_y) kept.push_back(here);
    if ((here.y >= least_y) == (next.y >= least_y)) continue;
    const double share = (least_y - here.y) / (next.y - here.y);
    kept.push_back({here.x + share * (next.x - here.x), least_y});
  }
  return kept;
}

}  // namespace tackbench
