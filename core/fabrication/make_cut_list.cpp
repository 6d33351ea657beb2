#include "core/fabrication/make_cut_list.h"

#include "core/basics/wording.h"
#include "core/fabrication/cut_items.h"
#include "core/findings/cautions.h"
#include "core/findings/finding_words.h"

namespace tackbench {

namespace {

void add(std::vector<CutItem> more, std::vector<CutItem>& items) {
  for (CutItem& item : more) items.push_back(std::move(item));
}

// What is missing under one of these member paths, as one clause.
std::string still_missing(const Mechanism& mechanism, std::initializer_list<const char*> stations) {
  std::string words;
  for (const MissingInput& missing : mechanism.missing)
    for (const char* station : stations)
      if (missing.place.starts_with(station)) words += (words.empty() ? "" : "; ") + missing.words;
  return words.empty() ? "not measured yet" : words;
}

void add_shaft_line(const Mechanism& mechanism, const CheckResults& results, CutList& list) {
  if (results.shaft && mechanism.shaft_line) {
    const ShaftLineStation& station = mechanism.shaft_line->station;
    add(shaft_items(station, *results.shaft), list.items);
    add(support_items(station, *results.shaft), list.items);
  } else {
    list.waiting.push_back(
        "Shafts and supports: " +
        still_missing(mechanism, {"cab", "column", "shaft_line", "steering_box"}));
  }
}

void add_drag_link(const Mechanism& mechanism, const CheckResults& results, CutList& list) {
  if (!results.link || !mechanism.steering || !mechanism.project.drag_link) {
    list.waiting.push_back("Drag link, its mock-up and the stops: " +
                           still_missing(mechanism, {"steering_box", "drag_link", "front_axle"}));
    return;
  }
  add(relay_link_items(mechanism), list.items);
  const std::optional<LockResult> locks =
      results.as_ordered ? results.as_ordered->locks : std::nullopt;
  const std::optional<LinkTravel> travel =
      results.as_ordered ? results.as_ordered->link_travel : std::nullopt;
  DragLinkPart part = drag_link_part(mechanism, *results.link, locks, travel);
  if (results.as_ordered) part.clocking = wrapped(results.as_ordered->stud_clocking);
  list.items.push_back(drag_link_item(part));
  if (locks) add(stop_items(*locks), list.items);
  if (!part.sized) {
    list.waiting.emplace_back(
        "The drag link's tube, its drawing and its mock-up: give shank length, thread, engagement "
        "and lock nut of both ends and the tube");
    return;
  }
  list.items.push_back(mock_up_item(mock_up_link(part)));
  list.drag_link = std::move(part);
}

}  // namespace

CutList make_cut_list(const Mechanism& mechanism, const CheckResults& results,
                      const std::vector<Finding>& findings) {
  CutList list;
  list.project = mechanism.project.name;
  if (mechanism.project.sheet) list.projection = mechanism.project.sheet->projection;
  add_shaft_line(mechanism, results, list);
  add_drag_link(mechanism, results, list);
  for (const Finding& finding : findings) {
    if (finding.verdict == Verdict::past)
      list.past.push_back({finding.name, in_plain_words(mechanism.project, finding.sentence)});
  }
  for (std::string& words : list.waiting) words = in_plain_words(mechanism.project, words);
  list.cautions = caution_sentences();
  for (const std::string& phrase : not_checked()) list.not_checked.push_back(capitalised(phrase));
  return list;
}

}  // namespace tackbench
