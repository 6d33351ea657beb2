// What the window says: no raw names of members and findings, and a meaning in Help for every
// number and word of its own.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTextBrowser>
#include <QTextDocumentFragment>
#include <map>
#include <set>

#include "core/findings/finding_words.h"
#include "tests/ui/panels/panel_support.h"
#include "ui/desk/desk_words.h"
#include "ui/graphs/graph_choice.h"
#include "ui/motion/shown_motion.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/station_numbers.h"
#include "ui/space/loose_card.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/glossary.h"
#include "ui/windows/help_dialog.h"
#include "ui/windows/help_numbers.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

QString plain(const QString& text) {
  return Qt::mightBeRichText(text) ? QTextDocumentFragment::fromHtml(text).toPlainText() : text;
}

QStringList said_by(const QWidget& window) {
  QStringList all;
  for (const QWidget* each : window.findChildren<QWidget*>()) {
    all << each->toolTip() << each->accessibleName() << each->accessibleDescription();
    if (const auto* label = qobject_cast<const QLabel*>(each)) all << label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(each)) all << button->text();
    if (const auto* text = qobject_cast<const QTextBrowser*>(each)) all << text->toPlainText();
    if (const auto* choice = qobject_cast<const QComboBox*>(each))
      for (int i = 0; i < choice->count(); ++i) all << choice->itemText(i);
  }
  all.removeAll({});
  return all;
}

// "shaft_line.joints[1].angle_limit_deg", "pedal.brake.full_stroke", "swing_limit_deg".
QString raw_name_in(const QString& words) {
  static const QRegularExpression raw(
      R"(\b[a-z][a-z_]*(\[[^\]]*\])?\.[a-z_]{2,}[a-z_.\[\]0-9]*|\b[a-z_]+_(mm|deg)\b)");
  auto each = raw.globalMatch(plain(words));
  while (each.hasNext()) {
    const QString found = each.next().captured();
    if (!found.endsWith(".tack")) return found;
  }
  return {};
}

class WindowWords : public testing::TestWithParam<const char*> {
 protected:
  WindowWords() : window_(folder_.path().toStdString()) {
    window_.setAttribute(Qt::WA_DeleteOnClose, false);
    window_.open_sample(GetParam());
    window_.show();
    window_.session().wait_until_fresh();
    settle();
  }

  QTemporaryDir folder_;
  BenchWindow window_;
};

TEST_P(WindowWords, SayNoRawNames) {
  std::set<QString> raw;
  const auto look = [&] {
    for (const QString& words : said_by(window_))
      if (const QString name = raw_name_in(words); !name.isEmpty())
        raw.insert(name + " in: " + plain(words).left(200));
  };
  for (const SidePage page :
       {SidePage::station, SidePage::graphs, SidePage::cut_list, SidePage::findings}) {
    window_.side().show_page(page);
    settle();
    look();
  }
  for (const Station station : kStations) {
    window_.side().show_station(station);
    settle();
    look();
  }
  window_.side().show_page(SidePage::findings);
  const std::vector<Finding> findings = window_.session().judged().findings;
  ASSERT_FALSE(findings.empty());
  for (const Finding& finding : findings) {
    window_.side().findings().choose(QString::fromStdString(finding.name));
    window_.session().wait_until_fresh();
    settle();
    look();
  }
  for (const QString& each : raw) ADD_FAILURE() << each.toStdString();
}

bool is_in_help(const QString& meaning) {
  for (const HelpSection& section : help_numbers())
    for (const Meaning& each : section.entries)
      if (each.meaning == meaning) return true;
  return false;
}

TEST_P(WindowWords, AreExplainedInHelp) {
  const auto& truck = window_.session().posed();
  for (const GraphChoice& choice : graph_choices(*truck.mechanism)) {
    const QString& meaning = graph_meaning(choice.kind);
    EXPECT_TRUE(is_in_help(meaning));
    // The title that the graph shows is the one that Help explains.
    const QString title = graph_words(choice, *truck.mechanism).title;
    bool found = false;
    for (const Meaning& each : graph_meanings())
      found = found || (each.meaning == meaning &&
                        title.startsWith(each.word.section(QStringLiteral("%1"), 0, 0)));
    EXPECT_TRUE(found) << title.toStdString();
  }
  for (const Finding& finding : window_.session().judged().findings)
    EXPECT_TRUE(is_in_help(QString::fromStdString(finding_words(finding.name).meaning)))
        << finding.name;
  for (const DeskWord& each : desk_words()) EXPECT_TRUE(is_in_help(each.said.meaning));
}

