// A truck's solids and where they go.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <set>

#include "core/basics/units.h"
#include "core/mechanism/body_motion.h"
#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "core/scene/moving_bodies.h"
#include "core/scene/pick.h"
#include "core/scene/wandering_pose.h"
#include "tests/support/bench_truck.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

constexpr int kTrucks = 60;

Controls random_controls(std::mt19937_64& random) {
  std::uniform_real_distribution<double> part(-1.0, 1.0);
  Controls controls;
  controls.hand_wheel = 8.0 * part(random);
  controls.bump_left = 50.0 * part(random);
  controls.bump_right = 50.0 * part(random);
  controls.wind_up = 0.02 * part(random);
  controls.cab_shake = Vec3(8.0 * part(random), 5.0 * part(random), 12.0 * part(random));
  for (double& pedal : controls.pedals) pedal = 0.5 + 0.5 * part(random);
  return controls;
}

struct Posed {
  Mechanism mechanism;
  Scene scene;
  Pose pose;
  std::vector<SceneMotion> motions;
};

Posed posed_truck(const Mechanism& mechanism, const Controls& controls) {
  Posed made{mechanism, make_scene(mechanism), solved_pose(mechanism, controls), {}};
  pose_scene(made.scene, made.mechanism, made.pose, made.motions);
  return made;
}

template <class Check>
void at_random_poses(const Check& check) {
  int looked_at = 0;
  for (std::uint64_t seed = 1; seed <= kTrucks; ++seed) {
    const Result<Mechanism> mechanism = compile(random_truck(seed));
    if (!mechanism) continue;
    std::mt19937_64 random(seed);
    for (int i = 0; i < 4; ++i) {
      SCOPED_TRACE(testing::Message() << "truck " << seed << ", pose " << i);
      check(posed_truck(*mechanism, i == 0 ? Controls{} : random_controls(random)));
      ++looked_at;
    }
  }
  EXPECT_GT(looked_at, kTrucks);
}

Mechanism tender() {
  const Result<Project> project =
      read_project(std::string(TACKBENCH_SOURCE_FOLDER) +
                   "/sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack");
  return compiled(*project);
}

Vec3 moved(const SceneMotion& motion, const Vec3& mm) {
  return motion.turn * mm + motion.shift_mm;
}

TEST(Scene, MotionsAreRigidAndFinite) {
  at_random_poses([](const Posed& truck) {
    ASSERT_EQ(truck.motions.size(), truck.scene.bodies.size());
    for (const SceneMotion& motion : truck.motions) {
      ASSERT_TRUE(motion.turn.allFinite());
      ASSERT_TRUE(motion.shift_mm.allFinite());
      EXPECT_LT((motion.turn.transpose() * motion.turn - Mat3::Identity()).norm(), 1e-9);
      EXPECT_NEAR(motion.turn.determinant(), 1.0, 1e-9);
    }
  });
}

TEST(Scene, MeshesAreFiniteWithUnitNormals) {
  at_random_poses([](const Posed& truck) {
    for (const SceneBody& body : truck.scene.bodies) {
      for (const ScenePiece& piece : body.pieces) {
        for (const Mesh* mesh : {&piece.fine, &piece.coarse}) {
          ASSERT_FALSE(mesh->empty()) << piece.part;
          for (const Vec3& vertex : mesh->vertices) ASSERT_TRUE(vertex.allFinite()) << piece.part;
          for (const Vec3& normal : mesh->normals)
            ASSERT_NEAR(normal.norm(), 1.0, 1e-9) << piece.part;
        }
        EXPECT_GT(volume(piece.fine), 0.0) << piece.part;
        EXPECT_LE(piece.coarse.triangles.size(), piece.fine.triangles.size()) << piece.part;
      }
    }
  });
}

// With the controls where the truck is drawn nothing has moved: cab at rest, axle at ride height,
// pedals at rest. The box's centre and straight wheels need a link of the drawn length.
TEST(Scene, DrawnPoseMovesNothing) {
  const BenchTruck bench;
  const Mechanism mechanism = bench.mechanism();
  Controls controls;
  controls.hand_wheel = hand_wheel_from_arm(mechanism, 0.0);
  const Posed truck = posed_truck(mechanism, controls);
  for (std::size_t i = 0; i < truck.motions.size(); ++i) {
    const SceneBody& body = truck.scene.bodies[i];
    if (std::holds_alternative<TurnsWithBoxInput>(body.rider)) continue;
    for (const Vec3& vertex : body.pieces[0].coarse.vertices)
      EXPECT_LT((moved(truck.motions[i], vertex) - vertex).norm(), 1e-6) << body.pieces[0].part;
  }
}

