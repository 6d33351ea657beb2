// Sentences for people come from one catalogue, resources/wording/en.json (key -> sentence with
// {named} fields), built into the program. Nothing here knows a screen.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tackbench {

using WordingFields = std::vector<std::pair<std::string_view, std::string>>;

// Sentences by key. A catalogue in another language is read the same way.
class Wording {
 public:
  // `json`: one object of strings. A text that is no such object gives an empty catalogue.
  explicit Wording(std::string_view json);

  // The sentence with its fields filled in. A missing key or field does not stop the work: it
  // stands in the sentence as [[wording: ...]], which the tests look for.
  std::string say(std::string_view key, const WordingFields& fields = {}) const;
  const std::map<std::string, std::string, std::less<>>& sentences() const { return sentences_; }

 private:
  std::map<std::string, std::string, std::less<>> sentences_;
};

// The built-in English catalogue.
const Wording& wording();
// wording().say(...)
std::string say(std::string_view key, const WordingFields& fields = {});
// Names of the {fields} in a sentence, in order.
std::vector<std::string> fields_in(std::string_view sentence);

// First letter made a capital (ASCII).
std::string capitalised(std::string text);

}  // namespace tackbench
