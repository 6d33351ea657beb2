#include "ui/windows/help_numbers.h"

#include <QCoreApplication>

#include "core/basics/wording.h"
#include "core/findings/finding_words.h"
#include "ui/desk/desk_words.h"
#include "ui/graphs/graph_choice.h"
#include "ui/look/station_title.h"
#include "ui/panels/station_numbers.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(HelpNumbers)
};

// "tilt %1" reads as "tilt ...".
QString without_places(QString words) {
  for (int i = 1; i <= 3; ++i) words.replace(QStringLiteral("%%1").arg(i), QStringLiteral("..."));
  return words;
}

}  // namespace

std::vector<HelpSection> help_numbers() {
  HelpSection tags{Texts::tr("On the tags of the stations"), {}};
  for (const StationNumberMeaning& each : station_number_meanings())
    tags.entries.push_back(
        {Texts::tr("%1: %2").arg(station_title(each.station), without_places(each.said.word)),
         each.said.meaning});
  HelpSection desk{Texts::tr("On the motion desk"), {}};
  for (const DeskWord& each : desk_words()) desk.entries.push_back(each.said);
  HelpSection graphs{Texts::tr("Graphs"), graph_meanings()};
  for (Meaning& each : graphs.entries) each.word = without_places(each.word);
  HelpSection findings{Texts::tr("Findings"), {}};
  for (const std::string_view kind : finding_kinds()) {
    const FindingWords words = finding_words(kind);
    findings.entries.push_back(
        {QString::fromStdString(capitalised(words.title)), QString::fromStdString(words.meaning)});
  }
  return {tags, desk, graphs, findings};
}

}  // namespace tackbench::ui
