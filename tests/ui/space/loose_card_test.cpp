// The card on the sheet: moved, sized, spread, kept inside.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QTest>

#include "ui/space/loose_card.h"

namespace tackbench::ui {
namespace {

struct OnSheet {
  OnSheet() : card(session, motion, &sheet, SpaceDrawing::lines) {
    sheet.resize(1000, 700);
    sheet.show();
    QApplication::processEvents();
  }
  void drag(const QPoint& from, const QPoint& step) {
    QTest::mousePress(&card, Qt::LeftButton, {}, from);
    const QPoint global = card.mapToGlobal(from) + step;
    QMouseEvent move(QEvent::MouseMove, card.mapFromGlobal(global), global, Qt::NoButton,
                     Qt::LeftButton, {});
    QApplication::sendEvent(&card, &move);
    QTest::mouseRelease(&card, Qt::LeftButton, {}, card.mapFromGlobal(global));
  }

  Session session;
  ShownMotion motion{session};
  QWidget sheet;
  LooseCard card;
};

// In the card's own border along the head, away from its corners.
const QPoint kOnTopEdge(80, 1);

TEST(LooseCard, LiesOnTheSheetAndKeepsItsShare) {
  OnSheet on;
  const QRect before = on.card.geometry();
  EXPECT_TRUE(on.sheet.rect().contains(before));
  on.sheet.resize(1400, 900);
  QApplication::processEvents();
  const QRect after = on.card.geometry();
  EXPECT_NEAR(after.width() / 1400.0, before.width() / 1000.0, 0.005);
  EXPECT_TRUE(on.sheet.rect().contains(after));
}

TEST(LooseCard, TheHeadMovesIt) {
  OnSheet on;
  const QRect before = on.card.geometry();
  // Between the buttons of the head nothing takes the press but the card.
  const QPoint head = on.card.view().mapTo(&on.card, QPoint(on.card.view().width() / 2 + 20, 4));
  on.drag({head.x(), 6}, {-120, -90});
  EXPECT_EQ(on.card.size(), before.size());
  EXPECT_NEAR(on.card.x(), before.x() - 120, 1);
  EXPECT_NEAR(on.card.y(), before.y() - 90, 1);
  on.drag({head.x(), 6}, {-5000, -5000});
  EXPECT_TRUE(on.sheet.rect().contains(on.card.geometry()));
}

TEST(LooseCard, BordersSizeIt) {
  OnSheet on;
  const QRect before = on.card.geometry();
  on.drag(kOnTopEdge, {0, -60});
  EXPECT_NEAR(on.card.height(), before.height() + 60, 1);
  EXPECT_NEAR(on.card.geometry().bottom(), before.bottom(), 1);
  const QRect taller = on.card.geometry();
  on.drag({1, 60}, {-40, 0});
  EXPECT_NEAR(on.card.width(), taller.width() + 40, 1);
  on.drag({on.card.width() - 2, on.card.height() - 2}, {-2000, -2000});
  EXPECT_GE(on.card.width(), on.card.minimumSizeHint().width());
  EXPECT_GE(on.card.height(), on.card.minimumSizeHint().height());
}

// Until it is moved it lies where the projection draws nothing: bottom right in first angle, top
// left in third.
TEST(LooseCard, BeginsInTheFreeCorner) {
  for (const bool third : {false, true}) {
    OnSheet on;
    Project project = on.session.project();
    auto sheet = std::make_shared<SheetSettings>();
    sheet->projection = third ? Projection::third_angle : Projection::first_angle;
    project.sheet = sheet;
    on.session.take(project, {});
    const QPoint middle = on.card.geometry().center();
    EXPECT_EQ(middle.x() < 500, third);
    EXPECT_EQ(middle.y() < 350, third);
    on.drag({60, 6}, {third ? 30 : -30, 0});
    const QRect moved = on.card.geometry();
    sheet = std::make_shared<SheetSettings>();
    sheet->projection = third ? Projection::first_angle : Projection::third_angle;
    project.sheet = sheet;
    on.session.take(project, {});
    EXPECT_EQ(on.card.geometry(), moved);
  }
}

TEST(LooseCard, TellsWhereAHandHasPutIt) {
  OnSheet on;
  QRectF told;
  QObject::connect(&on.card, &LooseCard::placed_by_hand,
                   [&](const QRectF& place) { told = place; });
  on.drag(kOnTopEdge, {0, 0});
  EXPECT_TRUE(told.isNull()) << "nothing has moved";
  on.drag({on.card.view().width() / 2 + 20, 6}, {-120, -90});
  EXPECT_EQ(told, on.card.place());
  const QRect moved = on.card.geometry();
  OnSheet again;
  again.card.set_place(told);
  EXPECT_EQ(again.card.geometry(), moved);
}

TEST(LooseCard, SpreadsOverTheSheetAndBack) {
  OnSheet on;
  const QRect before = on.card.geometry();
  QAbstractButton* larger = nullptr;
  QAbstractButton* hide = nullptr;
  for (QAbstractButton* button : on.card.findChildren<QAbstractButton*>()) {
    if (button->accessibleName().contains("Spread")) larger = button;
    if (button->accessibleName().contains("away")) hide = button;
  }
  ASSERT_NE(larger, nullptr);
  ASSERT_NE(hide, nullptr);
  QTest::mouseClick(larger, Qt::LeftButton);
  EXPECT_TRUE(on.card.spread());
  EXPECT_GT(on.card.width(), 900);
  QTest::mouseClick(larger, Qt::LeftButton);
  EXPECT_EQ(on.card.geometry(), before);
  int away = 0;
  QObject::connect(&on.card, &LooseCard::put_away, &on.card, [&] { ++away; });
  QTest::mouseClick(hide, Qt::LeftButton);
  EXPECT_EQ(away, 1);
}

}  // namespace
}  // namespace tackbench::ui
