#include "core/mechanism/suspension_path.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr int kMostSteps = 30;
constexpr double kLeastHalf = 50.0;      // shorter is no half leaf, arm or rod, mm
constexpr double kLeastHalfSpan = 50.0;  // nearer the centreline is no left-hand part, mm
constexpr double kAngleDone = 1e-13;     // rad; at 1 m that is 1e-10 mm

// sin p / p and (1 - cos p) / p with their derivatives; series where the quotients cancel.
struct ArcShape {
  double along;
  double height;
  double along_rate;
  double height_rate;
};

ArcShape arc_shape(double p) {
  if (std::abs(p) < 1e-2) {  // next terms below 1e-17
    const double q = p * p;
    return {1.0 - q / 6.0 * (1.0 - q / 20.0 * (1.0 - q / 42.0)),
            p / 2.0 * (1.0 - q / 12.0 * (1.0 - q / 30.0 * (1.0 - q / 56.0))),
            -p / 3.0 * (1.0 - q / 10.0 * (1.0 - q / 28.0)),
            0.5 * (1.0 - q / 4.0 * (1.0 - q / 18.0 * (1.0 - q / 40.0)))};
  }
  const double sine = std::sin(p);
  const double cosine = std::cos(p);
  const double along = sine / p;
  const double height = (1.0 - cosine) / p;
  return {along, height, (cosine - along) / p, (sine - height) / p};
}

// Eye of a half leaf with its derivative in the bend.
struct MovingEye {
  EyePlace at;
  EyePlace rate;  // per rad of bend
};

MovingEye moving_eye(double length, double eye_offset, double p) {
  const ArcShape arc = arc_shape(p);
  // sin p and cos p follow from the quotients: one pair of calls for all.
  const double sine = arc.along * p;
  const double cosine = 1.0 - arc.height * p;
  return {{length * arc.along - eye_offset * sine, length * arc.height + eye_offset * cosine},
          {length * arc.along_rate - eye_offset * cosine,
           length * arc.height_rate - eye_offset * sine}};
}

// The fixed half with its seat raised by `rise` and pitched top forward, its eye kept at its
// height: cos(pitch) h - towards sin(pitch) a = height at ride - rise.
struct BentLeaf {
  double bend = 0.0;
  double along = 0.0;  // of the eye from the seat in chassis X, positive towards it, mm
  bool closes = false;
};

BentLeaf bend_leaf(const LeafPath& path, double pitch, double rise) {
  const double cosine = std::cos(pitch);
  const double sine = path.towards_fixed * std::sin(pitch);
  const double height = path.fixed_eye_at_ride.height - rise;
  const double pitch_lift = sine * path.fixed_eye_at_ride.along;
  BentLeaf leaf;
  leaf.bend = std::clamp(path.bend_at_ride + 2.0 * (pitch_lift - rise) / path.fixed_half,
                         -kMostLeafBend, kMostLeafBend);
  for (int step = 0; step < kMostSteps; ++step) {
    const MovingEye eye = moving_eye(path.fixed_half, path.eye_offset, leaf.bend);
    const double rate = cosine * eye.rate.height - sine * eye.rate.along;
    const double over = cosine * eye.at.height - sine * eye.at.along - height;
    leaf.along = cosine * eye.at.along + sine * eye.at.height;
    if (!(rate > 0.0)) break;  // an eye that no longer rises with bend: past any leaf
    const double change = -over / rate;
    leaf.bend = std::clamp(leaf.bend + change, -kMostLeafBend, kMostLeafBend);
    if (std::abs(change) < kAngleDone * 1e4) {
      // Newton doubles the digits: this step's remainder is below 1e-13, and `along` is brought
      // up to it to first order.
      leaf.along += change * (cosine * eye.rate.along + sine * eye.rate.height);
      leaf.closes = std::abs(leaf.bend) < kMostLeafBend;
      break;
    }
  }
  return leaf;
}

// The pitch that one spring would take by itself with its seat raised by `rise`: both halves at one
// curvature, fixed eye and shackle eye at their own heights. Two unknowns, the fixed half's bend
// and the pitch; to first order pitch = rise (b - a) / (a b), a ahead of the seat, b behind it.
struct OwnPitch {
  double pitch = 0.0;
  double bend = 0.0;
  bool closes = false;
};

