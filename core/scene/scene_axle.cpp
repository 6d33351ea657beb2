// Rails, axle beam, knuckles, wheels, stops.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured, mm.
constexpr double kLongestRail =
    3200.0;  // behind the front axle; the rest only makes the truck small
constexpr double kBeamWidth = 70.0;
constexpr double kBeamDepth = 84.0;
constexpr double kKingpinRadius = 22.0;
constexpr double kKingpinHalf = 95.0;
constexpr double kBossRadius = 38.0;
constexpr double kBoltLength = 55.0;
constexpr double kRimShare = 0.6;  // of the tyre's radius

void add_rail(SceneMaker& maker, const Rails& rails, Side side) {
  maker.add(RidesBody{}, "shapes.rails", SceneRole::fixed, [&](Detail) {
    // A channel open towards the middle of the truck, swept rearward.
    const double outside = 0.5 * rails.outside_width;
    const double inside = outside - rails.flange;
    const double web = outside - std::min(kUsualRailPlate, 0.5 * rails.flange);
    const double plate = std::min(kUsualRailPlate, 0.4 * rails.depth);
    Outline outline{{inside, 0.0},
                    {inside, -plate},
                    {web, -plate},
                    {web, plate - rails.depth},
                    {inside, plate - rails.depth},
                    {inside, -rails.depth},
                    {outside, -rails.depth},
                    {outside, 0.0}};
    if (side == Side::right) {
      for (auto& corner : outline) corner.x() = -corner.x();
      std::reverse(outline.begin(), outline.end());
    }
    BoxPlace place;
    place.axes.col(0) = Vec3::UnitY();
    place.axes.col(1) = Vec3::UnitZ();
    place.axes.col(2) = Vec3::UnitX();
    const double rear = std::max(rails.rear_end, std::min(rails.front_end, 0.0) - kLongestRail);
    place.centre = Vec3(rear, 0.0, 0.0);
    return prism(place, outline, {}, rails.front_end - rear);
  });
}

// A box that rides on the axle, crosses its middle and is wider than half of it stands for the
// beam.
const Shape* measured_beam(const Project& project, double kingpin_y) {
  if (!project.shapes) return nullptr;
  for (const Shape& shape : project.shapes->shapes) {
    if (shape.rides_on == RidesOn::axle && shape.kind == ShapeKind::box &&
        std::abs(shape.place.y()) <= 0.25 * shape.size.y() && shape.size.y() >= kingpin_y &&
        shape.turn.norm() <= 1e-6)
      return &shape;
  }
  return nullptr;
}

void add_beam(SceneMaker& maker) {
  const FrontAxleStation& axle = *maker.project.front_axle;
  const Vec3 left = knuckle_side(axle, Side::left).kingpin_point.mm;
  const Vec3 right = knuckle_side(axle, Side::right).kingpin_point.mm;
  const Shape* measured = measured_beam(maker.project, left.y());
  double height = left.z() - 40.0;
  if (axle.suspension.leaf && axle.suspension.kind == SuspensionKind::leaf)
    height = axle.suspension.leaf->seat.mm.z() - 42.0 - 0.5 * kBeamDepth;
  if (measured != nullptr) height = measured->place.z();
  const Rider rider = RidesBody{Body::axle, 0};
  const double forward = 0.5 * (left.x() + right.x());
  const double reach =
      measured != nullptr ? 0.5 * measured->size.y() : 0.5 * (left.y() - right.y()) - 120.0;
  for (const Vec3& kingpin : {left, right}) {
    const Vec3 root(forward, std::copysign(std::min(reach, std::abs(kingpin.y())), kingpin.y()),
                    height);
    const Vec3 inner = root - std::copysign(70.0, kingpin.y()) * Vec3::UnitY();
    if ((kingpin - root).norm() < 2.0) continue;
    maker.add(rider, "front_axle", SceneRole::fixed, [&](Detail) {
      return bar(inner, kingpin, Vec3::UnitX(), kBeamWidth, 0.8 * kBeamDepth);
    });
  }
  if (measured != nullptr) return;
  maker.add(rider, "front_axle", SceneRole::fixed, [&](Detail) {
    return box(Vec3(forward, 0.5 * (left.y() + right.y()), height),
               Vec3(kBeamWidth, 2.0 * reach, kBeamDepth), 6.0);
  });
}

