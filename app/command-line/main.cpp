// tackbench-cli: arguments in, one command run, its exit code out.
#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>
#include <map>
#include <optional>
#include <sstream>

#include "app/command-line/commands.h"
#include "app/command-line/page.h"
#include "core/basics/units.h"
#include "core/project-file/near_name.h"

namespace tackbench::command_line {
namespace {

// Numbers parted by commas: "10,0,-5". CLI11 splits and checks them.
using Numbers = std::vector<double>;

struct Arguments {
  Opening opening;
  std::string finding;
  double hand_wheel_deg = 0.0;
  double wind_up_deg = 0.0;
  PoseSettings pose;
  Numbers axle_pose;
  Numbers cab_shake;
  std::vector<std::string> pedals;
  SweepOver over = SweepOver::lock;
  int rows = 12;
  double within_mm = 150.0;
  std::filesystem::path into;
  std::string sample = "bare-start";
};

// CLI::Range lets "nan" pass.
CLI::Validator number_within(double least, double most) {
  const auto check = [least, most](const std::string& text) {
    double value = 0.0;
    if (CLI::detail::lexical_cast(text, value) && value >= least && value <= most) {
      return std::string();
    }
    std::ostringstream fault;
    fault << '"' << text << "\" is not a number from " << least << " to " << most;
    return fault.str();
  };
  return {check, "", "number_within"};
}

void add_opening(CLI::App& command, Arguments& arguments) {
  command.add_option("FILE", arguments.opening.file, "the project, *.tack")->required();
  command
      .add_option("--set", arguments.opening.sets,
                  "try a value: path=value, as in drag_link.given_length_mm=812; may be repeated; "
                  "the file is not changed")
      ->take_all()
      ->allow_extra_args(false);
  command.add_flag("--json", arguments.opening.json, "answer in JSON");
}

// "brake=0.5".
std::string fault_in_press(const std::string& text, std::vector<PedalPress>& presses) {
  const std::size_t sign = text.find('=');
  PedalPress press;
  if (sign != std::string::npos && sign > 0 &&
      CLI::detail::lexical_cast(text.substr(sign + 1), press.fraction) && press.fraction >= 0.0 &&
      press.fraction <= 1.0) {
    press.name = text.substr(0, sign);
    presses.push_back(press);
    return "";
  }
  return "--pedal: \"" + text + "\" is not NAME=FRACTION with a fraction from 0 to 1";
}

// One setting of the controls, for commands that look at one pose.
void add_controls(CLI::App& command, Arguments& arguments) {
  constexpr double kMostTurn = 3600.0;  // degrees
  command
      .add_option("--hand-wheel-deg", arguments.hand_wheel_deg, "turn from straight, left positive")
      ->check(number_within(-kMostTurn, kMostTurn));
  constexpr double kMostBump = 2000.0;  // mm
  CLI::Option* left = command
                          .add_option("--bump-left-mm", arguments.pose.controls.bump_left,
                                      "rise of the unsteered left wheel")
                          ->check(number_within(-kMostBump, kMostBump));
  CLI::Option* right =
      command
          .add_option("--bump-right-mm", arguments.pose.controls.bump_right, "of the right wheel")
          ->check(number_within(-kMostBump, kMostBump));
  CLI::Option* wind_up = command
                             .add_option("--wind-up-deg", arguments.wind_up_deg,
                                         "the axle's turn under the brake, top forward positive")
                             ->check(number_within(-45.0, 45.0));
  command
      .add_option("--axle-pose", arguments.axle_pose,
                  "dx,dy,dz,roll,pitch,yaw of the axle from ride height, mm and degrees, in place "
                  "of bump and wind-up")
      ->delimiter(',')
      ->expected(6)
      ->check(number_within(-kMostBump, kMostBump))
      ->excludes(left)
      ->excludes(right)
      ->excludes(wind_up);
  command
      .add_option("--cab-shake-mm", arguments.cab_shake, "x,y,z of the cab from its drawn place")
      ->delimiter(',')
      ->expected(3)
      ->check(number_within(-500.0, 500.0));
  command
      .add_option("--pedal", arguments.pedals,
                  "NAME=FRACTION of a pedal's full travel, 0 to 1; may be repeated")
      ->take_all()
      ->allow_extra_args(false);
}

void add_commands(CLI::App& program, Arguments& arguments) {
  CLI::App* findings =
      program.add_subcommand("findings", "every finding, worst first; exit 1 when one is past");
  add_opening(*findings, arguments);

  CLI::App* why = program.add_subcommand("why", "how one finding came, to follow by hand");
  add_opening(*why, arguments);
  why->add_option("FINDING", arguments.finding, "its name as printed by findings")->required();

  CLI::App* pose = program.add_subcommand("pose", "where everything is for one set of controls");
  add_opening(*pose, arguments);
  add_controls(*pose, arguments);

  CLI::App* gaps = program.add_subcommand(
      "gaps", "gaps between moving parts and what they could touch, in that one position");
  add_opening(*gaps, arguments);
  add_controls(*gaps, arguments);
  gaps->add_option("--within-mm", arguments.within_mm, "pairs up to this gap, 150 when not given")
      ->check(number_within(0.0, 1e5));

  CLI::App* sweep = program.add_subcommand("sweep", "a table over lock, heave, roll or wind-up");
  add_opening(*sweep, arguments);
  const std::map<std::string, SweepOver> overs = {{"lock", SweepOver::lock},
                                                  {"heave", SweepOver::heave},
                                                  {"roll", SweepOver::roll},
                                                  {"wind-up", SweepOver::wind_up}};
  sweep->add_option("--over", arguments.over, "lock, heave, roll or wind-up; lock when not given")
      ->transform(CLI::CheckedTransformer(overs).description(""));
  sweep->add_option("--rows", arguments.rows, "rows each side of the middle, 12 when not given")
      ->check(number_within(1, 500));

  CLI::App* cut_list = program.add_subcommand("cut-list", "the parts to make, dimensioned");
  add_opening(*cut_list, arguments);
  cut_list->add_option("--into", arguments.into, "folder for its text, CSV and drawing")
      ->required();

  CLI::App* fresh = program.add_subcommand("new", "a new project file, from a sample if wanted");
  fresh->add_option("FILE", arguments.opening.file, "the file to make")->required();
  fresh->add_option("--from", arguments.sample, "one of: " + joined(sample_names()));
  fresh->add_flag("--json", arguments.opening.json, "answer in JSON");

  CLI::App* schema = program.add_subcommand("schema", "the JSON Schema of project files");
  schema->add_flag("--json", arguments.opening.json, "the schema is JSON in any case");
}

// pose and gaps.
int run_at_controls(const std::string& name, Arguments& arguments) {
  Controls& controls = arguments.pose.controls;
  controls.hand_wheel = radians_from_degrees(arguments.hand_wheel_deg);
  controls.wind_up = radians_from_degrees(arguments.wind_up_deg);
  if (const Numbers& n = arguments.axle_pose; !n.empty()) {
    controls.axle_pose = AxlePose{n[0],
                                  n[1],
                                  n[2],
                                  radians_from_degrees(n[3]),
                                  radians_from_degrees(n[4]),
                                  radians_from_degrees(n[5])};
  }
  if (const Numbers& n = arguments.cab_shake; !n.empty()) controls.cab_shake = {n[0], n[1], n[2]};
  for (const std::string& press : arguments.pedals) {
    const std::string fault = fault_in_press(press, arguments.pose.presses);
    if (!fault.empty()) {
      std::fputs((fault + "\n").c_str(), stderr);
      return kBadInput;
    }
  }
  if (name == "gaps") return gaps_command(arguments.opening, arguments.pose, arguments.within_mm);
  return pose_command(arguments.opening, arguments.pose);
}

int run_command(const std::string& name, Arguments& arguments) {
  if (name == "findings") return findings_command(arguments.opening);
  if (name == "why") return why_command(arguments.opening, arguments.finding);
  if (name == "pose" || name == "gaps") return run_at_controls(name, arguments);
  if (name == "sweep") return sweep_command(arguments.opening, arguments.over, arguments.rows);
  if (name == "cut-list") return cut_list_command(arguments.opening, arguments.into);
  if (name == "new") return new_command(arguments.opening, arguments.sample);
  return schema_command();
}

// The first word has to be a command; CLI11 would only say that one is missing.
std::optional<std::string> fault_in_command(const CLI::App& program, const std::string& word) {
  if (word.empty() || word.starts_with("-")) return std::nullopt;
  std::vector<std::string> names;
  for (const CLI::App* command : program.get_subcommands({})) {
    if (command->get_name() == word) return std::nullopt;
    names.push_back(command->get_name());
  }
  const auto meant = near_name(word, {names.begin(), names.end()});
  return "there is no command \"" + word + "\"; " +
         (meant ? "did you mean " + std::string(*meant) + "?" : "give one of: " + joined(names));
}

int run(int count, char** words) {
  Arguments arguments;
  arguments.opening.program = count > 0 ? words[0] : "tackbench-cli";
  CLI::App program(
      "Tackbench: solves a set-back cab's steering, shaft line and pedals from a project file.",
      arguments.opening.program);
  program.require_subcommand(1);
  program.footer(
      "Exit codes: 0 done and nothing past its limit, 1 something past (findings only),\n"
      "2 bad input or use, 3 a fault of the program itself.\n"
      "It computes geometry and approves nothing.");
  add_commands(program, arguments);
  if (count > 1) {
    if (const auto fault = fault_in_command(program, words[1])) {
      std::fputs((*fault + "\n").c_str(), stderr);
      return kBadInput;
    }
  }
  try {
    program.parse(count, words);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? kDone : kBadInput;
  }
  return run_command(program.get_subcommands().front()->get_name(), arguments);
}

}  // namespace
}  // namespace tackbench::command_line

int main(int count, char** words) {
  using tackbench::command_line::kInternal;
  try {
    const int code = tackbench::command_line::run(count, words);
    if (std::fflush(stdout) != 0) {
      std::fputs("The answer could not be written out.\n", stderr);
      return kInternal;
    }
    return code;
  } catch (const std::exception& error) {
    std::fprintf(stderr, "A fault of the program itself: %s\n", error.what());
  } catch (...) {
    std::fputs("A fault of the program itself.\n", stderr);
  }
  return kInternal;
}