OwnPitch first_guess(const LeafPath& leaf, double rise) {
  return {leaf.towards_fixed * rise * (leaf.shackle_half - leaf.fixed_half) /
              (leaf.fixed_half * leaf.shackle_half),
          leaf.bend_at_ride - 2.0 * rise / leaf.fixed_half, false};
}

OwnPitch own_pitch(const LeafPath& leaf, double rise, OwnPitch own) {
  const double bend_ratio = leaf.shackle_half / leaf.fixed_half;
  const double towards = leaf.towards_fixed;
  const double fixed_height = leaf.fixed_eye_at_ride.height - rise;
  const double shackle_height = leaf.shackle_eye_at_ride.height - rise;
  own.closes = false;
  for (int step = 0; step < kMostSteps; ++step) {
    const double cosine = std::cos(own.pitch);
    const double sine = towards * std::sin(own.pitch);
    const MovingEye fixed = moving_eye(leaf.fixed_half, leaf.eye_offset, own.bend);
    const MovingEye shackle = moving_eye(leaf.shackle_half, leaf.eye_offset, bend_ratio * own.bend);
    const double over_fixed = cosine * fixed.at.height - sine * fixed.at.along - fixed_height;
    const double over_shackle =
        cosine * shackle.at.height + sine * shackle.at.along - shackle_height;
    const double fixed_by_bend = cosine * fixed.rate.height - sine * fixed.rate.along;
    const double shackle_by_bend =
        bend_ratio * (cosine * shackle.rate.height + sine * shackle.rate.along);
    const double fixed_by_pitch = -towards * (sine * fixed.at.height + cosine * fixed.at.along);
    const double shackle_by_pitch =
        -towards * (sine * shackle.at.height - cosine * shackle.at.along);
    const double determinant = fixed_by_bend * shackle_by_pitch - shackle_by_bend * fixed_by_pitch;
    if (determinant == 0.0) break;
    const double bend_change =
        (-over_fixed * shackle_by_pitch + over_shackle * fixed_by_pitch) / determinant;
    const double pitch_change =
        (-over_shackle * fixed_by_bend + over_fixed * shackle_by_bend) / determinant;
    own.bend = std::clamp(own.bend + bend_change, -kMostLeafBend, kMostLeafBend);
    own.pitch = std::clamp(own.pitch + pitch_change, -0.5 * kPi, 0.5 * kPi);
    if (std::abs(bend_change) + std::abs(pitch_change) < kAngleDone * 1e4) {
      own.closes = std::abs(own.bend) < kMostLeafBend;
      break;
    }
  }
  return own;
}

// asin held at its ends; `reaches` is cleared when it had to be held.
double held_asin(double sine, bool& reaches) {
  if (std::abs(sine) > 1.0) reaches = false;
  return std::asin(std::clamp(sine, -1.0, 1.0));
}

// The part of the axle that pitch and roll decide; yaw turns only X and Y of it.
struct RolledAxle {
  double pitch = 0.0;
  double roll = 0.0;
  Mat3 turn = Mat3::Identity();  // pitch after roll

  RolledAxle(double axle_pitch, double sine_of_roll_at_no_pitch, bool& reaches)
      : pitch(axle_pitch),
        roll(held_asin(sine_of_roll_at_no_pitch / std::cos(axle_pitch), reaches)) {
    const double cp = std::cos(pitch);
    const double sp = std::sin(pitch);
    const double cr = std::cos(roll);
    const double sr = std::sin(roll);
    turn << cp, sp * sr, sp * cr, 0.0, cr, -sr, -sp, cp * sr, cp * cr;
  }
};

// Yaw and X shift that bring two points of the axle (already rolled and pitched) to the wanted X:
// cos(yaw) (l - r).x - sin(yaw) (l - r).y = left_x - right_x, written as span sin(lean - yaw).
void yaw_to(const Vec3& left, const Vec3& right, double left_x, double right_x,
            AxleAnswer& answer) {
  const Vec3 across = left - right;
  const double span = std::hypot(across.x(), across.y());
  const double sine_wanted = span > 0.0 ? (left_x - right_x) / span : 0.0;
  const double yaw = std::atan2(across.x(), across.y()) - held_asin(sine_wanted, answer.closes);
  answer.pose.yaw = yaw;
  answer.pose.dx = 0.5 * (left_x + right_x - std::cos(yaw) * (left.x() + right.x()) +
                          std::sin(yaw) * (left.y() + right.y()));
}

