#include "core/drawing/truck_pen.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/basics/units.h"

namespace tackbench {

namespace {

// Further than any truck reaches, mm: beyond it something came apart.
constexpr double kFar = 1e6;

bool drawable(const ViewPoint& point) {
  return std::abs(point.x) < kFar && std::abs(point.y) < kFar;  // false for NaN
}

bool unit_from(const Vec3& from, const Vec3& to, Vec3& unit) {
  unit = to - from;
  const double length = unit.norm();
  if (!(length > 1e-6)) return false;
  unit /= length;
  return true;
}

}  // namespace

void TruckPen::add(DrawnLine line) {
  if (line.through.size() < 2) return;
  if (!std::all_of(line.through.begin(), line.through.end(), drawable)) return;
  if (ghost_) {
    line.ink = Ink::ghost;
    line.filled = false;
    line.body = false;
  }
  out_.lines.push_back(std::move(line));
}

void TruckPen::path(std::span<const Vec3> through, Ink ink, std::string_view part) {
  DrawnLine line;
  line.through.reserve(through.size());
  for (const Vec3& place : through) line.through.push_back(at(place));
  line.ink = ink;
  line.part = part;
  add(std::move(line));
}

void TruckPen::face(std::span<const Vec3> corners, Ink ink, std::string_view part) {
  DrawnLine line;
  line.through.reserve(corners.size());
  for (const Vec3& place : corners) line.through.push_back(at(place));
  line.ink = ink;
  line.closed = true;
  line.filled = true;
  line.body = true;
  line.part = part;
  add(std::move(line));
}

void TruckPen::solid(std::span<const Disc> discs, double rounding, Ink ink, std::string_view part) {
  DrawnLine line;
  line.through = outline(view(), discs, rounding, OutlineGrain::coarse);
  line.ink = ink;
  line.closed = true;
  line.filled = true;
  line.body = true;
  line.part = part;
  add(std::move(line));
}

void TruckPen::rod(const Vec3& from, const Vec3& to, double radius, Ink ink,
                   std::string_view part) {
  cone(from, radius, to, radius, ink, part);
}

void TruckPen::cone(const Vec3& from, double from_radius, const Vec3& to, double to_radius, Ink ink,
                    std::string_view part) {
  Vec3 axis;
  if (!unit_from(from, to, axis)) return;
  const std::array discs{Disc{from, axis, from_radius}, Disc{to, axis, to_radius}};
  solid(discs, 0.0, ink, part);
}

void TruckPen::lever(const Vec3& root, double root_radius, const Vec3& ball, double ball_radius,
                     const Vec3& axis, double half_thickness, Ink ink, std::string_view part) {
  const Vec3 half = half_thickness * axis;
  const std::array discs{Disc{root + half, axis, root_radius}, Disc{root - half, axis, root_radius},
                         Disc{ball + half, axis, ball_radius},
                         Disc{ball - half, axis, ball_radius}};
  solid(discs, 0.0, ink, part);
}

void TruckPen::sphere(const Vec3& centre, double radius, Ink ink, std::string_view part) {
  const std::array discs{Disc{centre, sight(view()), 0.0}};
  solid(discs, radius, ink, part);
}

void TruckPen::block(const Placement<Chassis, Chassis>& place, const Vec3& least,
                     const Vec3& greatest, Ink ink, std::string_view part, bool see_through) {
  std::array<ViewPoint, 8> corners;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec3 corner((i & 1) != 0 ? greatest.x() : least.x(),
                      (i & 2) != 0 ? greatest.y() : least.y(),
                      (i & 4) != 0 ? greatest.z() : least.z());
    corners[i] = at((place * Point<Chassis>{corner}).mm);
  }
  DrawnLine line;
  line.through = hull({corners.begin(), corners.end()});
  line.ink = ink;
  line.closed = true;
  line.filled = !see_through;
  line.body = true;
  line.part = part;
  add(std::move(line));

