// Column with its hand wheel, and the shaft line: yokes, crosses, shafts, supports.
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/scene/scene_maker.h"

namespace tackbench {

namespace {

// Sizes of what is drawn but not measured, mm.
constexpr double kRimRadius = 13.0;
constexpr double kPinRadius = 6.5;
constexpr double kEarThickness = 8.0;

// A yoke about a cross at `centre`: two ears on the pin, a root that grips the shaft. `away` points
// from the cross along its shaft.
Mesh yoke(const Vec3& centre, const Vec3& away, const Vec3& pin, double depth, double shaft_radius,
          Detail detail) {
  const Vec3 flat = away.cross(pin);
  const double root = std::max(depth, 14.0);
  Mesh mesh;
  for (const double side : {1.0, -1.0}) {
    const Vec3 ear = centre + side * (kUsualYoke - 0.5 * kEarThickness) * pin;
    append(mesh, cylinder(ear - 0.5 * kEarThickness * pin, ear + 0.5 * kEarThickness * pin, 11.0,
                          detail));
    append(mesh, bar(ear, ear + root * away, pin, kEarThickness, 20.0));
  }
  append(mesh, bar(centre + (root - 6.0) * away, centre + (root + 5.0) * away, flat, 20.0,
                   2.0 * kUsualYoke));
  append(mesh,
         cylinder(centre + root * away, centre + (root + 30.0) * away, shaft_radius + 6.0, detail));
  return mesh;
}

Mesh spider(const DrawnCross& cross, Detail detail) {
  const double reach = kUsualYoke + 1.0;
  Mesh mesh = cylinder(cross.centre_mm - reach * cross.in_pin,
                       cross.centre_mm + reach * cross.in_pin, kPinRadius, detail);
  append(mesh, cylinder(cross.centre_mm - reach * cross.out_pin,
                        cross.centre_mm + reach * cross.out_pin, kPinRadius, detail));
  return mesh;
}

std::string joint_part(int joint) {
  return item_path("shaft_line.joints", static_cast<std::size_t>(joint)) + ".centre_mm";
}

class ShaftParts {
 public:
  ShaftParts(SceneMaker& maker, const ShaftLine& line) : maker_(maker), line_(line) {}

  void add() {
    for (std::size_t i = 0; i < line_.crosses.size(); ++i) add_cross(i);
    for (std::size_t i = 0; i < line_.spans.size(); ++i) add_span(i);
    for (const DrawnSupport& support : line_.supports) add_support(support);
  }

 private:
  const ShaftJoint& joint_of(std::size_t cross) const {
    return line_.station.joints[static_cast<std::size_t>(line_.crosses[cross].joint)];
  }
  double depth_of(std::size_t cross) const { return joint_of(cross).yoke_depth; }

  // Radius of the shaft on the road side of a cross; -1 = of the column.
  double radius_after(std::ptrdiff_t cross) const {
    if (cross < 0) return 0.5 * line_.column.output.diameter;
    const auto span = static_cast<std::size_t>(cross);
    if (span >= line_.spans.size()) return 0.5 * maker_.project.steering_box->input.diameter;
    const int shaft = line_.spans[span].shaft;
    if (shaft < 0) return 0.5 * line_.column.output.diameter;
    return 0.5 * line_.station.shafts[static_cast<std::size_t>(shaft)].outside_diameter;
  }

  Rider hand_side(std::size_t cross) const {
    if (cross == 0) return TurnsWithColumn{};
    return TurnsWithCross{static_cast<int>(cross), CrossPart::hand_side};
  }
  Rider road_side(std::size_t cross) const {
    if (cross + 1 == line_.crosses.size()) return TurnsWithBoxInput{};
    return TurnsWithCross{static_cast<int>(cross), CrossPart::road_side};
  }

