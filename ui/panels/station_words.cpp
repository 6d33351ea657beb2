#include "ui/panels/station_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/basics/shown_number.h"
#include "core/findings/verdict_order.h"
#include "core/project/starting_guesses.h"
#include "core/project/starting_truck.h"
#include "ui/fields/entry_text.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(StationWords)
};

// Steering wants these; the rest of a build can do without.
bool is_wanted(Station station) {
  return station == Station::column || station == Station::steering_box ||
         station == Station::drag_link || station == Station::front_axle;
}

int missing_in(const Session& session, Station station) {
  // The last mechanism may be from before the station was begun.
  if (!has_station(session.posed().mechanism->project, station)) return 0;
  const auto& missing = session.posed().mechanism->missing;
  return static_cast<int>(std::count_if(missing.begin(), missing.end(), [&](const auto& each) {
    return station_of(each.place) == station;
  }));
}

}  // namespace

StationState station_state(const Session& session, Station station) {
  StationState state;
  state.stale = !session.judged_fresh();
  if (!has_station(session.project(), station)) {
    state.presence = is_wanted(station) ? StationPresence::not_measured : StationPresence::left_out;
    state.stale = false;
    state.words = is_wanted(station) ? Texts::tr("not measured yet") : Texts::tr("left out");
    return state;
  }
  bool any = false;
  for (const Finding& finding : session.judged().findings) {
    if (finding.station != station) continue;
    if (!any || verdict_rank(finding.verdict) < verdict_rank(state.worst))
      state.worst = finding.verdict;
    any = true;
    switch (finding.verdict) {
      case Verdict::past:
        ++state.past;
        break;
      case Verdict::close:
        ++state.close;
        break;
      case Verdict::within:
        ++state.within;
        break;
      case Verdict::not_judged:
        ++state.not_judged;
        break;
    }
  }
  const int missing = missing_in(session, station);
  const auto guesses = guesses_by_station(session.project());
  const auto guessed = guesses.find(station);
  state.guesses = guessed == guesses.end() ? 0 : guessed->second;
  if (missing > 0) {
    // Something is still to be measured: whatever was judged without it, no tick.
    if (state.worst == Verdict::within) state.worst = Verdict::not_judged;
    state.words = missing == 1 ? Texts::tr("1 thing to measure")
                               : Texts::tr("%1 things to measure").arg(missing);
  } else if (state.guesses > 0) {
    // Judged by invented figures: no tick for them.
    if (state.worst == Verdict::within) state.worst = Verdict::not_judged;
    state.words = state.guesses == 1 ? Texts::tr("1 guess to measure")
                                     : Texts::tr("%1 guesses to measure").arg(state.guesses);
  } else {
    state.words = count_words(state.past, state.close, state.within, state.not_judged);
  }
  if (missing > 0 && state.guesses > 0)
    state.words +=
        state.guesses == 1 ? Texts::tr(", 1 guess") : Texts::tr(", %1 guesses").arg(state.guesses);
  if (state.stale)
    state.words += session.cannot_work_out().empty() ? Texts::tr(", being worked out again")
                                                     : Texts::tr(", cannot be worked out");
  return state;
}

QString cannot_work_out_words(const Session& session) {
  const Problems& why = session.cannot_work_out();
  if (why.empty()) return {};
  QString words = Texts::tr("Cannot be worked out as drawn: %1.").arg(fault_words({why.front()}));
  if (why.size() > 1)
    words += QLatin1Char('\n') + Texts::tr("%n more thing(s) in the way: see the stations.")
                                     .replace("%n", QString::number(why.size() - 1));
  return words;
}

QString count_words(int past, int close, int within, int not_judged) {
  QStringList parts;
  if (past > 0) parts += Texts::tr("%1 past").arg(past);
  if (close > 0) parts += Texts::tr("%1 close").arg(close);
  if (within > 0) parts += Texts::tr("%1 within").arg(within);
  if (not_judged > 0) parts += Texts::tr("%1 not judged").arg(not_judged);
  return parts.isEmpty() ? Texts::tr("nothing judged yet") : parts.join(QStringLiteral(", "));
}

QString absent_words(const std::string& root) {
  if (root == "shaft_line")
    return Texts::tr("The shaft line is left out: the column drives the box directly.");
  if (root == "pedals") return Texts::tr("The pedals are left out: nothing is found about them.");
  if (root == "driver")
    return Texts::tr("The driver is left out: there is no seat, floor or heel point.");
  if (root == "shapes")
    return Texts::tr("No shapes are given: rails, brackets, springs, firewall.");
  return Texts::tr("Not measured yet. What waits for it is not judged.");
}

QString change_words(double inside, Unit unit, ShownUnit lengths) {
  const std::string bare = shown_bare(inside, unit, lengths);
  const bool nothing = bare.find_first_not_of("~-0.") == std::string::npos;
  if (nothing || !std::isfinite(inside)) return {};
  QString words = QString::fromStdString(bare);
  if (inside > 0.0) words.insert(words.startsWith('~') ? 1 : 0, '+');
  return words;
}

}  // namespace tackbench::ui
