// What a person most likely did where a text stops being JSON.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace tackbench {

struct SyntaxFault {
  std::size_t offset = 0;  // in the text, bytes: where to mend it
  std::string found;
  std::string wanted;
};

// Names the usual slips: a unit after a number, a comma inside a number, comments, missing and
// trailing commas, names without quotes, other quotes, quotes left open, numbers that are none.
// `offset`, `last_token` and `message` come from nlohmann's parse_error: the last byte that was
// read, the text of the last token, what() of the exception.
SyntaxFault syntax_fault(std::string_view text, std::size_t offset, std::string_view last_token,
                         std::string_view message);

// Text that can be shown in one line of a message.
std::string printable(std::string_view text);

}  // namespace tackbench
