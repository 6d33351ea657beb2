// A station's sheet: all of its members, in a column of 320, in both units, with long names.
#include "ui/panels/station_sheet.h"

#include "core/project/field_path.h"
#include "tests/ui/panels/panel_support.h"
#include "ui/look/palette.h"

namespace tackbench::ui {
namespace {

constexpr int kWidth = 320;
constexpr const char* kLongName = "Hinterachsschenkelbolzenlenkhebelwelle 2";  // 40 characters

void open_all(StationSheet& sheet) {
  // Opening one heading may make others.
  for (int round = 0; round < 5; ++round) {
    for (FoldButton* heading : sheet.findChildren<FoldButton*>())
      if (heading->isEnabled() && heading->isVisibleTo(&sheet) && !heading->isChecked())
        heading->click();
    settle();
  }
}

class SheetTest : public testing::Test {
 protected:
  void show(const std::string& root) {
    sheet_ = std::make_unique<StationSheet>(session_);
    sheet_->resize(kWidth, 900);
    sheet_->show_record(root);
    sheet_->show();
    settle();
  }

  void SetUp() override { session_.take(sample("tender-as-first-tacked"), {}); }
  void TearDown() override { use_theme(Theme::day); }

  Session session_;
  std::unique_ptr<StationSheet> sheet_;
};

TEST_F(SheetTest, HoldsEveryMemberOfTheTables) {
  for (const char* root : {"column", "shaft_line", "steering_box", "drag_link", "front_axle",
                           "pedals", "driver", "shapes", "cab", "measurements"}) {
    show(root);
    open_all(*sheet_);
    for (const FieldEntry& entry : entries_of(field_group(session_.project(), root)))
      EXPECT_TRUE(sheet_->fields().contains(entry.path)) << entry.path;
  }
}

TEST_F(SheetTest, ClipsNothingAndNamesEverythingInAColumnOf320) {
  for (const char* unit : {"millimetre", "inch_fraction"}) {
    ASSERT_TRUE(session_.set_field("sheet.unit", unit).empty());
    for (const Station station : kStations) {
      SCOPED_TRACE(std::string(unit) + " " + station_name(station));
      show(station_name(station));
      open_all(*sheet_);
      expect_nothing_clipped(*sheet_);
      expect_names(*sheet_);
      keep_picture(*sheet_, QStringLiteral("sheet-%1-%2").arg(station_name(station), unit));
    }
  }
}

TEST_F(SheetTest, LongNamesFit) {
  ASSERT_TRUE(session_.set_field("shaft_line.joints[0].name", kLongName).empty());
  ASSERT_TRUE(session_.set_field("pedals.pedals[0].name", kLongName).empty());
  for (const char* root : {"shaft_line", "pedals"}) {
    show(root);
    open_all(*sheet_);
    expect_nothing_clipped(*sheet_);
  }
  keep_picture(*sheet_, QStringLiteral("sheet-long-names"));
}

TEST_F(SheetTest, SelectionOpensTheMemberAndTheKeyboardSelects) {
  show("column");
  session_.select("drag_link.tube.wall_mm");
  settle();
  EXPECT_EQ(sheet_->root(), "drag_link");
  const auto found = sheet_->fields().find("drag_link.tube.wall_mm");
  ASSERT_NE(found, sheet_->fields().end());
  EXPECT_TRUE(found->second->isVisibleTo(sheet_.get()));
  keep_picture(*sheet_, QStringLiteral("sheet-selected"));

  sheet_->activateWindow();
  EntryField* outside = sheet_->bring_into_sight("drag_link.tube.outside_diameter_mm");
  ASSERT_NE(outside, nullptr);
  Q_EMIT outside->entered();
  EXPECT_EQ(session_.selected(), "drag_link.tube.outside_diameter_mm");
}

TEST_F(SheetTest, ItemsComeAndGoInOneStepEach) {
  show("shaft_line");
  const std::string before = text_of(session_);
  const std::size_t joints = session_.project().shaft_line->joints.size();
  auto* add = sheet_->findChild<QPushButton*>(QStringLiteral("add shaft_line.joints"));
  ASSERT_NE(add, nullptr);
  QTest::mouseClick(add, Qt::LeftButton);
  settle();
  EXPECT_EQ(session_.project().shaft_line->joints.size(), joints + 1);
  EXPECT_TRUE(sheet_->fields().contains("shaft_line.joints[3].centre_mm"));
  const QString take_name = QStringLiteral("take shaft_line.joints[3]");
  auto* take = sheet_->findChild<QPushButton*>(take_name);
  ASSERT_NE(take, nullptr);
  QTest::mouseClick(take, Qt::LeftButton);
  settle();
  EXPECT_EQ(session_.project().shaft_line->joints.size(), joints);
  session_.undo();
  session_.undo();
  EXPECT_EQ(text_of(session_), before);
  EXPECT_FALSE(session_.can_undo());
}

TEST_F(SheetTest, AStationIsLeftOutAndBegun) {
  show("driver");
  auto* leave = sheet_->findChild<QPushButton*>();
  ASSERT_NE(leave, nullptr);
  QTest::mouseClick(leave, Qt::LeftButton);
  settle();
  EXPECT_EQ(session_.project().driver, nullptr);
  keep_picture(*sheet_, QStringLiteral("sheet-left-out"));
  auto* begin = sheet_->findChild<QPushButton*>(QStringLiteral("add driver"));
  ASSERT_NE(begin, nullptr);
  QTest::mouseClick(begin, Qt::LeftButton);
  settle();
  EXPECT_NE(session_.project().driver, nullptr);
  session_.undo();
  session_.undo();
  EXPECT_FALSE(session_.can_undo());
}

TEST_F(SheetTest, EmptyProjectSaysWhatIsNotMeasured) {
  session_.take(Project{}, {});
  session_.wait_until_fresh();
  for (const Station station : kStations) {
    show(station_name(station));
    EXPECT_TRUE(sheet_->fields().empty());
    expect_nothing_clipped(*sheet_);
  }
}

TEST_F(SheetTest, NightToo) {
  use_theme(Theme::night);
  show("drag_link");
  open_all(*sheet_);
  keep_picture(*sheet_, QStringLiteral("sheet-night"));
  expect_nothing_clipped(*sheet_);
}

}  // namespace
}  // namespace tackbench::ui