// Every number on a tag reads like one of those that Help explains.
TEST_P(WindowWords, NumbersOnTagsAreExplained) {
  std::map<Station, std::vector<QRegularExpression>> known;
  for (const StationNumberMeaning& each : station_number_meanings()) {
    EXPECT_TRUE(is_in_help(each.said.meaning)) << each.said.word.toStdString();
    QString pattern = QRegularExpression::escape(each.said.word);
    for (const char* place : {"\\%1", "\\%2"})
      pattern.replace(QLatin1String(place),
                      QStringLiteral(R"(~?[+\-]?[0-9][0-9./\- ]*(mm|in|\x{b0})?)"));
    known[each.station].emplace_back(QRegularExpression::anchoredPattern(pattern));
    EXPECT_TRUE(known[each.station].back().isValid());
  }
  const auto look = [&] {
    for (const Station station : kStations) {
      const StationNumbers numbers = station_numbers(window_.session(), station);
      for (const QString& words : {numbers.first, numbers.second}) {
        if (words.isEmpty()) continue;
        const auto& own = known[station];
        const bool found = std::any_of(
            own.begin(), own.end(), [&](const auto& each) { return each.match(words).hasMatch(); });
        EXPECT_TRUE(found) << words.toStdString();
      }
    }
  };
  look();
  window_.set_shown_unit(ShownUnit::inch_fraction);
  if (window_.session().project().drag_link)
    window_.session().set_field("drag_link.knuckle_ball_mm.x", "-140");
  window_.session().wait_until_fresh();
  look();
}

INSTANTIATE_TEST_SUITE_P(Samples, WindowWords,
                         testing::Values("tender-as-first-tacked", "tender-sorted", "timber-wagon",
                                         "bare-start"));

// Words of desk, graphs and view in space are in the glossary, but for everyday ones.
TEST(Glossary, HasTheWordsOfDeskGraphsAndViewInSpace) {
  const std::set<QString> everyday{
      "fit",    "larger",   "hide",   "follow", "a",     "above",  "across", "along",    "and",
      "angle",  "angles",   "back",   "best",   "both",  "by",     "corner", "degree",   "drawn",
      "fold",   "from",     "front",  "hand",   "held",  "how",    "in",     "input",    "is",
      "itself", "left",     "look",   "more",   "of",    "one",    "over",   "per",      "place",
      "play",   "positive", "ratio",  "right",  "road",  "round",  "seen",   "straight", "the",
      "to",     "turn",     "unfold", "up",     "wheel", "wheels", "curves", "at",       "its",
      "travel", "down",     "stop",   "rest",   "curve", "than",   "desk",   "motion",   "cab",
      "shaft",  "outer",    "inner",  "other"};
  QStringList known;
  for (const GlossaryWord& each : glossary())
    known += (each.word + ", " + each.variants)
                 .toLower()
                 .split(QRegularExpression("[^a-z\\-]+"), Qt::SkipEmptyParts);
  QStringList said;
  for (const DeskWord& each : desk_words()) said << each.said.word;
  const Project tender = sample("tender-sorted");
  const Result<Mechanism> mechanism = compile(tender);
  ASSERT_TRUE(mechanism.ok());
  for (const GraphChoice& choice : graph_choices(*mechanism)) {
    const GraphWords words = graph_words(choice, *mechanism);
    said << words.title << words.across.words << words.up.words << words.held;
    for (const Curve& curve : graph_curves(choice, *mechanism, control_reach(*mechanism, nullptr)))
      said << QString::fromStdString(curve.words);
  }
  Session session;
  ShownMotion motion(session);
  QWidget sheet;
  const LooseCard space(session, motion, &sheet);
  int buttons = 0;
  for (const QAbstractButton* button : space.findChildren<QAbstractButton*>()) {
    said << button->text();
    ++buttons;
  }
  EXPECT_GT(buttons, 6);
  std::set<QString> missing;
  for (const QString& words : said)
    for (QString word :
         words.toLower().split(QRegularExpression("[^a-z\\-]+"), Qt::SkipEmptyParts)) {
      if (everyday.count(word) > 0 || known.contains(word)) continue;
      if (word.endsWith('s') && known.contains(word.chopped(1))) continue;
      missing.insert(word);
    }
  for (const QString& word : missing) ADD_FAILURE() << word.toStdString();
}

TEST(Glossary, IsInOrderAndWhole) {
  QString before;
  std::set<QString> words;
  for (const GlossaryWord& each : glossary()) {
    EXPECT_LT(QString::localeAwareCompare(before, each.word.toLower()), 0)
        << each.word.toStdString();
    before = each.word.toLower();
    EXPECT_GT(each.meaning.size(), 20) << each.word.toStdString();
    EXPECT_TRUE(words.insert(before).second);
  }
  HelpDialog help(HelpPage::numbers);
  const QString text = help.findChild<QTextBrowser*>()->toPlainText();
  for (const HelpSection& section : help_numbers()) {
    EXPECT_TRUE(text.contains(section.heading));
    EXPECT_FALSE(section.entries.empty());
    for (const Meaning& each : section.entries)
      EXPECT_TRUE(text.contains(each.meaning)) << each.word.toStdString();
  }
  EXPECT_TRUE(raw_name_in(text).isEmpty()) << raw_name_in(text).toStdString();
  EXPECT_FALSE(text.contains("%1"));
}

}  // namespace
}  // namespace tackbench::ui
