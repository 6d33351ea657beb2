// Texts that are no project: each is refused with its place, before a tree is built.
#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "core/project-file/json_stream_check.h"
#include "core/project-file/project_file.h"
#include "tests/project-file/small_project.h"

namespace tackbench {
namespace {

using ::testing::HasSubstr;
using ::testing::SizeIs;
using testing::small_project_text;

std::string first_fault(std::string_view text) {
  const Problems faults = json_stream_faults(text);
  return faults.empty() ? "none" : one_line(faults.front());
}

TEST(JsonStream, GoodTextHasNoFault) {
  EXPECT_EQ(first_fault(small_project_text()), "none");
}

TEST(JsonStream, RepeatedMembersAreNamedWithTheirPlace) {
  const std::string text =
      "{\n  \"a\": 1,\n  \"b\\\"c\": {\"a\": 2},\n  \"a\": 3, \"b\\\"c\": 0\n}";
  const Problems faults = json_stream_faults(text);
  ASSERT_THAT(faults, SizeIs(2));
  EXPECT_EQ(one_line(faults[0]),
            "4:3: \"a\" is given twice in the same object; give each member once");
  EXPECT_EQ(faults[1].place, "4:11");
}

// Two spellings of the same key are the same key.
TEST(JsonStream, RepeatedMembersAreFoundThroughEscapes) {
  EXPECT_THAT(first_fault("{\"ab\": 1, \"a\\u0062\": 2}"), HasSubstr("\"ab\" is given twice"));
}

TEST(JsonStream, DepthEndsAtTheLimit) {
  const auto nested = [](int depth) {
    const auto count = static_cast<std::size_t>(depth);
    return std::string(count, '[') + std::string(count, ']');
  };
  EXPECT_EQ(first_fault(nested(kMostFileDepth)), "none");
  EXPECT_THAT(first_fault(nested(kMostFileDepth + 1)), HasSubstr("1:65: objects and lists nested"));
  EXPECT_THAT(first_fault(std::string(1000000, '[')), HasSubstr("nested more than 64 deep"));
  std::string objects;
  for (int i = 0; i < 100000; ++i) objects += "{\"a\":";
  EXPECT_THAT(first_fault(objects), HasSubstr("nested more than 64 deep"));
}

TEST(JsonStream, SizeEndsAtTheLimit) {
  std::string text = R"({"notes": ")" + std::string(kMostFileBytes, 'x');
  text.resize(kMostFileBytes - 2);
  text += "\"}";
  ASSERT_EQ(text.size(), kMostFileBytes);
  EXPECT_EQ(first_fault(text), "none");
  text += ' ';
  EXPECT_THAT(first_fault(text), HasSubstr("more than 16 MB"));
}

// The tree looks members up one by one, references look through lists, and each value costs far
// more than its two bytes.
TEST(JsonStream, ManyValuesMembersOrItemsAreRefused) {
  std::string list = "[0";
  for (std::size_t i = 1; i < kMostMembersOfOne; ++i) list += ",0";
  EXPECT_EQ(first_fault(list + "]"), "none");
  EXPECT_THAT(first_fault(list + ",0]"), HasSubstr("too many items in one list"));
  std::string lists = "[" + list + "]";
  for (std::size_t i = 0; i <= kMostFileValues / kMostMembersOfOne; ++i) lists += "," + list + "]";
  EXPECT_THAT(first_fault(lists + "]"), HasSubstr("too many values"));
  std::string object = "{\"first\": 0";
  for (std::size_t i = 1; i < kMostMembersOfOne; ++i) object += ",\"k" + std::to_string(i) + "\":0";
  EXPECT_EQ(first_fault(object + "}"), "none");
  EXPECT_THAT(first_fault(object + ",\"last\": 0}"), HasSubstr("too many members in one object"));
}

struct Hostile {
  const char* text;
  const char* fault;
};

class HostileText : public ::testing::TestWithParam<Hostile> {};

TEST_P(HostileText, IsRefused) {
  EXPECT_THAT(first_fault(GetParam().text), GetParam().fault);
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, HostileText,
    ::testing::Values(
        Hostile{"", "the file is empty; give a project file"},
        Hostile{" \n\t", "the file is empty; give a project file"},
        Hostile{"{\n  \"a\": NaN\n}", "2:8: NaN is no number; give a finite number"},
        Hostile{"{\"a\": nan}", "1:7: nan is no number; give a finite number"},
        Hostile{"{\"a\": Infinity}", "1:7: Infinity is no number; give a finite number"},
        Hostile{"{\"a\": -Infinity}", "1:7: -Infinity is no number; give a finite number"},
        Hostile{"{\"a\": [1, inf]}", "1:11: inf is no number; give a finite number"},
        Hostile{"{\"a\": \"\xFF\"}", "1:8: text that is not UTF-8; save the file as UTF-8 text"},
        Hostile{"{\"a\": \"\xC3\"}", "1:9: text that is not UTF-8; save the file as UTF-8 text"}));

TEST(JsonStream, NumbersBeyondAllBoundsAreRefused) {
  EXPECT_THAT(first_fault("{\"a\": 1e999}"), HasSubstr("a number beyond all bounds"));
  EXPECT_THAT(first_fault("{\"a\": -1e999}"), HasSubstr("a number beyond all bounds"));
}

INSTANTIATE_TEST_SUITE_P(
    Slips, HostileText,
    ::testing::Values(
        Hostile{"{\"a\": 5 mm, \"b\": 1}",
                "1:9: a unit after the number; write the number alone: the member's name says the "
                "unit"},
        Hostile{"{\"a\": 12.5deg}",
                "1:11: a unit after the number; write the number alone: the member's name says the "
                "unit"},
        Hostile{"{\"a\": 4 N}",
                "1:9: a unit after the number; write the number alone: the member's name says the "
                "unit"},
        Hostile{"{\"a\": 4 \xC2\xB0}",
                "1:9: a unit after the number; write the number alone: the member's name says the "
                "unit"},
        Hostile{"{\"a\": 1,200}",
                "1:7: a comma inside the number 1,200; write 1200: thousands are not set apart"},
        Hostile{"{\"a\": -1,200,000, \"b\": 1}",
                "1:7: a comma inside the number -1,200,000; write -1200000: thousands are not set "
                "apart"},
        Hostile{"{\"a\": 1,5}", "1:7: a comma inside the number 1,5; write a decimal point"},
        Hostile{
            "{\"a\": 1 // note\n}",
            "1:9: a comment, which JSON does not have; take it out; the member \"notes\" at the "
            "top holds words"},
        Hostile{
            "{\n# note\n\"a\": 1}",
            "2:1: a comment, which JSON does not have; take it out; the member \"notes\" at the "
            "top holds words"},
        Hostile{
            "{\"a\": /* one */ 1}",
            "1:7: a comment, which JSON does not have; take it out; the member \"notes\" at the "
            "top holds words"},
        Hostile{"{\n  \"a\": 1\n  \"b\": 2\n}", "2:8: no comma after this; put a comma after it"},
        Hostile{"{\"a\": {}\n \"b\": 2}", "1:8: no comma after this; put a comma after it"},
        Hostile{"{\"a\": \"x\"\n \"b\": 2}", "1:9: no comma after this; put a comma after it"},
        Hostile{"[1 2]", "1:2: no comma after this; put a comma after it"},
        Hostile{"[true {}]", "1:5: no comma after this; put a comma after it"},
        Hostile{"[1 true]", "1:2: no comma after this; put a comma after it"},
        Hostile{"{\"a\": 1,}", "1:8: a comma with nothing after it; take the comma out"},
        Hostile{"{\"a\": [1, 2,\n ]}", "1:12: a comma with nothing after it; take the comma out"},
        Hostile{"{\"a\" 1}", "1:6: no colon after the member's name; write \"name\": value"},
        Hostile{"{a: 1}", "1:2: a member's name without quotes; put it in double quotes"},
        Hostile{"{'a': 1}", "1:2: single quotes; write double quotes"},
        Hostile{"{\"a\": \"x\n\", \"b\": 1}",
                "1:9: the line ends inside quotes; close the quotes before it"}));

TEST(JsonStream, OtherSyntaxErrorsComeWithLineAndColumn) {
  for (const char* text : {"{\"a\": 01}", "{} {}", "{\"a\": tru}", "}", "{]", "hello", "{\"a\": ,}",
                           "[1.2.3]", "/", "5 mm", "{\"a\": 1:2}"}) {
    EXPECT_THAT(first_fault(text), ::testing::ContainsRegex("^1:[0-9]+: ")) << text;
  }
}

// Somebody opens a page of words: its first mark is no slip in a project.
TEST(JsonStream, WordsAreNoProject) {
  for (const char* text :
       {"# Tackbench\n\nA bench.\n", "Tackbench\n", "<html></html>", "// note\n"})
    EXPECT_THAT(first_fault(text), HasSubstr("this is not a Tackbench project")) << text;
  EXPECT_THAT(first_fault("// note\n{\"tackbench_format\": 1}"), HasSubstr("a comment"));
}

TEST(JsonStream, BinariesAreRefused) {
  EXPECT_THAT(first_fault(std::string("PK\3\4\0\0\0", 7)), HasSubstr("1:5: a byte 0"));
  EXPECT_NE(first_fault("\x89PNG\r\n\x1A\n"), "none");
  EXPECT_NE(first_fault("\xFF\xFE{"), "none");
}

TEST(ReadProjectText, TopLevelHasToBeAnObject) {
  for (const char* text : {"[]", "1", "\"text\"", "null", "true"}) {
    const auto project = read_project_text(text);
    ASSERT_FALSE(project.ok()) << text;
    EXPECT_EQ(project.problems().front().found, "no object in braces at the top");
  }
}

// Cut anywhere before its last brace, the file is refused, and as what it is: cut short.
TEST(ReadProjectText, CutShortIsSaidAtEveryByte) {
  const std::string text = small_project_text();
  for (std::size_t size = 0; size < text.rfind('}'); ++size) {
    const auto project = read_project_text(text.substr(0, size));
    ASSERT_FALSE(project.ok()) << "cut after " << size << " bytes";
    const std::string found = project.problems().front().found;
    EXPECT_THAT(found, HasSubstr(size > 0 ? "cut short" : "empty"))
        << "cut after " << size << " bytes";
  }
}

RC_GTEST_PROP(ReadProjectText, RandomBytesAreRefused, (const std::string& bytes)) {
  RC_ASSERT(!read_project_text(bytes).ok());
}

// One byte of a good file changed: read or refused, never more than that.
RC_GTEST_PROP(ReadProjectText, OneChangedByteIsReadOrRefused, ()) {
  std::string text = small_project_text();
  const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
  text[at] = *rc::gen::arbitrary<char>();
  const auto project = read_project_text(text);
  if (project.ok()) {
    const std::string once = project_text(*project);
    const auto again = read_project_text(once);
    RC_ASSERT(again.ok());
    RC_ASSERT(project_text(*again) == once);
  } else {
    RC_ASSERT(!project.problems().empty());
  }
}

}  // namespace
}  // namespace tackbench
