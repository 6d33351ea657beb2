#include "core/drawing/truck_view.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <random>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "core/basics/units.h"
#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "core/project/field_walk.h"
#include "core/project/fields.h"
#include "core/project/grips.h"
#include "tests/drawing/drawn_extent.h"
#include "tests/support/mirror_image.h"
#include "tests/support/random_truck.h"

namespace tackbench {
namespace {

constexpr SheetView kViews[] = {SheetView::side, SheetView::front, SheetView::plan};
constexpr const char* kSamples[] = {"tender-as-first-tacked", "tender-sorted", "timber-wagon",
                                    "bare-start"};

Project sample(const std::string& name) {
  const auto folder = std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" / name;
  Result<Project> project = read_project(folder / (name + ".tack"));
  if (!project) throw std::runtime_error(one_line(project.problems().front()));
  return *project;
}

Mechanism compiled(const Project& project) {
  Result<Mechanism> mechanism = compile(project);
  if (!mechanism) throw std::runtime_error(one_line(mechanism.problems().front()));
  return *mechanism;
}

// Samples, then random trucks.
std::vector<Mechanism> trucks() {
  std::vector<Mechanism> made;
  for (const char* name : kSamples) made.push_back(compiled(sample(name)));
  for (std::uint64_t seed = 1; seed <= 40; ++seed) made.push_back(compiled(random_truck(seed)));
  return made;
}

// Far past what a truck can do, so that loops fail to close as well.
Controls wild_controls(std::mt19937_64& random) {
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  Controls controls;
  controls.hand_wheel = 25.0 * unit(random);
  controls.bump_left = 250.0 * unit(random);
  controls.bump_right = 250.0 * unit(random);
  controls.wind_up = 0.1 * unit(random);
  controls.cab_shake = 60.0 * Vec3(unit(random), unit(random), unit(random));
  for (double& pedal : controls.pedals) pedal = std::abs(unit(random));
  return controls;
}

bool finite(const ViewPoint& point) {
  return std::isfinite(point.x) && std::isfinite(point.y);
}

void expect_finite(const TruckView& view) {
  for (const DrawnLine& line : view.lines) {
    EXPECT_GE(line.through.size(), 2U) << line.part;
    for (const ViewPoint& point : line.through) EXPECT_TRUE(finite(point)) << line.part;
  }
  for (const DrawnRound& round : view.rounds) {
    EXPECT_TRUE(finite(round.centre)) << round.part;
    EXPECT_GT(round.radius, 0.0) << round.part;
  }
  for (const DrawnSymbol& symbol : view.symbols) {
    EXPECT_TRUE(finite(symbol.at)) << symbol.part;
    EXPECT_TRUE(std::isfinite(symbol.turn)) << symbol.part;
  }
  EXPECT_TRUE(finite(view.least));
  EXPECT_TRUE(finite(view.greatest));
  EXPECT_LE(view.least.x, view.greatest.x);
  EXPECT_LE(view.least.y, view.greatest.y);
}

TEST(TruckView, IsFiniteWhateverTheOutcome) {
  std::mt19937_64 random(11);
  std::set<Outcome> outcomes;
  for (const Mechanism& mechanism : trucks()) {
    for (int i = 0; i < 12; ++i) {
      const Pose pose = solved_pose(mechanism, wild_controls(random));
      outcomes.insert(pose.outcome);
      for (const SheetView view : kViews) {
        expect_finite(truck_view(mechanism, pose, view));
        expect_finite(ghost_view(mechanism, pose, view));
      }
    }
  }
  // It was tried with loops that close and with loops that do not.
  EXPECT_TRUE(outcomes.contains(Outcome::solved));
  EXPECT_TRUE(outcomes.contains(Outcome::not_compiled));
  EXPECT_GE(outcomes.size(), 4U);
}

TEST(TruckView, NothingMeasuredDrawsNothing) {
  const Mechanism mechanism = compiled(sample("bare-start"));
  for (const SheetView view : kViews) {
    const TruckView drawn = truck_view(mechanism, blank_pose(mechanism), view);
    EXPECT_TRUE(drawn.lines.empty());
    EXPECT_TRUE(drawn.symbols.empty());
    EXPECT_EQ(drawn.least.x, drawn.greatest.x);
  }
}

TEST(TruckView, ATruckWithoutAnyOneStationIsDrawn) {
  const Project whole = sample("tender-as-first-tacked");
  for (int left_out = 0; left_out < 9; ++left_out) {
    Project project = whole;
    if (left_out == 0) project.cab.reset();
    if (left_out == 1) project.column.reset();
    if (left_out == 2) project.shaft_line.reset();
    if (left_out == 3) project.steering_box.reset();
    if (left_out == 4) project.drag_link.reset();
    if (left_out == 5) project.front_axle.reset();
    if (left_out == 6) project.pedals.reset();
    if (left_out == 7) project.driver.reset();
    if (left_out == 8) project.shapes.reset();
    // Without the cab the shaft line may not fit; then there is nothing to draw.
    const Result<Mechanism> mechanism = compile(project);
    if (!mechanism) continue;
    Controls controls;
    controls.hand_wheel = 4.0;
    const Pose pose = solved_pose(*mechanism, controls);
    for (const SheetView view : kViews) {
      const TruckView drawn = truck_view(*mechanism, pose, view);
      expect_finite(drawn);
      EXPECT_GT(drawn.lines.size(), 20U);
    }
  }
}

// Every record, list item and member, by the table of fields.
class Places : public FieldWalk {
 public:
  explicit Places(Project project) {
    visit_fields(*this, project);
    for (const Grip& grip : grips(project)) all_.insert(grip.path);
  }
  bool has(const std::string& path) const { return all_.contains(path); }

