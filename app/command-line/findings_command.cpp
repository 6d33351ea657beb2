// findings FILE: every finding, worst first.
#include <array>

#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/basics/shown_number.h"
#include "core/findings/all_findings.h"
#include "core/findings/cautions.h"
#include "core/findings/findings_json.h"
#include "core/findings/limits.h"
#include "core/project-file/file_references.h"
#include "core/project/unknown_members.h"

namespace tackbench::command_line {

namespace {

ShownUnit lengths_of(const Project& project) {
  return project.sheet ? project.sheet->unit : ShownUnit::millimetre;
}

// "ripple 3.0 %; wanted at most 12.5 % (common practice: ...)", "free ways 2; wanted none (...)".
std::string judged_line(const Finding& finding, ShownUnit lengths) {
  if (finding.verdict == Verdict::not_judged) return finding.why_not_judged;
  std::string line;
  if (!finding.numbers.empty()) {
    const Quantity& judged = finding.numbers.front();
    line = judged.words + " " + shown(judged.value, judged.unit, lengths);
  }
  if (finding.limit) {
    line += "; wanted " + limit_words(*finding.limit, lengths);
    line += " (" + source_words(*finding.limit) + ")";
  }
  return line;
}

std::string group_head(Verdict verdict, std::size_t count) {
  const char* words = verdict_word(verdict);
  return std::string(words) + " (" + std::to_string(count) + ")";
}

std::string finding_text(const Finding& finding, ShownUnit lengths) {
  std::string text = wrapped_text(finding.sentence, 2, 2) + "\n";
  const std::string judged = judged_line(finding, lengths);
  text +=
      wrapped_text("[" + finding.name + "]" + (judged.empty() ? "" : " " + judged), 6, 6) + "\n";
  if (finding.caution) text += wrapped_text("Caution: " + *finding.caution, 6, 6) + "\n";
  return text;
}

std::string findings_text(const Opening& opening, const Project& project,
                          const std::vector<Finding>& findings) {
  const ShownUnit lengths = lengths_of(project);
  std::string text = (project.name.empty() ? std::string("Unnamed project") : project.name) + "\n";
  text += opening.file.string() + "\n";
  for (const std::string& set : opening.sets) text += "tried with " + set + "\n";
  constexpr std::array kOrder = {Verdict::past, Verdict::close, Verdict::not_judged,
                                 Verdict::within};
  std::string tally;
  for (const Verdict verdict : kOrder) {
    std::string group;
    std::size_t count = 0;
    for (const Finding& finding : findings) {
      if (finding.verdict != verdict) continue;
      ++count;
      group += finding_text(finding, lengths);
    }
    if (count > 0) text += "\n" + group_head(verdict, count) + "\n" + group;
    tally += (tally.empty() ? "" : ", ") + std::to_string(count) + " " + verdict_word(verdict);
  }
  text += "\n" + tally + ".\n\n";
  std::string list;
  for (const std::string& each : not_checked()) list += (list.empty() ? "" : ", ") + each;
  text += wrapped_text("Not checked: " + list + ".", 0, 0) + "\n";
  for (const std::string& sentence : caution_sentences()) {
    text += wrapped_text(sentence, 0, 0) + "\n";
  }
  text += "How a finding came about: " + as_typed(opening.program) + " why " +
          as_typed(opening.file.string()) + " NAME\n";
  return text;
}

}  // namespace

int findings_command(const Opening& opening) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  const std::vector<Finding> findings = all_findings(
      *mechanism, run_checks(*mechanism), checked_references(mechanism->project, opening.file));
  print(opening.json ? findings_json(findings, unknown_member_places(mechanism->project))
                     : findings_text(opening, mechanism->project, findings));
  const bool past = !findings.empty() && findings.front().verdict == Verdict::past;
  return past ? kPastItsLimit : kDone;
}

}  // namespace tackbench::command_line
