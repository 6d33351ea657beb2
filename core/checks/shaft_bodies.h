// The shaft line as bodies and what holds them together, to first order: the Jacobian that the
// wandering-shaft check and the statics of secondary couples share.
//
// Each body has five coordinates, in mm: three shifts of its reference point and two tilts about
// axes square to its own, times a length of its own size. Rows are in mm too.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "core/mechanism/shaft_line.h"

namespace tackbench {

enum class ShaftRowKind {
  column_sideways,  // column bearings; three rows (chassis axes) of its lower end ...
  column_lengthways,
  column_tilt,
  cross,             // two bodies meet at a cross: three rows, chassis axes
  slip,              // two halves share a line: two sideways, two tilts
  support_sideways,  // two rows an eye
  support_lengthways,
  support_tilt,
};

struct ShaftRow {
  ShaftRowKind kind = ShaftRowKind::cross;
  int index = 0;                   // cross, span or support, by kind
  Vec3 direction = Vec3::UnitX();  // unit, of the movement (tilt: of the turn) that it stops
  double drawn_mm = 0.0;           // by how much the drawing misses it
};

struct ShaftBody {
  int span = -1;           // index in ShaftLine::spans; -1 = the column
  bool road_half = false;  // of a slip shaft
  Vec3 reference_mm = Vec3::Zero();
  Vec3 along = Vec3::UnitX();
  Vec3 first = Vec3::UnitY();  // tilt axes, unit
  Vec3 second = Vec3::UnitZ();
  double size = 1.0;  // mm: tilt coordinate over tilt in rad
};

struct ShaftBodies {
  std::vector<ShaftBody> bodies;  // column first
  std::vector<ShaftRow> rows;
  Eigen::MatrixXd jacobian;  // rows x 5 bodies

  static constexpr Eigen::Index kCoordinates = 5;
  // 3 x all coordinates: movement of a point carried by a body.
  Eigen::MatrixXd movement(std::size_t body, const Vec3& point_mm) const;
  // 2 x all coordinates: movement of a point sideways to the body's axis.
  Eigen::MatrixXd sideways(std::size_t body, const Vec3& point_mm) const;
  // 2 x all coordinates: tilt, rad, about the body's first and second axes.
  Eigen::MatrixXd tilt(std::size_t body) const;
};

// The line must have joints.
ShaftBodies shaft_bodies(const ShaftLine& line);

// Body that meets a cross on its hand side; for the first cross the column.
std::size_t body_before_cross(const ShaftBodies& bodies, int cross);
// Body of a span; the wanted half of a slip shaft.
std::size_t body_of_span(const ShaftBodies& bodies, int span, bool road_half);

// Rank by singular values, 1e-9 of the largest; bases of both null spaces as columns.
struct NullSpaces {
  Eigen::Index rank = 0;
  Eigen::MatrixXd right;
  Eigen::MatrixXd left;
};
NullSpaces null_spaces(const Eigen::MatrixXd& matrix);
Eigen::Index rank_of(const Eigen::MatrixXd& matrix);
// Moore-Penrose inverse at the same threshold.
Eigen::MatrixXd pseudo_inverse(const Eigen::MatrixXd& matrix);
// Orthogonal mix of the columns of `basis` that makes the columns of `shown * basis` square to one
// another, largest first.
Eigen::MatrixXd sorted_by(const Eigen::MatrixXd& shown, const Eigen::MatrixXd& basis);
// Largest singular value.
double greatest_gain(const Eigen::MatrixXd& matrix);

}  // namespace tackbench
