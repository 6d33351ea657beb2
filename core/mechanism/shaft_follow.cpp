#include "core/mechanism/shaft_follow.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <Eigen/SVD>
#include <algorithm>
#include <cmath>

namespace tackbench {
namespace {

constexpr int kMostFree = 3 * (kMostCrosses - 1);
using FreeVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMostFree, 1>;
using FreeMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMostFree, kMostFree>;

// One equation: how it changes as the crosses at the two ends of a span move, and what is left.
struct Row {
  std::size_t hand_cross = 0;  // the road-side one is the next
  Vec3 per_hand = Vec3::Zero();
  Vec3 per_road = Vec3::Zero();
  double residual = 0.0;  // mm
};

struct Held {
  Vec3 eye;
  Vec3 along;
};

Held support_now(const ShaftLine& line, const FollowTask& task, const DrawnSupport& support) {
  if (support.rides_on != RidesOn::cab) {
    return {support.on_line_mm + task.chassis_shift_mm, support.along};
  }
  const Placement<Cab, Chassis> cab_from_chassis = line.cab_as_drawn.inverse();
  const Placement<Chassis, Cab>& cab = task.chassis_from_cab;
  return {(cab * (cab_from_chassis * Point<Chassis>{support.on_line_mm})).mm,
          (cab * (cab_from_chassis * Direction<Chassis>{support.along})).along};
}

// Calls `take(Row)` for every equation with the crosses at `centres`.
template <class Take>
void each_row(const ShaftLine& line, const FollowTask& task, const CrossCentres& centres,
              Take&& take) {
  constexpr double kNothing = 1e-9;
  if (task.column_slides) {
    const Vec3& along = line.column_axis.along;
    const Vec3 first = square_to(along, Vec3::UnitZ());
    for (const Vec3& sideways : {first, Vec3(along.cross(first))}) {
      take(Row{0, sideways, Vec3::Zero(), sideways.dot(centres[0] - task.start[0])});
    }
  }
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (!task.fixed_length[i]) continue;
    const Vec3 span = centres[i + 1] - centres[i];
    const double length = span.norm();
    const Vec3 along =
        length > kNothing ? Vec3(span / length) : line.crosses[i].geometry.out_direction;
    take(Row{i, -along, along, length - task.length[i]});
  }
  for (const DrawnSupport& support : line.supports) {
    const auto i = static_cast<std::size_t>(support.span);
    const Held held = support_now(line, task, support);
    const Vec3 span = centres[i + 1] - centres[i];
    const double length = std::max(span.norm(), kNothing);
    const Vec3 along = span / length;
    const Vec3 to_eye = held.eye - centres[i];
    const double part = along.dot(to_eye) / length;
    const Vec3 first = square_to(along, Vec3::UnitZ());
    const Vec3 second = along.cross(first);
    for (const Vec3& sideways : {first, second}) {
      take(Row{i, -(1.0 - part) * sideways, -part * sideways, sideways.dot(to_eye)});
    }
    if (support.holds_lengthways) {
      if (support.on_road_half) {
        take(Row{i, Vec3::Zero(), along, (1.0 - part) * length - support.collar_distance});
      } else {
        take(Row{i, -along, Vec3::Zero(), part * length - support.collar_distance});
      }
    }
    if (support.holds_direction) {
      const Vec3 up = square_to(held.along, Vec3::UnitZ());
      for (const Vec3& sideways : {up, Vec3(held.along.cross(up))}) {
        const Vec3 turning = sideways - along * along.dot(sideways);
        take(Row{i, -turning, turning, sideways.dot(span)});
      }
    }
  }
}

double squares(const ShaftLine& line, const FollowTask& task, const CrossCentres& centres) {
  double sum = 0.0;
  each_row(line, task, centres, [&](const Row& row) { sum += row.residual * row.residual; });
  return sum;
}

double worst(const ShaftLine& line, const FollowTask& task, const CrossCentres& centres) {
  double most = 0.0;
  each_row(line, task, centres,
           [&](const Row& row) { most = std::max(most, std::abs(row.residual)); });
  return most;
}

std::size_t first_free(const FollowTask& task) {
  return task.column_slides ? 0 : 1;
}

// Normal equations of the free crosses.
void normal_equations(const ShaftLine& line, const FollowTask& task, const CrossCentres& centres,
                      FreeMatrix& square, FreeVector& pull) {
  square.setZero();
  pull.setZero();
  const std::size_t last = line.crosses.size() - 1;
  each_row(line, task, centres, [&](const Row& row) {
    const bool hand_free = row.hand_cross >= first_free(task);
    const bool road_free = row.hand_cross + 1 < last;
    const auto hand = 3 * (static_cast<Eigen::Index>(row.hand_cross) -
                           static_cast<Eigen::Index>(first_free(task)));
    const auto road = hand + 3;
    if (hand_free) {
      square.block<3, 3>(hand, hand) += row.per_hand * row.per_hand.transpose();
      pull.segment<3>(hand) += row.per_hand * row.residual;
    }
    if (road_free) {
      square.block<3, 3>(road, road) += row.per_road * row.per_road.transpose();
      pull.segment<3>(road) += row.per_road * row.residual;
    }
    if (hand_free && road_free) {
      const Mat3 cross = row.per_hand * row.per_road.transpose();
      square.block<3, 3>(hand, road) += cross;
      square.block<3, 3>(road, hand) += cross.transpose();
    }
  });
}

CrossCentres moved(const CrossCentres& centres, std::size_t first, const FreeVector& step) {
  CrossCentres after = centres;
  for (Eigen::Index i = 0; i < step.size() / 3; ++i) {
    after[static_cast<std::size_t>(i) + first] -= step.segment<3>(3 * i);
  }
  return after;
}

}  // namespace

