#include "core/basics/units.h"
#include "core/basics/member_name.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tackbench {
namespace {

constexpr Unit kEvery[] = {
    Unit::number,  Unit::millimetre,       Unit::degree,        Unit::turn,
    Unit::percent, Unit::newton,           Unit::newton_metre,  Unit::kilogram,
    Unit::count,   Unit::degree_per_25_mm, Unit::degree_per_mm, Unit::megapascal};

// SI Brochure, 9th edition, table 8: 1 degree = (pi/180) rad; a turn is 2 pi rad.
TEST(Units, AnglesAreRadiansInside) {
  EXPECT_NEAR(inside_from_shown(Unit::degree, 180.0), 3.14159265358979323846, 1e-15);
  EXPECT_NEAR(inside_from_shown(Unit::turn, 0.5), 3.14159265358979323846, 1e-15);
  EXPECT_NEAR(shown_from_inside(Unit::degree, 1.0), 57.29577951308232, 1e-13);
}

// SI: 1 N m = 1000 N mm; a percentage is a hundredth.
TEST(Units, MomentsAreNewtonMillimetresInside) {
  EXPECT_DOUBLE_EQ(inside_from_shown(Unit::newton_metre, 2.0), 2000.0);
  EXPECT_DOUBLE_EQ(inside_from_shown(Unit::percent, 50.0), 0.5);
}

TEST(Units, ShownAndInsideUndoEachOther) {
  for (const Unit unit : kEvery)
    EXPECT_NEAR(shown_from_inside(unit, inside_from_shown(unit, 12.375)), 12.375, 1e-12);
}

TEST(Units, MemberSuffixesTellUnitsApart) {
  std::set<std::string> seen;
  for (const Unit unit : kEvery) {
    const std::string suffix = member_suffix(unit);
    if (suffix.empty()) {
      EXPECT_TRUE(unit == Unit::number || unit == Unit::count);
      continue;
    }
    EXPECT_EQ(suffix[0], '_');
    EXPECT_TRUE(seen.insert(suffix).second) << suffix << " stands for two units";
  }
}

TEST(Units, AMemberNameSaysItsUnitOnce) {
  EXPECT_EQ(member_name("steer_left", Unit::degree), "steer_left_deg");
  EXPECT_EQ(member_name("turns", Unit::turn), "turns");
  EXPECT_EQ(member_name("ratio", Unit::number), "ratio");
}

}  // namespace
}  // namespace tackbench
