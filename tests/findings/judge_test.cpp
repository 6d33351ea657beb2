#include <gtest/gtest.h>

#include <limits>

#include "core/findings/finding.h"

namespace tackbench {
namespace {

Limit limit_of(std::optional<double> least, std::optional<double> most,
               std::optional<double> least_inner = {}, std::optional<double> most_inner = {}) {
  Limit limit;
  limit.least = least;
  limit.most = most;
  limit.least_inner = least_inner;
  limit.most_inner = most_inner;
  return limit;
}

TEST(Judge, TheLimitItselfIsNotPast) {
  const Limit limit = limit_of(2.0, 6.0);
  EXPECT_EQ(judge(2.0, limit), Verdict::within);
  EXPECT_EQ(judge(6.0, limit), Verdict::within);
  EXPECT_EQ(judge(std::nextafter(2.0, 0.0), limit), Verdict::past);
  EXPECT_EQ(judge(std::nextafter(6.0, 9.0), limit), Verdict::past);
}

TEST(Judge, CloseIsBeyondTheInnerValueOnly) {
  const Limit limit = limit_of(-0.5, 0.5, -0.25, 0.25);
  EXPECT_EQ(judge(0.25, limit), Verdict::within);
  EXPECT_EQ(judge(std::nextafter(0.25, 1.0), limit), Verdict::close);
  EXPECT_EQ(judge(0.5, limit), Verdict::close);
  EXPECT_EQ(judge(-0.3, limit), Verdict::close);
  EXPECT_EQ(judge(-0.51, limit), Verdict::past);
}

TEST(Judge, WithoutAnInnerValueNothingIsClose) {
  const Limit limit = limit_of({}, 10.0);
  EXPECT_EQ(judge(9.999999, limit), Verdict::within);
  EXPECT_EQ(judge(10.000001, limit), Verdict::past);
  EXPECT_EQ(judge(-1e9, limit), Verdict::within);
}

TEST(Judge, WithoutALimitOrANumberNothingIsJudged) {
  EXPECT_EQ(judge(1.0, limit_of({}, {})), Verdict::not_judged);
  EXPECT_EQ(judge(1.0, limit_of({}, {}, 0.5, 0.7)), Verdict::not_judged);
  EXPECT_EQ(judge(std::numeric_limits<double>::quiet_NaN(), limit_of(0.0, 2.0)),
            Verdict::not_judged);
  EXPECT_EQ(judge(std::numeric_limits<double>::infinity(), limit_of({}, 2.0)), Verdict::not_judged);
}

TEST(Judge, WordsAreTheFour) {
  EXPECT_STREQ(verdict_word(Verdict::within), "within");
  EXPECT_STREQ(verdict_word(Verdict::close), "close");
  EXPECT_STREQ(verdict_word(Verdict::past), "past");
  EXPECT_STREQ(verdict_word(Verdict::not_judged), "not judged");
}

}  // namespace
}  // namespace tackbench
