// cut-list FILE --into FOLDER: writes the cut list and says what was written.
#include "app/command-line/json_numbers.h"
#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/fabrication/cut_list.h"
#include "core/fabrication/cut_list_writers.h"
#include "core/fabrication/make_cut_list.h"
#include "core/findings/all_findings.h"

namespace tackbench::command_line {

int cut_list_command(const Opening& opening, const std::filesystem::path& into) {
  const Result<Mechanism> mechanism = open_mechanism(opening);
  if (!mechanism) return refuse(mechanism.problems(), opening.json);
  const CheckResults results = run_checks(*mechanism);
  const CutList list = make_cut_list(*mechanism, results, all_findings(*mechanism, results));
  const Result<std::vector<std::filesystem::path>> written = write_cut_list(list, into);
  if (!written) return refuse(written.problems(), opening.json);
  if (opening.json) {
    print(cut_list_json(list));
    return kDone;
  }
  print(cut_list_text(list));
  print("\nWritten:\n");
  for (const std::filesystem::path& path : *written) print("  " + path.string() + "\n");
  return kDone;
}

}  // namespace tackbench::command_line
