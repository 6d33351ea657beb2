#include "core/checks/shaft_bodies.h"

#include <Eigen/Geometry>
#include <Eigen/SVD>
#include <algorithm>

namespace tackbench {
namespace {

constexpr double kRank = 1e-9;
constexpr double kLeastSize = 10.0;  // mm

Mat3 skew(const Vec3& v) {
  Mat3 m;
  m << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
  return m;
}

ShaftBody body_along(int span, bool road_half, const Vec3& reference, const Vec3& along,
                     double size) {
  ShaftBody body;
  body.span = span;
  body.road_half = road_half;
  body.reference_mm = reference;
  body.along = along;
  body.first = square_to(along, Vec3::UnitZ());
  body.second = along.cross(body.first);
  body.size = std::max(size, kLeastSize);
  return body;
}

void add_bodies(const ShaftLine& line, ShaftBodies& bodies) {
  const Vec3 column_end = (line.cab_as_drawn * line.column.output_end).mm;
  const double column_length =
      (line.column.output_end.mm - line.column.hand_wheel_centre.mm).norm();
  bodies.bodies.push_back(
      body_along(-1, false, column_end, line.column_axis.along, 0.5 * column_length));
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    const Vec3& from = line.crosses[i].centre_mm;
    const Vec3& to = line.crosses[i + 1].centre_mm;
    const Vec3& along = line.crosses[i].geometry.out_direction;
    const double size = 0.5 * line.spans[i].length;
    const int span = static_cast<int>(i);
    bodies.bodies.push_back(body_along(span, false, from, along, size));
    if (line.spans[i].slips) bodies.bodies.push_back(body_along(span, true, to, along, size));
  }
}

class Rows {
 public:
  explicit Rows(ShaftBodies& bodies) : bodies_(bodies) {}
  void add(ShaftRowKind kind, int index, const Vec3& direction, const Eigen::RowVectorXd& row,
           double drawn_mm = 0.0) {
    bodies_.rows.push_back({kind, index, direction, drawn_mm});
    rows_.push_back(row);
  }
  void finish() {
    const auto columns =
        static_cast<Eigen::Index>(bodies_.bodies.size()) * ShaftBodies::kCoordinates;
    bodies_.jacobian.resize(static_cast<Eigen::Index>(rows_.size()), columns);
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      bodies_.jacobian.row(static_cast<Eigen::Index>(i)) = rows_[i];
    }
  }

 private:
  ShaftBodies& bodies_;
  std::vector<Eigen::RowVectorXd> rows_;
};

void hold_column(const ShaftLine& line, const ShaftBodies& bodies, Rows& rows) {
  const ShaftBody& column = bodies.bodies[0];
  // Two or more bearings are taken as made in line: they hold the axis, and once.
  const std::size_t bearings = line.column.bearings.size();
  const Vec3 at = bearings == 1 ? Vec3((line.cab_as_drawn * line.column.hand_wheel_centre).mm +
                                       line.column.bearings[0].from_hand_wheel * column.along)
                                : column.reference_mm;
  rows.add(ShaftRowKind::column_lengthways, 0, column.along,
           column.along.transpose() * bodies.movement(0, at));
  if (bearings == 0) return;
  const Eigen::MatrixXd sideways = bodies.sideways(0, at);
  rows.add(ShaftRowKind::column_sideways, 0, column.first, sideways.row(0));
  rows.add(ShaftRowKind::column_sideways, 0, column.second, sideways.row(1));
  if (bearings == 1) return;
  const Eigen::MatrixXd tilt = column.size * bodies.tilt(0);
  rows.add(ShaftRowKind::column_tilt, 0, column.first, tilt.row(0));
  rows.add(ShaftRowKind::column_tilt, 0, column.second, tilt.row(1));
}

