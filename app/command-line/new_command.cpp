// new FILE [--from SAMPLE] and schema.
#include <algorithm>

#include "app/command-line/json_numbers.h"
#include "app/command-line/opening.h"
#include "app/command-line/page.h"
#include "core/findings/cautions.h"
#include "core/project-file/project_file.h"
#include "core/project-file/project_schema.h"

namespace tackbench {

// Built in from sample-projects/.
std::string_view sample_tender_as_first_tacked();
std::string_view sample_tender_sorted();
std::string_view sample_timber_wagon();
std::string_view sample_bare_start();

namespace command_line {

namespace {

struct Sample {
  const char* name;
  std::string_view (*text)();
};
constexpr Sample kSamples[] = {
    {"bare-start", sample_bare_start},
    {"tender-as-first-tacked", sample_tender_as_first_tacked},
    {"tender-sorted", sample_tender_sorted},
    {"timber-wagon", sample_timber_wagon},
};

}  // namespace

std::vector<std::string> sample_names() {
  std::vector<std::string> names;
  for (const Sample& sample : kSamples) names.emplace_back(sample.name);
  return names;
}

int new_command(const Opening& opening, const std::string& name) {
  const std::filesystem::path& file = opening.file;
  const bool json = opening.json;
  const auto* sample = std::find_if(std::begin(kSamples), std::end(kSamples),
                                    [&name](const Sample& each) { return name == each.name; });
  if (sample == std::end(kSamples)) {
    return refuse({{"--from", "", "no sample is called \"" + name + "\"",
                    "give one of: " + joined(sample_names())}},
                  json);
  }
  std::error_code ignored;
  if (std::filesystem::exists(file, ignored)) {
    return refuse({{file.string(), "", "there is such a file already",
                    "give another name, or move it away first"}},
                  json);
  }
  const Result<Project> project = read_project_text(sample->text(), name);
  if (!project) return refuse(project.problems(), json);
  const Result<Done> saved = save_project(*project, file);
  if (!saved) return refuse(saved.problems(), json);
  if (json) {
    const Json answer = {{"file", file.string()}, {"from", name}};
    print(answer.dump(2) + "\n");
    return kDone;
  }
  print("New project " + file.string() + " from " + name + ".\n\n");
  for (const std::string& sentence : caution_sentences()) {
    print(wrapped_text(sentence, 0, 0) + "\n");
  }
  print("\nNext: " + as_typed(opening.program) + " findings " + as_typed(file.string()) + "\n");
  return kDone;
}

int schema_command() {
  print(project_schema_text());
  return kDone;
}

}  // namespace command_line
}  // namespace tackbench