  void add_cross(std::size_t i) {
    const DrawnCross& cross = line_.crosses[i];
    const std::string part = joint_part(cross.joint);
    const Vec3& in = cross.geometry.in_direction;
    const Vec3& out = cross.geometry.out_direction;
    if (joint_of(i).kind == JointKind::coupling_disc) {
      const Vec3 middle = (in + out).normalized();
      maker_.add(hand_side(i), part, SceneRole::moving, [&](Detail detail) {
        return cylinder(cross.centre_mm - 8.0 * middle, cross.centre_mm + 8.0 * middle, 44.0,
                        detail);
      });
    } else if (joint_of(i).kind == JointKind::double_centred) {
      // Both crosses and the centring socket stand inside one housing.
      const double half = 0.5 * joint_of(i).cross_spacing + 12.0;
      const Vec3 middle = (in + out).normalized();
      maker_.add(hand_side(i), part, SceneRole::moving, [&](Detail detail) {
        return tube(cross.centre_mm - half * middle, cross.centre_mm + half * middle, 30.0, 5.0,
                    detail);
      });
    } else {
      maker_.add(TurnsWithCross{static_cast<int>(i), CrossPart::spider}, part, SceneRole::fixed,
                 [&](Detail detail) { return spider(cross, detail); });
    }
    maker_.add(hand_side(i), part, SceneRole::moving, [&](Detail detail) {
      return yoke(cross.centre_mm, -in, cross.in_pin, depth_of(i),
                  radius_after(static_cast<std::ptrdiff_t>(i) - 1), detail);
    });
    maker_.add(road_side(i), part, SceneRole::moving, [&](Detail detail) {
      return yoke(cross.centre_mm, out, cross.out_pin, depth_of(i),
                  radius_after(static_cast<std::ptrdiff_t>(i)), detail);
    });
  }

  void add_span(std::size_t i) {
    const DrawnSpan& span = line_.spans[i];
    const Vec3 from = line_.crosses[i].centre_mm;
    const Vec3 along = line_.crosses[i].geometry.out_direction;
    if (span.shaft < 0) return;  // the middle piece of a double joint is its two yokes
    const auto shaft_index = static_cast<std::size_t>(span.shaft);
    const Shaft& shaft = line_.station.shafts[shaft_index];
    const std::string part = item_path("shaft_line.shafts", shaft_index);
    const double radius = 0.5 * shaft.outside_diameter;
    const double start = depth_of(i);
    const double end = span.length - depth_of(i + 1);
    if (end - start < 5.0) return;
    if (!span.slips) {
      maker_.add(road_side(i), part, SceneRole::moving, [&](Detail detail) {
        return cylinder(from + start * along, from + end * along, radius, detail);
      });
      return;
    }
    // The outer half at the hand, the inner half at the road, engaged about the middle.
    const double overlap = std::clamp(shaft.engagement.value_or(3.0 * radius), 0.0, end - start);
    const double middle = 0.5 * (start + end);
    maker_.add(road_side(i), part, SceneRole::moving, [&](Detail detail) {
      return tube(from + start * along, from + (middle + 0.5 * overlap) * along, radius + 5.0, 4.5,
                  detail);
    });
    maker_.add(hand_side(i + 1), part, SceneRole::moving, [&](Detail detail) {
      return cylinder(from + (middle - 0.5 * overlap) * along, from + end * along, radius, detail);
    });
  }

