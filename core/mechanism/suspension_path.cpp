#include "core/mechanism/suspension_path.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/basics/angle_of.h"
#include "core/basics/units.h"

namespace tackbench {

namespace {

constexpr int kMostSteps = 30;
constexpr double kLeastHalf = 50.0;      // shorter is no half leaf, arm or rod, mm
constexpr double kLeastHalfSpan = 50.0;  // nearer the centreline is no left-hand part, mm
// Newton's last step, rad: it doubles the digits, so what remains is below 1e-13.
constexpr double kLastStep = 3e-7;

// Sums c[0] + c[1] x + ... as two interleaved chains.
template <std::size_t N>
inline double series(const std::array<double, N>& c, double x) {
  static_assert(N % 2 == 0);
  const double x2 = x * x;
  double even = 0.0;
  double odd = 0.0;
  for (std::size_t k = N; k >= 2; k -= 2) {
    odd = odd * x2 + c[k - 1];
    even = even * x2 + c[k - 2];
  }
  return even + x * odd;
}

// An arc of bend p and length 1: sin p / p along, (1 - cos p) / p up, with their derivatives, and
// p's sine and cosine. From the series of (p - sin p) / p^3 and (1 - cos p) / p^2, which lose no
// digits near 0 and are exact to the last one up to kMostLeafBend.
struct ArcShape {
  double along;
  double height;
  double along_rate;
  double height_rate;
  double sine;
  double cosine;
};

inline ArcShape arc_shape(double p) {
  // 1 / (2 k + 3)! and 1 / (2 k + 2)!
  static constexpr std::array<double, 10> kOdd{1.0 / 6.0,
                                               1.0 / 120.0,
                                               1.0 / 5040.0,
                                               1.0 / 362880.0,
                                               1.0 / 39916800.0,
                                               1.0 / 6227020800.0,
                                               1.0 / 1307674368000.0,
                                               1.0 / 355687428096000.0,
                                               1.0 / 1.21645100408832e17,
                                               1.0 / 5.109094217170944e19};
  static constexpr std::array<double, 10> kEven{1.0 / 2.0,
                                                1.0 / 24.0,
                                                1.0 / 720.0,
                                                1.0 / 40320.0,
                                                1.0 / 3628800.0,
                                                1.0 / 479001600.0,
                                                1.0 / 87178291200.0,
                                                1.0 / 20922789888000.0,
                                                1.0 / 6.402373705728e15,
                                                1.0 / 2.43290200817664e18};
  const double q = p * p;
  const double odd = series(kOdd, -q);
  const double even = series(kEven, -q);
  const double along = 1.0 - q * odd;
  return {along, p * even, p * (odd - even), along - even, p * along, 1.0 - q * even};
}

// Eye of a half leaf with its derivative in the bend.
struct MovingEye {
  EyePlace at;
  EyePlace rate;  // per rad of bend
};

inline MovingEye moving_eye(double length, double eye_offset, double bend) {
  const ArcShape arc = arc_shape(bend);
  return {
      {length * arc.along - eye_offset * arc.sine, length * arc.height + eye_offset * arc.cosine},
      {length * arc.along_rate - eye_offset * arc.cosine,
       length * arc.height_rate - eye_offset * arc.sine}};
}

double held_bend(double bend) {
  return std::clamp(bend, -kMostLeafBend, kMostLeafBend);
}

// Bend of the fixed half for a small change of height of its eye over the seat, to second order.
double bend_guess(const LeafPath& leaf, double height_change) {
  return held_bend(leaf.bend_at_ride +
                   height_change * (leaf.bend_by_height + leaf.bend_by_height_2 * height_change));
}

// The fixed half with its seat raised by `rise` and pitched top forward, its eye kept at its
// height: cos(pitch) h - towards sin(pitch) a = height at ride - rise.
struct BentLeaf {
  double bend = 0.0;
  double along = 0.0;  // of the eye from the seat in chassis X, positive towards it, mm
  bool closes = false;
};

BentLeaf bend_leaf(const LeafPath& path, double sine_of_pitch, double cosine_of_pitch, double rise,
                   double guess) {
  const double sine = path.towards_fixed * sine_of_pitch;
  const double height = path.fixed_eye_at_ride.height - rise;
  BentLeaf leaf;
  leaf.bend = guess;
  for (int step = 0; step < kMostSteps; ++step) {
    const MovingEye eye = moving_eye(path.fixed_half, path.eye_offset, leaf.bend);
    const double rate = cosine_of_pitch * eye.rate.height - sine * eye.rate.along;
    const double over = cosine_of_pitch * eye.at.height - sine * eye.at.along - height;
    leaf.along = cosine_of_pitch * eye.at.along + sine * eye.at.height;
    if (!(rate > 0.0)) break;  // an eye that no longer rises with bend: past any leaf
    const double change = -over / rate;
    leaf.bend = held_bend(leaf.bend + change);
    if (std::abs(change) < kLastStep) {
      leaf.along += change * (cosine_of_pitch * eye.rate.along + sine * eye.rate.height);
      leaf.closes = std::abs(leaf.bend) < kMostLeafBend;
      break;
    }
  }
  return leaf;
}

// The pitch that one spring would take by itself with its seat raised: both halves at one
// curvature, fixed eye and shackle eye at their own heights. Two unknowns, the fixed half's bend
// and the pitch; to first order pitch = rise (b - a) / (a b), a ahead of the seat, b behind it.
struct OwnPitch {
  double pitch = 0.0;
  double bend = 0.0;
  double pitch_by_rise = 0.0;  // derivative, rad per mm
  double last_change = 0.0;    // of the two, rad
};

OwnPitch first_guess(const LeafPath& leaf, double rise) {
  OwnPitch own;
  own.pitch = leaf.towards_fixed * rise * (leaf.shackle_half - leaf.fixed_half) /
              (leaf.fixed_half * leaf.shackle_half);
  own.bend = bend_guess(leaf, leaf.towards_fixed * own.pitch * leaf.fixed_eye_at_ride.along - rise);
  return own;
}

// One step of Newton's method. False when the two conditions no longer tell the unknowns apart.
bool improve(const LeafPath& leaf, double rise, OwnPitch& own) {
  const double towards = leaf.towards_fixed;
  const double ratio = leaf.shackle_half / leaf.fixed_half;
  const ArcShape pitch = arc_shape(own.pitch);
  const double cosine = pitch.cosine;
  const double sine = towards * pitch.sine;
  const MovingEye fixed = moving_eye(leaf.fixed_half, leaf.eye_offset, own.bend);
  const MovingEye shackle = moving_eye(leaf.shackle_half, leaf.eye_offset, ratio * own.bend);
  const double over_fixed =
      cosine * fixed.at.height - sine * fixed.at.along - (leaf.fixed_eye_at_ride.height - rise);
  const double over_shackle = cosine * shackle.at.height + sine * shackle.at.along -
                              (leaf.shackle_eye_at_ride.height - rise);
  const double fixed_by_bend = cosine * fixed.rate.height - sine * fixed.rate.along;
  const double shackle_by_bend = ratio * (cosine * shackle.rate.height + sine * shackle.rate.along);
  const double fixed_by_pitch = -towards * (sine * fixed.at.height + cosine * fixed.at.along);
  const double shackle_by_pitch = -towards * (sine * shackle.at.height - cosine * shackle.at.along);
  const double determinant = fixed_by_bend * shackle_by_pitch - shackle_by_bend * fixed_by_pitch;
  if (determinant == 0.0) return false;
  const double per_determinant = 1.0 / determinant;
  const double bend_change =
      (over_shackle * fixed_by_pitch - over_fixed * shackle_by_pitch) * per_determinant;
  const double pitch_change =
      (over_fixed * shackle_by_bend - over_shackle * fixed_by_bend) * per_determinant;
  own.bend = held_bend(own.bend + bend_change);
  own.pitch = std::clamp(own.pitch + pitch_change, -kMostLeafBend, kMostLeafBend);
  own.pitch_by_rise = (shackle_by_bend - fixed_by_bend) * per_determinant;
  own.last_change = std::abs(bend_change) + std::abs(pitch_change);
  return true;
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
  double sine_of_pitch = 0.0;
  double cosine_of_pitch = 1.0;
  Mat3 turn = Mat3::Identity();  // pitch after roll

  RolledAxle(double axle_pitch, double sine_of_roll_at_no_pitch, bool& reaches)
      : pitch(axle_pitch),
        sine_of_pitch(std::sin(axle_pitch)),
        cosine_of_pitch(std::cos(axle_pitch)) {
    const double wanted = sine_of_roll_at_no_pitch / cosine_of_pitch;
    roll = held_asin(wanted, reaches);
    const double sr = std::clamp(wanted, -1.0, 1.0);
    const double cr = std::sqrt((1.0 - sr) * (1.0 + sr));
    turn << cosine_of_pitch, sine_of_pitch * sr, sine_of_pitch * cr, 0.0, cr, -sr, -sine_of_pitch,
        cosine_of_pitch * sr, cosine_of_pitch * cr;
  }
};

// How far a point of the axle rises when the axle's origin rises by `heave`, and by how much more
// per radian of pitch; roll keeps its wheel centres' difference as it pitches. `upright` =
// cos(pitch) cos(roll).
struct Rise {
  double at = 0.0;
  double by_pitch = 0.0;
};

Rise rise_of(const Vec3& offset, double heave, const ArcShape& turn, double upright,
             double sine_of_roll) {
  return {heave - turn.sine * offset.x() + sine_of_roll * offset.y() + (upright - 1.0) * offset.z(),
          -turn.cosine * offset.x() -
              (upright > 0.0 ? turn.sine * turn.cosine / upright * offset.z() : 0.0)};
}

// Pitch of an axle on two springs whose halves differ: wind-up and the mean of the springs' own
// pitches, each at the rise that this very pitch gives its seat. Newton on all of it at once.
double pitch_on_leaves(const std::array<LeafPath, 2>& leaf, double heave, double sine_of_roll,
                       double wind_up, std::array<OwnPitch, 2>& own, bool& closes) {
  own = {first_guess(leaf[0], heave + sine_of_roll * leaf[0].seat_offset_mm.y()),
         first_guess(leaf[1], heave + sine_of_roll * leaf[1].seat_offset_mm.y())};
  double pitch = wind_up + 0.5 * (own[0].pitch + own[1].pitch);
  for (int step = 0; step < kMostSteps; ++step) {
    pitch = std::clamp(pitch, -kMostLeafBend, kMostLeafBend);
    double excess = pitch - wind_up;
    double slope = 1.0;
    double change = 0.0;
    const ArcShape turn = arc_shape(pitch);
    const double upright =
        std::sqrt(std::max(0.0, turn.cosine * turn.cosine - sine_of_roll * sine_of_roll));
    for (int i = 0; i < 2; ++i) {
      const Rise rise = rise_of(leaf[i].seat_offset_mm, heave, turn, upright, sine_of_roll);
      if (!improve(leaf[i], rise.at, own[i])) {
        closes = false;
        return pitch;
      }
      excess -= 0.5 * own[i].pitch;
      slope -= 0.5 * own[i].pitch_by_rise * rise.by_pitch;
      change = std::max(change, own[i].last_change);
    }
    const double pitch_change = slope != 0.0 ? -excess / slope : 0.0;
    pitch += pitch_change;
    if (std::max(change, std::abs(pitch_change)) < kLastStep) {
      closes =
          closes && std::abs(own[0].bend) < kMostLeafBend && std::abs(own[1].bend) < kMostLeafBend;
      return pitch;
    }
  }
  closes = false;
  return pitch;
}

// Yaw and X shift that bring two points of the axle (already rolled and pitched) to the wanted X:
// cos(yaw) (l - r).x - sin(yaw) (l - r).y = left_x - right_x.
struct Yaw {
  double angle = 0.0;
  double sine = 0.0;
  double cosine = 1.0;
};

Yaw yaw_to(const Vec3& left, const Vec3& right, double left_x, double right_x, AxleAnswer& answer) {
  const double across_x = left.x() - right.x();
  const double across_y = left.y() - right.y();
  const double wanted = left_x - right_x;
  const double span_squared = across_x * across_x + across_y * across_y;
  const double left_over = span_squared - wanted * wanted;
  Yaw yaw;
  if (left_over > 0.0) {
    const double root = std::copysign(std::sqrt(left_over), across_y);
    yaw.sine = (across_x * root - across_y * wanted) / span_squared;
    yaw.cosine = (across_y * root + across_x * wanted) / span_squared;
    yaw.angle = angle_of(yaw.sine, yaw.cosine);
  } else {
    answer.closes = false;
  }
  answer.pose.yaw = yaw.angle;
  answer.pose.dx = 0.5 * (left_x + right_x - yaw.cosine * (left.x() + right.x()) +
                          yaw.sine * (left.y() + right.y()));
  return yaw;
}

// Y that a point of the rolled axle has once yawed, from the axle's origin.
double yawed_y(const Vec3& rolled, const Yaw& yaw) {
  return yaw.sine * rolled.x() + yaw.cosine * rolled.y();
}

// Pitch, roll and the whole turn; the shift follows when dy is known.
void set_turn(const RolledAxle& axle, const Yaw& yaw, AxleAnswer& answer) {
  answer.pose.pitch = axle.pitch;
  answer.pose.roll = axle.roll;
  Mat3& turn = answer.chassis_from_axle.turn;
  turn.row(0) = yaw.cosine * axle.turn.row(0) - yaw.sine * axle.turn.row(1);
  turn.row(1) = yaw.sine * axle.turn.row(0) + yaw.cosine * axle.turn.row(1);
  turn.row(2) = axle.turn.row(2);
}

void pose_on_leaves(const SuspensionPath& path, double sine_of_roll, double wind_up,
                    AxleAnswer& answer) {
  const std::array<LeafPath, 2>& leaf = path.leaf;
  const double heave = answer.pose.dz;
  const bool halves_differ = leaf[0].fixed_half != leaf[0].shackle_half;
  std::array<OwnPitch, 2> own;
  const double pitch = halves_differ
                           ? pitch_on_leaves(leaf, heave, sine_of_roll, wind_up, own, answer.closes)
                           : wind_up;
  const RolledAxle axle(pitch, sine_of_roll, answer.closes);

  std::array<double, 2> seat_x{};
  std::array<Vec3, 2> seat;
  for (int i = 0; i < 2; ++i) {
    const Vec3& offset = leaf[i].seat_offset_mm;
    seat[i] = axle.turn.lazyProduct(offset);
    const double rise = heave + seat[i].z() - offset.z();
    const double along_at_ride = leaf[i].fixed_eye_at_ride.along;
    const double towards = leaf[i].towards_fixed;
    const double guess =
        halves_differ ? held_bend(own[i].bend + towards * (pitch - own[i].pitch) * along_at_ride *
                                                    leaf[i].bend_by_height)
                      : bend_guess(leaf[i], towards * axle.sine_of_pitch * along_at_ride - rise);
    const BentLeaf bent = bend_leaf(leaf[i], axle.sine_of_pitch, axle.cosine_of_pitch, rise, guess);
    answer.closes = answer.closes && bent.closes;
    seat_x[i] = offset.x() + towards * (along_at_ride - bent.along);
  }
  const Yaw yaw = yaw_to(seat[0], seat[1], seat_x[0], seat_x[1], answer);
  set_turn(axle, yaw, answer);
  const double middle_y = 0.5 * (leaf[0].seat_offset_mm.y() + leaf[1].seat_offset_mm.y());
  answer.pose.dy = middle_y - yawed_y(0.5 * (seat[0] + seat[1]), yaw);
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
    pitch += 0.5 * angle_of(arm.height * reach - arm.reach * height,
                            arm.reach * reach + arm.height * height);
  }
  const RolledAxle axle(pitch, sine_of_roll, answer.closes);
  const Vec3 middle_line = axle.turn.col(1);
  const Yaw yaw =
      yaw_to(path.radius_arm[0].middle_line_y * middle_line,
             path.radius_arm[1].middle_line_y * middle_line, crossing_x[0], crossing_x[1], answer);
  set_turn(axle, yaw, answer);