void hold_crosses(const ShaftLine& line, const ShaftBodies& bodies, Rows& rows) {
  const int count = static_cast<int>(line.crosses.size());
  const Vec3 column_end = (line.cab_as_drawn * line.column.output_end).mm;
  for (int i = 0; i < count; ++i) {
    const Vec3& centre = line.crosses[static_cast<std::size_t>(i)].centre_mm;
    Eigen::MatrixXd apart = bodies.movement(body_before_cross(bodies, i), centre);
    if (i + 1 < count) apart -= bodies.movement(body_of_span(bodies, i, false), centre);
    // A centre drawn beside the axis that carries it misses by that much.
    Vec3 missed = Vec3::Zero();
    if (i == 0) {
      const Vec3 out = centre - column_end;
      missed += out - line.column_axis.along * line.column_axis.along.dot(out);
    }
    if (i + 1 == count) {
      const Vec3 out = centre - line.box_input_end.mm;
      missed += out - line.box_input_axis.along * line.box_input_axis.along.dot(out);
    }
    for (int k = 0; k < 3; ++k) {
      rows.add(ShaftRowKind::cross, i, Vec3::Unit(k), apart.row(k), missed[k]);
    }
  }
}

void hold_slips(const ShaftLine& line, const ShaftBodies& bodies, Rows& rows) {
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (!line.spans[i].slips) continue;
    const int span = static_cast<int>(i);
    const std::size_t hand = body_of_span(bodies, span, false);
    const std::size_t road = body_of_span(bodies, span, true);
    const Vec3 middle = 0.5 * (line.crosses[i].centre_mm + line.crosses[i + 1].centre_mm);
    const Eigen::MatrixXd apart = bodies.sideways(hand, middle) - bodies.sideways(road, middle);
    const ShaftBody& body = bodies.bodies[hand];
    const Eigen::MatrixXd tilt = body.size * (bodies.tilt(hand) - bodies.tilt(road));
    for (int k = 0; k < 2; ++k) {
      const Vec3& direction = k == 0 ? body.first : body.second;
      rows.add(ShaftRowKind::slip, span, direction, apart.row(k));
      rows.add(ShaftRowKind::slip, span, direction, tilt.row(k));
    }
  }
}

void hold_supports(const ShaftLine& line, const ShaftBodies& bodies, Rows& rows) {
  for (const DrawnSupport& support : line.supports) {
    const bool road_half =
        support.on_road_half && line.spans[static_cast<std::size_t>(support.span)].slips;
    const std::size_t body = body_of_span(bodies, support.span, road_half);
    const ShaftBody& shaft = bodies.bodies[body];
    const Eigen::MatrixXd sideways = bodies.sideways(body, support.on_line_mm);
    const Vec3 missed = support.eye_mm - support.on_line_mm;
    rows.add(ShaftRowKind::support_sideways, support.support, shaft.first, sideways.row(0),
             shaft.first.dot(missed));
    rows.add(ShaftRowKind::support_sideways, support.support, shaft.second, sideways.row(1),
             shaft.second.dot(missed));
    if (support.holds_lengthways) {
      rows.add(ShaftRowKind::support_lengthways, support.support, shaft.along,
               shaft.along.transpose() * bodies.movement(body, support.on_line_mm));
    }
    if (support.holds_direction) {
      const Eigen::MatrixXd tilt = shaft.size * bodies.tilt(body);
      rows.add(ShaftRowKind::support_tilt, support.support, shaft.first, tilt.row(0));
      rows.add(ShaftRowKind::support_tilt, support.support, shaft.second, tilt.row(1));
    }
  }
}

}  // namespace

Eigen::MatrixXd ShaftBodies::movement(std::size_t body, const Vec3& point_mm) const {
  const ShaftBody& carrier = bodies[body];
  const auto column = static_cast<Eigen::Index>(body) * kCoordinates;
  Eigen::MatrixXd out =
      Eigen::MatrixXd::Zero(3, static_cast<Eigen::Index>(bodies.size()) * kCoordinates);
  out.block<3, 3>(0, column).setIdentity();
  const Mat3 arm = -skew(point_mm - carrier.reference_mm) / carrier.size;
  out.block<3, 1>(0, column + 3) = arm * carrier.first;
  out.block<3, 1>(0, column + 4) = arm * carrier.second;
  return out;
}