  void add_support(const DrawnSupport& drawn) {
    const auto index = static_cast<std::size_t>(drawn.support);
    const ShaftSupport& support = line_.station.supports[index];
    const std::string part = item_path("shaft_line.supports", index);
    const Rider rider = RidesBody{drawn.rides_on == RidesOn::cab ? Body::cab : Body::chassis, 0};
    const Vec3 eye = drawn.eye_mm;
    const Vec3 base = maker_.drawn_place(support.rides_on, support.base);
    const double bore = 0.5 * support.bore;
    const double outside = bore + 11.0;
    const Vec3 step = base - eye;
    const double height = step.norm();
    maker_.add(rider, part + ".eye_mm", SceneRole::fixed, [&](Detail detail) {
      Mesh mesh = ring(eye, drawn.along, outside, bore, support.width, detail);
      if (height <= outside + 1.0) return mesh;
      const Vec3 away = step / height;
      if (drawn.holds_direction) {
        append(mesh, bar(eye + outside * away, base, drawn.along, 2.0 * support.width, 44.0));
      } else {
        append(mesh, cylinder(eye + (outside - 3.0) * away, base, 8.0, detail));
      }
      return mesh;
    });
    if (height <= outside + 1.0) return;
    const Vec3 away = step / height;
    maker_.add(rider, part + ".base_mm", SceneRole::fixed, [&](Detail detail) {
      Mesh mesh = bar(base - 4.0 * away, base + 4.0 * away, drawn.along, 70.0, 56.0);
      append(mesh, cylinder(base - 14.0 * away, base - 3.0 * away, 13.0, Detail::coarse));
      static_cast<void>(detail);
      return mesh;
    });
    if (!drawn.holds_lengthways) return;
    const double shaft_radius =
        0.5 * line_.station.shafts[static_cast<std::size_t>(support.shaft)].outside_diameter;
    const auto span = static_cast<std::size_t>(drawn.span);
    const Rider on_shaft = drawn.on_road_half ? hand_side(span + 1) : road_side(span);
    maker_.add(on_shaft, part + ".eye_mm", SceneRole::moving, [&](Detail detail) {
      const Vec3 at = drawn.on_line_mm + (0.5 * support.width + 7.0) * drawn.along;
      return ring(at, drawn.along, shaft_radius + 8.0, shaft_radius, 12.0, detail);
    });
  }

  SceneMaker& maker_;
  const ShaftLine& line_;
};

}  // namespace

void add_column(SceneMaker& maker) {
  if (!maker.project.column) return;
  const ColumnStation& column = *maker.project.column;
  const Vec3 wheel = maker.in_chassis(column.hand_wheel_centre);
  const Vec3 end = maker.in_chassis(column.output_end);
  const double length = (end - wheel).norm();
  if (length < 1.0) return;
  const Vec3 axis = (end - wheel) / length;
  const double shaft_radius = 0.5 * column.output.diameter;
  maker.add(RidesBody{Body::cab, 0}, "column", SceneRole::fixed, [&](Detail detail) {
    return tube(wheel + 0.14 * length * axis, wheel + 0.93 * length * axis, kUsualJacket, 5.0,
                detail);
  });
  for (std::size_t i = 0; i < column.bearings.size(); ++i) {
    const Vec3 at = wheel + column.bearings[i].from_hand_wheel * axis;
    maker.add(RidesBody{Body::cab, 0}, item_path("column.bearings", i), SceneRole::fixed,
              [&](Detail detail) {
                return ring(at, axis, kUsualJacket + 6.0, shaft_radius, 24.0, detail);
              });
  }
  maker.add(TurnsWithColumn{}, "column.output_end_mm", SceneRole::moving,
            [&](Detail detail) { return cylinder(wheel, end, shaft_radius, detail); });
  const double rim = std::max(40.0, 0.5 * column.hand_wheel_diameter - kRimRadius);
  maker.add(
      TurnsWithColumn{}, "column.hand_wheel_centre_mm", SceneRole::moving, [&](Detail detail) {
        // The rim stands towards the driver of its hub.
        const Vec3 rim_centre = wheel - 40.0 * axis;
        Mesh mesh = torus(rim_centre, axis, rim, kRimRadius, detail);
        append(mesh, cylinder(wheel - 22.0 * axis, wheel + 34.0 * axis, 38.0, detail));
        const Vec3 up = square_to(axis, Vec3::UnitZ());
        for (const double turn : {0.0, 1.0, 2.0}) {
          const Vec3 out = turned(up, axis, kPi + turn * kRadiansPerTurn / 3.0);
          append(mesh,
                 bar(wheel - 10.0 * axis + 30.0 * out, rim_centre + rim * out, axis, 9.0, 26.0));
        }
        return mesh;
      });
}

void add_shaft_line(SceneMaker& maker) {
  if (!maker.mechanism.shaft_line || !maker.mechanism.shaft_line->has_joints) return;
  ShaftParts(maker, *maker.mechanism.shaft_line).add();
}

}  // namespace tackbench
