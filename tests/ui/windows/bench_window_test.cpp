// The whole window, with real events and without a display.

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QSettings>
#include <QTest>
#include <QWheelEvent>
#include <cmath>
#include <fstream>

#include "core/project-file/project_file.h"
#include "core/project/field_items.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/desk/hand_wheel_dial.h"
#include "ui/desk/lever.h"
#include "ui/desk/motion_desk.h"
#include "ui/graphs/graphs_panel.h"
#include "ui/look/palette.h"
#include "ui/motion/control_in_hand.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/shaft_strip.h"
#include "ui/panels/station_sheet.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/first_page.h"
#include "ui/windows/help_dialog.h"
#include "ui/windows/new_project_dialog.h"
#include "ui/windows/notice_bar.h"
#include "ui/windows/preferences.h"
#include "ui/windows/recovered_dialog.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

class BenchWindowTest : public BenchTest {
 protected:
  void SetUp() override { open(); }

  void press(const char* action) {
    QAction* found = window_->action(action);
    ASSERT_NE(found, nullptr) << action;
    found->trigger();
    settle();
  }
  // A drag on the sheet with real mouse events.
  void drag(const std::string& path, const QPoint& by) {
    const auto at = window_->sheet().grip_place(path, SheetView::side);
    ASSERT_TRUE(at.has_value()) << path;
    drag_from(at->toPoint(), by);
  }
  void drag_from(const QPoint& from, const QPoint& by) {
    QTest::mousePress(&window_->sheet(), Qt::LeftButton, {}, from);
    for (int i = 1; i <= 4; ++i) QTest::mouseMove(&window_->sheet(), from + by * i / 4);
    QTest::mouseRelease(&window_->sheet(), Qt::LeftButton, {}, from + by);
    settle();
  }
};

TEST_F(BenchWindowTest, TheViewInSpaceIsHiddenSpreadAndReachedByKey) {
  LooseCard& space = window_->space();
  EXPECT_TRUE(space.isVisible());
  press("view in space");
  EXPECT_FALSE(space.isVisible());
  press("spread space");
  EXPECT_TRUE(space.isVisible());
  EXPECT_TRUE(space.spread());
  press("spread space");
  EXPECT_FALSE(space.spread());
  window_->sheet().setFocus();
  QTest::keyClick(window_.get(), Qt::Key_F6);
  EXPECT_EQ(window_->focusWidget(), &space.view());
  for (const QSize& size : {QSize(1000, 600), QSize(1280, 720), QSize(1600, 1000)}) {
    window_->resize(size);
    QApplication::processEvents();
    EXPECT_TRUE(window_->sheet().rect().contains(space.geometry()));
    // At least seven tenths of the sheet stay free for drawing.
    EXPECT_LT(space.width() * space.height(),
              0.3 * window_->sheet().width() * window_->sheet().height());
  }
}

TEST_F(BenchWindowTest, DraggingTheBoxChangesLinkFindingsAndUndo) {
  const double length = session().posed().mechanism->steering->drag_link_drawn;
  const std::string before = project_text(session().project());
  drag("steering_box", QPoint(6, 0));  // the front is to the left: rearward
  EXPECT_GT(session().posed().mechanism->steering->drag_link_drawn, length);
  EXPECT_TRUE(session().judged_fresh());
  EXPECT_EQ(session().undo_name(), "Move steering box");
  EXPECT_TRUE(window_->windowTitle().startsWith("The tender as first tacked"));
  EXPECT_TRUE(window_->isWindowModified());
  press("undo");
  EXPECT_EQ(project_text(session().project()), before);
}

TEST_F(BenchWindowTest, ChoosingAFindingGoesToItsWorstMoment) {
  const Finding* worst = nullptr;
  for (const Finding& finding : session().judged().findings)
    if (worst == nullptr && finding.worst_at && finding.worst_at->hand_wheel != 0.0)
      worst = &finding;
  ASSERT_NE(worst, nullptr);
  window_->side().findings().choose(QString::fromStdString(worst->name));
  settle();
  EXPECT_EQ(session().controls(), *worst->worst_at);
}

TEST_F(BenchWindowTest, ATagOpensItsStation) {
  Q_EMIT window_->shaft().station_chosen(Station::drag_link);
  EXPECT_EQ(window_->side().page(), SidePage::station);
  EXPECT_EQ(window_->side().station_sheet().root(), "drag_link");
}

TEST_F(BenchWindowTest, TheUnitIsTheProjects) {
  EXPECT_EQ(session().shown_unit(), ShownUnit::millimetre);
  window_->set_shown_unit(ShownUnit::inch_fraction);
  EXPECT_EQ(session().shown_unit(), ShownUnit::inch_fraction);
  press("undo");
  EXPECT_EQ(session().shown_unit(), ShownUnit::millimetre);
}

