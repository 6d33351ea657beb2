// Published and computed values of the universal joint and of chains of them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/basics/root.h"
#include "core/basics/units.h"
#include "core/checks/shaft_ripple.h"
#include "core/mechanism/shaft_line.h"
#include "tests/support/shaft_line_plan.h"

namespace tackbench::test {
namespace {

constexpr double kDegree = kRadiansPerDegree;

// First yoke's pin in the plane of the first bend, or square to it: the bend goes down, the pin
// points up at clocking 0.
enum class Pin { in_plane, square };

ShaftLine chain(const std::vector<double>& bends, const std::vector<double>& planes,
                const std::vector<double>& forks = {}, Pin pin = Pin::in_plane) {
  ShaftPlan plan = bent_chain(bends, planes);
  for (std::size_t i = 0; i < forks.size(); ++i) {
    plan.shafts[i].fork_offset = forks[i] * kDegree;
  }
  plan.first_yoke_clocking = pin == Pin::in_plane ? 0.0 : 0.5 * kPi;
  return line_of(plan);
}

ShaftLinePose posed(const ShaftLine& line, double hand_wheel) {
  ShaftLinePose pose;
  pose_shaft_line(line, line.cab_as_drawn, hand_wheel, pose);
  return pose;
}

// Half the span of the lead: the tables' +/- figure.
double half_lead_deg(const LineRipple& ripple) {
  return 0.5 * (ripple.most_ahead + ripple.most_behind) / kDegree;
}

// A textbook problem quoted on two question-and-answer sites gives 532.1 and 469.85 rpm.
TEST(UniversalJointReference, OneJointAtTwentyDegrees) {
  const LineRipple ripple = line_ripple(chain({20}, {0}));
  EXPECT_NEAR(500 * ripple.most_rate, 532.09, 0.01);
  EXPECT_NEAR(500 * ripple.least_rate, 469.85, 0.01);
}

// The same source, forks of the shaft between at right angles: 566.25 and 441.5 rpm.
TEST(UniversalJointReference, TwoJointsWithForksAtRightAngles) {
  const LineRipple ripple = line_ripple(chain({20, 20}, {0, 180}, {90}));
  EXPECT_NEAR(500 * ripple.most_rate, 566.24, 0.01);
  EXPECT_NEAR(500 * ripple.least_rate, 441.51, 0.01);
}

// Textbook problem: 100 rpm of fluctuation on 1200 rpm; speeds 1251.04 and 1151.04 are published,
// the angle there is rounded to 16.2 and is 16.4229 from 1/cos b - cos b = 100/1200.
TEST(UniversalJointReference, AngleForAGivenFluctuation) {
  const auto root =
      find_root([](double b) { return fluctuation(b) - 100.0 / 1200.0; }, 0.0, 1.0, 1e-14);
  ASSERT_TRUE(root);
  EXPECT_NEAR(root->at / kDegree, 16.4229, 1e-3);
  const LineRipple ripple = line_ripple(chain({root->at / kDegree}, {0}));
  EXPECT_NEAR(1200 * ripple.most_rate, 1251.04, 0.01);
  EXPECT_NEAR(1200 * ripple.least_rate, 1151.04, 0.01);
}

// Remembered textbook problem, solved again: +/- 6 per cent is 1/cos b - cos b = 0.12.
TEST(UniversalJointReference, AngleForSixPercent) {
  const auto root = find_root([](double b) { return fluctuation(b) - 0.12; }, 0.0, 1.0, 1e-14);
  ASSERT_TRUE(root);
  EXPECT_NEAR(root->at / kDegree, 19.6442, 1e-3);
  EXPECT_NEAR(line_ripple(chain({19.6442}, {0})).ripple, 0.12, 1e-5);
}

// Published problem (25 degrees, 100 rad/s), computed answer.
TEST(UniversalJointReference, SpeedsAtTwentyFiveDegrees) {
  const LineRipple ripple = line_ripple(chain({25}, {0}));
  EXPECT_NEAR(100 * ripple.most_rate, 110.338, 1e-3);
  EXPECT_NEAR(100 * ripple.least_rate, 90.631, 1e-3);
}

// Remembered textbook problem, solved again: the speeds are equal 44.2813 degrees from the place of
// greatest speed (tan th = sqrt(cos b)).
TEST(UniversalJointReference, PlaceOfEqualSpeed) {
  const ShaftLine line = chain({18}, {0});
  const auto root =
      find_root([&](double at) { return posed(line, at).box_rate - 1.0; }, 0.0, 0.5 * kPi, 1e-13);
  ASSERT_TRUE(root);
  EXPECT_NEAR(root->at / kDegree, 44.2813, 1e-3);
}

struct TurnRow {
  double in_deg;
  double out_deg;
  double ratio;  // 0: not in the table
};

// Computed from tan th2 = tan th1 / cos b (Theory of Machines texts), pin in the bend plane at 0.
TEST(UniversalJointReference, TurnsWithThePinInTheBendPlane) {
  const ShaftLine line = chain({30}, {0});
  for (const TurnRow& row : {TurnRow{15, 17.192124, 1.129480}, TurnRow{30, 33.690068, 1.065877},
                             TurnRow{45, 49.106605, 0.989743}, TurnRow{60, 63.434949, 0.923760},
                             TurnRow{75, 76.935687, 0.880776}}) {
    EXPECT_NEAR(posed(line, row.in_deg * kDegree).box_turn / kDegree, row.out_deg, 1e-6);
    EXPECT_NEAR(posed(line, -row.in_deg * kDegree).box_turn / kDegree, -row.out_deg, 1e-6);
    EXPECT_NEAR(posed(line, row.in_deg * kDegree).box_rate, row.ratio, 1e-6);
  }
}

// The other zero: tan th2 = tan th1 cos b, pin square to the bend plane at 0.
TEST(UniversalJointReference, TurnsWithThePinSquareToTheBendPlane) {
  const ShaftLine line = chain({30}, {0}, {}, Pin::square);
  for (const TurnRow& row :
       {TurnRow{15, 13.064313, 0}, TurnRow{30, 26.565051, 0}, TurnRow{45, 40.893395, 0},
        TurnRow{60, 56.309932, 0}, TurnRow{75, 72.807876, 0}}) {
    EXPECT_NEAR(posed(line, row.in_deg * kDegree).box_turn / kDegree, row.out_deg, 1e-6);
  }
}

// Remembered textbook problem, solved again (the book rounds to 3090 rad/s2 and 371 N m): 20
// degrees, 1500 rpm, 0.12 kg m2.
TEST(UniversalJointReference, GreatestAcceleration) {
  const ShaftLine line = chain({20}, {0});
  const double speed = 1500.0 * kRadiansPerTurn / 60.0;
  double most = 0.0;
  double at_deg = 0.0;
  constexpr double kHalf = 1e-5;
  for (double deg = 30.0; deg < 60.0; deg += 0.01) {
    const double slope = (posed(line, deg * kDegree + kHalf).box_rate -
                          posed(line, deg * kDegree - kHalf).box_rate) /
                         (2.0 * kHalf);
    if (-slope * speed * speed > most) {
      most = -slope * speed * speed;
      at_deg = deg;
    }
  }
  EXPECT_NEAR(most, 3083.4, 0.1);
  EXPECT_NEAR(at_deg, 41.46, 0.02);
  EXPECT_NEAR(0.12 * most, 370.0, 0.1);
}

// Computed by a three-dimensional vector model; the principle is published (Fischer and Paul, ASME
// Journal of Mechanical Design, double-Cardan-joint driveline).
TEST(UniversalJointReference, BendPlanesAtRightAngles) {
  const LineRipple right = line_ripple(chain({30, 30}, {0, 90}, {90}));
  EXPECT_NEAR(right.least_rate, 1.0, 1e-12);
  EXPECT_NEAR(right.most_rate, 1.0, 1e-12);
  const LineRipple wrong = line_ripple(chain({30, 30}, {0, 90}, {0}));
  EXPECT_NEAR(wrong.least_rate, 0.7500, 1e-6);
  EXPECT_NEAR(wrong.most_rate, 1.3333333, 1e-6);
  // The angle between the outer shafts is 41.4096 degrees there.
  const ShaftLine line = chain({30, 30}, {0, 90}, {90});
  EXPECT_NEAR(angle_between(line.column_axis.along, line.box_input_axis.along) / kDegree, 41.4096,
              1e-4);
}

// Computed: cos 30 / cos 20 and its inverse.
TEST(UniversalJointReference, UnequalBendsInOnePlane) {
  const LineRipple ripple = line_ripple(chain({30, 20}, {0, 0}, {0}));
  EXPECT_NEAR(ripple.least_rate, 0.921605, 1e-6);
  EXPECT_NEAR(ripple.most_rate, 1.085063, 1e-6);
  EXPECT_NEAR(half_lead_deg(ripple), 2.338, 1e-3);
}

struct BendRow {
  double bend;
  double least;
  double most;
  double fluctuation;
  double lead_deg;
};

// Computed from min = cos b, max = 1/cos b, lead = asin(tan^2(b/2)).
TEST(UniversalJointReference, TableOfBends) {
  for (const BendRow& row : {BendRow{5, 0.996195, 1.003820, 0.007625, 0.1092},
                             BendRow{10, 0.984808, 1.015427, 0.030619, 0.4386},
                             BendRow{15, 0.965926, 1.035276, 0.069350, 0.9931},
                             BendRow{20, 0.939693, 1.064178, 0.124485, 1.7817},
                             BendRow{25, 0.906308, 1.103378, 0.197070, 2.8171},
                             BendRow{30, 0.866025, 1.154701, 0.288675, 4.1172},
                             BendRow{35, 0.819152, 1.220775, 0.401623, 5.7054},
                             BendRow{40, 0.766044, 1.305407, 0.539363, 7.6126},
                             BendRow{45, 0.707107, 1.414214, 0.707107, 9.8793}}) {
    const LineRipple ripple = line_ripple(chain({row.bend}, {0}));
    EXPECT_NEAR(ripple.least_rate, row.least, 1e-6) << row.bend;
    EXPECT_NEAR(ripple.most_rate, row.most, 1e-6) << row.bend;
    EXPECT_NEAR(ripple.ripple, row.fluctuation, 1e-6) << row.bend;
    EXPECT_NEAR(ripple.most_ahead / kDegree, row.lead_deg, 1e-4) << row.bend;
    EXPECT_NEAR(ripple.most_behind / kDegree, row.lead_deg, 1e-4) << row.bend;
    EXPECT_NEAR(greatest_lead(row.bend * kDegree) / kDegree, row.lead_deg, 1e-4) << row.bend;
    EXPECT_NEAR(fluctuation(row.bend * kDegree), row.fluctuation, 1e-6) << row.bend;
  }
}

struct PhaseRow {
  double error_deg;
  double least;
  double most;
  double lead_deg;
};

// Computed: 25/25 joints in one plane, forks out of phase.
TEST(UniversalJointReference, TableOfPhaseErrors) {
  for (const PhaseRow& row :
       {PhaseRow{10, 0.96636, 1.03481, 0.980}, PhaseRow{20, 0.93483, 1.06971, 1.930},
        PhaseRow{30, 0.90620, 1.10351, 2.821}, PhaseRow{45, 0.87002, 1.14940, 3.986},
        PhaseRow{90, 0.82139, 1.21744, 5.628}}) {
    const LineRipple ripple = line_ripple(chain({25, 25}, {0, 0}, {row.error_deg}));
    EXPECT_NEAR(ripple.least_rate, row.least, 1e-5) << row.error_deg;
    EXPECT_NEAR(ripple.most_rate, row.most, 1e-5) << row.error_deg;
    EXPECT_NEAR(half_lead_deg(ripple), row.lead_deg, 1e-3) << row.error_deg;
  }
}

struct SpatialRow {
  double first;
  double second;
  double planes;
  double offset;
  double least;
  double most;
  double lead_deg;
};

// Computed by a three-dimensional vector model: bend planes apart.
TEST(UniversalJointReference, TableOfBendPlanesApart) {
  for (const SpatialRow& row : {SpatialRow{20, 30, 40, 40, 0.921605, 1.085063, 2.338},
                                SpatialRow{20, 30, 40, 0, 0.863680, 1.157836, 4.195},
                                SpatialRow{25, 15, 60, 60, 0.938279, 1.065781, 1.825},
                                SpatialRow{25, 15, 60, 0, 0.887316, 1.126994, 3.423}}) {
    const LineRipple ripple =
        line_ripple(chain({row.first, row.second}, {0, row.planes}, {row.offset}));
    EXPECT_NEAR(ripple.least_rate, row.least, 1e-6);
    EXPECT_NEAR(ripple.most_rate, row.most, 1e-6);
    EXPECT_NEAR(half_lead_deg(ripple), row.lead_deg, 1e-3);
  }
}

// Computed: 30/20/22 in one plane; the phasors q = tan^2(b/2) add with alternating sign.
TEST(UniversalJointReference, ThreeJointsInOnePlane) {
  struct Row {
    double first;
    double second;
    double lead_deg;
    double tolerance;
  };
  for (const Row& row : {Row{0, 0, 4.50, 0.006}, Row{0, 90, 0.173, 0.0006}, Row{90, 0, 3.73, 0.006},
                         Row{90, 90, 8.04, 0.006}}) {
    const LineRipple ripple = line_ripple(chain({30, 20, 22}, {0, 0, 0}, {row.first, row.second}));
    EXPECT_NEAR(half_lead_deg(ripple), row.lead_deg, row.tolerance) << row.first << row.second;
  }
  const LineRipple best = line_ripple(chain({30, 20, 22}, {0, 0, 0}, {0, 90}));
  EXPECT_NEAR(best.least_rate, 0.9940, 5e-5);
  EXPECT_NEAR(best.most_rate, 1.0061, 5e-5);
}

// Residual of two joints: q = sqrt(q1^2 + q2^2 - 2 q1 q2 cos 2g), lead about +/- q rad; computed,
// agrees with the three-dimensional model within 0.3 per cent (1 per cent asked here, since the
// series is cut after q).
TEST(UniversalJointReference, ResidualOfTwoJoints) {
  for (const double first : {15.0, 20.0, 25.0}) {
    for (const double second : {10.0, 20.0, 25.0}) {
      for (const double error : {15.0, 40.0, 65.0, 90.0}) {
        const double q1 = std::pow(std::tan(0.5 * first * kDegree), 2);
        const double q2 = std::pow(std::tan(0.5 * second * kDegree), 2);
        const double q =
            std::sqrt(q1 * q1 + q2 * q2 - 2.0 * q1 * q2 * std::cos(2.0 * error * kDegree));
        const LineRipple ripple = line_ripple(chain({first, second}, {0, 0}, {error}));
        EXPECT_NEAR(half_lead_deg(ripple) * kDegree, q, 0.01 * q)
            << first << " " << second << " " << error;
      }
    }
  }
}

}  // namespace
}  // namespace tackbench::test
