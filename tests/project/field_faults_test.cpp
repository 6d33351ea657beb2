#include "core/project/field_faults.h"

#include <gtest/gtest.h>

#include <limits>

namespace tackbench {
namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

TEST(NumberFault, BothEndsOfTheRangeAreAllowed) {
  constexpr NumberField field = mm("wall_mm", 1, 20, "wall thickness");
  EXPECT_FALSE(number_fault(field, "", 1.0));
  EXPECT_FALSE(number_fault(field, "", 20.0));
  for (const double bad : {0.999999, 20.000001, -3.0, kNaN, kInfinity, -kInfinity}) {
    EXPECT_TRUE(number_fault(field, "", bad)) << bad;
  }
}

TEST(VectorFault, EachCoordinateCounts) {
  constexpr NumberField field = place("eye_mm", "centre of the eye");
  EXPECT_FALSE(vector_fault(field, "", Vec3(1, -20000, 20000)));
  for (int i = 0; i < 3; ++i) {
    for (const double bad : {20001.0, -20001.0, kNaN, kInfinity}) {
      Vec3 value = Vec3::Zero();
      value[i] = bad;
      EXPECT_TRUE(vector_fault(field, "", value)) << i << ": " << bad;
    }
  }
}

TEST(DirectionFault, NeedsALength) {
  constexpr FieldLabel field = label("axis", "axis");
  EXPECT_FALSE(direction_fault(field, "", Vec3(0, 0, 2)));
  EXPECT_TRUE(direction_fault(field, "", Vec3(0, 0, 0)));
  EXPECT_TRUE(direction_fault(field, "", Vec3(0, 1e-9, 0)));
  EXPECT_TRUE(direction_fault(field, "", Vec3(kNaN, 0, 1)));
  EXPECT_TRUE(direction_fault(field, "", Vec3(1e300, 1e300, 0)));
}

TEST(UnitDirection, IsUnitAndLeavesUnitOnesAlone) {
  EXPECT_LT((unit_direction(Vec3(0, 3, -4)) - Vec3(0, 0.6, -0.8)).norm(), 1e-15);
  const Vec3 written(0.26726124191242, 0.53452248382485, 0.80178372573727);  // 14 digits
  EXPECT_EQ(unit_direction(written), written);
}

TEST(TextFault, KnowsItsKinds) {
  const TextField name = name_field();
  EXPECT_FALSE(text_fault(name, "", "upper eye, v1.2"));
  for (const char* bad : {"", "a[0]", "]", "\xFF"}) EXPECT_TRUE(text_fault(name, "", bad)) << bad;
  const TextField path{{"path", "path"}, TextKind::relative_path};
  for (const char* good : {"", "scans/../frame.ply"}) EXPECT_FALSE(text_fault(path, "", good));
  for (const char* bad : {"/frame.ply", R"(\\host\frame.ply)", "C:/frame.ply"}) {
    EXPECT_TRUE(text_fault(path, "", bad)) << bad;
  }
  const TextField sum{{"sha256", "checksum"}, TextKind::sha256};
  for (const auto& good : {std::string(), std::string(64, 'a')})
    EXPECT_FALSE(text_fault(sum, "", good));
  for (const auto& bad : {std::string(63, 'a'), std::string(65, 'a'), std::string(64, 'g')}) {
    EXPECT_TRUE(text_fault(sum, "", bad)) << bad;
  }
}

}  // namespace
}  // namespace tackbench