Eigen::MatrixXd ShaftBodies::sideways(std::size_t body, const Vec3& point_mm) const {
  Eigen::Matrix<double, 2, 3> across;
  across << bodies[body].first.transpose(), bodies[body].second.transpose();
  return across * movement(body, point_mm);
}

Eigen::MatrixXd ShaftBodies::tilt(std::size_t body) const {
  const auto column = static_cast<Eigen::Index>(body) * kCoordinates;
  Eigen::MatrixXd out =
      Eigen::MatrixXd::Zero(2, static_cast<Eigen::Index>(bodies.size()) * kCoordinates);
  out(0, column + 3) = 1.0 / bodies[body].size;
  out(1, column + 4) = 1.0 / bodies[body].size;
  return out;
}

std::size_t body_of_span(const ShaftBodies& bodies, int span, bool road_half) {
  std::size_t found = 0;
  for (std::size_t i = 0; i < bodies.bodies.size(); ++i) {
    const ShaftBody& body = bodies.bodies[i];
    if (body.span == span && (found == 0 || body.road_half == road_half)) found = i;
  }
  return found;
}

std::size_t body_before_cross(const ShaftBodies& bodies, int cross) {
  return cross == 0 ? 0 : body_of_span(bodies, cross - 1, true);
}

ShaftBodies shaft_bodies(const ShaftLine& line) {
  ShaftBodies bodies;
  add_bodies(line, bodies);
  Rows rows(bodies);
  hold_column(line, bodies, rows);
  hold_crosses(line, bodies, rows);
  hold_slips(line, bodies, rows);
  hold_supports(line, bodies, rows);
  rows.finish();
  return bodies;
}

NullSpaces null_spaces(const Eigen::MatrixXd& matrix) {
  NullSpaces spaces;
  Eigen::JacobiSVD<Eigen::MatrixXd, Eigen::FullPivHouseholderQRPreconditioner> svd(
      matrix, Eigen::ComputeFullU | Eigen::ComputeFullV);
  svd.setThreshold(kRank);
  spaces.rank = svd.rank();
  spaces.right = svd.matrixV().rightCols(matrix.cols() - spaces.rank);
  spaces.left = svd.matrixU().rightCols(matrix.rows() - spaces.rank);
  return spaces;
}

Eigen::Index rank_of(const Eigen::MatrixXd& matrix) {
  if (matrix.size() == 0) return 0;
  Eigen::JacobiSVD<Eigen::MatrixXd> svd(matrix);
  // Against 1, not the largest: rows are unit-sized, and a matrix of rounding errors has rank 0.
  return (svd.singularValues().array() > kRank).count();
}

Eigen::MatrixXd pseudo_inverse(const Eigen::MatrixXd& matrix) {
  Eigen::JacobiSVD<Eigen::MatrixXd> svd(matrix, Eigen::ComputeThinU | Eigen::ComputeThinV);
  const Eigen::VectorXd inverse =
      (svd.singularValues().array() > kRank).select(svd.singularValues().cwiseInverse(), 0.0);
  return svd.matrixV() * inverse.asDiagonal() * svd.matrixU().transpose();
}

Eigen::MatrixXd sorted_by(const Eigen::MatrixXd& shown, const Eigen::MatrixXd& basis) {
  Eigen::JacobiSVD<Eigen::MatrixXd> svd(shown * basis, Eigen::ComputeFullV);
  return basis * svd.matrixV();
}

double greatest_gain(const Eigen::MatrixXd& matrix) {
  if (matrix.size() == 0) return 0.0;
  return Eigen::JacobiSVD<Eigen::MatrixXd>(matrix).singularValues()[0];
}

}  // namespace tackbench