TEST_F(BenchWindowTest, MotionGoesToTheLocksAndBack) {
  press("full left");
  const double turns = session().judged().results.locks->left.turns;
  EXPECT_NEAR(session().controls().hand_wheel, turns * kRadiansPerTurn, 1e-9);
  press("full bump");
  EXPECT_DOUBLE_EQ(session().controls().bump_left, session().project().front_axle->suspension.bump);
  press("straight");
  EXPECT_EQ(session().controls(), Controls{});
  EXPECT_FALSE(session().can_undo());
}

TEST_F(BenchWindowTest, AFileThatCannotBeOpenedSaysWhyAndLosesNothing) {
  const QString file = folder_.filePath("broken.tack");
  std::ofstream(file.toStdString()) << R"({ "tackbench_format": 1, "drag_link": 3 })";
  const std::string before = project_text(session().project());
  EXPECT_FALSE(window_->open_file(file));
  EXPECT_NE(window_->notice().words().indexOf("broken.tack"), -1);
  EXPECT_NE(window_->notice().words().indexOf("drag_link"), -1);
  EXPECT_EQ(project_text(session().project()), before);
}

TEST_F(BenchWindowTest, TheRightKnuckleIsFreedAndMovesAlone) {
  const auto ball = [&](Side side) {
    return knuckle_side(*session().project().front_axle, side).tie_rod_ball.mm;
  };
  press("free right knuckle");  // the sample's has stops of its own: back to the mirror image
  ASSERT_FALSE(session().project().front_axle->right_knuckle);
  const Vec3 right = ball(Side::right);
  press("free right knuckle");
  EXPECT_EQ(ball(Side::right), right);
  ASSERT_TRUE(session().set_field("front_axle.left_knuckle.tie_rod_ball_mm.x", "-170").empty());
  EXPECT_EQ(ball(Side::right), right);
  session().undo();
  session().undo();
  ASSERT_TRUE(session().set_field("front_axle.left_knuckle.tie_rod_ball_mm.x", "-170").empty());
  EXPECT_EQ(ball(Side::right).x(), -170.0);
}

TEST_F(BenchWindowTest, ABoxBegunWithoutItsRatioIsSavedAndOpens) {
  const Result<Project> begun = with_group_added(Project{}, "steering_box");
  ASSERT_TRUE(begun.ok());
  session().take(*begun, {});
  settle();
  const std::filesystem::path file = folder_.filePath("begun.tack").toStdString();
  ASSERT_TRUE(session().save(file).empty());
  EXPECT_FALSE(session().unsaved());
  window_->open_sample("timber-wagon");
  settle();
  EXPECT_TRUE(window_->open_file(QString::fromStdString(file.string())));
  settle();
  EXPECT_EQ(project_text(session().project()), project_text(*begun));
  const QString said = window_->notice().words();
  EXPECT_TRUE(said.contains("\"steering box, ratio\"")) << said.toStdString();
}

TEST_F(BenchWindowTest, AFileChangedOnDiskIsNoticed) {
  const QString file = folder_.filePath("mine.tack");
  ASSERT_TRUE(session().save(file.toStdString()).empty());
  ASSERT_TRUE(window_->open_file(file));
  Project other = session().project();
  other.name = "Changed elsewhere";
  ASSERT_TRUE(save_project(other, file.toStdString()).ok());
  EXPECT_TRUE(QTest::qWaitFor([&] { return !window_->notice().words().isEmpty(); }, 5000));
  EXPECT_NE(window_->notice().words().indexOf("changed on disk"), -1);
  EXPECT_NE(session().project().name, "Changed elsewhere");
}

TEST_F(BenchWindowTest, WhatACrashLeftBehindIsCompared) {
  Session crashed;
  const QString file = folder_.filePath("mine.tack");
  ASSERT_TRUE(session().save(file.toStdString()).empty());
  ASSERT_TRUE(crashed.open(file.toStdString()).empty());
  ASSERT_TRUE(crashed.set_field("steering_box.ratio", "18").empty());
  const std::filesystem::path copy = folder_.filePath("left.tack").toStdString();
  ASSERT_TRUE(save_project(crashed.project(), copy).ok());
  LeftBehind left{copy, file.toStdString(), "The tender", QDateTime::currentDateTimeUtc()};
  RecoveredDialog dialog({left});
  EXPECT_NE(dialog.difference_words().indexOf("ratio"), -1);
  EXPECT_NE(dialog.difference_words().indexOf("18, was 20"), -1);
  ASSERT_TRUE(dialog.project().has_value());
  EXPECT_EQ(dialog.project()->steering_box->ratio, 18.0);
  EXPECT_EQ(dialog.answer(), RecoveredDialog::Answer::later);
}