void set_turn(const RolledAxle& axle, AxlePose& pose) {
  pose.pitch = axle.pitch;
  pose.roll = axle.roll;
}

// Y that a point of the rolled axle has once yawed, from the axle's origin.
double yawed_y(const Vec3& rolled, double yaw) {
  return std::sin(yaw) * rolled.x() + std::cos(yaw) * rolled.y();
}

void pose_on_leaves(const SuspensionPath& path, double sine_of_roll, double wind_up,
                    AxleAnswer& answer) {
  const std::array<LeafPath, 2>& leaf = path.leaf;
  const double heave = answer.pose.dz;
  const bool halves_differ = leaf[0].fixed_half != leaf[0].shackle_half;
  std::array<OwnPitch, 2> own;
  double pitch = wind_up;
  if (halves_differ) {
    own = {first_guess(leaf[0], heave), first_guess(leaf[1], heave)};
    pitch += 0.5 * (own[0].pitch + own[1].pitch);
  }
  RolledAxle axle(pitch, sine_of_roll, answer.closes);
  std::array<double, 2> rise{};
  // A seat ahead of the axle's origin rises or falls with the pitch that its rise decides: a few
  // substitutions, each a fiftieth or less of the one before.
  for (int step = 0; step < kMostSteps; ++step) {
    for (int i = 0; i < 2; ++i) {
      rise[i] = heave + axle.turn.row(2).dot(leaf[i].seat_offset_mm) - leaf[i].seat_offset_mm.z();
    }
    if (!halves_differ) break;
    for (int i = 0; i < 2; ++i) own[i] = own_pitch(leaf[i], rise[i], own[i]);
    const double next = wind_up + 0.5 * (own[0].pitch + own[1].pitch);
    const double change = next - axle.pitch;
    axle = RolledAxle(next, sine_of_roll, answer.closes);
    if (std::abs(change) < kAngleDone) break;
  }
  if (halves_differ) answer.closes = answer.closes && own[0].closes && own[1].closes;

  std::array<double, 2> seat_x{};
  std::array<Vec3, 2> seat;
  for (int i = 0; i < 2; ++i) {
    const BentLeaf bent = bend_leaf(leaf[i], axle.pitch, rise[i]);
    answer.closes = answer.closes && bent.closes;
    seat[i] = axle.turn * leaf[i].seat_offset_mm;
    seat_x[i] = leaf[i].seat_offset_mm.x() +
                leaf[i].towards_fixed * (leaf[i].fixed_eye_at_ride.along - bent.along);
  }
  set_turn(axle, answer.pose);
  yaw_to(seat[0], seat[1], seat_x[0], seat_x[1], answer);
  const double middle_y = 0.5 * (leaf[0].seat_offset_mm.y() + leaf[1].seat_offset_mm.y());
  answer.pose.dy = middle_y - yawed_y(0.5 * (seat[0] + seat[1]), answer.pose.yaw);
}