  const LateralRodPath& rod = path.lateral_rod;
  const Vec3 along = Vec3(answer.pose.dx, 0.0, heave) +
                     answer.chassis_from_axle.turn * rod.axle_end_mm - rod.chassis_end_mm;
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
  const BentLeaf bent =
      bend_leaf(leaf, 0.0, 1.0, 0.0, held_bend(2.0 * (height - eye_offset) / length));
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
    const MovingEye eye = moving_eye(leaf.fixed_half, leaf.eye_offset, leaf.bend_at_ride);
    leaf.bend_by_height = 1.0 / eye.rate.height;
    // From the arc's second derivative, near -(l p / 4 + e).
    leaf.bend_by_height_2 = 0.5 * (0.25 * leaf.fixed_half * leaf.bend_at_ride + leaf.eye_offset) *
                            leaf.bend_by_height * leaf.bend_by_height * leaf.bend_by_height;
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
      set_turn(RolledAxle(wind_up, sine_of_roll, answer.closes), Yaw{}, answer);
      break;
  }
  answer.chassis_from_axle.shift_mm =
      path.origin_mm + Vec3(answer.pose.dx, answer.pose.dy, answer.pose.dz);
  return answer;
}

Placement<Chassis, Axle> chassis_from_axle(const SuspensionPath& path, const AxlePose& pose) {
  return {roll_pitch_yaw_turn(pose.roll, pose.pitch, pose.yaw),
          path.origin_mm + Vec3(pose.dx, pose.dy, pose.dz)};
}

}  // namespace tackbench