TEST_F(BenchWindowTest, EveryControlHasANameAndEveryKeyOneMeaning) {
  for (QWidget* widget : window_->findChildren<QWidget*>()) {
    const bool control = qobject_cast<QAbstractButton*>(widget) != nullptr ||
                         qobject_cast<QLineEdit*>(widget) != nullptr ||
                         qobject_cast<QComboBox*>(widget) != nullptr;
    // The line inside a box with figures or choices speaks for the whole.
    if (!control || widget->objectName().startsWith("qt_") || widget->focusPolicy() == Qt::NoFocus)
      continue;
    const auto* button = qobject_cast<QAbstractButton*>(widget);
    EXPECT_TRUE(!widget->accessibleName().isEmpty() ||
                (button != nullptr && !button->text().isEmpty()))
        << widget->metaObject()->className() << " in "
        << widget->parentWidget()->metaObject()->className();
  }
  std::map<QString, QString> keys;
  for (const QAction* action : window_->findChildren<QAction*>()) {
    const QString key = action->shortcut().toString();
    if (key.isEmpty()) continue;
    EXPECT_TRUE(keys.emplace(key, action->text()).second)
        << key.toStdString() << ": " << action->text().toStdString() << " and "
        << keys[key].toStdString();
  }
}

TEST_F(BenchWindowTest, EveryDialogOpensAndCloses) {
  NewProjectDialog new_project(window_.get());
  new_project.show();
  QTest::keyClick(&new_project, Qt::Key_Escape);
  EXPECT_TRUE(new_project.isHidden());
  for (const HelpPage page :
       {HelpPage::keys, HelpPage::words, HelpPage::numbers, HelpPage::cautions}) {
    HelpDialog help(page, window_.get());
    help.show();
    QTest::keyClick(&help, Qt::Key_Escape);
    EXPECT_TRUE(help.isHidden());
  }
  FirstPage first(window_.get());
  first.show();
  QTest::keyClick(&first, Qt::Key_Escape);
  EXPECT_EQ(first.way(), FirstPage::Way::close);
}

TEST_F(BenchWindowTest, TheTourHasSixStepsInsideTheWindow) {
  window_->begin_tour();
  auto* tour = window_->findChild<Tour*>();
  ASSERT_NE(tour, nullptr);
  std::set<QString> words;
  for (int step = 0; step < 6; ++step) {
    EXPECT_EQ(tour->step(), step);
    EXPECT_TRUE(window_->rect().contains(tour->geometry())) << step;
    words.insert(tour->words());
    if (step < 5) {
      for (QAbstractButton* button : tour->findChildren<QAbstractButton*>())
        if (button->text() == "Next") QTest::mouseClick(button, Qt::LeftButton);
    }
  }
  EXPECT_EQ(words.size(), 6U);
  QTest::keyClick(tour, Qt::Key_Escape);
}

TEST_F(BenchWindowTest, ABareStartKeepsItsAnswers) {
  NewProjectDialog dialog;
  dialog.findChild<QComboBox*>()->setCurrentIndex(1);
  const auto project = dialog.project();
  ASSERT_TRUE(project.has_value());
  ASSERT_TRUE(project->sheet->start.has_value());
  EXPECT_EQ(project->sheet->start->drive, Side::right);
  window_->take_new(*project);
  settle();
  EXPECT_EQ(session().project().column, nullptr);
  EXPECT_FALSE(session().judged().findings.empty());
}

