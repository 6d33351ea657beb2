// The commands of tackbench-cli. Each writes its answer to standard output and returns the exit
// code; faults in the file come back as exit code 2 with every fault on standard error (or, with
// JSON asked for, as a JSON object on standard output).
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/mechanism/controls.h"
#include "core/project/project.h"

namespace tackbench::command_line {

inline constexpr int kDone = 0;
inline constexpr int kPastItsLimit = 1;
inline constexpr int kBadInput = 2;
inline constexpr int kInternal = 3;

// What every command that opens a project takes.
struct Opening {
  std::string program;  // as it was called: hints can be typed as they stand
  std::filesystem::path file;
  std::vector<std::string> sets;  // "path=value", applied in order
  bool json = false;
};

// A pedal by its name or its use, and how far it is pressed.
struct PedalPress {
  std::string name;
  double fraction = 0.0;  // 0 to 1
};

struct PoseSettings {
  Controls controls;  // pedals are filled from `presses`
  std::vector<PedalPress> presses;
};

enum class SweepOver { lock, heave, roll, wind_up };

int findings_command(const Opening& opening);
int why_command(const Opening& opening, const std::string& finding);
int pose_command(const Opening& opening, const PoseSettings& settings);
// Pairs up to `within_mm` apart.
int gaps_command(const Opening& opening, const PoseSettings& settings, double within_mm);
int sweep_command(const Opening& opening, SweepOver over, int rows);
int cut_list_command(const Opening& opening, const std::filesystem::path& into);
// Makes opening.file; its sets are not used.
int new_command(const Opening& opening, const std::string& sample);
int schema_command();

// Names of the samples that `new --from` knows.
std::vector<std::string> sample_names();

}  // namespace tackbench::command_line
