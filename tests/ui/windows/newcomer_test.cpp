// The window as somebody meets it who has never seen it, with a project that begins bare.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "core/project/field_path.h"
#include "core/project/starting_guesses.h"
#include "core/project/starting_truck.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/fields/entry_field.h"
#include "ui/panels/shaft_strip.h"
#include "ui/panels/station_sheet.h"
#include "ui/sheet/bare_sheet.h"
#include "ui/sheet/sheet_card.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

class NewcomerTest : public BenchTest {
 protected:
  void SetUp() override { open(nullptr); }

  void begin_bare() {
    Project project;
    project.name = "My truck";
    auto settings = std::make_shared<SheetSettings>();
    settings->start.emplace();
    project.sheet = settings;
    window_->take_new(project);
    settle();
  }
  void click(QWidget* widget) {
    ASSERT_NE(widget, nullptr);
    ASSERT_TRUE(widget->isVisible());
    QTest::mouseClick(widget, Qt::LeftButton);
    settle();
  }
  Session& session() { return window_->session(); }
  StationSheet& panel() { return window_->side().station_sheet(); }
  BareSheet* bare() { return window_->sheet().findChild<BareSheet*>(); }
};

TEST_F(NewcomerTest, ATagShowsItsStationWhateverWasSelectedBefore) {
  window_->open_sample("tender-as-first-tacked");
  settle();
  click(&window_->shaft().tag(Station::front_axle));
  EntryField* track = panel().bring_into_sight("front_axle.track_mm");
  ASSERT_NE(track, nullptr);
  settle();
  QTest::mouseClick(track->lines()[0], Qt::LeftButton);
  ASSERT_EQ(session().selected(), "front_axle.track_mm");
  for (const Station station : kStations) {
    click(&window_->shaft().tag(station));
    EXPECT_EQ(panel().root(), station_name(station));
    EXPECT_EQ(window_->shaft().chosen(), station);
    // Results that arrive later change nothing of it.
    ASSERT_TRUE(session().set_field("name", std::string("now ") + station_name(station)).empty());
    settle();
    EXPECT_EQ(panel().root(), station_name(station));
  }
  session().select("front_axle.track_mm");
  settle();
  EXPECT_EQ(panel().root(), "front_axle");
  EXPECT_EQ(window_->shaft().chosen(), Station::front_axle);
  for (const char* record : {"cab", "measurements", "limits"}) {
    window_->action(record)->trigger();
    settle();
    EXPECT_EQ(panel().root(), record);
    EXPECT_EQ(window_->shaft().chosen(), std::nullopt);
  }
}

TEST_F(NewcomerTest, BeginningAStationStaysInIt) {
  begin_bare();
  click(&window_->shaft().tag(Station::front_axle));
  click(panel().findChild<QPushButton*>("add front_axle"));
  EntryField* track = panel().bring_into_sight("front_axle.track_mm");
  ASSERT_NE(track, nullptr);
  QTest::mouseClick(track->lines()[0], Qt::LeftButton);
  click(&window_->shaft().tag(Station::steering_box));
  click(panel().findChild<QPushButton*>("add steering_box"));
  EXPECT_EQ(panel().root(), "steering_box");
  EXPECT_TRUE(session().project().steering_box);
}

TEST_F(NewcomerTest, TheNumbersOnTheBareSheetBeginTheirStations) {
  const char* const roots[] = {"shapes", "front_axle", "steering_box", "drag_link",
                               "column", "shaft_line", "cab"};
  for (std::size_t i = 0; i < kBareThings; ++i) {
    begin_bare();
    ASSERT_TRUE(bare()->isVisible());
    QTest::mouseClick(bare(), Qt::LeftButton, {}, bare()->number_place(i).toPoint());
    settle();
    EXPECT_EQ(panel().root(), roots[i]);
    EXPECT_EQ(window_->side().page(), SidePage::station);
    EXPECT_TRUE(bare_things(session().project())[i].begun || i == 6) << i;
    session().undo();
    EXPECT_FALSE(session().can_undo());  // it was one step
    // The line beside does the same, with the mouse and with the keyboard.
    settle();
    auto* line = bare()->findChild<QPushButton*>(QStringLiteral("bare %1").arg(i + 1));
    ASSERT_NE(line, nullptr);
    line->setFocus();
    QTest::keyClick(line, Qt::Key_Space);
    settle();
    EXPECT_EQ(panel().root(), roots[i]);
    EXPECT_TRUE(session().can_undo());
  }
  EXPECT_TRUE(session().project().cab);
}

