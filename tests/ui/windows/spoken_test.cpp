// What a screen reader hears of sheet, graphs and findings, through QAccessible.
#include <gtest/gtest.h>

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QTemporaryDir>
#include <QTest>

#include "core/basics/shown_number.h"
#include "ui/graphs/graphs_panel.h"
#include "ui/graphs/plot.h"
#include "ui/look/verdict_mark.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/margin.h"
#include "ui/sheet/sheet_card.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

QString heard(QWidget& widget, QAccessible::Text what) {
  QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(&widget);
  EXPECT_NE(seen, nullptr);
  return seen != nullptr ? seen->text(what) : QString();
}

QString shown_text(double inside, Unit unit) {
  return QString::fromStdString(shown(inside, unit));
}

class SpokenTest : public testing::Test {
 protected:
  SpokenTest() : window_(folder_.path().toStdString()) {
    window_.setAttribute(Qt::WA_DeleteOnClose, false);
    window_.resize(1440, 900);
    window_.open_sample("tender-as-first-tacked");
    window_.show();
    settle();
  }
  void settle() {
    window_.session().wait_until_fresh();
    QApplication::processEvents();
  }

  QTemporaryDir folder_;
  BenchWindow window_;
};

TEST_F(SpokenTest, EachGraphHasANameAndItsValueAtTheCursor) {
  window_.side().show_page(SidePage::graphs);
  GraphsPanel& graphs = window_.side().graphs();
  auto* plot = graphs.findChild<Plot*>();
  ASSERT_NE(plot, nullptr);
  Controls controls;
  controls.hand_wheel = 1.2;
  controls.bump_left = controls.bump_right = 20.0;
  controls.pedals[0] = controls.pedals[1] = 0.5;
  for (const GraphChoice& choice : graph_choices(*window_.session().posed().mechanism)) {
    window_.session().set_controls({});
    graphs.choose(choice);
    graphs.wait_until_fresh();
    const QString title = graph_words(choice, *window_.session().posed().mechanism).title;
    SCOPED_TRACE(title.toStdString());
    EXPECT_EQ(heard(*plot, QAccessible::Name), title);
    ASSERT_FALSE(graphs.curves().empty());
    window_.session().set_controls(controls);
    settle();
    const double place =
        place_of(choice, *window_.session().posed().mechanism, window_.session().controls());
    const QString words = heard(*plot, QAccessible::Description);
    for (const Curve& curve : graphs.curves()) {
      EXPECT_TRUE(words.contains(QString::fromStdString(curve.words))) << words.toStdString();
      if (const auto value = value_at(curve, place)) {
        EXPECT_TRUE(words.contains(shown_text(*value, curve.unit)))
            << words.toStdString() << " without " << *value;
      }
    }
  }
}

TEST_F(SpokenTest, AGraphWithNothingToShowSaysSo) {
  window_.side().show_page(SidePage::graphs);
  GraphsPanel& graphs = window_.side().graphs();
  graphs.wait_until_fresh();
  window_.session().take(Project{}, {});
  graphs.wait_until_fresh();
  const QString words = heard(*graphs.findChild<Plot*>(), QAccessible::Description);
  EXPECT_TRUE(words.contains("Not measured yet")) << words.toStdString();
}

TEST_F(SpokenTest, CardsSaySentenceVerdictAndMargin) {
  int margins = 0;
  for (FindingCard* card : window_.side().findings().shown_cards()) {
    const Finding& finding = card->finding();
    const QString name = heard(*card, QAccessible::Name);
    EXPECT_TRUE(name.startsWith(verdict_words(finding.verdict)));
    EXPECT_TRUE(name.contains(card->sentence().text()));
    const QString words = heard(*card, QAccessible::Description);
    EXPECT_FALSE(words.isEmpty()) << finding.name;
    const auto share = margin_share(finding);
    if (!share) continue;
    ++margins;
    const QString percent = QString::number(qRound(100.0 * std::abs(*share)));
    EXPECT_TRUE(words.contains((*share < 0.0 ? "short by " : "") + percent + " % of the limit"))
        << words.toStdString();
  }
  EXPECT_GT(margins, 10);
}

TEST_F(SpokenTest, TheSheetSaysWhatIsChosen) {
  SheetCard& sheet = window_.sheet();
  EXPECT_FALSE(heard(sheet, QAccessible::Name).isEmpty());
  EXPECT_TRUE(heard(sheet, QAccessible::Description).contains("No point selected"));
  window_.session().select("drag_link.knuckle_ball_mm");
  QApplication::processEvents();
  const Vec3 at = window_.session().project().drag_link->knuckle_ball.mm;
  QString words = heard(sheet, QAccessible::Description);
  EXPECT_TRUE(words.contains(QString::fromStdString(shown_bare(at.x(), Unit::millimetre))))
      << words.toStdString();
  // A part that is no point.
  window_.session().select("front_axle.tyre");
  QApplication::processEvents();
  words = heard(sheet, QAccessible::Description);
  EXPECT_TRUE(words.contains("tyre", Qt::CaseInsensitive)) << words.toStdString();
  EXPECT_TRUE(words.contains("selected"));
  EXPECT_FALSE(words.contains("front_axle"));
  // A finding that is shown on it.
  window_.session().select({});
  const Finding worst = window_.session().judged().findings.front();
  window_.side().findings().choose(QString::fromStdString(worst.name));
  settle();
  words = heard(sheet, QAccessible::Description);
  EXPECT_TRUE(words.contains(QString::fromStdString(worst.sentence))) << words.toStdString();
  sheet.clear_finding();
  EXPECT_FALSE(
      heard(sheet, QAccessible::Description).contains(QString::fromStdString(worst.sentence)));
}

}  // namespace
}  // namespace tackbench::ui
