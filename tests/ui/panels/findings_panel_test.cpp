#include "ui/panels/findings_panel.h"

#include <QSignalSpy>

#include "core/findings/limits.h"
#include "core/project/field_path.h"
#include "tests/ui/panels/panel_support.h"
#include "ui/look/palette.h"
#include "ui/panels/limit_choice.h"
#include "ui/panels/margin.h"

namespace tackbench::ui {
namespace {

class FindingsTest : public testing::Test {
 protected:
  void SetUp() override {
    session_.take(sample("tender-as-first-tacked"), {});
    session_.wait_until_fresh();
    panel_ = std::make_unique<FindingsPanel>(session_);
    panel_->resize(320, 900);
    panel_->show();
    settle();
  }
  void TearDown() override { use_theme(Theme::day); }

  std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const FindingCard* card : panel_->shown_cards()) all.push_back(card->name());
    return all;
  }

  Session session_;
  std::unique_ptr<FindingsPanel> panel_;
};

TEST_F(FindingsTest, ComeInTheOrderOfAllFindings) {
  const Result<Mechanism> mechanism = compile(session_.project());
  ASSERT_TRUE(mechanism.ok());
  std::vector<std::string> expected;
  for (const Finding& finding : all_findings(*mechanism, run_checks(*mechanism)))
    expected.push_back(finding.name);
  EXPECT_EQ(names(), expected);
  EXPECT_EQ(panel_->shown_cards().front()->finding().verdict, Verdict::past);
  keep_picture(*panel_, QStringLiteral("findings"));
}

TEST_F(FindingsTest, HeadlineCountsThem) {
  int past = 0;
  for (const Finding& finding : session_.judged().findings)
    past += finding.verdict == Verdict::past ? 1 : 0;
  EXPECT_TRUE(panel_->headline().startsWith(QString::number(past) + " past"))
      << panel_->headline().toStdString();
}

TEST_F(FindingsTest, ChoosingOneSetsTheControlsToItsWorstMoment) {
  const QSignalSpy told(panel_.get(), &FindingsPanel::finding_chosen);
  for (const FindingCard* card : panel_->shown_cards()) {
    const Finding finding = card->finding();
    if (!finding.worst_at || card->is_open()) continue;
    auto* clicked = const_cast<FindingCard*>(card);  // NOLINT(*-const-cast): a click changes it
    QTest::mouseClick(clicked, Qt::LeftButton, {}, QPoint(150, 8));
    EXPECT_EQ(session_.controls(), *finding.worst_at) << finding.name;
    EXPECT_EQ(told.last().first().toString().toStdString(), finding.name);
    EXPECT_TRUE(card->is_open());
  }
  EXPECT_GT(told.size(), 3);
}

TEST_F(FindingsTest, TheKeyboardChoosesToo) {
  FindingCard* first = panel_->shown_cards().front();
  QTest::keyClick(first, Qt::Key_Return);
  EXPECT_TRUE(first->is_open());
  QTest::keyClick(first, Qt::Key_Return);
  EXPECT_FALSE(first->is_open());
}

TEST_F(FindingsTest, WhyShowsFormulaSourceAndInputs) {
  panel_->choose(QStringLiteral("lock.left.end"));
  settle();
  const FindingCard* card = panel_->card("lock.left.end");
  ASSERT_NE(card, nullptr);
  const QString why = card->findChild<QLabel*>(QStringLiteral("why"))->text();
  const Finding& finding = card->finding();
  EXPECT_TRUE(why.contains(QString::fromStdString(finding.trace.formula).toHtmlEscaped()));
  EXPECT_TRUE(why.contains(QString::fromStdString(finding.trace.source).toHtmlEscaped()));
  for (const TraceStep& step : finding.trace.steps)
    EXPECT_TRUE(why.contains(QString::fromStdString(step.words).toHtmlEscaped()));
  keep_picture(*panel_, QStringLiteral("findings-why"));
  expect_nothing_clipped(*panel_);
}

TEST_F(FindingsTest, OfOneStation) {
  panel_->show_station(Station::pedals);
  ASSERT_FALSE(names().empty());
  for (const FindingCard* card : panel_->shown_cards())
    EXPECT_EQ(card->finding().station, Station::pedals);
  panel_->show_station(std::nullopt);
  EXPECT_EQ(names().size(), session_.judged().findings.size());
}

TEST_F(FindingsTest, AreStaleUntilWorkedOutAgain) {
  ASSERT_TRUE(session_.set_field("drag_link.given_length_mm", "802.2").empty());
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_TRUE(card->stale());
  session_.stop_checks();
  EXPECT_FALSE(panel_->stop_button().isHidden());
  keep_picture(*panel_, QStringLiteral("findings-stopped"));
  QTest::mouseClick(&panel_->stop_button(), Qt::LeftButton);
  session_.wait_until_fresh();
  settle();
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_FALSE(card->stale());
  EXPECT_TRUE(panel_->stop_button().isHidden());
}

