// Whole pictures: every view of the truck is on the paper, by day and by night, large and small, in
// millimetres and in fractions of an inch. TACKBENCH_PICTURES=<folder> keeps them for looking at.
#include <QDir>

#include "tests/ui/sheet/open_sheet.h"
#include "ui/look/palette.h"

namespace tackbench::ui {
namespace {

void keep(OpenSheet& sheet, const QString& name) {
  const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES");
  if (folder.isEmpty()) return;
  QDir().mkpath(folder);
  sheet.card.grab().save(folder + '/' + name + ".png");
}

int pixels_near(const QImage& picture, const QColor& colour) {
  int count = 0;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) {
      const QColor here = picture.pixelColor(x, y);
      if (std::abs(here.red() - colour.red()) < 24 &&
          std::abs(here.green() - colour.green()) < 24 &&
          std::abs(here.blue() - colour.blue()) < 24)
        ++count;
    }
  return count;
}

struct Look {
  const char* name;
  const char* sample;
  QSize size;
  Theme theme;
  const char* unit;
};

class Pictures : public testing::TestWithParam<Look> {
 protected:
  void TearDown() override { use_theme(Theme::day); }
};

TEST_P(Pictures, HaveInkAndMarkingBlue) {
  const Look& look = GetParam();
  use_theme(look.theme);
  OpenSheet sheet(look.sample, look.size);
  ASSERT_TRUE(sheet.session.set_field("sheet.unit", look.unit).empty());
  sheet.settle();
  keep(sheet, look.name);
  sheet.card.set_gaps(true);
  keep(sheet, QString(look.name) + "-gaps");
  sheet.card.set_gaps(false);
  const QImage picture = sheet.card.grab().toImage();
  const Palette& colours = palette();
  EXPECT_GT(pixels_near(picture, colours.ink), 300);
  EXPECT_GT(pixels_near(picture, colours.moves), 100);
  for (const SheetView view : kSheetViews)
    EXPECT_TRUE(sheet.card.paper().contains(sheet.at("drag_link.knuckle_ball_mm", view)));

  // In the hand.
  const QPoint from = sheet.at("steering_box", SheetView::side);
  sheet.session.select("steering_box");
  sheet.press(from);
  sheet.move(from + QPoint(8, 2));
  sheet.settle();
  keep(sheet, QString(look.name) + "-dragged");
  EXPECT_TRUE(sheet.session.dragging());
  sheet.release(from + QPoint(8, 2));
  sheet.settle();
  sheet.card.fill_with(SheetView::side);
  sheet.settle();
  keep(sheet, QString(look.name) + "-side");
}

INSTANTIATE_TEST_SUITE_P(
    Looks, Pictures,
    testing::Values(
        Look{"tender-day", "tender-as-first-tacked", {1060, 700}, Theme::day, "millimetre"},
        Look{"tender-night", "tender-as-first-tacked", {1060, 700}, Theme::night, "millimetre"},
        Look{"tender-small", "tender-as-first-tacked", {640, 420}, Theme::day, "millimetre"},
        Look{"tender-inch", "tender-as-first-tacked", {860, 520}, Theme::day, "inch_fraction"},
        Look{"wagon", "timber-wagon", {1060, 700}, Theme::day, "millimetre"}));

TEST(PicturesOfStates, DifferFromEachOther) {
  use_theme(Theme::day);
  OpenSheet blank("bare-start", {860, 560});
  keep(blank, "bare-start");
  OpenSheet broken("tender-as-first-tacked", {860, 560});
  ASSERT_TRUE(broken.session.set_field("drag_link.given_length_mm", "3000").empty());
  broken.settle();
  keep(broken, "does-not-close");
  OpenSheet found("tender-as-first-tacked", {860, 560});
  ASSERT_FALSE(found.session.judged().findings.empty());
  found.card.show_finding(found.session.judged().findings.front());
  found.motion.swept.show(true);
  found.settle();
  keep(found, "finding-and-swept");
  found.card.set_gaps(true);
  keep(found, "gaps");
  found.card.set_gaps(false);
  found.card.clear_finding();
  found.motion.swept.show(false);
  found.session.select("drag_link.knuckle_ball_mm");
  found.card.enter_exactly();
  found.settle();
  keep(found, "exact-entry");
  EXPECT_NE(blank.card.grab().toImage(), broken.card.grab().toImage());
}

}  // namespace
}  // namespace tackbench::ui
