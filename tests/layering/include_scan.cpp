#include "tests/layering/include_scan.h"

#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace tackbench::layering {
namespace {

using Rooms = std::set<std::string, std::less<>>;

// The arrows of core/: each room with every room that it may see, besides itself.
const std::map<std::string, Rooms, std::less<>>& rooms_seen_by() {
  static const std::map<std::string, Rooms, std::less<>> table = [] {
    const auto with = [](Rooms rooms, const Rooms& more) {
      rooms.insert(more.begin(), more.end());
      return rooms;
    };
    const Rooms to_geometry = {"basics", "geometry"};
    const Rooms to_project = with(to_geometry, {"project"});
    const Rooms to_mechanism = with(to_project, {"mechanism"});
    const Rooms to_people = with(to_mechanism, {"people"});
    const Rooms to_clearance = with(to_people, {"clearance"});
    const Rooms to_checks = with(to_clearance, {"checks"});
    const Rooms to_findings = with(to_checks, {"findings"});
    return std::map<std::string, Rooms, std::less<>>{
        {"basics", {}},           {"geometry", {"basics"}},
        {"project", to_geometry}, {"project-file", to_project},
        {"survey", to_project},   {"mechanism", to_project},
        {"people", to_mechanism}, {"drawing", to_mechanism},
        {"scene", to_mechanism},  {"clearance", to_mechanism},
        {"checks", to_clearance}, {"findings", to_checks},
        {"what-if", to_findings}, {"fabrication", with(to_findings, {"drawing", "scene"})},
        {"runner", {"basics"}},
    };
  }();
  return table;
}

// The rooms of ui/: each with the other ui rooms that it may see. Every one sees the core.
const std::map<std::string, Rooms, std::less<>>& ui_rooms_seen_by() {
  static const std::map<std::string, Rooms, std::less<>> table{
      {"session", {}},
      {"look", {}},
      {"motion", {"session"}},
      {"sheet", {"session", "look", "motion"}},
      {"space", {"session", "look", "motion"}},
      {"fields", {"session", "look"}},
      {"panels", {"session", "look", "fields"}},
      {"desk", {"session", "look", "motion", "fields"}},
      {"graphs", {"session", "look", "fields"}},
      {"windows",
       {"session", "look", "motion", "sheet", "space", "fields", "panels", "desk", "graphs"}},
  };
  return table;
}

// "core/basics/units.h" is in top folder "core" and room "basics"; a file right under core/ has no
// room.
struct Home {
  std::string top;
  std::string room;
};

Home home_of(std::string_view path) {
  Home home;
  const auto first = path.find('/');
  if (first == std::string_view::npos) return home;
  home.top = path.substr(0, first);
  const auto second = path.find('/', first + 1);
  if (second != std::string_view::npos) home.room = path.substr(first + 1, second - first - 1);
  return home;
}

bool is_qt(std::string_view target) {
  return target.size() > 1 && target[0] == 'Q' &&
         (std::string_view("ABCDEFGHIJKLMNOPQRSTUVWXYZ").find(target[1]) !=
              std::string_view::npos ||
          target.starts_with("Qt"));
}

std::optional<std::string> core_fault(const Home& from, const Include& include) {
  const auto row = rooms_seen_by().find(from.room);
  if (row == rooms_seen_by().end()) return "core/" + from.room + " is not in the table of rooms";
  if (is_qt(include.target)) return "the core knows no Qt";
  if (!include.quoted) return std::nullopt;
  const Home to = home_of(include.target);
  if (to.top != "core") return "core may not see " + to.top;
  if (to.room == from.room || row->second.contains(to.room)) return std::nullopt;
  return from.room + " may not see " + to.room;
}

std::optional<std::string> ui_fault(const Home& from, const Include& include) {
  const auto row = ui_rooms_seen_by().find(from.room);
  if (row == ui_rooms_seen_by().end()) return "ui/" + from.room + " is not in the table of rooms";
  if (!include.quoted) return std::nullopt;
  const Home to = home_of(include.target);
  if (to.top == "core" || (to.top == "ui" && to.room == from.room)) return std::nullopt;
  if (to.top == "ui" && row->second.contains(to.room)) return std::nullopt;
  return from.room + " may not see " + (to.top == "ui" ? to.room : to.top);
}

std::optional<std::string> reason_against(const Include& include) {
  // What moc makes of a source of its own stands beside no path.
  const std::string own_moc =
      include.file.substr(include.file.rfind('/') + 1,
                          include.file.rfind('.') - 1 - include.file.rfind('/')) +
      ".moc";
  if (include.quoted && include.target == own_moc) return std::nullopt;
  if (include.quoted && include.target.find('/') == std::string::npos)
    return "write the path from the top";
  const Home from = home_of(include.file);
  if (from.top == "core") return core_fault(from, include);
  if (from.top == "ui") return ui_fault(from, include);
  if (!include.quoted) {
    if (from.top != "ui" && from.top != "tests" && is_qt(include.target) &&
        !include.file.starts_with("app/desktop/"))
      return "Qt belongs to ui and app/desktop";
    return std::nullopt;
  }
  const Home to = home_of(include.target);
  if (to.top == "app" && from.top != "app") return "nothing sees app";
  if (to.top == "tests" && from.top != "tests") return "nothing but tests sees tests";
  return std::nullopt;
}

}  // namespace

std::vector<Include> includes_in(std::string_view file, std::string_view text) {
  static const std::regex pattern(R"re(^\s*#\s*include\s*(["<])([^">]+)[">].*)re");
  std::vector<Include> found;
  std::istringstream lines{std::string(text)};
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    std::smatch match;
    if (std::regex_match(line, match, pattern))
      found.push_back({std::string(file), number, match[2], match[1] == "\""});
  }
  return found;
}

std::optional<std::string> fault_of(const Include& include) {
  const auto reason = reason_against(include);
  if (!reason) return std::nullopt;
  return include.file + ":" + std::to_string(include.line) + ": \"" + include.target +
         "\": " + *reason;
}

}  // namespace tackbench::layering