// A link's ends follow from the loops that solve() closes; the scene only knows its two places.
TEST(Scene, LinksReachTheBallsOfThePose) {
  at_random_poses([](const Posed& truck) {
    if (truck.pose.outcome != Outcome::solved) return;
    const Steering& steering = *truck.mechanism.steering;
    int links = 0;
    for (std::size_t i = 0; i < truck.motions.size(); ++i) {
      const auto expect_ends = [&](const ScenePlace& from, const ScenePlace& to, double length,
                                   const Vec3& posed_from, const Vec3& posed_to) {
        const Vec3 along = (to.drawn_mm - from.drawn_mm).normalized();
        EXPECT_LT((moved(truck.motions[i], from.drawn_mm) - posed_from).norm(), 1e-6);
        EXPECT_LT((moved(truck.motions[i], from.drawn_mm + length * along) - posed_to).norm(),
                  1e-6);
        ++links;
      };
      const Rider& rider = truck.scene.bodies[i].rider;
      const std::string& part = truck.scene.bodies[i].pieces[0].part;
      const SteeringPose& pose = truck.pose.steering;
      if (const auto* link = std::get_if<SpinsOnStuds>(&rider))
        expect_ends(link->from, link->to, steering.drag_link.length, pose.drag_link.from_mm,
                    pose.drag_link.to_mm);
      if (const auto* link = std::get_if<Reaches>(&rider)) {
        if (part == "front_axle.tie_rod_length_mm")
          expect_ends(link->from, link->to, steering.tie_rod.length, pose.tie_rod.from_mm,
                      pose.tie_rod.to_mm);
        for (std::size_t k = 0; k < steering.relays.size(); ++k) {
          if (part == "steering_box.relays[" + std::to_string(k) + "]")
            expect_ends(link->from, link->to, steering.relays[k].from_arm.length,
                        pose.relays[k].link.from_mm, pose.relays[k].link.to_mm);
        }
      }
    }
    EXPECT_EQ(links, 2 + static_cast<int>(steering.relays.size()));
  });
}

// The housing at the arm's end is square to the link and in the plane of link and stud but for the
// spin that the pose chose.
TEST(Scene, DragLinkSpinsAsTheStudsWant) {
  at_random_poses([](const Posed& truck) {
    if (truck.pose.outcome != Outcome::solved) return;
    const Steering& steering = *truck.mechanism.steering;
    for (std::size_t i = 0; i < truck.motions.size(); ++i) {
      const auto* link = std::get_if<SpinsOnStuds>(&truck.scene.bodies[i].rider);
      if (link == nullptr) continue;
      const Vec3 drawn_along = (link->to.drawn_mm - link->from.drawn_mm).normalized();
      const Vec3 housing = truck.motions[i].turn * square_to(drawn_along, steering.arm_stud);
      const Vec3 stud =
          moved_from_drawn(truck.mechanism, truck.pose, link->from.body, link->from.index).turn *
          steering.arm_stud;
      EXPECT_NEAR(angle_between(housing, stud), truck.pose.ball_swing.arm_end, 1e-6);
    }
  });
}

TEST(Scene, YokesStaySquareAtEveryCross) {
  int crosses = 0;
  at_random_poses([&](const Posed& truck) {
    if (!truck.pose.shaft_line.closes) return;
    for (int i = 0; i < truck.pose.shaft_line.cross_count; ++i) {
      const DrawnCross& drawn = truck.mechanism.shaft_line->crosses[static_cast<std::size_t>(i)];
      const CrossPose& posed = truck.pose.shaft_line.crosses[static_cast<std::size_t>(i)];
      for (std::size_t k = 0; k < truck.motions.size(); ++k) {
        const auto* rider = std::get_if<TurnsWithCross>(&truck.scene.bodies[k].rider);
        if (rider == nullptr || rider->cross != i) continue;
        const SceneMotion& motion = truck.motions[k];
        EXPECT_LT((moved(motion, drawn.centre_mm) - posed.centre_mm).norm(), 1e-6);
        const auto turned_to = [&](const Vec3& from) -> Vec3 { return motion.turn * from; };
        if (rider->part == CrossPart::spider) {
          const Vec3 hand = turned_to(drawn.in_pin);
          const Vec3 road = turned_to(drawn.out_pin);
          EXPECT_NEAR(hand.dot(road), 0.0, 1e-9);
          EXPECT_NEAR(hand.dot(posed.in_direction), 0.0, 1e-9);
          EXPECT_NEAR(road.dot(posed.out_direction), 0.0, 1e-9);
          ++crosses;
        } else if (rider->part == CrossPart::hand_side) {
          EXPECT_LT((turned_to(drawn.in_pin) - posed.in_pin).norm(), 1e-6);
        } else {
          EXPECT_LT((turned_to(drawn.out_pin) - posed.out_pin).norm(), 1e-6);
        }
      }
    }
  });
  EXPECT_GT(crosses, 100);
}

