#include "ui/panels/shaft_strip.h"

#include <QSignalSpy>

#include "core/mechanism/solve.h"
#include "tests/ui/panels/panel_support.h"
#include "ui/look/palette.h"
#include "ui/look/type.h"

namespace tackbench::ui {
namespace {

class StripTest : public testing::Test {
 protected:
  void SetUp() override {
    session_.take(sample("tender-as-first-tacked"), {});
    session_.wait_until_fresh();
    strip_.resize(1560, strip_.sizeHint().height());
    strip_.show();
    settle();
  }
  void TearDown() override { use_theme(Theme::day); }

  Session session_;
  ShaftStrip strip_{session_};
};

TEST_F(StripTest, TagsStandInTheOrderOfMotion) {
  int x = -1;
  for (const Station station : kStations) {
    EXPECT_GT(strip_.tag(station).x(), x);
    x = strip_.tag(station).x();
    EXPECT_FALSE(strip_.tag(station).numbers().first.isEmpty()) << station_name(station);
  }
  keep_picture(strip_, QStringLiteral("strip"));
  expect_names(strip_);
}

TEST_F(StripTest, ArrowsGoRoundAndEnterChooses) {
  const QSignalSpy chosen(&strip_, &ShaftStrip::station_chosen);
  strip_.activateWindow();
  strip_.tag(Station::column).setFocus();
  QTest::keyClick(&strip_.tag(Station::column), Qt::Key_Right);
  EXPECT_TRUE(strip_.tag(Station::shaft_line).hasFocus());
  QTest::keyClick(&strip_.tag(Station::shaft_line), Qt::Key_Left);
  QTest::keyClick(&strip_.tag(Station::column), Qt::Key_Left);
  EXPECT_TRUE(strip_.tag(Station::shapes).hasFocus());
  QTest::keyClick(&strip_.tag(Station::shapes), Qt::Key_Return);
  ASSERT_EQ(chosen.size(), 1);
  EXPECT_EQ(strip_.chosen(), Station::shapes);
  QTest::mouseClick(&strip_.tag(Station::drag_link), Qt::LeftButton);
  ASSERT_EQ(chosen.size(), 2);
  EXPECT_EQ(chosen.last().first().value<Station>(), Station::drag_link);
}

TEST_F(StripTest, NumbersAreThoseOfTheSession) {
  const Pose& pose = session_.posed().pose;
  const double length = (pose.steering.drag_link.to_mm - pose.steering.drag_link.from_mm).norm();
  EXPECT_EQ(strip_.tag(Station::drag_link).numbers().first.toStdString(), shown_length(length));
  ASSERT_TRUE(session_.set_field("drag_link.given_length_mm", "802.2").empty());
  session_.wait_until_fresh();
  EXPECT_EQ(strip_.tag(Station::drag_link).numbers().first.toStdString(), "802.2 mm");
  // The link was 792.9: 9.3 more.
  EXPECT_TRUE(strip_.tag(Station::drag_link).numbers().second.startsWith("+9.3"))
      << strip_.tag(Station::drag_link).numbers().second.toStdString();
  keep_picture(strip_, QStringLiteral("strip-after-edit"));
}

TEST_F(StripTest, WorstVerdictOfEachStation) {
  for (const Station station : kStations) {
    bool past = false;
    for (const Finding& finding : session_.judged().findings)
      past = past || (finding.station == station && finding.verdict == Verdict::past);
    EXPECT_EQ(strip_.tag(station).state().worst == Verdict::past, past) << station_name(station);
  }
}

TEST_F(StripTest, WhatIsWorkedOutAgainIsStale) {
  ASSERT_TRUE(session_.set_field("drag_link.given_length_mm", "802.2").empty());
  EXPECT_TRUE(strip_.tag(Station::drag_link).state().stale);
  EXPECT_TRUE(strip_.tag(Station::drag_link).numbers().first_stale);
  keep_picture(strip_, QStringLiteral("strip-stale"));
  session_.wait_until_fresh();
  EXPECT_FALSE(strip_.tag(Station::drag_link).state().stale);
  EXPECT_FALSE(strip_.tag(Station::drag_link).numbers().first_stale);
}

TEST_F(StripTest, AnEmptyProjectHasNoTick) {
  session_.take(Project{}, {});
  session_.wait_until_fresh();
  for (const Station station : kStations) {
    const StationState& state = strip_.tag(station).state();
    EXPECT_NE(state.presence, StationPresence::present);
    EXPECT_EQ(state.worst, Verdict::not_judged);
  }
  EXPECT_EQ(strip_.tag(Station::drag_link).state().words, QStringLiteral("not measured yet"));
  EXPECT_EQ(strip_.tag(Station::pedals).state().words, QStringLiteral("left out"));
  keep_picture(strip_, QStringLiteral("strip-empty"));
}

// Folded in the smallest window every tag has its word and its number whole.
TEST_F(StripTest, AFoldedTagHasRoomForItsNumber) {
  strip_.set_folded(true);
  for (const char* unit : {"millimetre", "inch_decimal", "inch_fraction"}) {
    ASSERT_TRUE(session_.set_field("sheet.unit", unit).empty());
    session_.wait_until_fresh();
    strip_.resize(853, strip_.sizeHint().height());
    settle();
    const QFontMetrics text(figure_font(TypeSize::small, true));
    for (const Station station : kStations) {
      const StationTag& tag = strip_.tag(station);
      const QString words = tag.folded_words();
      EXPECT_FALSE(words.isEmpty());
      EXPECT_LE(text.horizontalAdvance(words), tag.folded_room())
          << unit << ": " << words.toStdString();
    }
    keep_picture(strip_, QString("strip-folded-%1").arg(unit));
  }
}

TEST_F(StripTest, FoldsToLess) {
  const int whole = strip_.sizeHint().height();
  strip_.set_folded(true);
  EXPECT_LT(strip_.sizeHint().height(), whole);
  strip_.resize(1240, strip_.sizeHint().height());
  settle();
  keep_picture(strip_, QStringLiteral("strip-folded"));
  strip_.set_folded(false);
  strip_.resize(1240, strip_.sizeHint().height());
  ASSERT_TRUE(session_.set_field("sheet.unit", "inch_fraction").empty());
  session_.wait_until_fresh();
  settle();
  keep_picture(strip_, QStringLiteral("strip-1240-inch"));
  use_theme(Theme::night);
  settle();
  keep_picture(strip_, QStringLiteral("strip-night"));
}

}  // namespace
}  // namespace tackbench::ui
