#include "core/project-file/json_stream_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <unordered_set>

#include "core/project-file/json_syntax_fault.h"
#include "core/project-file/project_file.h"

namespace tackbench {

namespace {

using nlohmann::ordered_json;

// Tells how far the parser has read; its events carry no position of their own.
struct WatchedIterator {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* at;
  const char** read_to;

  reference operator*() const { return *at; }
  WatchedIterator& operator++() {
    *read_to = ++at;
    return *this;
  }
  WatchedIterator operator++(int) {
    WatchedIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const WatchedIterator& other) const { return at == other.at; }
  bool operator!=(const WatchedIterator& other) const { return at != other.at; }
};

std::string line_and_column(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, std::min(offset, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t last_break = before.rfind('\n');
  const std::size_t column =
      last_break == std::string_view::npos ? before.size() + 1 : before.size() - last_break;
  return fmt::format("{}:{}", line, column);
}

class StreamCheck final : public nlohmann::json_sax<ordered_json> {
 public:
  StreamCheck(std::string_view text, const char* const& read_to) : text_(text), read_to_(read_to) {}

  const Problems& faults() const { return faults_; }

  bool null() override { return value(); }
  bool boolean(bool) override { return value(); }
  bool number_integer(number_integer_t) override { return value(); }
  bool number_unsigned(number_unsigned_t) override { return value(); }
  bool number_float(number_float_t, const string_t&) override { return value(); }
  bool string(string_t&) override { return value(); }
  bool binary(binary_t&) override { return value(); }

  bool start_object(std::size_t) override { return open(false); }
  bool start_array(std::size_t) override { return open(true); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& key) override {
    if (!open_.back().keys.insert(key).second) {
      fault(start_of_key(), fmt::format("\"{}\" is given twice in the same object", printable(key)),
            "give each member once");
      return faults_.size() < kMostListedFaults;
    }
    if (open_.back().keys.size() <= kMostMembersOfOne) return true;
    return refuse("too many members in one object",
                  fmt::format("give at most {}", kMostMembersOfOne));
  }

  bool parse_error(std::size_t position, const std::string& last_token,
                   const nlohmann::detail::exception& error) override {
    const std::size_t offset = position > 0 ? position - 1 : 0;
    const std::string_view message = error.what();
    if (offset >= text_.size()) {
      fault(offset, "the file ends before it is complete: it was cut short",
            "take a whole copy of the file");
    } else if (message.find("UTF-8") != std::string_view::npos) {
      fault(offset, "text that is not UTF-8", "save the file as UTF-8 text");
    } else if (message.find("number overflow") != std::string_view::npos) {
      fault(offset, "a number beyond all bounds", "give a finite number");
    } else {
      const SyntaxFault slip = syntax_fault(text_, offset, last_token, message);
      fault(slip.offset, slip.found, slip.wanted);
    }
    return false;
  }

 private:
  struct OpenOne {
    bool list = false;
    std::size_t items = 0;                 // of a list
    std::unordered_set<std::string> keys;  // of an object
  };

  bool value() {
    if (!open_.empty() && open_.back().list && ++open_.back().items > kMostMembersOfOne) {
      return refuse("too many items in one list",
                    fmt::format("give at most {}", kMostMembersOfOne));
    }
    if (++values_ <= kMostFileValues) return true;
    return refuse("too many values", fmt::format("give at most {}", kMostFileValues));
  }

  bool open(bool list) {
    if (!value()) return false;
    open_.push_back({list, 0, {}});
    if (open_.size() > static_cast<std::size_t>(kMostFileDepth)) {
      return refuse(fmt::format("objects and lists nested more than {} deep", kMostFileDepth),
                    "give a project file, which is never so deep");
    }
    return true;
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  // Where the key that was just read begins: its opening quote.
  std::size_t start_of_key() const {
    std::size_t at = offset_read();
    if (at > 0) --at;  // the closing quote
    while (at > 0) {
      --at;
      if (text_[at] != '"') continue;
      std::size_t backslashes = 0;
      while (backslashes < at && text_[at - 1 - backslashes] == '\\') ++backslashes;
      if (backslashes % 2 == 0) break;
    }
    return at;
  }

  std::size_t offset_read() const { return static_cast<std::size_t>(read_to_ - text_.data()); }

  bool refuse(std::string found, std::string wanted) {
    const std::size_t read = offset_read();
    fault(read > 0 ? read - 1 : 0, std::move(found), std::move(wanted));
    return false;
  }

  void fault(std::size_t offset, std::string found, std::string wanted) {
    faults_.push_back({"", line_and_column(text_, offset), std::move(found), std::move(wanted)});
  }

  std::string_view text_;
  const char* const& read_to_;
  std::vector<OpenOne> open_;
  std::size_t values_ = 0;
  Problems faults_;
};

}  // namespace

Problems json_stream_faults(std::string_view text) {
  if (text.size() > kMostFileBytes) {
    return {{"", "", fmt::format("more than {} MB", kMostFileBytes / (std::size_t{1024} * 1024)),
             "give a project file; scans and photographs stay outside it"}};
  }
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return {{"", "", "the file is empty", "give a project file"}};
  }
  if (text.find('\0') != std::string_view::npos) {
    return {{"", line_and_column(text, text.find('\0')), "a byte 0: this is no text",
             "give a project file, which is JSON text"}};
  }
  const char* read_to = text.data();
  StreamCheck check(text, read_to);
  const WatchedIterator begin{text.data(), &read_to};
  const WatchedIterator end{text.data() + text.size(), &read_to};
  ordered_json::sax_parse(begin, end, &check);
  return check.faults();
}

}  // namespace tackbench
