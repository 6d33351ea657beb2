#include "core/project/field_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "core/project/field_faults.h"
#include "core/project/field_walk.h"
#include "core/project/fields.h"
#include "core/project/number_text.h"

namespace tackbench {

namespace {

constexpr std::string_view kNone = "none";

struct PathSegment {
  std::string_view key;
  std::optional<std::string_view> item;  // what stands in square brackets
};

// Empty when the path is malformed. Dots inside brackets belong to names.
std::vector<PathSegment> segments_of(std::string_view path) {
  std::vector<PathSegment> segments;
  while (true) {
    const std::size_t key_end = std::min(path.find_first_of(".["), path.size());
    PathSegment segment{path.substr(0, key_end), std::nullopt};
    path.remove_prefix(key_end);
    if (segment.key.empty()) return {};
    if (path.starts_with('[')) {
      const std::size_t closed = path.find(']');
      if (closed == std::string_view::npos) return {};
      segment.item = path.substr(1, closed - 1);
      path.remove_prefix(closed + 1);
    }
    segments.push_back(segment);
    if (path.empty()) return segments;
    if (!path.starts_with('.')) return {};
    path.remove_prefix(1);
  }
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kSpace = " \t\r\n";
  const std::size_t first = text.find_first_not_of(kSpace);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kSpace) - first + 1);
}

// "[1, 2, 3]", brackets left out or not.
std::optional<Vec3> vector_from_text(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('[') != text.ends_with(']')) return std::nullopt;
  if (text.starts_with('[')) text = text.substr(1, text.size() - 2);
  Vec3 value;
  for (int i = 0; i < 3; ++i) {
    const std::size_t comma = text.find(',');
    if ((comma == std::string_view::npos) != (i == 2)) return std::nullopt;
    const auto number = number_from_text(trimmed(text.substr(0, comma)));
    if (!number) return std::nullopt;
    value[i] = *number;
    text.remove_prefix(i == 2 ? text.size() : comma + 1);
  }
  return value;
}

std::string_view without_quotes(std::string_view text) {
  const std::string_view inner = trimmed(text);
  const bool quoted = inner.size() >= 2 && inner.front() == '"' && inner.back() == '"';
  return quoted ? inner.substr(1, inner.size() - 2) : text;
}

std::optional<std::size_t> component_index(std::string_view key) {
  constexpr std::array<std::string_view, 3> kComponents{"x", "y", "z"};
  const auto* const found = std::find(kComponents.begin(), kComponents.end(), key);
  if (found == kComponents.end()) return std::nullopt;
  return static_cast<std::size_t>(found - kComponents.begin());
}

// The name of one record.
class NameOf final : public FieldWalk {
 public:
  void text(const TextField& field, std::string& value) override {
    if (field.kind == TextKind::name && place().empty()) name = value;
  }
  void group_access(const FieldLabel&, GroupAccess&) override {}
  void list_access(const FieldLabel&, ListAccess&) override {}
  std::optional<std::string> name;
};

// Goes down one path and reads or sets what stands at its end.
class PathVisitor final : public FieldVisitor {
 public:
  PathVisitor(std::string_view path, std::optional<std::string_view> new_text)
      : path_(path), segments_(segments_of(path)), new_text_(new_text) {}

  void go(Project& project) {
    if (segments_.empty()) {
      fail("this is no member path", "give one such as drag_link.tube.wall_mm");
      return;
    }
    visit_fields(*this, project);
    if (!found_) fail_with_keys("there is no such member");
  }

  const Problems& problems() const { return problems_; }
  const std::string& answer() const { return answer_; }
  const std::string& words() const { return words_; }
  const std::optional<Vec3>& point() const { return point_; }

  bool changes_values() const override { return new_text_.has_value(); }

  void text(const TextField& field, std::string& value) override {
    if (!leaf(field)) return;
    answer_ = value;
    if (!new_text_) return;
    const std::string_view given = without_quotes(*new_text_);
    if (good(text_fault(field, place(), given))) value = given;
  }

  void flag(const FieldLabel& field, bool& value) override {
    if (!leaf(field)) return;
    answer_ = value ? "true" : "false";
    if (!new_text_) return;
    const std::string_view given = trimmed(*new_text_);
    if (given != "true" && given != "false") return wrong(field, wanted_flag());
    value = given == "true";
  }

  void number(const NumberField& field, double& value) override {
    if (!leaf(field)) return;
    answer_ = number_text(shown_from_inside(field.unit, value));
    if (new_text_) take_number(field, value);
  }

  void optional_number(const NumberField& field, std::optional<double>& value) override {
    if (!leaf(field)) return;
    answer_ = value ? number_text(shown_from_inside(field.unit, *value)) : std::string(kNone);
    if (!new_text_) return;
    if (cleared()) return value.reset();
    double given = 0.0;
    if (take_number(field, given)) value = given;
  }