// A hand that drags is never held back by the panel, and what it shows meanwhile never looks fresh.
TEST_F(FindingsTest, InADragTheyFollowFadedAndAreFreshAtItsEnd) {
  const auto length = [&](double mm) {
    Result<Project> next =
        with_field(session_.project(), "drag_link.given_length_mm", std::to_string(mm));
    session_.drag_to(next ? *next : Project{});
    session_.wait_until_fresh();
  };
  const auto words = [&] { return panel_->card("link.centring")->finding().sentence; };
  const std::string at_first = words();
  session_.begin_drag(QStringLiteral("Drag"));
  for (const double mm : {795.0, 798.0, 801.0}) length(mm);
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_TRUE(card->stale());
  EXPECT_TRUE(QTest::qWaitFor([&] { return words() != at_first; }));
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_TRUE(card->stale());
  const std::string in_drag = words();
  length(802.2);
  session_.end_drag();
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_FALSE(card->stale());
  EXPECT_NE(words(), in_drag);
}

TEST_F(FindingsTest, AnOwnLimitIsOneStepAndJudges) {
  const std::string before = text_of(session_);
  panel_->choose(QStringLiteral("shaft.ripple"));
  FindingCard* card = panel_->card("shaft.ripple");
  ASSERT_NE(card, nullptr);
  QTest::mouseClick(card->limit_button(), Qt::LeftButton);
  ASSERT_NE(card->limit_form(), nullptr);
  settle();
  keep_picture(*panel_, QStringLiteral("findings-limit"));
  expect_nothing_clipped(*panel_);
  LimitForm& form = *card->limit_form();
  const auto write = [&](const char* member, const QString& text) {
    form.line(member).selectAll();
    QTest::keyClick(&form.line(member), Qt::Key_Delete);
    QTest::keyClicks(&form.line(member), text);
  };
  write("most_inner", {});
  write("most", QStringLiteral("nothing"));
  QTest::keyClick(&form.line("most"), Qt::Key_Return);
  EXPECT_FALSE(form.wrong_words().isEmpty());
  EXPECT_EQ(text_of(session_), before);
  write("most", QStringLiteral("0.001"));
  QTest::keyClick(&form.line("most"), Qt::Key_Return);
  session_.wait_until_fresh();
  const Finding* finding = finding_named(session_.judged().findings, "shaft.ripple");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->verdict, Verdict::past);
  ASSERT_NE(own_choice(session_.project(), "shaft.ripple"), nullptr);
  EXPECT_DOUBLE_EQ(*own_choice(session_.project(), "shaft.ripple")->most, 0.001);
  session_.undo();
  EXPECT_EQ(text_of(session_), before);
}

TEST_F(FindingsTest, FixedLimitsAreRefusedWithWords) {
  for (const char* name : {"steering.direction", "shaft.wander"}) {
    panel_->choose(QString::fromLatin1(name));
    FindingCard* card = panel_->card(name);
    ASSERT_NE(card, nullptr);
    QTest::mouseClick(card->limit_button(), Qt::LeftButton);
    EXPECT_EQ(card->limit_form(), nullptr) << name;
    EXPECT_FALSE(card->refusal().isEmpty()) << name;
  }
  EXPECT_FALSE(session_.can_undo());
}

TEST_F(FindingsTest, ClipsNothingAndNamesEverything) {
  expect_nothing_clipped(*panel_);
  expect_names(*panel_);
  ASSERT_TRUE(session_.set_field("sheet.unit", "inch_fraction").empty());
  session_.wait_until_fresh();
  settle();
  expect_nothing_clipped(*panel_);
  keep_picture(*panel_, QStringLiteral("findings-inch"));
  use_theme(Theme::night);
  settle();
  keep_picture(*panel_, QStringLiteral("findings-night"));
}

// Margins by hand.
Finding judged_number(double value, Limit limit) {
  Finding finding;
  finding.name = "any";
  finding.numbers.push_back({"value", value, limit.unit, "value"});
  finding.limit = std::move(limit);
  return finding;
}

TEST(Margin, IsShareOfTheLimit) {
  Limit limit;
  limit.unit = Unit::millimetre;
  limit.least = 40.0;
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(50.0, limit)), 0.25);  // 10 of 40 to spare
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(20.0, limit)), -0.5);  // 20 of 40 short
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(500.0, limit)), 1.0);  // no bar beyond its end
  limit.least.reset();
  limit.most = 25.0;
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(20.0, limit)), 0.2);
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(30.0, limit)), -0.2);
  limit.least = -25.0;
  EXPECT_DOUBLE_EQ(*margin_share(judged_number(-20.0, limit)), 0.2);  // 5 from the nearer end
}

