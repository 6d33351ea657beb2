// sweep FILE: a table over the lock, or over the axle's movement.
#include <functional>

#include "app/command-line/json_numbers.h"
#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/basics/member_name.h"
#include "core/basics/shown_number.h"
#include "core/checks/bump_check.h"
#include "core/checks/lock_check.h"

namespace tackbench::command_line {

namespace {

// One column of a sweep: its JSON member, its head for people, and how a row fills it.
template <class Row>
struct Column {
  std::string member;
  std::string head;
  Unit unit = Unit::number;
  std::function<std::optional<double>(const Row&)> value;  // inside unit
};

template <class Row>
void print_sweep(const std::vector<Row>& rows, const std::vector<Column<Row>>& columns,
                 const std::string& over, bool json) {
  if (json) {
    Json list = Json::array();
    for (const Row& row : rows) {
      Json each;
      for (const Column<Row>& column : columns) {
        const std::optional<double> value = column.value(row);
        each[member_name(column.member, column.unit)] =
            value ? json_number(shown_from_inside(column.unit, *value)) : Json(nullptr);
      }
      list.push_back(each);
    }
    const Json answer = {{"over", over}, {"rows", list}};
    print(answer.dump(2) + "\n");
    return;
  }
  std::vector<std::vector<std::string>> table;
  std::vector<std::string> head;
  std::vector<std::string> units;
  for (const Column<Row>& column : columns) {
    head.push_back(column.head);
    units.push_back(unit_words(column.unit));
  }
  table.push_back(head);
  table.push_back(units);
  for (const Row& row : rows) {
    std::vector<std::string> cells;
    for (const Column<Row>& column : columns) {
      const std::optional<double> value = column.value(row);
      cells.push_back(value ? shown_bare(*value, column.unit) : "-");
    }
    table.push_back(cells);
  }
  print(table_text(table));
}

std::vector<Column<LockRow>> lock_columns() {
  using Row = const LockRow&;
  return {
      {"hand_wheel", "hand wheel", Unit::degree, [](Row row) { return row.hand_wheel; }},
      {"arm", "arm", Unit::degree, [](Row row) { return row.arm; }},
      {"steer_left", "steer L", Unit::degree, [](Row row) { return row.steer_left; }},
      {"steer_right", "steer R", Unit::degree, [](Row row) { return row.steer_right; }},
      {"swivel_left", "swivel L", Unit::degree, [](Row row) { return row.swivel_left; }},
      {"swivel_right", "swivel R", Unit::degree, [](Row row) { return row.swivel_right; }},
      {"ratio", "ratio", Unit::number, [](Row row) { return row.ratio; }},
      {"ackermann", "Ackermann", Unit::percent,
       [](Row row) {
         return row.ackermann_known ? std::optional<double>(row.ackermann_percent) : std::nullopt;
       }},
      {"swing_arm_end", "swing arm", Unit::degree, [](Row row) { return row.swing_arm_end; }},
      {"swing_knuckle_end", "swing kn.", Unit::degree,
       [](Row row) { return row.swing_knuckle_end; }},
  };
}

std::vector<Column<BumpRow>> bump_columns(BumpMotion motion) {
  using Row = const BumpRow&;
  const Unit unit = motion == BumpMotion::heave ? Unit::millimetre : Unit::degree;
  const std::string at = motion == BumpMotion::heave  ? "heave"
                         : motion == BumpMotion::roll ? "roll"
                                                      : "wind_up";
  const auto solved = [](const std::function<double(Row)>& value) {
    return
        [value](Row row) { return row.solved ? std::optional<double>(value(row)) : std::nullopt; };
  };
  return {
      {at, motion == BumpMotion::wind_up ? "wind-up" : at, unit, [](Row row) { return row.at; }},
      {"steer_left", "steer L", Unit::degree, solved([](Row row) { return row.steer_left; })},
      {"steer_right", "steer R", Unit::degree, solved([](Row row) { return row.steer_right; })},
      {"swivel_left", "swivel L", Unit::degree, solved([](Row row) { return row.swivel_left; })},
      {"hand_wheel", "hand wheel", Unit::degree, [](Row row) { return row.hand_wheel; }},
  };
}

Problem not_swept(const Opening& opening, const Mechanism& mechanism, const char* what) {
  std::string missing;
  for (const MissingInput& input : mechanism.missing) {
    missing += (missing.empty() ? "" : ", ") + input.place;
  }
  return {opening.file.string(), "", std::string("there is no ") + what + " to sweep",
          missing.empty() ? "give its limits" : "still to be measured: " + missing};
}

int sweep_lock(const Opening& opening, const Mechanism& mechanism, int rows) {
  LockSettings settings;
  settings.rows_each_side = rows;
  const std::optional<LockResult> locks = check_locks(mechanism, settings);
  if (!locks) return refuse({not_swept(opening, mechanism, "steering")}, opening.json);
  print_sweep(locks->rows, lock_columns(), "lock", opening.json);
  return kDone;
}

}  // namespace

int sweep_command(const Opening& opening, SweepOver over, int rows) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  if (over == SweepOver::lock) return sweep_lock(opening, *mechanism, rows);
  BumpSettings settings;
  settings.rows_each_side = rows;
  const std::optional<BumpResult> bump = check_bump(*mechanism, settings);
  if (!bump) return refuse({not_swept(opening, *mechanism, "axle movement")}, opening.json);
  const BumpCurve& curve = over == SweepOver::heave  ? bump->heave
                           : over == SweepOver::roll ? bump->roll
                                                     : bump->wind_up;
  if (curve.rows.empty()) {
    return refuse({not_swept(opening, *mechanism, "axle movement of that kind")}, opening.json);
  }
  const char* name = over == SweepOver::heave  ? "heave"
                     : over == SweepOver::roll ? "roll"
                                               : "wind-up";
  print_sweep(curve.rows, bump_columns(curve.motion), name, opening.json);
  return kDone;
}

}  // namespace tackbench::command_line