  void whole(const NumberField& field, int& value) override {
    if (!leaf(field)) return;
    answer_ = std::to_string(value);
    if (new_text_) take_whole(field, value);
  }

  void optional_whole(const NumberField& field, std::optional<int>& value) override {
    if (!leaf(field)) return;
    answer_ = value ? std::to_string(*value) : std::string(kNone);
    if (!new_text_) return;
    if (cleared()) return value.reset();
    int given = 0;
    if (take_whole(field, given)) value = given;
  }

  void vector(const NumberField& field, Vec3& value) override {
    if (!here(field)) return;
    take_point(field, value);
  }

  void direction(const FieldLabel& field, Vec3& value) override {
    if (!leaf(field)) return;
    answer_ = vector_text(value);
    if (new_text_) take_direction(field, value);
  }

  void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) override {
    if (!leaf(field)) return;
    answer_ = value ? vector_text(*value) : std::string(kNone);
    if (!new_text_) return;
    if (cleared()) return value.reset();
    Vec3 given = Vec3::Zero();
    if (take_direction(field, given)) value = given;
  }

  void choice_index(const FieldLabel& field, ChoiceWords choices, int& index) override {
    if (!leaf(field)) return;
    answer_ = choices[static_cast<std::size_t>(index)];
    if (new_text_) take_choice(field, choices, index);
  }

  void optional_choice_index(const FieldLabel& field, ChoiceWords choices,
                             std::optional<int>& index) override {
    if (!leaf(field)) return;
    answer_ = index ? choices[static_cast<std::size_t>(*index)] : kNone;
    if (!new_text_) return;
    if (cleared()) return index.reset();
    int given = 0;
    if (take_choice(field, choices, given)) index = given;
  }

  void points_access(const NumberField& field, PointsAccess& points) override {
    if (!here(field, true)) return;
    if (!segment().item) return whole_list(field, points.size(), [&] { points.resize(0); });
    if (const auto index = item_index(field, points.size())) take_point(field, points.at(*index));
  }

  void group_access(const FieldLabel& field, GroupAccess& group) override {
    if (!here(field)) return;
    const bool last = depth_ + 1 == segments_.size();
    if (!group.present()) {
      answer_ = kNone;
      if (last && (!new_text_ || cleared())) return;
      return fail(fmt::format("this project has no {} there", field.words),
                  fmt::format("add the {} to the file first", field.words));
    }
    if (last && group.optional() && cleared()) return group.set_present(false);
    descend([&] { group.visit(*this); });
  }

  void list_access(const FieldLabel& field, ListAccess& list) override {
    if (!here(field, true)) return;
    if (!segment().item) return whole_list(field, list.size(), [&] { list.resize(0); });
    std::optional<std::size_t> index;
    for (std::size_t i = 0; i < list.size() && !index; ++i) {
      NameOf record;
      list.visit(i, record);
      if (record.name == *segment().item) index = i;
    }
    if (!index) index = item_index(field, list.size());
    if (index) descend([&] { list.visit(*index, *this); });
  }

  void unknown_members(UnknownMembers&) override {}

 private:
  const PathSegment& segment() const { return segments_[depth_]; }
  std::string place() const { return std::string(path_); }
  bool cleared() const { return new_text_ && trimmed(*new_text_) == kNone; }

  // Whether the path goes through this field; notes its key for the message when none does.
  bool here(const FieldLabel& field, bool takes_item = false) {
    if (found_) return false;
    keys_.push_back(field.key);
    if (depth_ >= segments_.size() || segment().key != field.key) return false;
    found_ = true;
    if (!words_.empty()) words_ += ", ";
    words_ += field.words;
    if (segment().item) words_ += fmt::format(" {}", *segment().item);
    if (segment().item && !takes_item) {
      fail(fmt::format("{} is no list", field.key), "leave the square brackets out");
      return false;
    }
    return true;
  }

  // The same for a field without members of its own.
  bool leaf(const FieldLabel& field) {
    if (!here(field)) return false;
    if (depth_ + 1 == segments_.size()) return true;
    fail(fmt::format("{} has no members", field.key), "end the path there");
    return false;
  }

  template <class Visit>
  void descend(Visit visit) {
    ++depth_;
    found_ = false;
    keys_.clear();
    visit();
    if (!found_) {
      fail_with_keys(depth_ == segments_.size() ? "this has members of its own"
                                                : "there is no such member");
    }
    found_ = true;
    --depth_;
  }

  template <class Clear>
  void whole_list(const FieldLabel& field, std::size_t size, Clear clear) {
    if (depth_ + 1 == segments_.size() && cleared()) return clear();
    fail(fmt::format("this is a list of {}", size),
         fmt::format("name one item, as in {}[0]", field.key));
  }

  std::optional<std::size_t> item_index(const FieldLabel& field, std::size_t size) {
    const std::string_view item = *segment().item;
    std::size_t index = 0;
    const auto [stop, error] = std::from_chars(item.data(), item.data() + item.size(), index);
    const bool number = error == std::errc() && stop == item.data() + item.size();
    if (number && index < size) return index;
    fail(fmt::format("there is no {} {}", field.words, item),
         size == 0 ? "the list is empty" : fmt::format("give 0 to {} or a name", size - 1));
    return std::nullopt;
  }

  void take_point(const NumberField& field, Vec3& value) {
    const Vec3 shown = shown_vector(field, value);
    if (depth_ + 1 == segments_.size()) {
      answer_ = vector_text(shown);
      if (field.unit == Unit::millimetre) point_ = value;
      if (!new_text_) return;
      const auto given = vector_from_text(*new_text_);
      if (!given) return wrong(field, wanted_vector(field));
      if (good(vector_fault(field, place(), *given))) value = inside_vector(field, *given);
      return;
    }
    const auto component = component_index(segments_[depth_ + 1].key);
    if (!component || depth_ + 2 != segments_.size() || segments_[depth_ + 1].item) {
      return fail("there is no such member", "give x, y or z");
    }
    words_ += fmt::format(" {}", segments_[depth_ + 1].key);
    double& coordinate = value[static_cast<Eigen::Index>(*component)];
    answer_ = number_text(shown_from_inside(field.unit, coordinate));
    if (new_text_) take_number(field, coordinate);
  }

  bool take_number(const NumberField& field, double& value) {
    const auto shown = number_from_text(trimmed(*new_text_));
    if (!shown) {
      wrong(field, wanted_number(field));
      return false;
    }
    if (!good(number_fault(field, place(), *shown))) return false;
    value = inside_from_shown(field.unit, *shown);
    return true;
  }

  bool take_whole(const NumberField& field, int& value) {
    const auto shown = number_from_text(trimmed(*new_text_));
    if (!shown) {
      wrong(field, wanted_whole(field));
      return false;
    }
    if (!good(whole_fault(field, place(), *shown))) return false;
    value = static_cast<int>(*shown);
    return true;
  }

  bool take_direction(const FieldLabel& field, Vec3& value) {
    const auto given = vector_from_text(*new_text_);
    if (!given) {
      wrong(field, wanted_direction());
      return false;
    }
    if (!good(direction_fault(field, place(), *given))) return false;
    value = unit_direction(*given);
    return true;
  }

  bool take_choice(const FieldLabel& field, ChoiceWords choices, int& index) {
    const auto found =
        std::find(choices.begin(), choices.end(), without_quotes(trimmed(*new_text_)));
    if (found == choices.end()) {
      wrong(field, wanted_choice(field, choices));
      return false;
    }
    index = static_cast<int>(found - choices.begin());
    return true;
  }

  bool good(std::optional<Problem> fault) {
    if (!fault) return true;
    problems_.push_back(std::move(*fault));
    return false;
  }

  void wrong(const FieldLabel& field, std::string wanted) {
    const std::string found =
        is_utf8(*new_text_) ? fmt::format("\"{}\"", *new_text_) : "text that is not UTF-8";
    problems_.push_back(not_a(field, place(), found, std::move(wanted)));
  }

  void fail(std::string found, std::string wanted) {
    if (problems_.empty()) {
      problems_.push_back({"", place(), std::move(found), std::move(wanted)});
    }
  }

  void fail_with_keys(std::string found) {
    fail(std::move(found), fmt::format("give one of {}", fmt::join(keys_, ", ")));
  }

  std::string_view path_;
  std::vector<PathSegment> segments_;
  std::optional<std::string_view> new_text_;
  std::size_t depth_ = 0;
  bool found_ = false;
  std::vector<std::string_view> keys_;
  std::string answer_;
  std::string words_;
  std::optional<Vec3> point_;
  Problems problems_;
};

}  // namespace

Result<Project> with_field(const Project& project, std::string_view path,
                           std::string_view value_text) {
  Project changed = project;
  PathVisitor visitor(path, value_text);
  visitor.go(changed);
  if (!visitor.problems().empty()) return visitor.problems();
  return changed;
}

Result<std::string> field_text(const Project& project, std::string_view path) {
  Project copy = project;
  PathVisitor visitor(path, std::nullopt);
  visitor.go(copy);
  if (!visitor.problems().empty()) return visitor.problems();
  return visitor.answer();
}

Result<std::string> field_words(const Project& project, std::string_view path) {
  Project copy = project;
  PathVisitor visitor(path, std::nullopt);
  visitor.go(copy);
  if (!visitor.problems().empty()) return visitor.problems();
  return visitor.words();
}

std::optional<Vec3> point_at(const Project& project, std::string_view path) {
  Project copy = project;
  PathVisitor visitor(path, std::nullopt);
  visitor.go(copy);
  return visitor.problems().empty() ? visitor.point() : std::nullopt;
}

}  // namespace tackbench
