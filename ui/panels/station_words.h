// What is said of a station in a few words: on its tag, on its sheet.
#pragma once

#include <QString>
#include <optional>

#include "core/findings/finding.h"
#include "core/project/station.h"
#include "ui/session/session.h"

namespace tackbench::ui {

enum class StationPresence {
  present,
  not_measured,  // the build needs it
  left_out,      // the build can do without it
};

struct StationState {
  StationPresence presence = StationPresence::present;
  Verdict worst = Verdict::not_judged;
  bool stale = false;  // the verdict is from before the last edit
  int past = 0;        // of its findings
  int close = 0;
  int within = 0;
  int not_judged = 0;
  int guesses = 0;  // values that the program put in when it was begun
  QString words;    // "2 past, 1 close, 4 within"; "not measured yet"; "left out"
};

StationState station_state(const Session& session, Station station);

// Why a station is not there, and what follows, for its empty sheet. By its member name.
QString absent_words(const std::string& root);

// Why the project as it stands cannot be worked out, as sentences; empty while it can.
QString cannot_work_out_words(const Session& session);

// "7 past, 3 close, 19 within, 12 not judged"; what there is none of is left out.
QString count_words(int past, int close, int within, int not_judged);

// "+3.1", "-0.4", without the unit; empty when it is too small to show.
QString change_words(double inside, Unit unit, ShownUnit lengths);

}  // namespace tackbench::ui
