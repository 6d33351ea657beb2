#include "core/findings/limits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace tackbench {
namespace {

Project with_choice(LimitChoice choice) {
  LimitsStation station;
  station.choices.push_back(std::move(choice));
  Project project;
  project.limits = std::make_shared<const LimitsStation>(std::move(station));
  return project;
}

TEST(Limits, EveryShippedLimitHasASourceAndWordsAndItsOwnName) {
  std::set<std::string> names;
  ASSERT_GT(shipped_limits().size(), 30U);
  for (const ShippedLimit& each : shipped_limits()) {
    EXPECT_FALSE(each.limit.source.empty()) << each.limit.name;
    EXPECT_FALSE(each.about.empty()) << each.limit.name;
    EXPECT_TRUE(names.insert(each.limit.name).second) << each.limit.name << " twice";
  }
}

TEST(Limits, StandingAndSourceAreNotSaidTwice) {
  Limit limit;
  limit.standing = Standing::common_practice;
  limit.source = "common practice: two joints in a row at most";
  EXPECT_EQ(source_words(limit), limit.source);
  limit.source = "a supplier's page";
  EXPECT_EQ(source_words(limit), "common practice: a supplier's page");
  limit.standing = Standing::maker;
  limit.source = "the maker's sheet";
  EXPECT_EQ(source_words(limit), "the maker's sheet");
  limit.source.clear();
  EXPECT_EQ(source_words(limit), "maker's sheet");
}

// What only a maker or the builder knows has no default.
TEST(Limits, MakersAndBuildersLimitsHaveNoNumbers) {
  for (const ShippedLimit& each : shipped_limits()) {
    const bool open =
        each.limit.standing == Standing::maker || each.limit.standing == Standing::builder;
    if (!open) continue;
    EXPECT_FALSE(each.limit.least || each.limit.most || each.limit.least_inner ||
                 each.limit.most_inner)
        << each.limit.name;
  }
}

// Maryland COMAR 11.22.03.04: wheel travel from centre equal within 1/2 turn either way.
// Washington WAC 204-10-034: 2 to 6 turns lock to lock, each way within 32 ft of radius.
// (0.3048 m a foot exactly, ISO 80000-3.)
TEST(Limits, PublishedValues) {
  const Project project;
  const Limit balance = limit_for(project, "lock.turns_difference");
  EXPECT_DOUBLE_EQ(*balance.most, kPi);
  EXPECT_DOUBLE_EQ(*balance.least, -kPi);
  EXPECT_EQ(balance.standing, Standing::read);
  const Limit turns = limit_for(project, "lock.turns_total");
  EXPECT_DOUBLE_EQ(*turns.least, 4.0 * kPi);
  EXPECT_DOUBLE_EQ(*turns.most, 12.0 * kPi);
  EXPECT_DOUBLE_EQ(*limit_for(project, "lock.circle").most, 32.0 * 304.8);
}

// Common practice: a single joint at 20 degrees (1/cos b - cos b = 12.4 %) is past, at 15 (6.9 %)
// the caution starts; both computed from the joint's own formula.
TEST(Limits, RippleLimitsAreOneJointsAt15And20Degrees) {
  const Limit ripple = limit_for(Project{}, "shaft.ripple");
  const auto one_joint = [](double degrees) {
    const double c = std::cos(radians_from_degrees(degrees));
    return 1.0 / c - c;
  };
  EXPECT_NEAR(*ripple.most_inner, one_joint(15.0), 0.001);
  EXPECT_NEAR(*ripple.most, one_joint(20.0), 0.001);
  EXPECT_EQ(ripple.standing, Standing::common_practice);
}

TEST(Limits, AProjectsChoiceReplacesTheWholeLimit) {
  LimitChoice choice;
  choice.name = "shaft.ripple";
  choice.most = 5.0;  // %
  choice.source = "agreed with the certifier";
  const Limit limit = limit_for(with_choice(choice), "shaft.ripple");
  EXPECT_DOUBLE_EQ(*limit.most, 0.05);
  EXPECT_FALSE(limit.most_inner);
  EXPECT_EQ(limit.source, "agreed with the certifier");
  EXPECT_EQ(limit.standing, Standing::builder);
}

TEST(Limits, MakersValueStandsUnlessTheProjectChoosesAnother) {
  const OwnValue sheet{std::nullopt, radians_from_degrees(30.0), "maker's sheet", Standing::maker};
  const Limit own = limit_from(Project{}, "shaft.joint_angle", sheet);
  EXPECT_DOUBLE_EQ(*own.most, radians_from_degrees(30.0));
  EXPECT_EQ(own.standing, Standing::maker);
  LimitChoice choice;
  choice.name = "shaft.joint_angle";
  choice.most = 20.0;
  EXPECT_DOUBLE_EQ(*limit_from(with_choice(choice), "shaft.joint_angle", sheet).most,
                   radians_from_degrees(20.0));
  const Limit none = limit_from(Project{}, "shaft.joint_angle", {});
  EXPECT_FALSE(none.most);
  EXPECT_EQ(no_limit_words(none),
            "take the limit from the maker's sheet: fill in angle_limit_deg of the joint");
}

TEST(Limits, WhatIsMissingNamesTheMemberToFillIn) {
  const Project project;
  EXPECT_EQ(no_limit_words(limit_for(project, "link.swing.arm_end")),
            "take the limit from the maker's sheet: fill in drag_link.arm_end.swing_limit_deg");
  EXPECT_EQ(no_limit_words(limit_for(project, "shaft.couple")),
            "take the limit from the maker's sheet: choose shaft.couple in the project's limits");
  EXPECT_EQ(no_limit_words(limit_for(project, "lock.ratio")),
            "no limit given: choose lock.ratio in the project's limits");
}

// A truck that steers the wrong way does so whatever its project chooses.
TEST(Limits, FactsAreNoMatterOfChoice) {
  std::set<std::string> fixed;
  for (const ShippedLimit& each : shipped_limits()) {
    if (!each.fixed) continue;
    fixed.insert(each.limit.name);
    LimitChoice choice;
    choice.name = each.limit.name;
    choice.least = -1e6;
    choice.most = 1e6;
    const Project project = with_choice(choice);
    const Problems problems = check_limit_choices(project);
    ASSERT_EQ(problems.size(), 1U) << each.limit.name;
    EXPECT_EQ(problems[0].place, "limits.choices[0]");
    EXPECT_NE(problems[0].found.find(each.limit.name), std::string::npos);
    EXPECT_NE(problems[0].wanted.find("take this choice out"), std::string::npos);
    const Limit limit = limit_for(project, each.limit.name);
    EXPECT_EQ(limit.least, each.limit.least) << each.limit.name;
    EXPECT_EQ(limit.most, each.limit.most) << each.limit.name;
    EXPECT_FALSE(limit.chosen);
    const OwnValue own{3.0, std::nullopt, "maker's sheet", Standing::maker};
    EXPECT_DOUBLE_EQ(*limit_from(project, each.limit.name, own).least, 3.0) << each.limit.name;
  }
  for (const char* name :
       {"steering.direction", "shaft.wander", "pedal.full_stroke", "shaft.insertion",
        "shaft.shake_fit", "lock.stop_on_pad", "lock.hard_end", "lock.stop_bolt"})
    EXPECT_TRUE(fixed.contains(name)) << name;
  EXPECT_FALSE(fixed.contains("shaft.ripple"));
}

TEST(Limits, TheStopsMarginMayOnlyBeMadeStricter) {
  LimitChoice choice;
  choice.name = "lock.stop_first";
  choice.least = -5.0;
  EXPECT_EQ(check_limit_choices(with_choice(choice)).size(), 1U);
  Limit limit = limit_for(with_choice(choice), "lock.stop_first");
  EXPECT_DOUBLE_EQ(*limit.least, 0.0);
  choice.least.reset();
  choice.least_inner = 0.2;
  EXPECT_EQ(check_limit_choices(with_choice(choice)).size(), 1U);
  choice.least_inner = 2.0;
  EXPECT_TRUE(check_limit_choices(with_choice(choice)).empty());
  limit = limit_for(with_choice(choice), "lock.stop_first");
  EXPECT_DOUBLE_EQ(*limit.least, 0.0);  // a choice of the inner value alone keeps the hard one
  EXPECT_DOUBLE_EQ(*limit.least_inner, radians_from_degrees(2.0));
  EXPECT_TRUE(limit.chosen);
}

TEST(Limits, AChoiceWithoutValuesIsRefused) {
  LimitChoice choice;
  choice.name = "shaft.ripple";
  const Problems problems = check_limit_choices(with_choice(choice));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems[0].found.find("nothing would be judged"), std::string::npos);
}