TEST_F(NewcomerTest, CabAndRailsAreReachedFromTheShaft) {
  for (const QSize& size : {QSize(1440, 900), QSize(853, 480)}) {
    window_->resize(size);
    window_->open_sample("tender-as-first-tacked");
    settle();
    click(window_->shaft().findChild<QPushButton*>("cab"));
    EXPECT_EQ(panel().root(), "cab");
    click(window_->shaft().findChild<QPushButton*>("shapes.rails"));
    EXPECT_EQ(panel().root(), "shapes");
    EXPECT_TRUE(panel().fields().contains("shapes.rails.front_end_mm"));
  }
}

TEST_F(NewcomerTest, WhatTheProgramPutInIsCalledAGuessUntilItIsTyped) {
  begin_bare();
  panel().begin("front_axle");
  window_->side().show_page(SidePage::station);
  settle();
  EntryField* track = panel().bring_into_sight("front_axle.track_mm");
  ASSERT_NE(track, nullptr);
  EXPECT_TRUE(track->shows_guess());
  EXPECT_FALSE(bare_things(session().project())[1].done());
  const StationTag& tag = window_->shaft().tag(Station::front_axle);
  const int guesses = tag.state().guesses;
  EXPECT_GT(guesses, 5);
  EXPECT_TRUE(tag.accessibleName().contains("guess")) << tag.accessibleName().toStdString();
  ASSERT_TRUE(session().set_field("front_axle.track_mm", "1874").empty());
  settle();
  EXPECT_FALSE(panel().fields().at("front_axle.track_mm")->shows_guess());
  EXPECT_EQ(tag.state().guesses, guesses - 1);
}

// A station whose every guess was typed over is done, and only then.
TEST_F(NewcomerTest, ANumberIsDoneWhenEverythingWasTyped) {
  begin_bare();
  panel().begin("column");
  settle();
  EXPECT_FALSE(bare_things(session().project())[4].done());
  for (const std::string& path : starting_guesses(session().project())) {
    const Result<std::string> now = field_text(session().project(), path);
    ASSERT_TRUE(now.ok());
    const std::string other = now->starts_with('[') ? std::string("[-1801, 503, 402]")
                                                    : std::to_string(std::stod(*now) + 1.5);
    EXPECT_TRUE(session().set_field(path, other).empty()) << path;
  }
  EXPECT_TRUE(bare_things(session().project())[4].done());
}

TEST_F(NewcomerTest, WhatCanBeDrawnIsDrawnAlthoughAnotherStationIsFaulty) {
  begin_bare();
  Project project = with_station_begun(session().project(), Station::front_axle);
  project = with_station_begun(project, Station::shapes);
  // An axle whose leaf spring has both eyes in one place cannot be posed.
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->suspension.leaf->fixed_eye = axle->suspension.leaf->seat;
  project.front_axle = axle;
  session().edit("faulty axle", project);
  settle();
  ASSERT_FALSE(session().posed().problems.empty());
  EXPECT_TRUE(session().posed().mechanism->project.shapes);
  EXPECT_FALSE(session().posed().mechanism->project.front_axle);
  EXPECT_FALSE(bare()->isVisible());
  // Mended, it is all there.
  session().edit("mended", with_station_begun(
                               [&] {
                                 Project without = session().project();
                                 without.front_axle.reset();
                                 return without;
                               }(),
                               Station::front_axle));
  settle();
  EXPECT_TRUE(session().posed().problems.empty());
  EXPECT_TRUE(session().posed().mechanism->project.front_axle);
}

}  // namespace
}  // namespace tackbench::ui
