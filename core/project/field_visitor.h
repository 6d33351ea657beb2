// Visits every field of a record, whatever its type, through one table. Reader, writer, schema,
// random test projects and `--set path=value` derive from FieldVisitor; the tables themselves are
// the visit_fields overloads of fields.h.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/project/choice_words.h"
#include "core/project/field_labels.h"

namespace tackbench {

class FieldVisitor;

// A record inside another one. `optional` ones may be absent: then `visit` shows a fresh record
// with its defaults, which is thrown away.
class GroupAccess {
 public:
  virtual ~GroupAccess() = default;
  virtual bool optional() const = 0;
  virtual bool present() const = 0;
  virtual void set_present(bool present) = 0;  // of optional ones only
  virtual void visit(FieldVisitor& visitor) = 0;
};

// A list of records.
class ListAccess {
 public:
  virtual ~ListAccess() = default;
  virtual std::size_t size() const = 0;
  virtual void resize(std::size_t size) = 0;
  virtual void remove(std::size_t index) = 0;
  virtual void add_copy_of(std::size_t index) = 0;  // at the end
  virtual void visit(std::size_t index, FieldVisitor& visitor) = 0;
  virtual void visit_sample(FieldVisitor& visitor) = 0;  // a fresh record, thrown away
};

// A list of points.
class PointsAccess {
 public:
  virtual ~PointsAccess() = default;
  virtual std::size_t size() const = 0;
  virtual void resize(std::size_t size) = 0;
  virtual Vec3& at(std::size_t index) = 0;
};

// Values are as the core holds them: radians, millimetres. Visitors that only look must leave them
// alone and say so with changes_values().
class FieldVisitor {
 public:
  virtual ~FieldVisitor() = default;
  virtual bool changes_values() const = 0;

  virtual void text(const TextField& field, std::string& value) = 0;
  virtual void flag(const FieldLabel& field, bool& value) = 0;
  virtual void number(const NumberField& field, double& value) = 0;
  virtual void optional_number(const NumberField& field, std::optional<double>& value) = 0;
  virtual void whole(const NumberField& field, int& value) = 0;
  virtual void optional_whole(const NumberField& field, std::optional<int>& value) = 0;
  virtual void vector(const NumberField& field, Vec3& value) = 0;
  // Unit vectors; a visitor that changes one leaves it unit.
  virtual void direction(const FieldLabel& field, Vec3& value) = 0;
  virtual void optional_direction(const FieldLabel& field, std::optional<Vec3>& value) = 0;
  virtual void choice_index(const FieldLabel& field, ChoiceWords words, int& index) = 0;
  virtual void optional_choice_index(const FieldLabel& field, ChoiceWords words,
                                     std::optional<int>& index) = 0;
  virtual void points_access(const NumberField& field, PointsAccess& points) = 0;
  virtual void group_access(const FieldLabel& field, GroupAccess& group) = 0;
  virtual void list_access(const FieldLabel& field, ListAccess& list) = 0;
  // Always last: members that the table does not name.
  virtual void unknown_members(UnknownMembers& members) = 0;

  template <class Frame>
  void point(const NumberField& field, Point<Frame>& value) {
    vector(field, value.mm);
  }
  template <class Frame>
  void axis(const FieldLabel& field, Direction<Frame>& value) {
    direction(field, value.along);
  }
  template <class Choice>
  void choice(const FieldLabel& field, Choice& value) {
    int index = static_cast<int>(value);
    choice_index(field, words_of(Choice{}), index);
    if (changes_values()) value = static_cast<Choice>(index);
  }
  template <class Choice>
  void optional_choice(const FieldLabel& field, std::optional<Choice>& value) {
    std::optional<int> index;
    if (value) index = static_cast<int>(*value);
    optional_choice_index(field, words_of(Choice{}), index);
    if (!changes_values()) return;
    if (index) {
      value = static_cast<Choice>(*index);
    } else {
      value.reset();
    }
  }
  template <class Frame>
  void points(const NumberField& field, std::vector<Point<Frame>>& value);
  template <class Record>
  void group(const FieldLabel& field, Record& record);
  template <class Record>
  void optional_group(const FieldLabel& field, std::optional<Record>& record);
  template <class Record>
  void station(const FieldLabel& field, StationPointer<Record>& record);
  template <class Record>
  void list(const FieldLabel& field, std::vector<Record>& records);
};

namespace field_access {

template <class Record>
class Group final : public GroupAccess {
 public:
  explicit Group(Record& record) : record_(record) {}
  bool optional() const override { return false; }
  bool present() const override { return true; }
  void set_present(bool) override {}
  void visit(FieldVisitor& visitor) override { visit_fields(visitor, record_); }