// The text that a choice names does not make it a published limit of ours.
TEST(Limits, AChoiceIsShownAsOne) {
  LimitChoice choice;
  choice.name = "shaft.ripple";
  choice.most = 9.0;
  const auto words = [&] { return source_words(limit_for(with_choice(choice), "shaft.ripple")); };
  EXPECT_EQ(words(), "builder's choice");
  choice.standing = Standing::maker;
  EXPECT_EQ(words(), "maker's sheet");
  choice.source = "the county's rules";
  choice.standing = Standing::read;
  EXPECT_EQ(words(), "builder's choice, read in the source: the county's rules");
  EXPECT_TRUE(limit_for(with_choice(choice), "shaft.ripple").chosen);
  EXPECT_FALSE(limit_for(Project{}, "shaft.ripple").chosen);
}

TEST(Limits, ChoicesThatNameNothingOrStandInTheWrongOrderAreReported) {
  LimitChoice unknown;
  unknown.name = "shaft.rippel";
  unknown.most = 5.0;
  const Problems problems = check_limit_choices(with_choice(unknown));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].place, "limits.choices[0].name");
  EXPECT_NE(problems[0].found.find("shaft.rippel"), std::string::npos);
  LimitChoice crossed;
  crossed.name = "lock.turns_total";
  crossed.least = 6.0;
  crossed.most = 2.0;
  EXPECT_EQ(check_limit_choices(with_choice(crossed)).size(), 1U);
  EXPECT_TRUE(check_limit_choices(Project{}).empty());
}

TEST(Limits, Words) {
  const Project project;
  EXPECT_EQ(limit_words(limit_for(project, "shaft.ripple"), ShownUnit::millimetre),
            "at most 12.5 %");
  EXPECT_EQ(limit_words(limit_for(project, "lock.turns_total"), ShownUnit::millimetre),
            "2.00 to 6.00 turns");
  EXPECT_EQ(limit_words(limit_for(project, "lock.turns_difference"), ShownUnit::millimetre),
            "at most 0.50 turns either way");
  EXPECT_EQ(limit_words(limit_for(project, "pedal.floor_gap"), ShownUnit::inch_fraction),
            "at least ~1 in");
  EXPECT_EQ(limit_words(limit_for(project, "nowhere"), ShownUnit::millimetre), "no limit given");
}

}  // namespace
}  // namespace tackbench
