// The sheet in the window: keys that both know, menu ticks, tags beside what lies on the sheet.
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QDir>
#include <QPushButton>
#include <QTest>

#include "core/project/grips.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/look/palette.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/first_page.h"

namespace tackbench::ui {
namespace {

class SheetInWindow : public BenchTest {
 protected:
  void open_sheet(const char* sample, const QSize& size) {
    open(sample, size);
    sheet().setFocus();
  }
  ~SheetInWindow() override { use_theme(Theme::day); }

  // Until the truck stands under the hand and is painted; the checks may go on.
  void follow() {
    while (!session().posed_fresh()) QApplication::processEvents();
    QApplication::processEvents();
    sheet().grab();
  }
  SheetCard& sheet() { return window_->sheet(); }

  // What lies on the sheet and hides it, in its pixels.
  std::vector<QRect> lying_on_it() {
    std::vector<QRect> places;
    const QWidget* inner = &sheet();
    for (const QObject* child : sheet().children())
      if (const auto* widget = qobject_cast<const QWidget*>(child); widget && widget->isVisible())
        places.push_back(widget->geometry());
    for (const auto* tour : window_->findChildren<Tour*>())
      if (tour->isVisible())
        places.emplace_back(inner->mapFromGlobal(tour->mapToGlobal(QPoint(0, 0))), tour->size());
    return places;
  }
  void expect_tags_well_placed(const std::string& what) {
    const std::vector<PlacedTag>& tags = sheet().placed_tags();
    for (std::size_t i = 0; i < tags.size(); ++i) {
      for (std::size_t j = i + 1; j < tags.size(); ++j)
        EXPECT_FALSE(tags[i].place.intersects(tags[j].place)) << what;
      for (const QRect& widget : lying_on_it())
        EXPECT_FALSE(tags[i].place.intersects(widget))
            << what << ": " << tags[i].tag.heading.toStdString() << " lies underneath";
    }
  }
};

TEST_F(SheetInWindow, CtrlArrowNudgesASelectedPointByATenth) {
  open_sheet("tender-as-first-tacked", {1280, 720});
  session().select("steering_box");
  const Vec3 before = grip_at(session().project(), "steering_box")->at_mm;
  QTest::keyClick(&sheet(), Qt::Key_Right, Qt::ControlModifier);
  settle();
  const Vec3 step = grip_at(session().project(), "steering_box")->at_mm - before;
  EXPECT_NEAR(step.norm(), 0.1, 1e-6);
  EXPECT_EQ(session().controls(), Controls{});
  // Without a point it is the window's key.
  session().select({});
  QTest::keyClick(&sheet(), Qt::Key_Left, Qt::ControlModifier);
  settle();
  EXPECT_GT(session().controls().hand_wheel, 1.0);
}

TEST_F(SheetInWindow, MenuTicksSayWhatTheSheetShows) {
  open_sheet("tender-as-first-tacked", {1280, 720});
  QAction* grid = window_->action("grid");
  ASSERT_TRUE(grid->isChecked());
  QTest::keyClick(&sheet(), Qt::Key_G);
  EXPECT_FALSE(sheet().grid());
  EXPECT_FALSE(grid->isChecked());
  grid->trigger();
  EXPECT_TRUE(sheet().grid());

  QAction* photographs = window_->action("photographs");
  photographs->trigger();
  EXPECT_TRUE(sheet().photographs());
  QTest::keyClick(sheet().findChild<BackdropPanel*>(), Qt::Key_Escape);
  EXPECT_FALSE(sheet().photographs());
  EXPECT_FALSE(photographs->isChecked());
  QTest::keyClick(&sheet(), Qt::Key_B);
  EXPECT_TRUE(sheet().photographs());
  EXPECT_TRUE(photographs->isChecked());
}

struct Case {
  const char* sample;
  QSize size;
  bool all_views = false;
};

class DraggedTags : public SheetInWindow, public testing::WithParamInterface<Case> {};

// Every point in the hand, in every view: its tag close to it, the numbers close to what they
// measure, nothing over anything.
TEST_P(DraggedTags, StandCloseByAndCoverNothing) {
  open_sheet(GetParam().sample, GetParam().size);
  int seen_points = 0;
  const std::vector<Grip> all = grips(session().project());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Grip& grip = all[i];
    // All views at one size, each point in one of them at the others.
    for (const SheetView view : kSheetViews) {
      if (!GetParam().all_views && view != kSheetViews[i % 3]) continue;
      const auto at = sheet().grip_place(grip.path, view);
      if (!at || !sheet().paper().contains(*at)) continue;
      const std::string what = grip.path + " in " + std::to_string(static_cast<int>(view));
      session().select(grip.path);
      QTest::mousePress(&sheet(), Qt::LeftButton, {}, at->toPoint());
      QTest::mouseMove(&sheet(), at->toPoint() + QPoint(5, 2));
      QTest::mouseMove(&sheet(), at->toPoint() + QPoint(11, 6));
      // Of a rail that is drawn cut short the end is not there: another point is taken, or none.
      if (!session().dragging() || session().selected() != grip.path) {
        EXPECT_EQ(grip.path, "shapes.rails.rear_end_mm");
        QTest::mouseRelease(&sheet(), Qt::LeftButton, {}, at->toPoint());
        continue;
      }
      follow();
      const auto now = sheet().grip_place(grip.path, view);
      ASSERT_TRUE(now.has_value()) << what;
      expect_tags_well_placed(what);
      bool hidden = false;  // under the view in space, where no hand reaches it
      for (const QRect& widget : lying_on_it()) hidden = hidden || widget.contains(now->toPoint());
      bool found = false;
      for (const PlacedTag& placed : sheet().placed_tags()) {
        if (placed.tag.is_number) {
          EXPECT_LE(distance_to(placed.place, placed.tag.beside), 120.0)
              << what << ": " << placed.tag.heading.toStdString();
        }
        if (!placed.tag.is_point) continue;
        found = true;
        EXPECT_LE((placed.tag.beside - *now).manhattanLength(), 1.0) << what;
        EXPECT_GT(distance_to(placed.place, *now), 8.0) << what << " lies over the point";
        EXPECT_TRUE(sheet().paper().contains(placed.place)) << what;
        EXPECT_LE(placed.tag.under.count('\n') + 2, 8) << what << ": too many lines";
        if (hidden) continue;
        ++seen_points;
        EXPECT_LE(distance_to(placed.place, *now), 120.0) << what;
      }
      EXPECT_TRUE(found) << what;
      QTest::keyClick(&sheet(), Qt::Key_Escape);
      QTest::mouseRelease(&sheet(), Qt::LeftButton, {}, at->toPoint());
      follow();
    }
  }
  EXPECT_GT(seen_points, 20);
}

INSTANTIATE_TEST_SUITE_P(Samples, DraggedTags,
                         testing::Values(Case{"tender-as-first-tacked", {1280, 720}},
                                         Case{"tender-as-first-tacked", {1440, 900}, true},
                                         Case{"tender-sorted", {1280, 720}},
                                         Case{"timber-wagon", {1280, 720}},
                                         Case{"timber-wagon", {1440, 900}}));

// The old position stays in sight, faint and dashed, while a point is in the hand.
TEST_F(SheetInWindow, TheOldPositionIsSeenWhileAPointIsDragged) {
  for (const Theme theme : {Theme::day, Theme::night}) {
    use_theme(theme);
    for (const QSize& size : {QSize(1280, 720), QSize(1440, 900)}) {
      open("tender-as-first-tacked", size);
      sheet().fill_with(SheetView::side);
      follow();
      for (const auto& [path, by] : {std::pair{"steering_box", QPoint(16, -5)},
                                     {"drag_link.knuckle_ball_mm", QPoint(-9, 14)},
                                     {"shaft_line.joints[1].centre_mm", QPoint(20, -25)}}) {
        const Pose before = session().posed().pose;
        settle();
        const QPoint from = sheet().grip_place(path, SheetView::side)->toPoint();
        session().select(path);
        QTest::mousePress(&sheet(), Qt::LeftButton, {}, from);
        for (int i = 1; i <= 4; ++i) QTest::mouseMove(&sheet(), from + by * i / 4);
        follow();
        const QImage picture = window_->grab().toImage();
        if (const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES"); !folder.isEmpty()) {
          QDir().mkpath(folder);
          picture.save(QString("%1/drag-%2-%3-%4.png")
                           .arg(folder, theme == Theme::day ? "day" : "night")
                           .arg(size.width())
                           .arg(QString(path).section('.', 0, 0)));
        }
        // Along the old drag link, where nothing else is drawn now: dashes that stand out of the
        // paper by what WCAG 2.1 (1.4.11) asks of graphics.
        const Vec3& a = before.steering.drag_link.from_mm;
        const Vec3& b = before.steering.drag_link.to_mm;
        int readable = 0;
        for (double t = 0.2; t < 0.8; t += 0.005) {
          const QPointF on = sheet().place_in(SheetView::side, a + t * (b - a));
          const QPoint at = sheet().mapTo(window_.get(), on.toPoint());
          bool stands_out = false;
          for (int off = -1; off <= 1; ++off) {
            const QColor here = picture.pixelColor(at + QPoint(0, off));
            stands_out = stands_out || contrast(here, palette().paper) >= 3.0;
          }
          readable += stands_out ? 1 : 0;
        }
        if (std::string(path) != "shaft_line.joints[1].centre_mm") {
          EXPECT_GT(readable, 40) << path << " of 120 at " << size.width();
        }
        QTest::keyClick(&sheet(), Qt::Key_Escape);
        QTest::mouseRelease(&sheet(), Qt::LeftButton, {}, from);
        follow();
      }
      window_.reset();
    }
  }
}

// What comes to lie on the sheet later drives the tags off as well.
TEST_F(SheetInWindow, TagsGiveWayToWhatComesToLieOnTheSheet) {
  open_sheet("tender-as-first-tacked", {1440, 900});
  session().select("drag_link.knuckle_ball_mm");
  follow();
  expect_tags_well_placed("at first");
  for (const QRectF& place :
       {QRectF(0.05, 0.1, 0.4, 0.5), QRectF(0.3, 0.3, 0.4, 0.5), QRectF(0.1, 0.5, 0.5, 0.45)}) {
    window_->space().set_place(place);
    QApplication::processEvents();
    expect_tags_well_placed("under the view in space");
  }
  window_->begin_tour();
  QApplication::processEvents();
  for (int step = 0; step < 6; ++step) {
    sheet().update();
    QApplication::processEvents();
    expect_tags_well_placed("at step " + std::to_string(step) + " of the tour");
    for (auto* tour : window_->findChildren<Tour*>())
      for (auto* button : tour->findChildren<QPushButton*>())
        if (button->text().contains("Next")) button->click();
    QApplication::processEvents();
  }
}

}  // namespace
}  // namespace tackbench::ui