TEST_F(BenchWindowTest, DeskSheetAndGraphAgree) {
  press("show graphs");
  GraphsPanel& graphs = window_->side().graphs();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !graphs.curves().empty(); }, 5000));
  auto* dial = window_->desk().findChild<HandWheelDial*>();
  QTest::keyClick(dial, Qt::Key_Left, Qt::ShiftModifier);
  settle();
  EXPECT_NEAR(degrees_from_radians(session().controls().hand_wheel), 45.0, 1e-9);
  EXPECT_EQ(graphs.findChild<Plot*>()->cursor(), session().controls().hand_wheel);

  // The hand wheel by its rim on the drawing, clockwise from ahead, which is to the left.
  press("straight");
  window_->sheet().fill_with(SheetView::front);
  const ColumnStation& column = *session().project().column;
  const Vec3 centre = (session().posed().mechanism->chassis_from_cab * column.hand_wheel_centre).mm;
  const Vec3 rim = centre - Vec3(0.0, column.hand_wheel_diameter / 2.0 - 8.0, 0.0);
  drag_from(window_->sheet().place_in(SheetView::front, rim).toPoint(), QPoint(0, -40));
  EXPECT_GT(session().controls().hand_wheel, 0.1);
  EXPECT_EQ(dial->angle(), session().controls().hand_wheel);
  EXPECT_EQ(graphs.findChild<Plot*>()->cursor(), session().controls().hand_wheel);

  // The left tyre by its crown.
  press("straight");
  window_->sheet().fill_with(std::nullopt);
  const FrontAxleStation& axle = *session().project().front_axle;
  const Vec3 crown(0.0, axle.track / 2.0, axle.wheel_centre_height + axle.tyre.diameter / 2.0);
  drag_from(window_->sheet().place_in(SheetView::side, crown).toPoint(), QPoint(0, -5));
  EXPECT_GT(session().controls().bump_left, 10.0);
  EXPECT_EQ(window_->desk().findChild<Lever*>("bump_left")->place(),
            session().controls().bump_left);
  EXPECT_EQ(window_->desk().findChild<Lever*>("bump_right")->place(), 0.0);
}

TEST_F(BenchWindowTest, TheShaftIsPlayedFromItsFindingOnSheetAndInSpace) {
  FindingsPanel& findings = window_->side().findings();
  findings.choose("shaft.wander");
  settle();
  auto* play = findings.card("shaft.wander")->findChild<QPushButton*>("motion");
  ASSERT_NE(play, nullptr);
  ASSERT_TRUE(play->isVisible());
  const QImage before = window_->sheet().grab().toImage();
  QTest::mouseClick(play, Qt::LeftButton);
  ASSERT_TRUE(window_->motion().wander.playing());
  EXPECT_TRUE(window_->action("wander")->isChecked());
  window_->motion().wander.set_phase(0.25);
  EXPECT_NE(window_->sheet().grab().toImage(), before);
  QTest::mouseClick(play, Qt::LeftButton);
  EXPECT_FALSE(window_->motion().wander.playing());
  EXPECT_FALSE(window_->action("wander")->isChecked());

  // With less motion the ends of both ways stand still.
  window_->action("less motion")->setChecked(true);
  window_->action("wander")->setChecked(true);
  EXPECT_EQ(window_->motion().wander.led_off().size(), 4U);
  window_->action("wander")->setChecked(false);
  window_->action("less motion")->setChecked(false);

  // No other finding offers it.
  findings.choose("lock.left.end");
  auto* other = findings.card("lock.left.end")->findChild<QPushButton*>("motion");
  ASSERT_NE(other, nullptr);
  EXPECT_FALSE(other->isVisible());
}

TEST_F(BenchWindowTest, SweptPlacesAreOneSettingOfBothViews) {
  auto* box = window_->space().findChild<QCheckBox*>();
  ASSERT_NE(box, nullptr);
  QAction* swept = window_->action("swept");
  const QImage before = window_->sheet().grab().toImage();
  swept->setChecked(true);
  EXPECT_TRUE(box->isChecked());
  EXPECT_NE(window_->sheet().grab().toImage(), before);
  box->setChecked(false);
  EXPECT_FALSE(swept->isChecked());
}

