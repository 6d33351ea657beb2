// Every member of every station typed with real keys, undone and redone; wrong entries change
// nothing.
#include "ui/fields/entry_field.h"

#include <gtest/gtest.h>

#include <QTest>
#include <cmath>

#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "core/project/number_text.h"
#include "ui/fields/checked_edit.h"
#include "ui/fields/entry_text.h"

namespace tackbench::ui {
namespace {

Project sample(const std::string& name) {
  const Result<Project> read = read_project(std::string(TACKBENCH_SOURCE_FOLDER) +
                                            "/sample-projects/" + name + '/' + name + ".tack");
  return read ? *read : Project{};
}

// Text that was there, all of it, gives way to what is typed.
void type(EntryLine& line, const QString& text) {
  line.selectAll();
  if (text.isEmpty()) QTest::keyClick(&line, Qt::Key_Delete);
  QTest::keyClicks(&line, text);
  QTest::keyClick(&line, Qt::Key_Return);
}

// A text for the line that the project can take and that is another value; empty when none of some
// likely ones is.
QString other_text(const Session& session, const EntryLine& line) {
  const FieldEntry& entry = line.entry();
  const std::string now = line.text().toStdString();
  if (entry.kind == EntryKind::text) {
    if (entry.text_kind == TextKind::sha256) return QString(64, QLatin1Char('a'));
    // Readings name points that are there.
    for (const char* words : {"other words", "steering_box.input_end_mm", "column.output_end_mm"}) {
      const Result<Project> after = with_field(session.project(), entry.path, words);
      if (after && new_problems(session.project(), *after).empty())
        return QString::fromLatin1(words);
    }
    return QStringLiteral("other words");
  }
  const double value = number_from_text(now).value_or(entry.least);
  // The only figure of a direction along an axis: whatever it is, the direction stays.
  if (line.is_direction() && std::abs(value) == 1.0) return {};
  for (const double wanted : {value + 1.0, value - 1.0, value + 0.01, value - 0.01, entry.least,
                              entry.most, 0.5 * (entry.least + entry.most)}) {
    QString text = QString::fromStdString(number_text(wanted));
    const Result<std::string> member = member_text(entry, text, session.shown_unit());
    if (!member || *member == now) continue;
    const Result<Project> after = with_field(session.project(), entry.path, *member);
    if (after && !new_problems(session.project(), *after).empty()) continue;
    return text;
  }
  return {};
}

class EveryMember : public testing::TestWithParam<std::tuple<const char*, const char*>> {
 protected:
  void SetUp() override {
    session_.take(sample(std::get<0>(GetParam())), {});
    entries_ = entries_of(field_group(session_.project(), std::get<1>(GetParam())));
  }

  std::string text() const { return project_text(session_.project()); }

  // After one edit: the step goes back and comes again.
  void expect_one_step(const std::string& before, const std::string& path) {
    const std::string after = text();
    EXPECT_NE(after, before) << path;
    ASSERT_TRUE(session_.can_undo()) << path;
    session_.undo();
    EXPECT_EQ(text(), before) << path;
    session_.redo();
    EXPECT_EQ(text(), after) << path;
    session_.undo();
    EXPECT_FALSE(session_.can_undo()) << path;
  }

