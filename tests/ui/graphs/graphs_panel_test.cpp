// Graphs by real events. TACKBENCH_PICTURES=<folder> keeps pictures.
#include "ui/graphs/graphs_panel.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QDir>
#include <QLabel>
#include <QMimeData>
#include <QMouseEvent>
#include <QPushButton>
#include <QTest>
#include <cmath>

#include "ui/graphs/curves_csv.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"

namespace tackbench::ui {
namespace {

class GraphsTest : public testing::Test {
 protected:
  GraphsTest() : panel(session) {
    const std::string file =
        std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/tender-sorted/tender-sorted.tack";
    EXPECT_TRUE(session.open(file).empty());
    panel.resize(320, 520);
    dress(panel);
    panel.show();
    settle();
  }
  void TearDown() override { use_theme(Theme::day); }

  void settle() {
    session.wait_until_fresh();
    QApplication::processEvents();
    panel.wait_until_fresh();
    QApplication::processEvents();
  }
  Plot& plot() { return *panel.findChild<Plot*>(); }
  // The child that gets the mouse.
  void drag_cursor(double from, double to) {
    auto* paper = plot().findChild<QWidget*>();
    const auto at = [&](double place) {
      return QPointF(std::round(plot().across_of(place)), paper->height() / 2.0);
    };
    QTest::mousePress(paper, Qt::LeftButton, {}, at(from).toPoint());
    QMouseEvent event(QEvent::MouseMove, at(to), paper->mapToGlobal(at(to)), Qt::NoButton,
                      Qt::LeftButton, {});
    QApplication::sendEvent(paper, &event);
    QTest::mouseRelease(paper, Qt::LeftButton, {}, at(to).toPoint());
  }
  void keep(const QString& name) {
    const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES");
    if (folder.isEmpty()) return;
    QDir().mkpath(folder);
    panel.grab().save(folder + '/' + name + ".png");
  }