// The tyre's section: tread, rounded shoulders, side walls down to the rim.
std::vector<ProfilePoint> tyre_profile(const Tyre& tyre, Detail detail) {
  const double radius = 0.5 * tyre.diameter;
  const double half = 0.5 * tyre.width;
  const double rim = kRimShare * radius;
  const double shoulder = std::clamp(tyre.shoulder_radius, 0.0, 0.9 * std::min(half, radius - rim));
  const double bead = 0.86 * half;
  const int steps = detail == Detail::coarse ? 2 : 5;
  std::vector<ProfilePoint> profile{{-bead, rim, false}};
  const auto round = [&](double from_angle, double middle) {
    for (int i = 0; i <= steps; ++i) {
      const double angle = from_angle - 0.5 * kPi * i / steps;
      profile.push_back({middle + shoulder * std::cos(angle),
                         radius - shoulder + shoulder * std::sin(angle), shoulder > 1e-6});
    }
  };
  round(kPi, -half + shoulder);
  round(0.5 * kPi, half - shoulder);
  profile.push_back({bead, rim, false});
  return profile;
}

void add_wheel(SceneMaker& maker, const KnuckleBody& knuckle, const Vec3& origin_mm) {
  const Tyre& tyre = maker.project.front_axle->tyre;
  const Rider rider = RidesBody{knuckle_of(knuckle.side), 0};
  const Vec3 centre = origin_mm + knuckle.wheel_centre_mm;
  const Vec3 outward = side_sign(knuckle.side) * knuckle.spindle;
  const double radius = 0.5 * tyre.diameter;
  const double rim = kRimShare * radius;
  const double half = 0.5 * tyre.width;
  maker.add(rider, "front_axle.tyre", SceneRole::tyre, [&](Detail detail) {
    return turned_solid(centre, outward, tyre_profile(tyre, detail), true,
                        sides_of_circle(detail, radius));
  });
  // Rim with its disc dished towards the outside, and the hub before it.
  maker.add(rider, "front_axle.tyre", SceneRole::fixed, [&](Detail detail) {
    Mesh mesh = turned_solid(centre, outward,
                             {{-0.88 * half, rim - 14.0},
                              {-0.88 * half, rim + 1.0},
                              {0.88 * half, rim + 1.0},
                              {0.88 * half, rim - 14.0}},
                             true, sides_of_circle(detail, rim));
    append(mesh, turned_solid(centre, outward,
                              {{-0.05 * half, 0.0},
                               {-0.05 * half, 0.5 * rim},
                               {0.25 * half, rim - 14.0},
                               {0.33 * half, rim - 14.0},
                               {0.05 * half, 0.5 * rim},
                               {0.05 * half, 0.0}},
                              false, sides_of_circle(detail, rim)));
    append(mesh, turned_solid(centre, outward,
                              {{0.0, 0.0},
                               {0.0, 0.3 * rim},
                               {0.45 * half, 0.26 * rim},
                               {0.6 * half, 0.16 * rim},
                               {0.6 * half, 0.0}},
                              false, sides_of_circle(detail, 0.3 * rim)));
    return mesh;
  });
}