void pose_on_radius_arms(const SuspensionPath& path, double sine_of_roll, double wind_up,
                         AxleAnswer& answer) {
  const double heave = answer.pose.dz;
  std::array<double, 2> crossing_x{};
  double pitch = wind_up;
  for (int i = 0; i < 2; ++i) {
    const RadiusArmPath& arm = path.radius_arm[i];
    const double height = arm.height - (heave + arm.middle_line_y * sine_of_roll);
    const double reach_squared = arm.reach * arm.reach + arm.height * arm.height - height * height;
    answer.closes = answer.closes && reach_squared >= 0.0;
    const double reach = std::copysign(std::sqrt(std::max(0.0, reach_squared)), arm.reach);
    crossing_x[i] = arm.reach - reach;
    // From the arm as drawn to the arm now, about +Y.
    pitch += 0.5 * std::atan2(arm.height * reach - arm.reach * height,
                              arm.reach * reach + arm.height * height);
  }
  const RolledAxle axle(pitch, sine_of_roll, answer.closes);
  set_turn(axle, answer.pose);
  const Vec3 middle_line = axle.turn.col(1);
  yaw_to(path.radius_arm[0].middle_line_y * middle_line,
         path.radius_arm[1].middle_line_y * middle_line, crossing_x[0], crossing_x[1], answer);

  const LateralRodPath& rod = path.lateral_rod;
  const Vec3 end = turned(axle.turn * rod.axle_end_mm, Vec3::UnitZ(), answer.pose.yaw);
  const Vec3 along = Vec3(answer.pose.dx, 0.0, heave) + end - rod.chassis_end_mm;
  const double across_squared =
      rod.length * rod.length - along.x() * along.x() - along.z() * along.z();
  answer.closes = answer.closes && across_squared >= 0.0;
  const double drawn_across = rod.axle_end_mm.y() - rod.chassis_end_mm.y();
  answer.pose.dy =
      std::copysign(std::sqrt(std::max(0.0, across_squared)), drawn_across) - along.y();
}

}  // namespace

EyePlace eye_from_seat(double length, double eye_offset, double bend) {
  return moving_eye(length, eye_offset, bend).at;
}

std::optional<double> bend_for_height(double length, double eye_offset, double height) {
  LeafPath leaf;
  leaf.fixed_half = length;
  leaf.eye_offset = eye_offset;
  leaf.fixed_eye_at_ride.height = height;
  leaf.bend_at_ride = 2.0 * (height - eye_offset) / length;
  const BentLeaf bent = bend_leaf(leaf, 0.0, 0.0);
  if (!bent.closes) return std::nullopt;
  return bent.bend;
}

Problems suspension_faults(const FrontAxleStation& axle) {
  Problems problems;
  const auto fault = [&](const char* place, std::string found, std::string wanted) {
    problems.push_back(
        {"", std::string("suspension.") + place, std::move(found), std::move(wanted)});
  };
  const Suspension& suspension = axle.suspension;
  if (suspension.kind == SuspensionKind::leaf) {
    if (!suspension.leaf) {
      fault("leaf", "the leaf spring is not given", "give the left one, or another kind");
      return problems;
    }
    const LeafSpring& leaf = *suspension.leaf;
    if (!(leaf.fixed_half >= kLeastHalf)) {
      fault("leaf.fixed_half_mm", fmt::format("{:.6g} is not half a spring", leaf.fixed_half),
            fmt::format("give {:g} or more", kLeastHalf));
    } else {
      if (std::abs(leaf.eye_offset) > 0.25 * leaf.fixed_half) {
        fault("leaf.eye_offset_mm",
              fmt::format("{:.6g} is too much for a half of {:.6g}", leaf.eye_offset,
                          leaf.fixed_half),
              "give the eye's height above mid-thickness of the main leaf");
      } else if (!bend_for_height(leaf.fixed_half, 0.0, leaf.camber)) {
        fault("leaf.camber_mm",
              fmt::format("a half of {:.6g} cannot have {:.6g} of camber", leaf.fixed_half,
                          leaf.camber),
              "give the rise of the fixed half's end over its seat at ride height");
      }
    }
    if (!(leaf.shackle_half >= kLeastHalf)) {
      fault("leaf.shackle_half_mm", fmt::format("{:.6g} is not half a spring", leaf.shackle_half),
            fmt::format("give {:g} or more", kLeastHalf));
    }
    if (std::abs(leaf.seat.mm.y()) < kLeastHalfSpan) {
      fault("leaf.seat_mm", "the spring lies on the centreline", "give the left spring's seat");
    }
    if (std::abs(leaf.fixed_eye.mm.x() - leaf.seat.mm.x()) < kLeastHalf) {
      fault("leaf.fixed_eye_mm", "the fixed eye is neither ahead of the seat nor behind it",
            "give the eye's centre at ride height");
    }
  } else if (suspension.kind == SuspensionKind::radius_arms) {
    if (!suspension.radius_arms) {
      fault("radius_arms", "the radius arms are not given", "give the left one, or another kind");
      return problems;
    }
    const RadiusArms& arms = *suspension.radius_arms;
    if (std::abs(arms.chassis_pivot.mm.y()) < kLeastHalfSpan) {
      fault("radius_arms.chassis_pivot_mm", "the arm lies on the centreline",
            "give the left arm's pivot");
    }
    if (std::abs(arms.chassis_pivot.mm.x()) < kLeastHalf) {
      fault("radius_arms.chassis_pivot_mm", "the arm has no length fore and aft",
            "give the pivot ahead of the axle or behind it");
    }
    const Vec3 rod = arms.lateral_rod_axle.mm - arms.lateral_rod_chassis.mm;
    if (std::abs(rod.y()) < 0.5 * rod.norm() || std::abs(rod.y()) < kLeastHalf) {
      fault("radius_arms.lateral_rod_axle_mm", "the lateral rod does not lie across the chassis",
            "give its two ends");
    }
  }
  return problems;
}