TEST(Margin, NothingToMeasureGivesNone) {
  Limit limit;
  limit.unit = Unit::millimetre;
  EXPECT_FALSE(margin_share(judged_number(1.0, limit)));
  limit.most = 1.0;
  EXPECT_FALSE(margin_share(judged_number(std::nan(""), limit)));
  limit.unit = Unit::count;
  EXPECT_FALSE(margin_share(judged_number(2.0, limit)));
}

TEST_F(FindingsTest, SayWhyTheyCannotBeWorkedOut) {
  const std::size_t before = names().size();
  ASSERT_TRUE(session_.set_field("steering_box.output_point_mm", "[-870, 479, -10]").empty());
  session_.wait_until_fresh();
  settle();
  EXPECT_TRUE(panel_->progress_words().contains("792.9")) << panel_->progress_words().toStdString();
  EXPECT_TRUE(panel_->progress_words().contains("from before"));
  EXPECT_TRUE(panel_->stop_button().isHidden());
  EXPECT_EQ(names().size(), before);
  for (const FindingCard* card : panel_->shown_cards()) EXPECT_TRUE(card->stale());
  keep_picture(*panel_, QStringLiteral("findings-cannot"));
  expect_nothing_clipped(*panel_);

  session_.take(session_.project(), {});
  session_.wait_until_fresh();
  settle();
  EXPECT_TRUE(names().empty());
  EXPECT_TRUE(panel_->progress_words().contains("792.9"));
  EXPECT_FALSE(panel_->progress_words().contains("from before"));
  EXPECT_TRUE(panel_->stop_button().isHidden());

  session_.take(sample("tender-as-first-tacked"), {});
  session_.wait_until_fresh();
  settle();
  EXPECT_TRUE(panel_->progress_words().isEmpty());
  EXPECT_EQ(names().size(), before);
}

class OpenLimitForm : public FindingsTest {
 protected:
  void SetUp() override {
    FindingsTest::SetUp();
    for (const Finding& finding : session_.judged().findings) {
      if (!finding.limit || finding.limit->unit != Unit::millimetre || !finding.limit->least ||
          !fixed_words(*finding.limit).isEmpty())
        continue;
      limit_ = *finding.limit;
      panel_->choose(QString::fromStdString(finding.name));
      card_ = panel_->card(finding.name);
      break;
    }
    ASSERT_NE(card_, nullptr) << "no finding with a length as its limit";
    QTest::mouseClick(card_->limit_button(), Qt::LeftButton);
    form_ = card_->limit_form();
    ASSERT_NE(form_, nullptr);
  }
  Limit limit_;
  FindingCard* card_ = nullptr;
  LimitForm* form_ = nullptr;
};

TEST_F(OpenLimitForm, ReadsItsNumbersInTheUnitThatTheyWereWrittenIn) {
  Project inches = session_.project();
  auto sheet = std::make_shared<SheetSettings>();
  sheet->unit = ShownUnit::inch_decimal;
  inches.sheet = sheet;
  session_.edit("Switch unit", inches);
  session_.wait_until_fresh();
  settle();
  ASSERT_EQ(card_->limit_form(), form_);
  form_->take();
  EXPECT_TRUE(form_->wrong_words().isEmpty()) << form_->wrong_words().toStdString();
  session_.wait_until_fresh();
  const Finding* judged = finding_named(session_.judged().findings, card_->name());
  ASSERT_NE(judged, nullptr);
  ASSERT_TRUE(judged->limit && judged->limit->least);
  EXPECT_NEAR(*judged->limit->least, *limit_.least, 1e-9);
}

TEST_F(OpenLimitForm, AWrongEntryStaysWithItsReason) {
  QLineEdit& least = form_->line("least");
  least.setFocus();
  least.selectAll();
  QTest::keyClicks(&least, "about so");
  QTest::keyClick(&least, Qt::Key_Return);
  settle();
  EXPECT_TRUE(card_->is_open());
  EXPECT_EQ(card_->limit_form(), form_);
  EXPECT_FALSE(form_->wrong_words().isEmpty());
  QTest::mouseClick(form_, Qt::LeftButton, {}, QPoint(1, 1));
  QTest::keyClick(&least, Qt::Key_Up);
  EXPECT_TRUE(card_->is_open());
  EXPECT_EQ(card_->limit_form(), form_);
  QTest::keyClick(&least, Qt::Key_Escape);
  EXPECT_EQ(card_->limit_form(), nullptr);
  EXPECT_TRUE(card_->is_open());
  EXPECT_FALSE(session_.can_undo());
}

}  // namespace
}  // namespace tackbench::ui