  Session session_;
  std::vector<FieldEntry> entries_;
};

TEST_P(EveryMember, IsTypedUndoneAndRedone) {
  int typed = 0;
  for (const FieldEntry& entry : entries_) {
    EntryField field(session_, entry);
    for (EntryLine* line : field.lines()) {
      const QString wanted = other_text(session_, *line);
      if (wanted.isEmpty()) continue;
      const std::string before = text();
      type(*line, wanted);
      ASSERT_TRUE(field.wrong_words().isEmpty()) << entry.path << ": " << wanted.toStdString()
                                                 << ": " << field.wrong_words().toStdString();
      expect_one_step(before, entry.path);
      field.refresh();
      ++typed;
    }
    if (field.flag() != nullptr) {
      const std::string before = text();
      QTest::keyClick(field.flag(), Qt::Key_Space);
      expect_one_step(before, entry.path);
      ++typed;
    }
    if (field.choice() != nullptr) {
      const std::string before = text();
      const bool at_end = field.choice()->currentIndex() + 1 == field.choice()->count();
      QTest::keyClick(field.choice(), at_end ? Qt::Key_Up : Qt::Key_Down);
      // A choice that does not fit the rest is refused with words; nothing in between.
      if (field.wrong_words().isEmpty()) {
        expect_one_step(before, entry.path);
      } else {
        EXPECT_EQ(text(), before) << entry.path;
        EXPECT_FALSE(session_.can_undo());
      }
      ++typed;
    }
  }
  EXPECT_GE(typed, static_cast<int>(entries_.size()) * 9 / 10);
}

TEST_P(EveryMember, KeepsItsValueWhenTheEntryIsWrong) {
  const std::string before = text();
  for (const FieldEntry& entry : entries_) {
    if (entry.kind == EntryKind::text || entry.kind == EntryKind::flag ||
        entry.kind == EntryKind::choice)
      continue;
    EntryField field(session_, entry);
    for (EntryLine* line : field.lines()) {
      const QString shown = line->text();
      for (const char* wrong : {"about so", "1e40", "12-3/8 kg"}) {
        type(*line, QString::fromLatin1(wrong));
        EXPECT_FALSE(field.wrong_words().isEmpty()) << entry.path << ": " << wrong;
        EXPECT_EQ(text(), before) << entry.path << ": " << wrong;
      }
      QTest::keyClick(line, Qt::Key_Escape);
      EXPECT_EQ(line->text(), shown) << entry.path;
      EXPECT_TRUE(field.wrong_words().isEmpty()) << entry.path;
    }
  }
  EXPECT_FALSE(session_.can_undo());
}

TEST_P(EveryMember, HasANameForItsEditor) {
  for (const FieldEntry& entry : entries_) {
    const EntryField field(session_, entry);
    for (const EntryLine* line : field.lines())
      EXPECT_FALSE(line->accessibleName().isEmpty()) << entry.path;
    if (field.choice() != nullptr) {
      EXPECT_FALSE(field.choice()->accessibleName().isEmpty()) << entry.path;
    }
    if (field.flag() != nullptr) {
      EXPECT_FALSE(field.flag()->accessibleName().isEmpty()) << entry.path;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(
    Stations, EveryMember,
    testing::Combine(testing::Values("tender-as-first-tacked", "timber-wagon"),
                     testing::Values("cab", "column", "shaft_line", "steering_box", "drag_link",
                                     "front_axle", "pedals", "driver", "shapes", "measurements")));

class TenderField : public testing::Test {
 protected:
  void SetUp() override { session_.take(sample("tender-as-first-tacked"), {}); }

  FieldEntry entry(const std::string& path) {
    const std::string root = path.substr(0, path.find('.'));
    for (const FieldEntry& each : entries_of(field_group(session_.project(), root)))
      if (each.path == path) return each;
    ADD_FAILURE() << "no " << path;
    return {};
  }

  Session session_;
};

TEST_F(TenderField, TakesInchesWhileMillimetresAreShown) {
  EntryField field(session_, entry("drag_link.given_length_mm"));
  type(*field.lines().front(), QStringLiteral("12-3/8 in"));
  ASSERT_TRUE(session_.project().drag_link->given_length);
  EXPECT_DOUBLE_EQ(*session_.project().drag_link->given_length, 314.325);
  type(*field.lines().front(), QStringLiteral("812 - 40"));
  EXPECT_DOUBLE_EQ(*session_.project().drag_link->given_length, 772.0);
}

TEST_F(TenderField, AnOptionalNumberIsCleared) {
  EntryField field(session_, entry("drag_link.given_length_mm"));
  ASSERT_TRUE(session_.project().drag_link->given_length);
  type(*field.lines().front(), QString());
  EXPECT_FALSE(session_.project().drag_link->given_length);
  EXPECT_TRUE(field.lines().front()->text().isEmpty());
}

TEST_F(TenderField, WhatWasShownRoundedIsNoEdit) {
  ASSERT_TRUE(session_.set_field("drag_link.given_length_mm", "801.234567").empty());
  const std::string before = project_text(session_.project());
  EntryField field(session_, entry("drag_link.given_length_mm"));
  EXPECT_EQ(field.lines().front()->text(), QStringLiteral("801.2"));
  type(*field.lines().front(), QStringLiteral("801.2"));
  EXPECT_EQ(project_text(session_.project()), before);
}

TEST_F(TenderField, FaultsAcrossFieldsAreRefused) {
  // A wall of more than half the diameter leaves no bore.
  EntryField field(session_, entry("drag_link.tube.outside_diameter_mm"));
  const double wall = session_.project().drag_link->tube->wall;
  const std::string before = project_text(session_.project());
  ASSERT_GE(2.0 * wall, 10.0) << "the sample's tube no longer serves here";
  type(*field.lines().front(), QStringLiteral("10"));
  EXPECT_FALSE(field.wrong_words().isEmpty());
  EXPECT_EQ(project_text(session_.project()), before);
}

TEST_F(TenderField, FollowsUndo) {
  EntryField field(session_, entry("drag_link.given_length_mm"));
  const QString shown = field.lines().front()->text();
  type(*field.lines().front(), QStringLiteral("700"));
  session_.undo();
  field.refresh();
  EXPECT_EQ(field.lines().front()->text(), shown);
}

}  // namespace
}  // namespace tackbench::ui
