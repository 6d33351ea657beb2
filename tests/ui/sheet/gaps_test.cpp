// Gap lines on the sheet: where they are, what they say, that they follow.
#include "tests/ui/sheet/open_sheet.h"
#include "ui/look/palette.h"

namespace tackbench::ui {
namespace {

const char* const kBall = "drag_link.knuckle_ball_mm";

// As the sheet shows it, or null.
const PairGap* shown_pair(const SheetCard& card, const std::string& a, const std::string& b) {
  for (const PairGap& pair : card.gap_layer().shown())
    if (card.gap_layer().part(pair.first).name == a && card.gap_layer().part(pair.second).name == b)
      return &pair;
  return nullptr;
}

bool near_colour(const QColor& a, const QColor& b) {
  return std::abs(a.red() - b.red()) < 60 && std::abs(a.green() - b.green()) < 60 &&
         std::abs(a.blue() - b.blue()) < 60;
}

TEST(GapsOnTheSheet, OffPaintNothing) {
  OpenSheet sheet;
  const QImage before = sheet.card.grab().toImage();
  EXPECT_FALSE(sheet.card.gaps());
  EXPECT_TRUE(sheet.card.gap_layer().shown().empty());
  sheet.card.set_gaps(true);
  EXPECT_NE(sheet.card.grab().toImage(), before);
  sheet.card.set_gaps(false);
  EXPECT_TRUE(sheet.card.gap_layer().shown().empty());
  EXPECT_EQ(sheet.card.grab().toImage(), before);
}

// The clutch arm passes the column bracket at 8 mm (their side faces in the file), seen in the
// front view: a line of ink stands between the two.
TEST(GapsOnTheSheet, LineStandsBetweenTheNearestPoints) {
  OpenSheet sheet("tender-as-first-tacked", {1600, 1000});
  sheet.card.fill_with(SheetView::front);
  sheet.card.set_gaps(true);
  sheet.settle();
  const PairGap* pair = shown_pair(sheet.card, "clutch pedal arm", "column bracket");
  ASSERT_NE(pair, nullptr);
  EXPECT_NEAR(pair->gap.high_mm, 8.0, 1e-3);
  const QPointF from = sheet.card.place_in(SheetView::front, pair->gap.on_first);
  const QPointF to = sheet.card.place_in(SheetView::front, pair->gap.on_second);
  EXPECT_NEAR(QLineF(from, to).length(), 8.0 * sheet.card.transform().scale(), 0.5);
  const QImage picture = sheet.card.grab().toImage();
  EXPECT_TRUE(near_colour(picture.pixelColor((0.5 * (from + to)).toPoint()), palette().ink));
}

TEST(GapsOnTheSheet, AtMostFiveWithoutAChosenPartAndMoreOfOne) {
  OpenSheet sheet;
  sheet.session.select({});
  sheet.card.set_gaps(true);
  sheet.settle();
  EXPECT_EQ(sheet.card.gap_layer().shown().size(), 5U);
  sheet.session.select("drag_link");
  EXPECT_GT(sheet.card.gap_layer().shown().size(), 7U);
  EXPECT_NE(shown_pair(sheet.card, "left tyre", "drag link"), nullptr);
}

TEST(GapsOnTheSheet, NumbersFollowADragAndTheControls) {
  OpenSheet sheet;
  sheet.card.set_gaps(true);
  sheet.session.select(kBall);
  sheet.settle();
  const PairGap* pair = shown_pair(sheet.card, "drag link", "axle beam");
  ASSERT_NE(pair, nullptr);
  const QString first = GapLayer::number(*pair, ShownUnit::millimetre);
  EXPECT_TRUE(sheet.card.accessibleDescription().contains("gap in this position"));

  const QPoint from = sheet.at(kBall, SheetView::front);
  sheet.press(from);
  sheet.move(from + QPoint(0, -6));
  sheet.move(from + QPoint(0, -12));
  sheet.session.wait_until_fresh();
  QApplication::processEvents();
  EXPECT_TRUE(sheet.session.dragging());
  pair = shown_pair(sheet.card, "drag link", "axle beam");
  ASSERT_NE(pair, nullptr);
  const QString in_hand = GapLayer::number(*pair, ShownUnit::millimetre);
  EXPECT_NE(in_hand, first);
  // The same as the core says of what is shown.
  const PosedTruck& posed = sheet.session.posed();
  const auto solids = truck_solids(*posed.mechanism);
  for (const PairGap& each : gaps(*solids, *posed.mechanism, posed.pose)) {
    if (each.first != pair->first || each.second != pair->second) continue;
    EXPECT_DOUBLE_EQ(each.gap.high_mm, pair->gap.high_mm);
  }
  sheet.release(from + QPoint(0, -12));

  Controls controls;
  controls.bump_left = controls.bump_right = 60.0;
  sheet.session.set_controls(controls);
  sheet.session.wait_until_fresh();
  QApplication::processEvents();
  pair = shown_pair(sheet.card, "drag link", "axle beam");
  ASSERT_NE(pair, nullptr);
  EXPECT_NE(GapLayer::number(*pair, ShownUnit::millimetre), in_hand);
}

TEST(GapsOnTheSheet, SayOverlapsAndAssumedSizes) {
  PairGap pair;
  pair.gap.outcome = GapOutcome::measured;
  pair.gap.high_mm = pair.gap.low_mm = 12.7;
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::millimetre), "12.7");
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::inch_fraction), "1/2 in");
  pair.assumed = true;
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::millimetre), "~12.7");
  pair.gap.high_mm = -6.7;
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::millimetre), "overlaps by 6.7 mm");
  pair.gap.outcome = GapOutcome::deeper_than;
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::millimetre), "overlaps by more than 6.7 mm");
  pair.gap.high_mm = 0.0;
  EXPECT_EQ(GapLayer::number(pair, ShownUnit::millimetre), "overlaps");
}

}  // namespace
}  // namespace tackbench::ui
