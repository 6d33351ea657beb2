// A finding: one answer with its numbers, its limit, its verdict, where it is worst and how it
// came.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/basics/units.h"
#include "core/mechanism/controls.h"
#include "core/project/limits.h"
#include "core/project/station.h"

namespace tackbench {

enum class Verdict { within, close, past, not_judged };
const char* verdict_word(Verdict verdict);  // "within", "close", "past", "not judged"

// A named number in inside units (rad, mm); `unit` says how it is shown.
struct Quantity {
  std::string name;  // stable, without unit suffix: "turns_left"
  double value = 0.0;
  Unit unit = Unit::number;
  std::string words;  // for people: "turns to the left lock"
};

// A limit with its source. least/most are hard; the inner values start "close". Inside units.
struct Limit {
  std::string name;  // as in resources/limits.json
  Unit unit = Unit::number;
  std::optional<double> least;
  std::optional<double> most;
  std::optional<double> least_inner;
  std::optional<double> most_inner;
  std::string source;  // published text, "common practice", "maker's sheet" ...
  Standing standing = Standing::builder;
  bool chosen = false;   // the project's own choice, not the shipped or the part's value
  std::string given_by;  // the member that gives a part's numbers; empty when none does
  std::string words;     // "at most 12.5 %"
  std::string wanted;    // said instead of the numbers where the answer is yes or no: "none"
};

// Past beyond least/most; close beyond an inner value but not beyond the limit; without an inner
// value there is no close; not judged without least and most or for a value that is not finite.
Verdict judge(double value, const Limit& limit);

// How a finding came, so that it can be followed by hand.
struct TraceStep {
  std::string words;    // "hand-wheel turn at the left lock"
  std::string formula;  // "turns = angle / 360"
  std::vector<Quantity> results;
};
struct Trace {
  std::string formula;  // the governing formula or rule, in words or symbols
  std::string source;   // where it comes from
  std::vector<Quantity> inputs;
  std::vector<TraceStep> steps;
};

struct Finding {
  std::string name;                         // stable: "lock.left.first", "shaft.wander"
  Station station = Station::steering_box;  // which it hangs on
  std::vector<Quantity> numbers;            // the judged number first
  std::optional<Limit> limit;
  Verdict verdict = Verdict::not_judged;
  std::string why_not_judged;  // when it is not judged
  std::optional<Controls> worst_at;
  std::string sentence;  // one plain sentence
  std::optional<std::string> caution;
  Trace trace;
};

}  // namespace tackbench
