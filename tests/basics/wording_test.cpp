#include "core/basics/wording.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

namespace tackbench {
namespace {

namespace fs = std::filesystem;

TEST(Wording, FillsNamedFields) {
  const Wording words(R"({"a": "{x} before {y}, {x} again"})");
  EXPECT_EQ(words.say("a", {{"y", "two"}, {"x", "one"}}), "one before two, one again");
  EXPECT_EQ(fields_in("{x} before {y}"), (std::vector<std::string>{"x", "y"}));
}

TEST(Wording, MissingKeyOrFieldIsLoud) {
  const Wording words(R"({"a": "{x}"})");
  EXPECT_EQ(words.say("b"), "[[wording: b]]");
  EXPECT_EQ(words.say("a"), "[[wording: a.x]]");
}

TEST(Wording, ATextThatIsNoCatalogueGivesNone) {
  EXPECT_TRUE(Wording("{").sentences().empty());
  EXPECT_TRUE(Wording("[1]").sentences().empty());
}

// Every key that a source hands to say(), with the text that follows up to the end of the call.
struct Call {
  std::string file;
  std::string key;
  std::string arguments;
};

std::string text_of(const fs::path& file) {
  std::ifstream stream(file);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// First groups of all matches.
std::vector<std::string> found_in(const std::string& text, const std::regex& pattern) {
  std::vector<std::string> found;
  for (auto at = std::sregex_iterator(text.begin(), text.end(), pattern);
       at != std::sregex_iterator(); ++at)
    found.push_back((*at)[1]);
  return found;
}

std::vector<Call> calls_in(const fs::path& file) {
  const std::string text = text_of(file);
  const std::regex say_call(R"re(\bsay\(\s*"([a-z0-9_.]*[a-z0-9_])"((?:[^;]|\n)*?);)re");
  std::vector<Call> calls;
  for (auto at = std::sregex_iterator(text.begin(), text.end(), say_call);
       at != std::sregex_iterator(); ++at)
    calls.push_back({file.filename().string(), (*at)[1], (*at)[2]});
  return calls;
}

std::vector<Call> all_calls() {
  std::vector<Call> calls;
  for (const char* top : {"core", "app", "ui"}) {
    const fs::path root = fs::path(TACKBENCH_SOURCE_FOLDER) / top;
    if (!fs::exists(root)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(root))
      if (entry.path().extension() == ".cpp")
        for (Call& call : calls_in(entry.path())) calls.push_back(std::move(call));
  }
  return calls;
}

TEST(Wording, EveryKeySaidIsInTheCatalogueWithItsFields) {
  const auto& sentences = wording().sentences();
  ASSERT_FALSE(sentences.empty());
  for (const Call& call : all_calls()) {
    const auto found = sentences.find(call.key);
    if (found == sentences.end()) {
      ADD_FAILURE() << call.file << " says \"" << call.key << "\", which en.json does not know";
      continue;
    }
    // Fields built before the call are seen when the findings' own tests run.
    if (std::regex_search(call.arguments, std::regex(R"(^,\s*fields\))"))) continue;
    for (const std::string& field : fields_in(found->second))
      EXPECT_NE(call.arguments.find("\"" + field + "\""), std::string::npos)
          << call.file << " says \"" << call.key << "\" without {" << field << "}";
  }
}

// Words of quantities, steps and kinds of findings are looked up by their names.
TEST(Wording, EveryQuantityAndStepHasWordsAndNoSentenceIsIdle) {
  const std::regex quantities(R"re(\b(?:quantity|point_numbers)\(\s*"([a-z0-9_]+)")re");
  const std::regex steps(R"re(\bstep\(\s*"([a-z0-9_]+)")re");
  const std::regex any_text(R"re("([a-z0-9_.*]+)")re");
  std::set<std::string> texts;
  for (const char* top : {"core", "app", "ui"}) {
    const fs::path root = fs::path(TACKBENCH_SOURCE_FOLDER) / top;
    if (!fs::exists(root)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(root)) {
      if (entry.path().extension() != ".cpp") continue;
      const std::string text = text_of(entry.path());
      for (const std::string& name : found_in(text, any_text)) texts.insert(name);
      for (const std::string& name : found_in(text, quantities))
        EXPECT_TRUE(wording().sentences().contains("quantity." + name)) << "quantity " << name;
      for (const std::string& name : found_in(text, steps))
        EXPECT_TRUE(wording().sentences().contains("step." + name)) << "step " << name;
    }
  }
  for (const auto& [key, sentence] : wording().sentences()) {
    std::string name = key;
    for (const char* prefix : {"quantity.", "step.", "title.", "meaning."})
      if (name.starts_with(prefix)) name.erase(0, std::string(prefix).size());
    EXPECT_TRUE(texts.contains(name)) << key << " is said nowhere";
  }
}

}  // namespace
}  // namespace tackbench