FollowTask follow_task(const ShaftLine& line, const Placement<Chassis, Cab>& chassis_from_cab) {
  FollowTask task;
  task.chassis_from_cab = chassis_from_cab;
  const Placement<Cab, Chassis> cab_from_chassis = line.cab_as_drawn.inverse();
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    const DrawnCross& cross = line.crosses[i];
    task.start[i] =
        cross.rides_on == RidesOn::cab
            ? (chassis_from_cab * (cab_from_chassis * Point<Chassis>{cross.centre_mm})).mm
            : cross.centre_mm;
  }
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    task.fixed_length[i] = !line.spans[i].slips;
    task.length[i] = line.spans[i].length;
  }
  return task;
}

namespace {

// Where the first cross as drawn goes with the cab.
Vec3 column_end_now(const ShaftLine& line, const FollowTask& task) {
  const Point<Chassis> drawn{line.crosses[0].centre_mm};
  return (task.chassis_from_cab * (line.cab_as_drawn.inverse() * drawn)).mm;
}

}  // namespace

FollowAnswer follow(const ShaftLine& line, const FollowTask& task) {
  constexpr double kCloses = 1e-6;  // mm
  constexpr double kDone = 1e-22;   // sum of squares, mm^2
  // Rounding in a direction that nothing holds grows by the inverse of this: no smaller.
  constexpr double kLeastDamping = 1e-6;
  constexpr double kMostDamping = 1e6;
  constexpr int kMostSteps = 60;
  FollowAnswer answer;
  answer.centres = task.start;
  const std::size_t count = line.crosses.size();
  if (count > 1 + first_free(task)) {
    const auto free = static_cast<Eigen::Index>(3 * (count - 1 - first_free(task)));
    FreeMatrix square(free, free);
    FreeVector pull(free);
    double damping = kLeastDamping;
    double sum = squares(line, task, answer.centres);
    for (int step = 0; step < kMostSteps && sum > kDone && damping < kMostDamping; ++step) {
      normal_equations(line, task, answer.centres, square, pull);
      square.diagonal().array() += damping;
      const FreeVector shift = square.ldlt().solve(pull);
      const CrossCentres tried = moved(answer.centres, first_free(task), shift);
      const double after = squares(line, task, tried);
      if (std::isfinite(after) && after < sum) {
        const bool settled = after > 0.999 * sum;
        answer.centres = tried;
        sum = after;
        damping = std::max(kLeastDamping, 0.1 * damping);
        if (settled) break;
      } else {
        damping = std::max(1e-8, 10.0 * damping);
      }
    }
  }
  answer.misfit = worst(line, task, answer.centres);
  if (count == 1) {  // nothing between column and box gives: the column takes its end away
    answer.misfit = (column_end_now(line, task) - task.start[0]).norm();
  }
  answer.closes = answer.misfit < kCloses;
  return answer;
}

void mark_held(ShaftLine& line) {
  constexpr double kRank = 1e-9;
  constexpr double kMoves = 1e-6;
  const auto count = static_cast<Eigen::Index>(line.crosses.size());
  if (count < 1) return;
  // Rows over all crosses: the line's own equations, then what holds its two ends.
  const FollowTask task = follow_task(line, line.cab_as_drawn);
  std::vector<Eigen::VectorXd> rows;
  const auto add = [&](Eigen::Index cross, const Vec3& per) {
    Eigen::VectorXd row = Eigen::VectorXd::Zero(3 * count);
    row.segment<3>(3 * cross) = per;
    rows.push_back(row);
  };
  each_row(line, task, task.start, [&](const Row& row) {
    Eigen::VectorXd full = Eigen::VectorXd::Zero(3 * count);
    const auto hand = 3 * static_cast<Eigen::Index>(row.hand_cross);
    full.segment<3>(hand) = row.per_hand;
    full.segment<3>(hand + 3) = row.per_road;
    rows.push_back(full);
  });
  add(0, line.column_axis.along);
  if (line.column.bearings.size() >= 2) {
    const Vec3 first = square_to(line.column_axis.along, Vec3::UnitZ());
    add(0, first);
    add(0, line.column_axis.along.cross(first));
  }
  for (int k = 0; k < 3; ++k) add(count - 1, Vec3::Unit(k));
  Eigen::MatrixXd jacobian(static_cast<Eigen::Index>(rows.size()), 3 * count);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    jacobian.row(static_cast<Eigen::Index>(i)) = rows[i].transpose();
  }
  Eigen::JacobiSVD<Eigen::MatrixXd> svd(jacobian, Eigen::ComputeFullV);
  svd.setThreshold(kRank);
  const Eigen::MatrixXd free = svd.matrixV().rightCols(3 * count - svd.rank());
  for (Eigen::Index i = 0; i < count; ++i) {
    line.crosses[static_cast<std::size_t>(i)].held =
        free.cols() == 0 || free.middleRows<3>(3 * i).norm() < kMoves;
  }
}

}  // namespace tackbench
