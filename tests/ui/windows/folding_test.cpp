// What folds by itself in a small window, and that a larger one gives back what the user had.
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QTest>
#include <QToolButton>

#include "tests/ui/windows/open_bench.h"
#include "ui/desk/motion_desk.h"
#include "ui/panels/shaft_strip.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

class FoldingTest : public BenchTest {
 protected:
  void SetUp() override { open(); }
  void size(int width, int height) {
    window_->resize(width, height);
    window_->session().wait_until_fresh();
    QApplication::processEvents();
    EXPECT_EQ(window_->size(), QSize(width, height));
  }
  void press(const char* action) {
    window_->action(action)->trigger();
    QApplication::processEvents();
  }
  void click(const char* name) {
    auto* button = window_->findChild<QAbstractButton*>(QLatin1String(name));
    ASSERT_NE(button, nullptr) << name;
    QTest::mouseClick(button, Qt::LeftButton);
    QApplication::processEvents();
  }
  bool shaft() { return window_->shaft().folded(); }
  bool desk() { return window_->desk().folded(); }
  bool side() { return !window_->side().isVisible(); }
  double share() {
    return 1.0 * window_->sheet().width() * window_->sheet().height() /
           (1.0 * window_->width() * window_->height());
  }
};

TEST_F(FoldingTest, ANarrowWindowFoldsByItselfAndAWideOneGivesBack) {
  EXPECT_FALSE(shaft() || desk() || side());
  for (const QSize& small : {QSize(960, 540), QSize(853, 480), QSize(990, 860)}) {
    size(small.width(), small.height());
    EXPECT_TRUE(shaft()) << small.width();
    EXPECT_TRUE(desk()) << small.width();
    EXPECT_GE(share(), 0.5) << small.width();
  }
  size(853, 480);
  EXPECT_TRUE(side());
  size(1440, 900);
  EXPECT_FALSE(shaft() || desk() || side());
}

TEST_F(FoldingTest, TheSideColumnStaysWhereTheDrawingHasItsHalf) {
  size(990, 1400);
  EXPECT_FALSE(side());
  EXPECT_GE(share(), 0.5);
}

TEST_F(FoldingTest, WhatTheUserFoldedComesBackFolded) {
  press("fold shaft");
  press("fold side");
  press("fold desk");
  EXPECT_TRUE(shaft() && desk() && side());
  size(900, 500);
  size(1440, 900);
  EXPECT_TRUE(shaft() && desk() && side());
  press("fold side");
  EXPECT_FALSE(side());
}

TEST_F(FoldingTest, WhatTheUserUnfoldsInANarrowWindowStaysSo) {
  size(900, 500);
  press("fold shaft");
  click("side handle");
  click("unfold");
  EXPECT_FALSE(shaft() || desk() || side());
  for (const int width : {890, 870, 860, 940}) {
    size(width, 500);
    EXPECT_FALSE(shaft() || desk() || side()) << width;
  }
  size(1440, 900);
  EXPECT_FALSE(shaft() || desk() || side());
  press("fold shaft");
  size(900, 500);
  EXPECT_FALSE(shaft()) << "unfolded by hand at this size before";
  size(1440, 900);
  EXPECT_TRUE(shaft());
}

// The motion desk's way is kept for the next window, of small and large ones each.
TEST_F(FoldingTest, TheDesksWayIsKept) {
  size(1280, 720);
  EXPECT_TRUE(desk());
  press("fold desk");
  EXPECT_FALSE(desk());
  BenchWindow another(folder_.filePath("another").toStdString());
  another.setAttribute(Qt::WA_DeleteOnClose, false);
  another.resize(1280, 720);
  another.show();
  QApplication::processEvents();
  EXPECT_FALSE(another.desk().folded());
  another.resize(1440, 900);
  QApplication::processEvents();
  EXPECT_FALSE(another.desk().folded());
}

// Whoever asks for a page of the side column sees it.
TEST_F(FoldingTest, AskingForAPageOpensTheSideColumn) {
  size(853, 480);
  ASSERT_TRUE(side());
  QTest::mouseClick(&window_->shaft().tag(Station::drag_link), Qt::LeftButton);
  QApplication::processEvents();
  EXPECT_FALSE(side());
  EXPECT_EQ(window_->side().page(), SidePage::station);
  click("side handle");
  EXPECT_TRUE(side());
  press("show graphs");
  EXPECT_FALSE(side());
}

// In a small window it would lie on the drawing; in an empty project it has nothing to show.
TEST_F(FoldingTest, TheViewInSpaceFoldsWhereItWouldCoverTheDrawing) {
  EXPECT_TRUE(window_->space().isVisible());
  size(853, 480);
  EXPECT_FALSE(window_->space().isVisible());
  press("view in space");
  EXPECT_TRUE(window_->space().isVisible());
  size(870, 490);
  EXPECT_TRUE(window_->space().isVisible()) << "somebody wanted it";
  size(1440, 900);
  EXPECT_TRUE(window_->space().isVisible());
  window_->open_sample("bare-start");
  size(1450, 900);
  EXPECT_TRUE(window_->space().isVisible()) << "wanted where there is no room for it";
  press("view in space");
  EXPECT_FALSE(window_->space().isVisible());
  window_->open_sample("timber-wagon");
  size(1440, 900);
  EXPECT_TRUE(window_->space().isVisible());
  EXPECT_TRUE(window_->action("view in space")->isChecked());
}

TEST_F(FoldingTest, AnEmptyProjectShowsItsListWhole) {
  window_->open_sample("bare-start");
  size(1440, 900);
  EXPECT_FALSE(window_->space().isVisible());
}

// Levers that have no room can be scrolled to; none is lost.
TEST_F(FoldingTest, TheUnfoldedDeskOfANarrowWindowScrolls) {
  size(853, 480);
  click("unfold");
  QWidget* play = window_->desk().findChild<QWidget*>("play");
  ASSERT_NE(play, nullptr);
  EXPECT_TRUE(play->visibleRegion().isEmpty());
  play->setFocus(Qt::TabFocusReason);
  QWidget* before = window_->desk().findChild<QWidget*>("cycle");
  before->setFocus();
  QTest::keyClick(before, Qt::Key_Tab);
  EXPECT_TRUE(play->hasFocus());
  EXPECT_FALSE(play->visibleRegion().isEmpty());
}

}  // namespace
}  // namespace tackbench::ui
