#include "core/checks/wandering_shaft.h"

#include <fmt/core.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/basics/units.h"
#include "core/checks/shaft_bodies.h"

namespace tackbench {
namespace {

constexpr double kMoves = 1e-6;  // of a movement of 1

Eigen::MatrixXd stacked(const std::vector<Eigen::MatrixXd>& parts) {
  Eigen::Index rows = 0;
  for (const Eigen::MatrixXd& part : parts) rows += part.rows();
  Eigen::MatrixXd all(rows, parts.empty() ? 0 : parts.front().cols());
  Eigen::Index row = 0;
  for (const Eigen::MatrixXd& part : parts) {
    all.middleRows(row, part.rows()) = part;
    row += part.rows();
  }
  return all;
}

// Movement of every cross, then of the hand wheel, 3 rows each.
Eigen::MatrixXd shown_movement(const ShaftLine& line, const ShaftBodies& bodies) {
  std::vector<Eigen::MatrixXd> parts;
  for (std::size_t i = 0; i < line.crosses.size(); ++i) {
    parts.push_back(
        bodies.movement(body_before_cross(bodies, static_cast<int>(i)), line.crosses[i].centre_mm));
  }
  parts.push_back(bodies.movement(0, (line.cab_as_drawn * line.column.hand_wheel_centre).mm));
  return stacked(parts);
}

WanderingWay way_from(const ShaftLine& line, const ShaftBodies& bodies,
                      const Eigen::MatrixXd& shown, const Eigen::VectorXd& motion) {
  WanderingWay way;
  Eigen::VectorXd moved = shown * motion;
  double most = 0.0;
  for (Eigen::Index i = 0; i < moved.size() / 3; ++i) {
    const double length = moved.segment<3>(3 * i).norm();
    if (length > most * (1.0 + kMoves)) {
      most = length;
      way.most_at_cross = static_cast<int>(i);
    }
  }
  if (most > kMoves) moved /= most;
  const auto crosses = static_cast<Eigen::Index>(line.crosses.size());
  if (way.most_at_cross >= static_cast<int>(crosses)) way.most_at_cross = -1;
  for (Eigen::Index i = 0; i < crosses; ++i) {
    way.cross_shift_mm.emplace_back(moved.segment<3>(3 * i));
  }
  way.hand_wheel_shift_mm = moved.segment<3>(3 * crosses);
  std::set<int> shafts;
  for (std::size_t i = 0; i < bodies.bodies.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i) * ShaftBodies::kCoordinates;
    if (motion.segment(at, ShaftBodies::kCoordinates).norm() < kMoves) continue;
    const int span = bodies.bodies[i].span;
    if (span < 0) {
      way.column = true;
    } else if (const int shaft = line.spans[static_cast<std::size_t>(span)].shaft; shaft >= 0) {
      shafts.insert(shaft);
    }
  }
  way.shafts.assign(shafts.begin(), shafts.end());
  return way;
}

std::string joint_words(const ShaftLine& line, int cross) {
  const int joint = line.crosses[static_cast<std::size_t>(cross)].joint;
  const std::string& name = line.station.joints[static_cast<std::size_t>(joint)].name;
  return name.empty() ? fmt::format("joint {}", joint + 1) : name;
}

std::string shaft_words(const ShaftLine& line, int span) {
  const int shaft = line.spans[static_cast<std::size_t>(span)].shaft;
  if (shaft < 0) return fmt::format("middle piece of {}", joint_words(line, span));
  const std::string& name = line.station.shafts[static_cast<std::size_t>(shaft)].name;
  return name.empty() ? fmt::format("shaft {}", shaft + 1) : name;
}

std::string support_words(const ShaftLine& line, int support) {
  const std::string& name = line.station.supports[static_cast<std::size_t>(support)].name;
  return name.empty() ? fmt::format("support {}", support + 1) : name;
}

// Forces that the equations hand on without any load, as misfit per mm of error in each part: the
// length of a shaft without slip is in it when a force runs along it.
OverConstraint over_from(const ShaftLine& line, const ShaftBodies& bodies,
                         const Eigen::VectorXd& force) {
  const std::size_t spans = line.spans.size();
  std::vector<double> along(spans, 0.0);
  std::vector<double> sideways(line.supports.size(), 0.0);
  std::vector<double> lengthways(line.supports.size(), 0.0);
  std::vector<double> tilt(line.supports.size(), 0.0);
  double column = 0.0;
  double box = 0.0;
  OverConstraint over;
  const int last = static_cast<int>(line.crosses.size()) - 1;
  for (std::size_t i = 0; i < bodies.rows.size(); ++i) {
    const ShaftRow& row = bodies.rows[i];
    const double pull = force[static_cast<Eigen::Index>(i)];
    const auto index = static_cast<std::size_t>(row.index);
    over.misfit_as_drawn += pull * row.drawn_mm;
    switch (row.kind) {
      case ShaftRowKind::column_sideways:
      case ShaftRowKind::column_lengthways:
      case ShaftRowKind::column_tilt:
        column = std::hypot(column, pull);
        break;
      case ShaftRowKind::cross:
        if (row.index < last) {
          along[index] += pull * row.direction.dot(line.crosses[index].geometry.out_direction);
        } else {
          box = std::hypot(box, pull);
        }
        break;
      case ShaftRowKind::slip:
        break;
      case ShaftRowKind::support_sideways:
        sideways[index] = std::hypot(sideways[index], pull);
        break;
      case ShaftRowKind::support_lengthways:
        lengthways[index] = std::hypot(lengthways[index], pull);
        break;
      case ShaftRowKind::support_tilt:
        tilt[index] = std::hypot(tilt[index], pull);
        break;
    }
  }
  double most = 0.0;
  const auto add = [&](double share, std::string words) {
    if (std::abs(share) < kMoves) return;
    over.parts.push_back({std::move(words), std::abs(share)});
    most = std::max(most, std::abs(share));
  };
  for (std::size_t i = 0; i < spans; ++i) {
    if (!line.spans[i].slips) {
      add(along[i], fmt::format("length of {}", shaft_words(line, static_cast<int>(i))));
    }
  }
  for (std::size_t i = 0; i < line.supports.size(); ++i) {
    const std::string words = support_words(line, static_cast<int>(i));
    add(sideways[i], fmt::format("{} sideways", words));
    add(lengthways[i], fmt::format("{} lengthways", words));
    add(tilt[i], fmt::format("{} in line", words));
  }
  add(column, "column's place");
  add(box, "box's place");
  if (most > 0.0) {
    for (OverConstraint::Part& part : over.parts) part.share /= most;
    over.misfit_as_drawn = std::abs(over.misfit_as_drawn) / most;
  }
  std::stable_sort(over.parts.begin(), over.parts.end(),
                   [](const auto& a, const auto& b) { return a.share > b.share + kMoves; });
  return over;
}

// A run of joints that only first-order freedom moves: straight, without slip, between two joints
// that are held.
bool locked_in_line(const ShaftLine& line) {
  const double straight = radians_from_degrees(1.0);
  const std::size_t count = line.crosses.size();
  for (std::size_t i = 1; i + 1 < count; ++i) {
    if (line.crosses[i].held || !line.crosses[i - 1].held) continue;
    std::size_t at = i;
    while (at + 1 < count && !line.crosses[at].held && line.crosses[at].angle < straight &&
           !line.spans[at - 1].slips && !line.spans[at].slips) {
      ++at;
    }
    if (line.crosses[at].held) return true;
  }
  return false;
}

std::vector<SupportPlay> play_of(const ShaftLine& line, const ShaftBodies& bodies,
                                 const Eigen::MatrixXd& shown) {
  std::vector<SupportPlay> all;
  const auto crosses = static_cast<Eigen::Index>(line.crosses.size());
  for (const DrawnSupport& support : line.supports) {
    // Without this eye's sideways hold: how the eye may move and what moves with it.
    Eigen::MatrixXd without(bodies.jacobian.rows() - 2, bodies.jacobian.cols());
    Eigen::Index kept = 0;
    for (Eigen::Index i = 0; i < bodies.jacobian.rows(); ++i) {
      const ShaftRow& row = bodies.rows[static_cast<std::size_t>(i)];
      if (row.kind == ShaftRowKind::support_sideways && row.index == support.support) continue;
      without.row(kept++) = bodies.jacobian.row(i);
    }
    const Eigen::MatrixXd free = null_spaces(without).right;
    SupportPlay play;
    play.support = support.support;
    const bool road_half =
        support.on_road_half && line.spans[static_cast<std::size_t>(support.span)].slips;
    const std::size_t body = body_of_span(bodies, support.span, road_half);
    if (free.cols() > 0) {
      const Eigen::MatrixXd at_eye = bodies.sideways(body, support.on_line_mm) * free;
      const Eigen::MatrixXd motion = free * pseudo_inverse(at_eye);
      for (Eigen::Index i = 0; i < crosses; ++i) {
        const double gain = greatest_gain(shown.middleRows<3>(3 * i) * motion);
        if (gain > play.worst_at_cross_mm * (1.0 + kMoves)) {
          play.worst_at_cross_mm = gain;
          play.cross = static_cast<int>(i);
        }
      }
    }
    all.push_back(play);
  }
  return all;
}

// What a rod end on a span, a part of the way along it, would stop of the free motion.
Eigen::MatrixXd rod_end(const ShaftLine& line, const ShaftBodies& bodies,
                        const Eigen::MatrixXd& free, std::size_t span, double part) {
  const Vec3 at =
      (1.0 - part) * line.crosses[span].centre_mm + part * line.crosses[span + 1].centre_mm;
  return bodies.sideways(body_of_span(bodies, static_cast<int>(span), false), at) * free;
}

void try_rod_ends(const ShaftLine& line, const ShaftBodies& bodies, const Eigen::MatrixXd& free,
                  WanderingShaft& result) {
  const Eigen::Index ways = free.cols();
  std::vector<Eigen::MatrixXd> stops;
  std::vector<RodEndPlace> places;
  for (std::size_t i = 0; i < line.spans.size(); ++i) {
    if (line.spans[i].shaft < 0) continue;
    const int span = static_cast<int>(i);
    const std::array<std::pair<int, double>, 3> tries{{{-1, 0.5}, {span, 0.0}, {span + 1, 1.0}}};
    for (const auto& [cross, part] : tries) {
      const auto left = ways - rank_of(rod_end(line, bodies, free, i, part));
      result.trials.push_back({line.spans[i].shaft, cross, static_cast<int>(left)});
    }
    for (const double part : {0.5, 0.25, 0.75}) {
      stops.push_back(rod_end(line, bodies, free, i, part));
      places.push_back({line.spans[i].shaft, part});
    }
  }
  // Smallest set of places that leaves nothing free.
  constexpr int kMost = 4;
  std::vector<Eigen::MatrixXd> chosen;
  const auto hold = [&](const auto& self, std::size_t from, int more) -> bool {
    if (more == 0) return rank_of(stacked(chosen)) == ways;
    for (std::size_t i = from; i < stops.size(); ++i) {
      chosen.push_back(stops[i]);
      result.rod_ends.push_back(places[i]);
      if (self(self, i + 1, more - 1)) return true;
      chosen.pop_back();
      result.rod_ends.pop_back();
    }
    return false;
  };
  result.rod_ends_wanted = -1;
  for (int count = 1; count <= kMost; ++count) {
    if (2L * count >= ways && hold(hold, 0, count)) {
      result.rod_ends_wanted = count;
      return;
    }
  }
}

}  // namespace

WanderingShaft wandering_shaft(const ShaftLine& line) {
  WanderingShaft result;
  if (!line.has_joints) return result;
  const ShaftBodies bodies = shaft_bodies(line);
  const NullSpaces spaces = null_spaces(bodies.jacobian);
  const Eigen::MatrixXd shown = shown_movement(line, bodies);
  result.free_ways = static_cast<int>(spaces.right.cols());
  result.over_constraints = static_cast<int>(spaces.left.cols());
  for (Eigen::Index i = 0; i < spaces.left.cols(); ++i) {
    result.over.push_back(over_from(line, bodies, spaces.left.col(i)));
  }
  result.play = play_of(line, bodies, shown);
  if (result.free_ways == 0) return result;
  const Eigen::MatrixXd ways = sorted_by(shown, spaces.right);
  for (Eigen::Index i = 0; i < ways.cols(); ++i) {
    result.ways.push_back(way_from(line, bodies, shown, ways.col(i)));
  }
  result.in_line = locked_in_line(line);
  try_rod_ends(line, bodies, spaces.right, result);
  return result;
}

}  // namespace tackbench
