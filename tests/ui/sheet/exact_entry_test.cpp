// Exact entry never drops what was typed: the point goes there, or words say why not.
#include "ui/sheet/exact_entry.h"

#include <cmath>

#include "core/project-file/project_file.h"
#include "tests/ui/sheet/open_sheet.h"

namespace tackbench::ui {
namespace {

class ExactEntryTest : public testing::Test {
 protected:
  void open(const std::string& name) {
    ASSERT_TRUE(session_.open(sample_file(name)).empty());
    session_.wait_until_fresh();
  }
  // Types into one of X, Y, Z, then Return. True when the project is another one afterwards.
  bool type(const std::string& path, int axis, const QString& text) {
    const std::string before = project_text(session_.project());
    entry_.open_for(path, {20.0, 20.0}, QRectF(0, 0, 900, 700), axis, {});
    auto* line = entry_.findChildren<QLineEdit*>()[axis];
    line->setText(text);
    QTest::keyClick(line, Qt::Key_Return);
    return project_text(session_.project()) != before;
  }
  QString words() const { return entry_.is_open() ? entry_.accessibleDescription() : QString(); }

  Session session_;
  QWidget around_;
  ExactEntry entry_{session_, &around_};
};

TEST_F(ExactEntryTest, EveryPointOfEverySampleMovesOrSaysWhyNot) {
  for (const char* name : {"tender-as-first-tacked", "tender-sorted", "timber-wagon"}) {
    open(name);
    around_.show();
    for (const Grip& grip : grips(session_.project())) {
      for (int axis = 0; axis < 3; ++axis) {
        const double now = grip_at(session_.project(), grip.path)->at_mm[axis];
        const bool moved = type(grip.path, axis, QString::number(now + 1.5, 'f', 3));
        EXPECT_TRUE(moved || !words().isEmpty()) << name << ' ' << grip.path << ' ' << axis;
        if (moved) {
          EXPECT_NEAR(grip_at(session_.project(), grip.path)->at_mm[axis], now + 1.5, 0.1)
              << name << ' ' << grip.path << ' ' << axis;
          session_.undo();
        }
        entry_.close_entry();
      }
    }
  }
}

// 36 teeth: 360/36 = 10 degrees to a tooth, on an arm of 190 mm that hangs straight down from its
// shaft at X -715: the balls beside it lie 190 sin 10 = 33.0 mm ahead and behind.
TEST_F(ExactEntryTest, AnArmOnItsSplinesNamesThePlacesToEitherSide) {
  open("tender-as-first-tacked");
  around_.show();
  const char* const kArm = "steering_box.arm";
  EXPECT_FALSE(type(kArm, 0, "-705"));
  EXPECT_TRUE(words().contains("36 teeth")) << words().toStdString();
  EXPECT_TRUE(words().contains("10.0 degrees")) << words().toStdString();
  EXPECT_TRUE(words().contains("X -682.0 mm")) << words().toStdString();
  EXPECT_TRUE(words().contains("X -715.0 mm")) << words().toStdString();
  // Such a place, typed as it is read there, is taken.
  entry_.close_entry();
  EXPECT_TRUE(type(kArm, 0, "-682.0"));
  EXPECT_FALSE(entry_.is_open());
  EXPECT_NEAR(grip_at(session_.project(), kArm)->at_mm.x(),
              -715.0 + 190.0 * std::sin(radians_from_degrees(10.0)), 0.05);
}

}  // namespace
}  // namespace tackbench::ui
