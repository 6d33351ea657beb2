// why FILE FINDING: how one finding came, as one would work it out by hand.
#include <algorithm>

#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/basics/shown_number.h"
#include "core/findings/all_findings.h"
#include "core/findings/findings_json.h"
#include "core/findings/limits.h"
#include "core/project-file/file_references.h"
#include "core/project-file/near_name.h"

namespace tackbench::command_line {

namespace {

std::string quantity_lines(const std::vector<Quantity>& quantities) {
  std::string text;
  for (const Quantity& each : quantities) {
    const std::string words = each.words.empty() ? each.name : each.words;
    text += wrapped_text(words + " = " + shown_exactly(each.value, each.unit), 4, 8) + "\n";
  }
  return text;
}

// What came out, against what was wanted.
std::string answer_text(const Finding& finding, ShownUnit lengths) {
  std::string text;
  if (!finding.numbers.empty()) text += "\nResult\n" + quantity_lines(finding.numbers);
  if (finding.limit) {
    text += wrapped_text("Limit: " + limit_words(*finding.limit, lengths) + " (" +
                             source_words(*finding.limit) + ").",
                         0, 2) +
            "\n";
  }
  if (!finding.why_not_judged.empty()) {
    text += wrapped_text("Not judged: " + finding.why_not_judged, 0, 2) + "\n";
  }
  if (finding.worst_at) {
    const Controls& at = *finding.worst_at;
    text += wrapped_text("Worst at: hand wheel " + shown(at.hand_wheel, Unit::degree) +
                             ", bump left " + shown(at.bump_left, Unit::millimetre, lengths) +
                             ", bump right " + shown(at.bump_right, Unit::millimetre, lengths) +
                             ", wind-up " + shown(at.wind_up, Unit::degree) + ".",
                         0, 2) +
            "\n";
  }
  if (finding.caution) text += wrapped_text("Caution: " + *finding.caution, 0, 2) + "\n";
  return text;
}

std::string working_text(const Trace& trace) {
  std::string text = wrapped_text("Formula: " + trace.formula, 0, 2) + "\n";
  text += wrapped_text("Source:  " + trace.source, 0, 2) + "\n";
  if (!trace.inputs.empty()) text += "\nFrom\n" + quantity_lines(trace.inputs);
  int number = 0;
  for (const TraceStep& step : trace.steps) {
    text += (number == 0 ? "\nSteps\n" : "");
    text += wrapped_text(std::to_string(++number) + ". " + step.words, 2, 5) + "\n";
    if (!step.formula.empty()) text += wrapped_text(step.formula, 5, 7) + "\n";
    text += quantity_lines(step.results);
  }
  return text;
}

// The answer first: most readers want that, some the working below it.
std::string why_text(const Finding& finding, ShownUnit lengths) {
  std::string text = finding.name + ": " + verdict_word(finding.verdict) + "\n";
  text += wrapped_text(finding.sentence, 0, 0) + "\n";
  text += answer_text(finding, lengths);
  if (finding.trace.formula.empty()) return text;  // nothing was computed
  return text + "\nHow it came\n" + working_text(finding.trace);
}

Problem unknown_finding(const std::string& name, const std::vector<Finding>& findings) {
  constexpr std::size_t kNearest = 3;
  std::vector<std::string_view> known;
  known.reserve(findings.size());
  for (const Finding& finding : findings) known.emplace_back(finding.name);
  const auto near = nearest_names(name, known, kNearest);
  std::vector<std::string> others;
  for (const std::string_view each : known) {
    if (std::find(near.begin(), near.end(), each) == near.end()) others.emplace_back(each);
  }
  std::string wanted = "nearest: " + joined({near.begin(), near.end()});
  if (!others.empty()) wanted += "; others: " + joined(others);
  return {"", "", "no finding is called \"" + name + "\"", wanted};
}

}  // namespace

int why_command(const Opening& opening, const std::string& name) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  const std::vector<Finding> findings = all_findings(
      *mechanism, run_checks(*mechanism), checked_references(mechanism->project, opening.file));
  const Finding* finding = finding_named(findings, name);
  if (finding == nullptr) return refuse({unknown_finding(name, findings)}, opening.json);
  const auto& sheet = mechanism->project.sheet;
  print(opening.json ? finding_json(*finding)
                     : why_text(*finding, sheet ? sheet->unit : ShownUnit::millimetre));
  return kDone;
}

}  // namespace tackbench::command_line