  // Of each pair of opposite faces one faces the eye; an edge shows inside the outline where two
  // such faces meet.
  constexpr double kEdgeOn = 1e-3;
  std::array<double, 3> facing{};
  for (int axis = 0; axis < 3; ++axis)
    facing[static_cast<std::size_t>(axis)] = towards_eye(place.turn.col(axis));
  for (std::size_t along = 0; along < 3; ++along) {
    const std::size_t second = (along + 1) % 3;
    const std::size_t third = (along + 2) % 3;
    if (std::abs(facing[second]) < kEdgeOn || std::abs(facing[third]) < kEdgeOn) continue;
    const std::size_t from = (facing[second] > 0.0 ? std::size_t{1} << second : 0) |
                             (facing[third] > 0.0 ? std::size_t{1} << third : 0);
    add({{corners[from], corners[from | (std::size_t{1} << along)]},
         ink,
         false,
         false,
         true,
         std::string(part)});
  }
}

void TruckPen::ring(const Disc& disc, Ink ink, std::string_view part) {
  rim(disc, 0.0, ink, part);
}

void TruckPen::rim(const Disc& disc, double rounding, Ink ink, std::string_view part) {
  DrawnLine line;
  line.through = outline(view(), {&disc, 1}, rounding, OutlineGrain::fine);
  if (line.through.empty()) return;
  // Back to its start instead of closed: only what is closed has a wash.
  line.through.push_back(line.through.front());
  line.ink = ink;
  line.body = true;
  line.part = part;
  add(std::move(line));
}

void TruckPen::near_arc(const Disc& disc, double least_z, Ink ink, std::string_view part) {
  constexpr int kSteps = 24;
  // `first` is the radius nearest to the eye: the near half lies a quarter turn to both sides.
  const Vec3 first = square_to(disc.axis, sight(view()));
  const Vec3 second = disc.axis.cross(first);
  DrawnLine line;
  line.ink = ink;
  line.part = part;
  line.body = true;
  line.through.reserve(kSteps + 1);
  for (int i = 0; i <= kSteps; ++i) {
    const double angle = kPi * (static_cast<double>(i) / kSteps - 0.5);
    Vec3 place =
        disc.centre_mm + disc.radius * (std::cos(angle) * first + std::sin(angle) * second);
    if (!sees(SheetView::plan)) place.z() = std::max(place.z(), least_z);
    line.through.push_back(at(place));
  }
  add(std::move(line));
}

void TruckPen::coil(const Vec3& from, const Vec3& to, double half_width, Ink ink,
                    std::string_view part) {
  const ViewPoint a = at(from);
  const ViewPoint b = at(to);
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (!(length > 1.0)) return;
  const ViewPoint along{(b.x - a.x) / length, (b.y - a.y) / length};
  constexpr int kTurns = 8;
  constexpr double kPlainShare = 0.15;  // of the length, at each end
  DrawnLine line;
  line.through.push_back(a);
  for (int i = 0; i <= kTurns; ++i) {
    const double share = kPlainShare + (1.0 - 2.0 * kPlainShare) * i / kTurns;
    const double sideways = i == 0 || i == kTurns ? 0.0 : (i % 2 == 0 ? half_width : -half_width);
    line.through.push_back({a.x + share * length * along.x - sideways * along.y,
                            a.y + share * length * along.y + sideways * along.x});
  }
  line.through.push_back(b);
  line.ink = ink;
  line.body = true;
  line.part = part;
  add(std::move(line));
}

void TruckPen::symbol(JointSymbol symbol, const Vec3& place, const Vec3& along, Ink ink,
                      std::string_view part) {
  const ViewPoint where = at(place);
  const ViewPoint way = at(along);
  if (ghost_ || !drawable(where)) return;
  const bool has_way = std::hypot(way.x, way.y) > 1e-6;
  out_.symbols.push_back(
      {symbol, where, has_way ? std::atan2(way.y, way.x) : 0.0, ink, std::string(part)});
}

void TruckPen::round(const Vec3& centre, double radius, Ink ink, bool filled,
                     std::string_view part) {
  const ViewPoint where = at(centre);
  if (!drawable(where)) return;
  if (ghost_) {
    ink = Ink::ghost;
    filled = false;
  }
  out_.rounds.push_back({where, radius, ink, filled, std::string(part)});
}

}  // namespace tackbench