SuspensionPath compile_suspension(const FrontAxleStation& axle) {
  SuspensionPath path;
  const Suspension& suspension = axle.suspension;
  path.kind = suspension.kind;
  path.half_track = 0.5 * axle.track + axle.hub_offset;
  path.origin_mm = Vec3(0.0, 0.0, axle.wheel_centre_height);
  const auto mirrored = [](Vec3 v) {
    v.y() = -v.y();
    return v;
  };
  if (path.kind == SuspensionKind::leaf && suspension.leaf) {
    const LeafSpring& given = *suspension.leaf;
    LeafPath leaf;
    leaf.seat_offset_mm = given.seat.mm - path.origin_mm;
    leaf.fixed_half = given.fixed_half;
    leaf.shackle_half = given.shackle_half;
    leaf.eye_offset = given.eye_offset;
    leaf.towards_fixed = given.fixed_eye.mm.x() >= given.seat.mm.x() ? 1.0 : -1.0;
    leaf.bend_at_ride = bend_for_height(given.fixed_half, 0.0, given.camber).value_or(0.0);
    leaf.fixed_eye_at_ride = eye_from_seat(leaf.fixed_half, leaf.eye_offset, leaf.bend_at_ride);
    leaf.shackle_eye_at_ride =
        eye_from_seat(leaf.shackle_half, leaf.eye_offset,
                      leaf.shackle_half / leaf.fixed_half * leaf.bend_at_ride);
    path.leaf = {leaf, leaf};
    path.leaf[1].seat_offset_mm = mirrored(leaf.seat_offset_mm);
  } else if (path.kind == SuspensionKind::radius_arms && suspension.radius_arms) {
    const RadiusArms& given = *suspension.radius_arms;
    const Vec3 pivot = given.chassis_pivot.mm - path.origin_mm;
    path.radius_arm[0] = {pivot.y(), pivot.x(), pivot.z()};
    path.radius_arm[1] = {-pivot.y(), pivot.x(), pivot.z()};
    path.lateral_rod.axle_end_mm = given.lateral_rod_axle.mm - path.origin_mm;
    path.lateral_rod.chassis_end_mm = given.lateral_rod_chassis.mm - path.origin_mm;
    path.lateral_rod.length =
        (path.lateral_rod.axle_end_mm - path.lateral_rod.chassis_end_mm).norm();
  }
  return path;
}

AxleAnswer axle_pose(const SuspensionPath& path, double bump_left, double bump_right,
                     double wind_up) {
  AxleAnswer answer;
  answer.closes = true;
  answer.pose.dz = 0.5 * (bump_left + bump_right);
  const double sine_of_roll = (bump_left - bump_right) / (2.0 * path.half_track);
  switch (path.kind) {
    case SuspensionKind::leaf:
      pose_on_leaves(path, sine_of_roll, wind_up, answer);
      break;
    case SuspensionKind::radius_arms:
      pose_on_radius_arms(path, sine_of_roll, wind_up, answer);
      break;
    case SuspensionKind::straight:
      set_turn(RolledAxle(wind_up, sine_of_roll, answer.closes), answer.pose);
      break;
  }
  return answer;
}

Placement<Chassis, Axle> chassis_from_axle(const SuspensionPath& path, const AxlePose& pose) {
  return {roll_pitch_yaw_turn(pose.roll, pose.pitch, pose.yaw),
          path.origin_mm + Vec3(pose.dx, pose.dy, pose.dz)};
}

}  // namespace tackbench