// A pad by its lower edge, away from the points of the pedal.
TEST_F(BenchWindowTest, APadDraggedOnTheDrawingPressesThePedal) {
  press("show findings");
  window_->sheet().fill_with(SheetView::side);
  const auto& pedals = session().project().pedals->pedals;
  for (std::size_t i = 0; i < pedals.size(); ++i) {
    SCOPED_TRACE(pedals[i].name);
    press("straight");
    window_->sheet().fit();
    const Pedal& pedal = pedals[i];
    const auto& cab = session().posed().mechanism->chassis_from_cab;
    const Vec3 down(-std::sin(pedal.pad_angle), 0.0, -std::cos(pedal.pad_angle));
    const Point<Cab> edge{pedal.pad_centre.mm + 0.5 * pedal.pad_height * down};
    const auto at = [&] { return window_->sheet().place_in(SheetView::side, (cab * edge).mm); };
    for (int turn = 0; turn < 8; ++turn) {
      const QPointF pointer = at();
      QWheelEvent closer(pointer, window_->sheet().mapToGlobal(pointer), {}, {0, 120}, Qt::NoButton,
                         {}, Qt::NoScrollPhase, false);
      QApplication::sendEvent(&window_->sheet(), &closer);
    }
    const QString lever_name = "pedal_" + QString::number(i);
    auto* lever = window_->desk().findChild<Lever*>(lever_name);
    ASSERT_NE(lever, nullptr);
    ASSERT_EQ(lever->place(), 0.0);
    const std::string before = project_text(session().project());
    const double scale = window_->sheet().transform().scale();
    const Vec3 rest = session().posed().pose.pedals[i].pad_centre_mm;
    const Vec3 way = cab.turn * session().posed().pose.pedals[i].pad_direction;
    // On the paper forward is to the left and up is up.
    drag_from(at().toPoint(), (40.0 * scale * QPointF(-way.x(), -way.z())).toPoint());
    const double pressed = session().controls().pedals[i];
    EXPECT_GT(pressed, 0.1);
    EXPECT_LT(pressed, 1.0);
    EXPECT_EQ(lever->place(), pressed);
    EXPECT_EQ(lever->accessibleDescription(), QString("%1 %").arg(std::lround(100.0 * pressed)));
    EXPECT_EQ(session().posed().controls.pedals[i], pressed);
    // The pad is where the hand has taken it, but for a pixel and the difference of chord and arc.
    EXPECT_NEAR((session().posed().pose.pedals[i].pad_centre_mm - rest).norm(), 40.0, 2.0);
    EXPECT_EQ(project_text(session().project()), before) << "a control is no edit";
  }
}

TEST_F(BenchWindowTest, TheCardsPlaceAndWhetherItIsShownAreKept) {
  LooseCard& card = window_->space();
  const QPoint head(card.view().width() / 2 + 20, 3);
  const QPoint to = card.mapToGlobal(head) - QPoint(160, 110);
  QTest::mousePress(&card, Qt::LeftButton, {}, head);
  QMouseEvent move(QEvent::MouseMove, card.mapFromGlobal(to), to, Qt::NoButton, Qt::LeftButton, {});
  QApplication::sendEvent(&card, &move);
  QTest::mouseRelease(&card, Qt::LeftButton, {}, card.mapFromGlobal(to));
  const QRectF place = card.place();
  for (const bool shown : {false, true}) {
    window_->action("view in space")->setChecked(shown);
    BenchWindow another(folder_.filePath("another").toStdString());
    another.setAttribute(Qt::WA_DeleteOnClose, false);
    another.resize(1440, 900);
    another.open_sample("tender-as-first-tacked");
    another.show();
    QApplication::processEvents();
    EXPECT_EQ(another.space().place(), place);
    EXPECT_EQ(another.space().isVisible(), shown);
    EXPECT_EQ(another.action("view in space")->isChecked(), shown);
  }
  // A place that nobody can have meant is no place.
  QSettings().setValue("view in space place", QRectF(4.0, 0.1, 0.3, 0.3));
  EXPECT_FALSE(Preferences::space_place());
}

TEST_F(BenchWindowTest, LessMotionIsKept) {
  QAction* less = window_->action("less motion");
  ASSERT_NE(less, nullptr);
  less->setChecked(true);
  EXPECT_FALSE(window_->action("play")->isEnabled());
  window_->desk().play_or_stop();
  EXPECT_FALSE(window_->desk().playing());
  BenchWindow another(folder_.filePath("another").toStdString());
  another.setAttribute(Qt::WA_DeleteOnClose, false);
  EXPECT_FALSE(another.action("play")->isEnabled());
  less->setChecked(false);
  press("play");
  EXPECT_TRUE(window_->desk().playing());
  press("play");
  EXPECT_FALSE(window_->desk().playing());
}

// The drawing keeps at least half of the window at 1280x720 with the side column open.
TEST_F(BenchWindowTest, TheSheetKeepsItsRoom) {
  window_->resize(1280, 720);
  QApplication::processEvents();
  const auto share = [&] {
    return 1.0 * window_->sheet().width() * window_->sheet().height() /
           (window_->width() * window_->height());
  };
  press("fold shaft");
  EXPECT_TRUE(window_->desk().folded());
  EXPECT_GE(share(), 0.5);
  press("fold side");
  EXPECT_GE(share(), 0.6);
}

TEST(PaletteTest, TextReadsOnEveryGround) {
  for (const Palette* colours : {&day_palette(), &night_palette()}) {
    for (const QColor& ground : {colours->paper, colours->desk, colours->card}) {
      for (const QColor& text : {colours->ink, colours->soft, colours->moves, colours->within,
                                 colours->close, colours->past})
        EXPECT_GE(contrast(text, ground), 4.5)
            << text.name().toStdString() << " on " << ground.name().toStdString();
    }
  }
}

}  // namespace
}  // namespace tackbench::ui
