#include "core/basics/wording.h"
#include "core/findings/build_finding.h"
#include "core/findings/builders.h"

namespace tackbench {

namespace {

struct StationPrefix {
  const char* prefix;
  Station station;
};
constexpr StationPrefix kStationOfPlace[] = {
    {"cab", Station::column},
    {"column", Station::column},
    {"shaft_line", Station::shaft_line},
    {"steering_box", Station::steering_box},
    {"drag_link", Station::drag_link},
    {"front_axle", Station::front_axle},
    {"pedals", Station::pedals},
    {"driver", Station::driver},
};

Station station_of(const std::string& place) {
  for (const StationPrefix& each : kStationOfPlace)
    if (place.starts_with(each.prefix)) return each.station;
  return Station::shapes;
}

}  // namespace

void add_file_findings(const std::vector<CheckedReference>& references, Findings& findings) {
  for (const CheckedReference& each : references) {
    if (each.state == ReferenceState::present) continue;
    const bool changed = each.state == ReferenceState::changed;
    Finding finding = not_yet("file." + each.place, station_of(each.place),
                              say(changed ? "not_judged.file_changed" : "not_judged.file_missing"));
    finding.sentence = say(changed ? "file.changed" : "file.missing", {{"file", each.path}});
    findings.push_back(std::move(finding));
  }
}

void add_missing_findings(const Mechanism& mechanism, Findings& findings) {
  for (const MissingInput& missing : mechanism.missing) {
    Finding finding = not_yet("missing." + missing.place, station_of(missing.place), missing.words);
    finding.why_not_judged = say("not_judged.not_measured");
    findings.push_back(std::move(finding));
  }
}

}  // namespace tackbench