void add_knuckle(SceneMaker& maker, const KnuckleBody& knuckle, const Vec3& origin_mm) {
  const Rider rider = RidesBody{knuckle_of(knuckle.side), 0};
  const std::string path =
      knuckle.side == Side::left ? "front_axle.left_knuckle" : "front_axle.right_knuckle";
  const Vec3 pin = origin_mm + knuckle.kingpin_point_mm;
  const Vec3& up = knuckle.tie_rod_arm.axis;
  const Vec3 centre = origin_mm + knuckle.wheel_centre_mm;
  const Vec3 inward = -side_sign(knuckle.side) * knuckle.spindle;
  // The beam's eye and the pin stand in the axle; the knuckle's fork and stub turn.
  maker.add(
      RidesBody{Body::axle, 0}, path + ".kingpin_point_mm", SceneRole::fixed, [&](Detail detail) {
        Mesh mesh = cylinder(pin - 46.0 * up, pin + 46.0 * up, kBossRadius, detail);
        append(mesh,
               cylinder(pin - kKingpinHalf * up, pin + kKingpinHalf * up, kKingpinRadius, detail));
        return mesh;
      });
  maker.add(rider, path + ".kingpin_point_mm", SceneRole::moving, [&](Detail detail) {
    Mesh mesh;
    for (const double side : {1.0, -1.0}) {
      const Vec3 ear = pin + side * 66.0 * up;
      append(mesh, cylinder(ear - 16.0 * up, ear + 16.0 * up, kBossRadius - 2.0, detail));
      append(mesh, bar(ear, pin - 0.5 * (pin - centre) + side * 34.0 * up, up, 30.0, 54.0));
    }
    append(mesh, cone(pin - 0.55 * (pin - centre), centre + 30.0 * inward, 48.0, 36.0, detail));
    return mesh;
  });
}

void add_stop(SceneMaker& maker, const LockStop& stop, Side side, const std::string& path) {
  const Vec3 tip = stop.tip_centre.mm;
  const Vec3& along = stop.bolt_axis;
  maker.add(RidesBody{knuckle_of(side), 0}, path + ".tip_centre_mm", SceneRole::moving,
            [&](Detail detail) {
              Mesh mesh = sphere(tip, stop.tip_radius, detail);
              append(mesh, cylinder(tip - kBoltLength * along, tip, stop.tip_radius, detail));
              append(mesh,
                     cylinder(tip - 0.62 * kBoltLength * along, tip - 0.4 * kBoltLength * along,
                              1.7 * stop.tip_radius, Detail::coarse));
              return mesh;
            });
  maker.add(RidesBody{Body::axle, 0}, path + ".pad_centre_mm", SceneRole::fixed,
            [&](Detail detail) {
              return cylinder(stop.pad_centre.mm - 14.0 * stop.pad_normal, stop.pad_centre.mm,
                              stop.pad_radius, detail);
            });
}

}  // namespace

void add_rails(SceneMaker& maker) {
  if (!maker.project.shapes || !maker.project.shapes->rails) return;
  for (const Side side : {Side::left, Side::right})
    add_rail(maker, *maker.project.shapes->rails, side);
}

void add_axle(SceneMaker& maker) {
  if (!maker.project.front_axle || !maker.mechanism.suspension) return;
  add_beam(maker);
  const FrontAxleStation& axle = *maker.project.front_axle;
  for (const Side side : {Side::left, Side::right}) {
    if (maker.mechanism.steering) {
      const KnuckleBody& knuckle =
          side == Side::left ? maker.mechanism.steering->left : maker.mechanism.steering->right;
      add_knuckle(maker, knuckle, maker.mechanism.suspension->origin_mm);
      add_wheel(maker, knuckle, maker.mechanism.suspension->origin_mm);
    } else {
      // Without the steering there are no compiled knuckles: wheels straight on their track.
      KnuckleBody plain;
      plain.side = side;
      plain.wheel_centre_mm =
          side_sign(side) * (0.5 * axle.track + axle.hub_offset) * Vec3::UnitY();
      add_wheel(maker, plain, maker.mechanism.suspension->origin_mm);
    }
    const KnuckleSide given = knuckle_side(axle, side);
    const std::string stops =
        side == Side::left ? "front_axle.left_knuckle.stops" : "front_axle.right_knuckle.stops";
    for (std::size_t i = 0; i < given.stops.size(); ++i)
      add_stop(maker, given.stops[i], side, item_path(stops, i));
  }
}

}  // namespace tackbench
