// Findings and cut list of every sample against what is kept in its expected/ folder: names,
// verdicts and numbers of the plain models, not their sentences. After a change that is meant, run
// the program with TACKBENCH_RENEW_EXPECTED=1 and read the difference before keeping it.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "core/basics/member_name.h"
#include "tests/samples/sample.h"

namespace tackbench {
namespace {

using Json = nlohmann::ordered_json;

bool renewing() {
  return std::getenv("TACKBENCH_RENEW_EXPECTED") != nullptr;
}

// Six decimals of the shown unit: finer than anybody makes, coarser than rounding noise.
double rounded(double shown) {
  const double kept = std::round(shown * 1e6) / 1e6;
  return kept == 0.0 ? 0.0 : kept;
}

Json findings_json_plain(const Sample& from) {
  Json list = Json::array();
  for (const Finding& finding : from.findings) {
    Json made;
    made["name"] = finding.name;
    made["verdict"] = verdict_word(finding.verdict);
    for (const Quantity& quantity : finding.numbers)
      made["numbers"][member_name(quantity.name, quantity.unit)] =
          rounded(shown_from_inside(quantity.unit, quantity.value));
    // Where several places are alike, which of them is called worst is chance: only past ones keep
    // it.
    if (finding.worst_at && finding.verdict == Verdict::past) {
      made["worst_hand_wheel_deg"] = rounded(degrees_from_radians(finding.worst_at->hand_wheel));
      made["worst_bump_left_mm"] = rounded(finding.worst_at->bump_left);
      made["worst_bump_right_mm"] = rounded(finding.worst_at->bump_right);
    }
    list.push_back(std::move(made));
  }
  return list;
}

Json cut_list_json_plain(const Sample& from) {
  Json root;
  root["items"] = Json::array();
  for (const CutItem& item : from.cut_list.items) {
    Json made;
    made["name"] = item.name;
    made["quantity"] = item.quantity;
    made["cautions"] = item.cautions.size();
    for (const CutDimension& dimension : item.dimensions) {
      Json value = dimension.value
                       ? Json(rounded(shown_from_inside(dimension.unit, *dimension.value)))
                       : Json(dimension.text);
      made["dimensions"][dimension.name] = {{"value", value},
                                            {"tolerance", tolerance_text(dimension)}};
    }
    root["items"].push_back(std::move(made));
  }
  root["waiting"] = from.cut_list.waiting.size();
  return root;
}

void compare(const Json& kept, const Json& now, const std::string& at) {
  if (kept.is_number() && now.is_number()) {
    const double a = kept.get<double>();
    const double b = now.get<double>();
    // Events are located to 0.001 degrees of hand wheel, the rest follows from them; the best
    // clocking is the bottom of a flat valley.
    const auto about = [&at](const char* what) { return at.find(what) != std::string::npos; };
    const double located = about("best_") && about("clocking") ? 0.25
                           : about(".worst_")                  ? 5e-3
                                                               : 1e-4;
    EXPECT_NEAR(a, b, located * std::max(1.0, std::abs(a))) << at;
    return;
  }
  ASSERT_EQ(kept.type(), now.type()) << at;
  if (kept.is_object()) {
    for (const auto& [key, value] : kept.items()) {
      if (now.contains(key))
        compare(value, now.at(key), std::string(at).append(".").append(key));
      else
        ADD_FAILURE() << at << "." << key << " is gone";
    }
    for (const auto& [key, value] : now.items())
      if (!kept.contains(key)) ADD_FAILURE() << at << "." << key << " is new";
  } else if (kept.is_array()) {
    EXPECT_EQ(kept.size(), now.size()) << at;
    for (std::size_t i = 0; i < std::min(kept.size(), now.size()); ++i)
      compare(kept[i], now[i], at + "[" + std::to_string(i) + "]");
  } else {
    EXPECT_EQ(kept, now) << at;
  }
}

void compare_with_kept(const Json& now, const std::filesystem::path& path) {
  if (renewing()) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path) << now.dump(1) << "\n";
  }
  std::ifstream in(path);
  ASSERT_TRUE(in) << path << " is missing";
  compare(Json::parse(in), now, path.filename().string());
}

class SampleGolden : public ::testing::TestWithParam<const char*> {};

TEST_P(SampleGolden, FindingsAsKept) {
  compare_with_kept(findings_json_plain(sample(GetParam())),
                    sample_folder(GetParam()) / "expected" / "findings.json");
}

TEST_P(SampleGolden, CutListAsKept) {
  compare_with_kept(cut_list_json_plain(sample(GetParam())),
                    sample_folder(GetParam()) / "expected" / "cut-list.json");
}

// A sample is kept as the program writes it, so that a user's first save changes nothing.
TEST_P(SampleGolden, FileIsAsTheProgramWritesIt) {
  const std::string name = GetParam();
  std::ifstream in(sample_folder(name) / (name + ".tack"), std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const auto project = read_project_text(text, name);
  ASSERT_TRUE(project.ok());
  if (renewing()) {
    ASSERT_TRUE(save_project(*project, sample_folder(name) / (name + ".tack")).ok());
    return;
  }
  EXPECT_EQ(project_text(*project), text);
}

INSTANTIATE_TEST_SUITE_P(Samples, SampleGolden, ::testing::ValuesIn(kSamples),
                         [](const auto& tested) {
                           std::string name = tested.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

}  // namespace
}  // namespace tackbench