  void number(const NumberField& field, double&) override { note(field); }
  void text(const TextField& field, std::string&) override { note(field); }
  void vector(const NumberField& field, Vec3&) override { note(field); }
  void optional_number(const NumberField& field, std::optional<double>&) override { note(field); }

 private:
  void note(const FieldLabel& field) {
    all_.insert(place());
    all_.insert(place_of(field));
  }

  std::set<std::string> all_;
};

TEST(TruckView, EveryPartIsAGripOrARecord) {
  for (const Mechanism& mechanism : trucks()) {
    const Places places(mechanism.project);
    const Pose pose = solved_pose(mechanism, {});
    for (const SheetView view : kViews) {
      const TruckView drawn = truck_view(mechanism, pose, view);
      const auto check = [&places](const std::string& part) {
        EXPECT_TRUE(part.empty() || places.has(part)) << part;
      };
      for (const DrawnLine& line : drawn.lines) check(line.part);
      for (const DrawnRound& round : drawn.rounds) check(round.part);
      for (const DrawnSymbol& symbol : drawn.symbols) check(symbol.part);
    }
  }
}

const DrawnSymbol* ball(const TruckView& view, const std::string& part) {
  for (const DrawnSymbol& symbol : view.symbols)
    if (symbol.symbol == JointSymbol::ball && symbol.part == part) return &symbol;
  return nullptr;
}

// The solver's own balls, which come from its loops and not from turned bodies.
TEST(TruckView, BallsStandWhereTheSolverPutsThem) {
  std::mt19937_64 random(5);
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  int compared = 0;
  for (const Mechanism& mechanism : trucks()) {
    for (int i = 0; i < 5; ++i) {
      Controls controls;
      controls.hand_wheel = 6.0 * unit(random);
      controls.bump_left = 50.0 * unit(random);
      controls.bump_right = 50.0 * unit(random);
      const Pose pose = solved_pose(mechanism, controls);
      if (pose.outcome != Outcome::solved) continue;
      std::vector<std::pair<std::string, std::string>> pairs{
          {"arm_ball", "steering_box.arm"}, {"steering_arm_ball", "drag_link.knuckle_ball_mm"}};
      for (std::size_t k = 0; k < mechanism.project.steering_box->relays.size(); ++k) {
        const std::string relay = "steering_box.relays[" + std::to_string(k) + "]";
        const std::string point = "relay_" + std::to_string(k + 1);
        pairs.emplace_back(point + "_input_ball", relay + ".input_ball_mm");
        pairs.emplace_back(point + "_output_ball", relay + ".output_ball_mm");
      }
      pairs.emplace_back("tie_rod_ball_left", "front_axle.left_knuckle.tie_rod_ball_mm");
      pairs.emplace_back("tie_rod_ball_right", "front_axle.right_knuckle.tie_rod_ball_mm");
      for (const SheetView view : kViews) {
        const TruckView drawn = truck_view(mechanism, pose, view);
        for (const NamedPoint& named : named_points(mechanism, pose)) {
          for (const auto& [point, part] : pairs) {
            if (point != named.name) continue;
            const DrawnSymbol* found = ball(drawn, part);
            ASSERT_NE(found, nullptr) << part;
            const ViewPoint wanted = seen(view, named.at_mm);
            EXPECT_NEAR(found->at.x, wanted.x, 1e-6) << part;
            EXPECT_NEAR(found->at.y, wanted.y, 1e-6) << part;
            ++compared;
          }
        }
      }
    }
  }
  EXPECT_GT(compared, 500);
}

bool is_tyre(const DrawnLine& line) {
  return line.ink == Ink::tyre;
}

// Upright and straight, a tyre is as wide and as high as its maker says, less what its load
// flattens.
TEST(TruckView, TyresAreTheirOwnSize) {
  Project project = sample("tender-as-first-tacked");
  FrontAxleStation axle = *project.front_axle;
  axle.toe = 0.0;
  axle.left_knuckle.camber = 0.0;
  if (axle.right_knuckle) axle.right_knuckle->camber = 0.0;
  project.front_axle = std::make_shared<const FrontAxleStation>(axle);
  const Mechanism mechanism = compiled(project);
  const Pose pose = solved_pose(mechanism, {});
  ASSERT_EQ(pose.outcome, Outcome::solved);
  ASSERT_NEAR(pose.steering.left.steer, 0.0, 1e-6);
  const Tyre& tyre = axle.tyre;

  const Extent side = extent_of(truck_view(mechanism, pose, SheetView::side), is_tyre);
  EXPECT_NEAR(side.width(), tyre.diameter, 0.01);
  EXPECT_NEAR(side.height(), tyre.diameter / 2.0 + tyre.loaded_radius, 0.01);

  const auto left_half = [](const DrawnLine& line) {
    return is_tyre(line) && line.through.front().x > 0.0;
  };
  const Extent front = extent_of(truck_view(mechanism, pose, SheetView::front), left_half);
  EXPECT_NEAR(front.width(), tyre.width, 0.01);
  EXPECT_NEAR(front.height(), tyre.diameter / 2.0 + tyre.loaded_radius, 0.01);
  EXPECT_NEAR(0.5 * (front.left + front.right), axle.track / 2.0 + axle.hub_offset, 0.01);

  const auto below = [](const DrawnLine& line) {
    return is_tyre(line) && line.through.front().y < 0.0;
  };
  const Extent plan = extent_of(truck_view(mechanism, pose, SheetView::plan), below);
  EXPECT_NEAR(plan.width(), tyre.diameter, 0.01);
  EXPECT_NEAR(plan.height(), tyre.width, 0.01);
}

// A truck and its mirror image with mirrored controls: the front views are mirror images, the side
// views of what lies on one side alone change sides.
TEST(TruckView, MirroredTruckHasAMirroredFrontView) {
  for (std::uint64_t seed = 1; seed <= 15; ++seed) {
    const Project project = random_truck(seed);
    const Mechanism here = compiled(project);
    const Mechanism there = compiled(mirror_image(project));
    Controls controls;
    controls.hand_wheel = 3.0;
    controls.bump_left = 25.0;
    controls.bump_right = -15.0;
    const Pose pose = solved_pose(here, controls);
    const Pose image = solved_pose(there, mirror_image(controls));
    if (pose.outcome != Outcome::solved || image.outcome != Outcome::solved) continue;
    const TruckView front = truck_view(here, pose, SheetView::front);
    const TruckView mirrored = truck_view(there, image, SheetView::front);
    for (const char* part : {"drag_link", "steering_box.arm", "front_axle.tyre", "steering_box",
                             "column.hand_wheel_centre_mm", "front_axle.tie_rod_length_mm"}) {
      const auto of_part = [part](const DrawnLine& line) { return line.part == part; };
      const Extent a = extent_of(front, of_part);
      const Extent b = extent_of(mirrored, of_part);
      ASSERT_TRUE(a.any() && b.any()) << part;
      // Outlines set their points a few degrees apart, not at mirrored places.
      constexpr double kApart = 0.5;
      EXPECT_NEAR(a.left, -b.right, kApart) << part << ", seed " << seed;
      EXPECT_NEAR(a.right, -b.left, kApart) << part << ", seed " << seed;
      EXPECT_NEAR(a.top, b.top, kApart) << part << ", seed " << seed;
      EXPECT_NEAR(a.bottom, b.bottom, kApart) << part << ", seed " << seed;
    }
  }
}

// The driver sees a left turn of the hand wheel as anticlockwise: a quarter turn brings the lower
// of its three spokes to the driver's right, which is to the left as one faces the truck.
TEST(TruckView, ALeftTurnBringsTheLowerSpokeToTheDriversRight) {
  const Mechanism mechanism = compiled(sample("tender-as-first-tacked"));
  Controls controls;
  controls.hand_wheel = kPi / 2.0;
  const Pose pose = solved_pose(mechanism, controls);
  const auto spokes = [](const DrawnLine& line) {
    return line.part == "column.hand_wheel_centre_mm" && line.filled;
  };
  const ColumnStation& column = *mechanism.project.column;
  const Vec3 hand = (mechanism.chassis_from_cab * column.hand_wheel_centre).mm;
  const double middle = seen(SheetView::front, hand).x;
  const double rim = column.hand_wheel_diameter / 2.0;
  const Extent turned = extent_of(truck_view(mechanism, pose, SheetView::front), spokes);
  EXPECT_LT(turned.left - middle, -0.85 * rim);
  EXPECT_LT(turned.right - middle, 0.65 * rim);
  const Extent straight =
      extent_of(truck_view(mechanism, solved_pose(mechanism, {}), SheetView::front), spokes);
  EXPECT_NEAR(straight.left - middle, middle - straight.right, 2.0);
}

TEST(GhostView, IsAllGhost) {
  const Mechanism mechanism = compiled(sample("tender-as-first-tacked"));
  const Pose pose = solved_pose(mechanism, {});
  for (const SheetView view : kViews) {
    const TruckView ghost = ghost_view(mechanism, pose, view);
    EXPECT_GT(ghost.lines.size(), 10U);
    EXPECT_TRUE(ghost.symbols.empty());
    for (const DrawnLine& line : ghost.lines) {
      EXPECT_EQ(line.ink, Ink::ghost) << line.part;
      EXPECT_FALSE(line.filled) << line.part;
    }
  }
}

}  // namespace
}  // namespace tackbench