  QString readout() { return panel.findChild<QLabel*>("readout")->text(); }
  Session session;
  GraphsPanel panel;
};

TEST_F(GraphsTest, ShowsWhatSinglePosesShow) {
  ASSERT_FALSE(panel.curves().empty());
  const Curve& left = panel.curves().front();
  for (std::size_t i = 0; i < left.x.size(); i += 10) {
    Controls controls;
    controls.hand_wheel = left.x[i];
    session.set_controls(controls);
    settle();
    ASSERT_TRUE(left.y[i]);
    EXPECT_EQ(*left.y[i], session.posed().pose.steering.left.steer);
    EXPECT_EQ(plot().cursor(), left.x[i]);
  }
}

TEST_F(GraphsTest, DraggingTheCursorTurnsTheHandWheel) {
  drag_cursor(0.0, 2.0);
  // To the nearest pixel of a paper some 230 wide over some 25 rad.
  EXPECT_NEAR(session.controls().hand_wheel, 2.0, 0.15);
  EXPECT_EQ(plot().cursor(), session.controls().hand_wheel);
  QTest::keyClick(&plot(), Qt::Key_Home);
  EXPECT_DOUBLE_EQ(session.controls().hand_wheel, panel.curves().front().x.front());
}

TEST_F(GraphsTest, EveryGraphMovesItsOwnControl) {
  for (const GraphChoice& choice : graph_choices(*session.posed().mechanism)) {
    session.set_controls({});
    panel.choose(choice);
    settle();
    ASSERT_FALSE(panel.curves().empty()) << static_cast<int>(choice.kind);
    const std::vector<double>& x = panel.curves().front().x;
    const double wanted = x.front() + 0.7 * (x.back() - x.front());
    drag_cursor(x.front(), wanted);
    settle();
    EXPECT_NEAR(place_of(choice, *session.posed().mechanism, session.controls()), wanted,
                0.02 * (x.back() - x.front()))
        << static_cast<int>(choice.kind);
    EXPECT_FALSE(panel.findChild<QLabel*>("readout")->text().contains("nan"));
    keep("graph-" + QString::number(static_cast<int>(choice.kind)));
  }
}

TEST_F(GraphsTest, TheTableIsTheCurve) {
  ASSERT_TRUE(session.set_field("sheet.unit", "inch_decimal").empty());
  panel.choose({GraphKind::bump_steer});
  settle();
  QTest::mouseClick(panel.findChild<QPushButton*>("copy_csv"), Qt::LeftButton);
  const QStringList rows = QApplication::clipboard()->text().split("\r\n", Qt::SkipEmptyParts);
  const std::vector<Curve>& curves = panel.curves();
  ASSERT_EQ(rows.size(), static_cast<int>(curves.front().x.size()) + 1);
  EXPECT_TRUE(rows[0].contains("(in)"));
  for (std::size_t i = 0; i < curves.front().x.size(); ++i) {
    const QStringList cells = rows[static_cast<int>(i) + 1].split(',');
    ASSERT_EQ(cells.size(), 3);
    EXPECT_NEAR(cells[0].toDouble(), curves[0].x[i] / 25.4, 1e-7);
    for (int c = 0; c < 2; ++c) {
      const Curve& curve = curves[static_cast<std::size_t>(c)];
      ASSERT_TRUE(curve.y[i]);
      EXPECT_NEAR(cells[c + 1].toDouble(), *curve.y[i] * 180.0 / M_PI, 1e-7);
    }
  }
}

TEST_F(GraphsTest, GapsAreEmptyCellsAndNamesAreQuoted) {
  Curve curve;
  curve.words = "rod, \"long\"";
  curve.unit = Unit::number;
  curve.x = {0.0, 1.0};
  curve.y = {2.5, std::nullopt};
  const GraphWords words = graph_words({GraphKind::bump_steer}, *session.posed().mechanism);
  EXPECT_EQ(curves_csv(words.across, {curve}, ShownUnit::millimetre),
            "bump of both wheels (mm),\"rod, \"\"long\"\"\"\r\n0,2.5\r\n1,\r\n");
}

TEST_F(GraphsTest, AnEditLeavesTheOldCurveFaint) {
  EXPECT_EQ(plot().faint_curves(), 0);
  const std::vector<Curve> before = panel.curves();
  ASSERT_TRUE(session.set_field("steering_box.ratio", "14").empty());
  settle();
  EXPECT_EQ(plot().faint_curves(), static_cast<int>(before.size()));
  // A quicker box steers further at the same hand wheel.
  const auto was = value_at(before.front(), 1.0);
  const auto is = value_at(panel.curves().front(), 1.0);
  ASSERT_TRUE(was && is);
  EXPECT_GT(std::abs(*is), std::abs(*was));
}

// Springs that are asked for more travel than they can give: the curve ends, and says at what.
TEST_F(GraphsTest, ACurveThatEndsEarlySaysWhy) {
  panel.choose({GraphKind::bump_steer});
  settle();
  EXPECT_FALSE(readout().contains("Ends at"));
  ASSERT_TRUE(session.set_field("front_axle.suspension.bump_mm", "390").empty());
  ASSERT_TRUE(session.set_field("front_axle.suspension.droop_mm", "390").empty());
  settle();
  ASSERT_FALSE(panel.curves().empty());
  const std::vector<EarlyEnd>& ends = panel.curves().front().early_ends;
  ASSERT_FALSE(ends.empty());
  for (const EarlyEnd& end : ends) {
    EXPECT_TRUE(readout().contains(QString::fromStdString(end.why)));
    Controls controls;
    controls.bump_left = controls.bump_right = end.x + std::copysign(12.0, end.x);
    EXPECT_NE(solved_pose(*session.posed().mechanism, controls).outcome, Outcome::solved);
  }
  keep("graph-early");
}

TEST_F(GraphsTest, StaleUntilTheNewCurvesArrive) {
  EXPECT_FALSE(plot().stale());
  ASSERT_TRUE(session.set_field("steering_box.ratio", "14").empty());
  EXPECT_TRUE(plot().stale());
  settle();
  EXPECT_FALSE(plot().stale());
}

TEST_F(GraphsTest, StaleCurvesAreFaint) {
  Plot alone;
  alone.resize(320, 320);
  alone.show();
  const auto bluest = [&](bool stale) {
    PlotPicture picture;
    picture.words = graph_words({GraphKind::wheel_angles}, *session.posed().mechanism);
    picture.curves = {panel.curves().front()};
    picture.stale = stale;
    alone.show_picture(picture);
    alone.set_cursor(-1000.0);
    QApplication::processEvents();
    const QImage seen = alone.grab().toImage();
    int most = 0;
    for (int x = 60; x < seen.width(); ++x) {
      for (int y = 0; y < 220; ++y)
        most = std::max(most, seen.pixelColor(x, y).blue() - seen.pixelColor(x, y).red());
    }
    return most;
  };
  const int fresh = bluest(false);
  EXPECT_GT(fresh, 60);
  EXPECT_LT(bluest(true), fresh / 2);
}

TEST_F(GraphsTest, ThePictureCanBeCopied) {
  QTest::mouseClick(panel.findChild<QPushButton*>("copy_picture"), Qt::LeftButton);
  EXPECT_TRUE(QApplication::clipboard()->mimeData()->hasImage());
}

TEST_F(GraphsTest, ATruckNotMeasuredYetSaysSo) {
  session.take(Project{}, {});
  settle();
  EXPECT_TRUE(panel.curves().empty());
  EXPECT_FALSE(panel.findChild<QPushButton*>("copy_csv")->isEnabled());
  EXPECT_TRUE(panel.findChild<QLabel*>("readout")->text().contains("Not measured yet"));
}

TEST_F(GraphsTest, PicturesByNight) {
  const QImage day = panel.grab().toImage();
  use_theme(Theme::night);
  settle();
  keep("graph-night");
  EXPECT_NE(panel.grab().toImage().pixelColor(60, 100), day.pixelColor(60, 100));
}

}  // namespace
}  // namespace tackbench::ui
