#include "core/project/field_path.h"

#include <gtest/gtest.h>

#include "core/basics/units.h"

namespace tackbench {
namespace {

Project sample() {
  Project project;
  auto link = std::make_shared<DragLinkStation>();
  link->given_length = 812.5;
  link->tube.emplace();
  project.drag_link = link;
  auto line = std::make_shared<ShaftLineStation>();
  line->supports.resize(2);
  line->supports[0].name = "lower eye";
  line->supports[1].name = "upper eye, v1.2";
  line->supports[1].eye = Vec3(1, 2, 3);
  project.shaft_line = line;
  auto axle = std::make_shared<FrontAxleStation>();
  axle->road.body_corners = {{Vec3(900, 1000, 0)}, {Vec3(900, -1000, 0)}};
  axle->right_knuckle.emplace();
  project.front_axle = axle;
  project.steering_box = std::make_shared<const SteeringBoxStation>();
  return project;
}

Project with(const Project& project, const char* path, const char* value) {
  const Result<Project> changed = with_field(project, path, value);
  if (!changed.ok()) {
    ADD_FAILURE() << one_line(changed.problems().front());
    return project;
  }
  return *changed;
}

std::string text_of(const Project& project, const char* path) {
  const Result<std::string> text = field_text(project, path);
  return text.ok() ? *text : one_line(text.problems().front());
}

std::string fault_of(const Project& project, const char* path, const char* value) {
  const Result<Project> changed = with_field(project, path, value);
  return changed.ok() ? "none" : one_line(changed.problems().front());
}

TEST(WithField, SetsNumbersInTheUnitOfTheMember) {
  const Project changed = with(sample(), "front_axle.left_knuckle.caster_deg", "4.5");
  EXPECT_DOUBLE_EQ(changed.front_axle->left_knuckle.caster, 4.5 * kPi / 180.0);
  EXPECT_EQ(text_of(changed, "front_axle.left_knuckle.caster_deg"), "4.5");
}

TEST(WithField, ChangesItsStationOnly) {
  const Project before = sample();
  const Project after = with(before, "drag_link.tube.wall_mm", "6");
  EXPECT_EQ(before.drag_link->tube->wall, 5.0);
  EXPECT_EQ(after.drag_link->tube->wall, 6.0);
  EXPECT_EQ(after.shaft_line, before.shaft_line);
  EXPECT_EQ(after.front_axle, before.front_axle);
}

TEST(WithField, FindsItemsByNumberAndByName) {
  EXPECT_EQ(
      with(sample(), "shaft_line.supports[1].eye_mm", "[4, 5, 6]").shaft_line->supports[1].eye,
      Vec3(4, 5, 6));
  EXPECT_EQ(with(sample(), "shaft_line.supports[upper eye, v1.2].eye_mm.y", "-7")
                .shaft_line->supports[1]
                .eye,
            Vec3(1, -7, 3));
  EXPECT_EQ(text_of(sample(), "shaft_line.supports[1].eye_mm"), "[1, 2, 3]");
  EXPECT_EQ(text_of(sample(), "front_axle.road.body_corners_mm[1].y"), "-1000");
}

TEST(WithField, SetsEveryKindOfField) {
  Project project = with(sample(), "steering_box.left_turns_arm", "clockwise");
  EXPECT_EQ(project.steering_box->left_turns_arm, TurnSense::clockwise);
  project = with(project, "steering_box.input_axis", "0, 3, -4");
  EXPECT_LT((project.steering_box->input_axis.along - Vec3(0, 0.6, -0.8)).norm(), 1e-15);
  project = with(project, "shaft_line.supports[0].collar", "true");
  EXPECT_TRUE(project.shaft_line->supports[0].collar);
  project = with(project, "drag_link.quantity", "3");
  EXPECT_EQ(project.drag_link->quantity, 3);
  project = with(project, "name", "the tender");
  EXPECT_EQ(project.name, "the tender");
  project = with(project, "notes", "\"in quotes\"");
  EXPECT_EQ(project.notes, "in quotes");
  project = with(project, "drag_link.arm_end.stud_axis", "[0, 0, 2]");
  EXPECT_EQ(project.drag_link->arm_end.stud_axis, Vec3(0, 0, 1));
}

TEST(WithField, NoneClearsWhatMayBeAbsent) {
  EXPECT_EQ(with(sample(), "drag_link.given_length_mm", "none").drag_link->given_length,
            std::nullopt);
  EXPECT_EQ(
      with(sample(), "front_axle.right_knuckle", "none").front_axle->right_knuckle.has_value(),
      false);
  EXPECT_EQ(with(sample(), "shaft_line", "none").shaft_line, nullptr);
  EXPECT_TRUE(with(sample(), "shaft_line.supports", "none").shaft_line->supports.empty());
  EXPECT_EQ(text_of(sample(), "pedals"), "none");
  EXPECT_EQ(fault_of(sample(), "drag_link.tube.wall_mm", "none"),
            "drag_link.tube.wall_mm: \"none\" is not a wall thickness; give 1 to 20");
}

TEST(WithField, SaysWhatIsWrong) {
  const Project project = sample();
  EXPECT_EQ(fault_of(project, "drag_link.tube.wall_mm", "-3"),
            "drag_link.tube.wall_mm: -3 is not a wall thickness; give 1 to 20");
  EXPECT_EQ(fault_of(project, "drag_link.tube.wall_mm", "nan"),
            "drag_link.tube.wall_mm: \"nan\" is not a wall thickness; give 1 to 20");
  EXPECT_EQ(fault_of(project, "drag_link.quantity", "1.5"),
            "drag_link.quantity: 1.5 is not a quantity; give a whole number from 1 to 1000");
  EXPECT_EQ(fault_of(project, "drag_link.knuckle", "middle"),
            "drag_link.knuckle: \"middle\" is not a knuckle that it drives; give left or right");
  EXPECT_EQ(fault_of(project, "steering_box.input_axis", "[0, 0, 0]"),
            "steering_box.input_axis: [0, 0, 0] is not an input axis; give three numbers [x, y, z] "
            "that are not all zero");
  EXPECT_EQ(fault_of(project, "drag_link.tube.wal_mm", "3"),
            "drag_link.tube.wal_mm: there is no such member; give one of outside_diameter_mm, "
            "wall_mm, yield_mpa");
  EXPECT_EQ(fault_of(project, "drag_link.tube", "3"),
            "drag_link.tube: this has members of its own; give one of outside_diameter_mm, "
            "wall_mm, yield_mpa");
  EXPECT_EQ(fault_of(project, "drag_link.tube.wall_mm.x", "3"),
            "drag_link.tube.wall_mm.x: wall_mm has no members; end the path there");
  EXPECT_EQ(fault_of(project, "shaft_line.supports[2].bore_mm", "3"),
            "shaft_line.supports[2].bore_mm: there is no support bearing 2; give 0 to 1 or a name");
  EXPECT_EQ(fault_of(project, "shaft_line.supports", "3"),
            "shaft_line.supports: this is a list of 2; name one item, as in supports[0]");
  EXPECT_EQ(fault_of(project, "shaft_line.supports[0].eye_mm.w", "3"),
            "shaft_line.supports[0].eye_mm.w: there is no such member; give x, y or z");
  EXPECT_EQ(fault_of(project, "drag_link.tube[0].wall_mm", "3"),
            "drag_link.tube[0].wall_mm: tube is no list; leave the square brackets out");
  EXPECT_EQ(fault_of(project, "driver.back_angle_deg", "10"),
            "driver.back_angle_deg: this project has no driver there; add the driver to the file "
            "first");
  for (const char* path : {"", ".", "drag_link.", "drag_link..tube", "shaft_line.supports[0",
                           "shaft_line.supports[0]x"}) {
    EXPECT_NE(fault_of(project, path, "1").find("this is no member path"), std::string::npos)
        << path;
  }
}

TEST(FieldWords, ReadLikeAnUndoEntry) {
  EXPECT_EQ(*field_words(sample(), "drag_link.tube.wall_mm"), "drag link, tube, wall thickness");
  EXPECT_EQ(*field_words(sample(), "shaft_line.supports[lower eye].eye_mm.x"),
            "shaft line, support bearing lower eye, centre of the eye x");
}

TEST(PointAt, IsThereForPointsOnly) {
  EXPECT_EQ(point_at(sample(), "shaft_line.supports[1].eye_mm"), Vec3(1, 2, 3));
  EXPECT_EQ(point_at(sample(), "shaft_line.supports[1].bore_mm"), std::nullopt);
  EXPECT_EQ(point_at(sample(), "steering_box.input_axis"), std::nullopt);
  EXPECT_EQ(point_at(sample(), "pedals.pedals[0].pivot_mm"), std::nullopt);
}

}  // namespace
}  // namespace tackbench