// Eyes of a leaf spring keep their heights over the chassis and its pieces stay joined.
TEST(Scene, LeafSpringsBendWithTheAxle) {
  const Mechanism mechanism = tender();
  for (const double bump : {-60.0, 0.0, 65.0}) {
    Controls controls;
    controls.bump_left = controls.bump_right = bump;
    const Posed truck = posed_truck(mechanism, controls);
    for (const bool shackle : {false, true}) {
      const LeafDrawing leaf = leaf_drawing(*mechanism.suspension, Side::left, shackle);
      const Vec3 seat = moved(moved_from_drawn(mechanism, truck.pose, Body::axle), leaf.seat_mm);
      EXPECT_NEAR(seat.z() - leaf.seat_mm.z(), bump, 0.5);
      const Vec3 drawn_eye = (leaf_frame(leaf, leaf.seat_mm, 0.0, leaf.bend_at_ride, 1.0) *
                              Point<Chassis>{Vec3(0.0, 0.0, leaf.eye_offset)})
                                 .mm;
      int eyes = 0;
      for (std::size_t i = 0; i < truck.motions.size(); ++i) {
        if (!(truck.scene.bodies[i].rider == Rider(BendsWithLeaf{Side::left, shackle, 1.0})))
          continue;
        const Vec3 eye = moved(truck.motions[i], drawn_eye);
        EXPECT_NEAR(eye.z(), drawn_eye.z(), 1e-6);
        // The fixed eye stays where the chassis holds it.
        if (!shackle) {
          EXPECT_NEAR(eye.x(), drawn_eye.x(), 0.05);
        }
        ++eyes;
      }
      EXPECT_EQ(eyes, 1);
    }
  }
}

TEST(Scene, PedalRodsFollowPinAndPiston) {
  at_random_poses([](const Posed& truck) {
    if (truck.pose.outcome == Outcome::pedal_does_not_close) return;
    for (std::size_t i = 0; i < truck.motions.size(); ++i) {
      const auto* rod = std::get_if<Reaches>(&truck.scene.bodies[i].rider);
      if (rod == nullptr || rod->to.carrier != ScenePlace::Carrier::piston) continue;
      const Vec3 end = moved(truck.motions[i], rod->to.drawn_mm);
      const Vec3 pin =
          (truck.pose.chassis_from_cab *
           Point<Cab>{truck.pose.pedals[static_cast<std::size_t>(rod->to.index)].cylinder_pin_mm})
              .mm;
      EXPECT_LT((end - pin).norm(), 1e-6);
    }
  });
}

TEST(Scene, HandWheelTurnsByTheControls) {
  const Mechanism mechanism = tender();
  Controls controls;
  controls.hand_wheel = 1.2;
  const Posed truck = posed_truck(mechanism, controls);
  int wheels = 0;
  for (std::size_t i = 0; i < truck.motions.size(); ++i) {
    if (!std::holds_alternative<TurnsWithColumn>(truck.scene.bodies[i].rider)) continue;
    // Left for the driver, who looks along hand to road: left-handed about that axis.
    const Vec3 axis = mechanism.shaft_line->column_axis.along;
    const Vec3 mark = square_to(axis, Vec3::UnitZ());
    EXPECT_NEAR(angle_about(axis, mark, truck.motions[i].turn * mark), -1.2, 1e-9);
    ++wheels;
  }
  EXPECT_EQ(wheels, 1);
}

TEST(Scene, EveryPartOfTheTenderCanBeFound) {
  const Mechanism mechanism = tender();
  const Posed truck = posed_truck(mechanism, {});
  for (const char* part :
       {"steering_box", "steering_box.arm", "drag_link", "front_axle.tyre", "shapes.rails",
        "shaft_line.joints[1].centre_mm", "shaft_line.shafts[0]", "column.hand_wheel_centre_mm",
        "pedals.pedals[0]", "pedals.pedals[2].cable",
        "front_axle.left_knuckle.stops[0].tip_centre_mm", "shapes.shapes[8]",
        "front_axle.suspension.leaf", "shapes.stretch_pairs[0]", "driver.heel_point_mm"})
    EXPECT_FALSE(bounds_of_part(truck.scene, truck.motions, part).empty()) << part;
}