 private:
  Record& record_;
};

template <class Record>
class OptionalGroup final : public GroupAccess {
 public:
  explicit OptionalGroup(std::optional<Record>& record) : record_(record) {}
  bool optional() const override { return true; }
  bool present() const override { return record_.has_value(); }
  void set_present(bool present) override {
    if (!present) {
      record_.reset();
    } else if (!record_) {
      record_.emplace();
    }
  }
  void visit(FieldVisitor& visitor) override {
    Record fresh;
    visit_fields(visitor, record_ ? *record_ : fresh);
  }

 private:
  std::optional<Record>& record_;
};

// A station is shared with other copies of the project: a visitor that changes values gets a copy,
// which then takes its place; one that only looks sees the shared one.
template <class Record>
class Station final : public GroupAccess {
 public:
  explicit Station(StationPointer<Record>& record) : record_(record) {}
  bool optional() const override { return true; }
  bool present() const override { return record_ != nullptr; }
  void set_present(bool present) override {
    if (!present) {
      record_.reset();
    } else if (!record_) {
      record_ = std::make_shared<const Record>();
    }
  }
  void visit(FieldVisitor& visitor) override {
    if (record_ && !visitor.changes_values()) {
      // A visitor that changes nothing looks at the station itself: a copy would cost more.
      visit_fields(visitor, const_cast<Record&>(*record_));  // NOLINT(*-const-cast)
      return;
    }
    auto copy = record_ ? std::make_shared<Record>(*record_) : std::make_shared<Record>();
    visit_fields(visitor, *copy);
    if (record_) record_ = std::move(copy);
  }

 private:
  StationPointer<Record>& record_;
};

template <class Record>
class List final : public ListAccess {
 public:
  explicit List(std::vector<Record>& records) : records_(records) {}
  std::size_t size() const override { return records_.size(); }
  void resize(std::size_t size) override { records_.resize(size); }
  void remove(std::size_t index) override {
    records_.erase(records_.begin() + static_cast<std::ptrdiff_t>(index));
  }
  void add_copy_of(std::size_t index) override { records_.push_back(Record(records_[index])); }
  void visit(std::size_t index, FieldVisitor& visitor) override {
    visit_fields(visitor, records_[index]);
  }
  void visit_sample(FieldVisitor& visitor) override {
    Record fresh;
    visit_fields(visitor, fresh);
  }

 private:
  std::vector<Record>& records_;
};

template <class Frame>
class Points final : public PointsAccess {
 public:
  explicit Points(std::vector<Point<Frame>>& points) : points_(points) {}
  std::size_t size() const override { return points_.size(); }
  void resize(std::size_t size) override { points_.resize(size); }
  Vec3& at(std::size_t index) override { return points_[index].mm; }

 private:
  std::vector<Point<Frame>>& points_;
};

}  // namespace field_access

template <class Frame>
void FieldVisitor::points(const NumberField& field, std::vector<Point<Frame>>& value) {
  field_access::Points<Frame> access(value);
  points_access(field, access);
}
template <class Record>
void FieldVisitor::group(const FieldLabel& field, Record& record) {
  field_access::Group<Record> access(record);
  group_access(field, access);
}
template <class Record>
void FieldVisitor::optional_group(const FieldLabel& field, std::optional<Record>& record) {
  field_access::OptionalGroup<Record> access(record);
  group_access(field, access);
}
template <class Record>
void FieldVisitor::station(const FieldLabel& field, StationPointer<Record>& record) {
  field_access::Station<Record> access(record);
  group_access(field, access);
}
template <class Record>
void FieldVisitor::list(const FieldLabel& field, std::vector<Record>& records) {
  field_access::List<Record> access(records);
  list_access(field, access);
}

}  // namespace tackbench
