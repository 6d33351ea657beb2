// Rails and the document's shapes.
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/clearance/solids_maker.h"
#include "core/geometry/solid_gap.h"

namespace tackbench {

namespace {

// A spring's shape hangs under its rail.
const char* const kSpringHanger = "spring hanger";

void add_rail(SolidsMaker& maker, const Rails& rails, Side side) {
  const double plate = std::min({kUsualRailPlate, 0.5 * rails.flange, 0.4 * rails.depth});
  const double length = rails.front_end - rails.rear_end;
  if (!(length > 0.0)) return;
  const double x = 0.5 * (rails.front_end + rails.rear_end);
  const double outside = 0.5 * rails.outside_width;
  const auto box = [&](double y, double z, double width, double depth, bool assumed) {
    return SolidPiece{
        rounded_box(Vec3(x, side_sign(side) * y, z), Mat3::Identity(), Vec3(length, width, depth)),
        rides(Body::chassis), assumed};
  };
  SolidPart part{side_word(side) + " rail", "shapes.rails", {}, {kSpringHanger}};
  // A channel open towards the middle of the truck; its outside is measured, its plate is not.
  part.pieces.push_back(box(outside - 0.5 * plate, -0.5 * rails.depth, plate, rails.depth, false));
  part.pieces.push_back(
      box(outside - 0.5 * rails.flange, -0.5 * plate, rails.flange, plate, false));
  part.pieces.push_back(
      box(outside - 0.5 * rails.flange, 0.5 * plate - rails.depth, rails.flange, plate, false));
  maker.add(std::move(part));
}

struct PlateFrame {
  Vec3 centre;
  Mat3 axes;
  double half_thickness;