// Where they could be is shown of tyres, links and pads, and of nothing that stands; a line that
// wanders takes its own bodies along and no others.
TEST(Scene, WhatSweepsMovesAndWhatWandersIsTheLine) {
  const Mechanism mechanism = tender();
  Controls controls;
  controls.hand_wheel = 4.0;
  controls.bump_left = controls.bump_right = 30.0;
  controls.pedals.fill(0.8);
  const Posed truck = posed_truck(mechanism, controls);
  std::set<std::string> swept;
  for (std::size_t i = 0; i < truck.scene.bodies.size(); ++i) {
    const SceneBody& body = truck.scene.bodies[i];
    if (!sweeps(body.rider)) continue;
    EXPECT_FALSE(is_of_shaft_line(body.rider));
    EXPECT_GT((truck.motions[i].turn - Mat3::Identity()).norm() + truck.motions[i].shift_mm.norm(),
              1e-3)
        << body.pieces.front().part;
    for (const ScenePiece& piece : body.pieces) swept.insert(piece.part);
  }
  for (const char* part :
       {"front_axle.tyre", "drag_link", "front_axle.tie_rod_length_mm", "steering_box.arm",
        "pedals.pedals[0].pad_centre_mm", "pedals.pedals[1].pad_centre_mm"})
    EXPECT_TRUE(swept.contains(part)) << part;
  for (const char* part : {"shapes.rails", "steering_box", "front_axle", "column"})
    EXPECT_FALSE(swept.contains(part)) << part;

  std::vector<Vec3> shifts(static_cast<std::size_t>(truck.pose.shaft_line.cross_count),
                           Vec3(0.0, 6.0, 9.0));
  std::vector<SceneMotion> led;
  pose_scene(truck.scene, mechanism, wandered(mechanism, truck.pose, shifts, Vec3::Zero()), led);
  int of_line = 0;
  for (std::size_t i = 0; i < led.size(); ++i) {
    const bool moved_on =
        led[i].turn != truck.motions[i].turn || led[i].shift_mm != truck.motions[i].shift_mm;
    if (moved_on) {
      EXPECT_TRUE(is_of_shaft_line(truck.scene.bodies[i].rider));
    }
    of_line += moved_on ? 1 : 0;
  }
  EXPECT_GT(of_line, 3);
}

// Shared and separate vertices count; the window's frame rate hangs on it.
TEST(Scene, StaysSmallEnoughToTurnBySoftware) {
  const Scene scene = make_scene(tender());
  std::size_t fine = 0;
  std::size_t coarse = 0;
  for (const SceneBody& body : scene.bodies) {
    for (const ScenePiece& piece : body.pieces) {
      fine += piece.fine.triangles.size();
      coarse += piece.coarse.triangles.size();
    }
  }
  RecordProperty("bodies", static_cast<int>(scene.bodies.size()));
  RecordProperty("fine", static_cast<int>(fine));
  RecordProperty("coarse", static_cast<int>(coarse));
  EXPECT_LT(fine, 20000U);
  EXPECT_LT(coarse, 8000U);
}

TEST(Scene, WanderingPoseKeepsEveryJointSquare) {
  const Mechanism mechanism = tender();
  const Pose pose = solved_pose(mechanism, {});
  const std::vector<Vec3> shifts{Vec3::Zero(), Vec3(3.0, 12.0, -5.0), Vec3::Zero()};
  const Pose led = wandered(mechanism, pose, shifts, Vec3::Zero());
  for (std::size_t i = 0; i < 3; ++i) {
    const CrossPose& cross = led.shaft_line.crosses[i];
    EXPECT_LT((cross.centre_mm - pose.shaft_line.crosses[i].centre_mm - shifts[i]).norm(), 1e-9);
    EXPECT_NEAR(cross.in_pin.dot(cross.out_pin), 0.0, 1e-9);
    EXPECT_NEAR(cross.in_pin.dot(cross.in_direction), 0.0, 1e-9);
    EXPECT_NEAR(cross.out_pin.dot(cross.out_direction), 0.0, 1e-9);
  }
  // No shift, no change.
  const Pose same = wandered(mechanism, pose, {}, Vec3::Zero());
  for (std::size_t i = 0; i < 3; ++i)
    EXPECT_LT((same.shaft_line.crosses[i].out_pin - pose.shaft_line.crosses[i].out_pin).norm(),
              1e-9);
}

TEST(Scene, BareProjectHasNothingToShow) {
  const Scene scene = make_scene(compiled(Project{}));
  EXPECT_TRUE(scene.bodies.empty());
  EXPECT_TRUE(scene.bounds.empty());
}

}  // namespace
}  // namespace tackbench