  Vec3 at(double x, double y, double z) const { return centre + axes * Vec3(x, y, z); }
};

struct RoundHole {
  double x = 0.0;
  double y = 0.0;
  double radius = 0.0;
  double square = 0.0;  // half side of the square about it that is cut up on its own
};

// Wedges between the hole and the square about it. The hole becomes a polygon inside its circle:
// the plate is given up to 0.5 % of the hole's radius too much.
void add_round_hole(const PlateFrame& plate, const RoundHole& hole, const SolidBody& body,
                    SolidPart& part) {
  constexpr int kWedges = 32;  // a multiple of 8: the square's corners fall between wedges
  const auto place = [&](int wedge, bool on_square, double z) {
    const double angle = kRadiansPerTurn * wedge / kWedges;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    const double reach = on_square ? hole.square / std::max(std::abs(c), std::abs(s)) : hole.radius;
    return plate.at(hole.x + reach * c, hole.y + reach * s, z);
  };
  for (int wedge = 0; wedge < kWedges; ++wedge) {
    std::vector<Vec3> corners;
    for (const double z : {-plate.half_thickness, plate.half_thickness})
      for (const int edge : {wedge, wedge + 1})
        for (const bool on_square : {false, true}) corners.push_back(place(edge, on_square, z));
    part.pieces.push_back({convex_hull_of(std::move(corners)), body, false});
  }
}

// False when holes stand too near to each other or to the plate's border to be cut out.
bool add_plate(const PlateFrame& plate, const Shape& shape, const SolidBody& body,
               SolidPart& part) {
  constexpr double kRoom = 1.1;  // of the square, over the hole's radius
  std::vector<RoundHole> holes;
  std::vector<double> cuts_x{-0.5 * shape.size.x(), 0.5 * shape.size.x()};
  std::vector<double> cuts_y{-0.5 * shape.size.y(), 0.5 * shape.size.y()};
  for (const PlateHole& given : shape.holes) {
    if (!(given.diameter > 0.0)) continue;
    const double radius = 0.5 * given.diameter;
    const RoundHole hole{given.across, given.up, radius, kRoom * radius};
    if (std::abs(hole.x) + hole.square > cuts_x[1] || std::abs(hole.y) + hole.square > cuts_y[1])
      return false;
    for (const RoundHole& other : holes)
      if (std::max(std::abs(other.x - hole.x), std::abs(other.y - hole.y)) <
          hole.square + other.square)
        return false;
    holes.push_back(hole);
  }
  for (const RoundHole& hole : holes) {
    cuts_x.insert(cuts_x.end(), {hole.x - hole.square, hole.x + hole.square});
    cuts_y.insert(cuts_y.end(), {hole.y - hole.square, hole.y + hole.square});
    add_round_hole(plate, hole, body, part);
  }
  std::sort(cuts_x.begin(), cuts_x.end());
  std::sort(cuts_y.begin(), cuts_y.end());
  for (std::size_t i = 0; i + 1 < cuts_x.size(); ++i) {
    for (std::size_t j = 0; j + 1 < cuts_y.size(); ++j) {
      const double x = 0.5 * (cuts_x[i] + cuts_x[i + 1]);
      const double y = 0.5 * (cuts_y[j] + cuts_y[j + 1]);
      const bool in_square = std::any_of(holes.begin(), holes.end(), [&](const RoundHole& hole) {
        return std::abs(x - hole.x) < hole.square && std::abs(y - hole.y) < hole.square;
      });
      if (in_square) continue;
      part.pieces.push_back({rounded_box(plate.at(x, y, 0.0), plate.axes,
                                         Vec3(cuts_x[i + 1] - cuts_x[i], cuts_y[j + 1] - cuts_y[j],
                                              2.0 * plate.half_thickness)),
                             body, false});
    }
  }
  return true;
}

// A box about a leaf spring's seat stands for the spring.
bool is_spring(const Project& project, const Shape& shape) {
  if (!project.front_axle || project.front_axle->suspension.kind != SuspensionKind::leaf ||
      !project.front_axle->suspension.leaf || shape.rides_on != RidesOn::axle ||
      shape.kind != ShapeKind::box)
    return false;
  const Vec3& seat = project.front_axle->suspension.leaf->seat.mm;
  for (const double side : {1.0, -1.0}) {
    const Vec3 apart = (Vec3(seat.x(), side * seat.y(), seat.z()) - shape.place).cwiseAbs();
    if ((apart.array() <= 0.5 * shape.size.array()).all()) return true;
  }
  return false;
}

// A box on the axle that crosses its middle and reaches out to more than half of the kingpins.
bool is_beam(const Project& project, const Shape& shape) {
  return project.front_axle && shape.rides_on == RidesOn::axle && shape.kind == ShapeKind::box &&
         std::abs(shape.place.y()) <= 0.25 * shape.size.y() &&
         shape.size.y() >= knuckle_side(*project.front_axle, Side::left).kingpin_point.mm.y();
}

// The bracket that holds a pedal's pivot is around it.
void join_pivots(const SolidsMaker& maker, SolidPart& part) {
  if (!maker.project.pedals) return;
  const auto& pedals = maker.project.pedals->pedals;
  for (std::size_t i = 0; i < pedals.size(); ++i) {
    const ConvexSolid pivot = ball(maker.in_chassis(pedals[i].pivot), 0.0);
    for (const SolidPiece& piece : part.pieces) {
      if (gap_between(pivot, piece.solid).high_mm > 0.0) continue;
      part.joints.push_back(item_path("pedals.pedals", i) + " pivot");
      break;
    }
  }
}

void add_shape(SolidsMaker& maker, const Shape& shape, std::size_t index) {
  const SolidBody body = rides(body_of(shape.rides_on));
  const Mat3 frame =
      shape.rides_on == RidesOn::cab ? maker.mechanism.chassis_from_cab.turn : Mat3::Identity();
  const Vec3 place = maker.drawn_place(shape.rides_on, shape.place);
  const Vec3 end = maker.drawn_place(shape.rides_on, shape.end);
  const Mat3 axes = frame * roll_pitch_yaw_turn(shape.turn.x(), shape.turn.y(), shape.turn.z());
  SolidPart part{shape.name.empty() ? "shape " + std::to_string(index + 1) : shape.name,
                 item_path("shapes.shapes", index),
                 {},
                 {}};
  switch (shape.kind) {
    case ShapeKind::box:
      part.pieces.push_back({rounded_box(place, axes, shape.size, shape.rounding), body, false});
      break;
    case ShapeKind::tube:
    case ShapeKind::cylinder:
      part.pieces.push_back(
          {rounded_cylinder(place, end, 0.5 * shape.diameter, shape.rounding), body, false});
      break;
    case ShapeKind::plate:
      if (!add_plate({place, axes, 0.5 * shape.size.z()}, shape, body, part)) {
        maker.made.left_out.push_back(part.name + ": its holes stand too close to be cut out");
        return;
      }
      break;
    case ShapeKind::mesh:
      maker.made.left_out.push_back(part.name + ": a scan");
      return;
  }
  if (is_spring(maker.project, shape)) part.joints.emplace_back(kSpringHanger);
  if (is_beam(maker.project, shape)) {
    part.joints.emplace_back("left kingpin");
    part.joints.emplace_back("right kingpin");
  }
  join_pivots(maker, part);
  maker.add(std::move(part));
}

}  // namespace

void add_shape_solids(SolidsMaker& maker) {
  if (!maker.project.shapes) return;
  if (maker.project.shapes->rails)
    for (const Side side : {Side::left, Side::right})
      add_rail(maker, *maker.project.shapes->rails, side);
  for (std::size_t i = 0; i < maker.project.shapes->shapes.size(); ++i)
    add_shape(maker, maker.project.shapes->shapes[i], i);
}

}  // namespace tackbench
