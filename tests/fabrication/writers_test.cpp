#include "core/fabrication/cut_list_writers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/drawing/svg.h"
#include "core/fabrication/drag_link_sheet.h"
#include "core/findings/cautions.h"
#include "tests/fabrication/example_link.h"

namespace tackbench {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

CutList example_list() {
  CutList list;
  list.project = "tender, \"first\"";
  list.drag_link = example_part();
  list.items = {drag_link_item(*list.drag_link), mock_up_item(mock_up_link(*list.drag_link))};
  list.cautions = caution_sentences();
  list.not_checked = not_checked();
  list.waiting = {"Shafts: not measured yet"};
  return list;
}

// An own small reader after RFC 4180 section 2, so that the writer is not checked by itself.
std::vector<std::vector<std::string>> read_csv(const std::string& text) {
  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"')
        rows.back().back() += text[i++];
      else if (c == '"')
        quoted = false;
      else
        rows.back().back() += c;
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
      ++i;
      rows.emplace_back(1);
    } else {
      rows.back().back() += c;
    }
  }
  if (rows.back().size() == 1 && rows.back()[0].empty()) rows.pop_back();
  return rows;
}

fs::path empty_folder(const std::string& name) {
  fs::path folder = fs::path(::testing::TempDir()) / ("tackbench_" + name);
  fs::remove_all(folder);
  return folder;
}

std::string content(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

TEST(CutListText, FitsAHundredColumnsAndSaysWhatASupplierAsks) {
  const std::string text = cut_list_text(example_list());
  std::istringstream lines(text);
  std::string line;
  while (std::getline(lines, line)) EXPECT_LE(line.size(), 100U) << line;
  for (const char* words :
       {"800.0 mm  +/- 0.5", "706.0 mm", "M24x1.5-LH", "make 1", "20.0 deg",
        "clockwise, seen from the arm end", "left-hand", "adjustment there is, longer", "lock nut",
        "certified components", "Not checked\n", "never on a slope"})
    EXPECT_THAT(text, HasSubstr(words));
}

TEST(CutListText, NeverSaysMoreThanGeometryKnows) {
  const std::string text = cut_list_text(example_list());
  for (const char* word : {" safe", "approved", "certified by"})
    EXPECT_EQ(text.find(word), std::string::npos) << word;
}

TEST(CutListCsv, ReadsBackWhole) {
  const CutList list = example_list();
  const auto rows = read_csv(cut_list_csv(list));
  ASSERT_GT(rows.size(), 20U);
  EXPECT_THAT(rows[0], ::testing::ElementsAre("item", "dimension", "value", "unit", "tolerance",
                                              "quantity", "note"));
  for (const auto& row : rows) EXPECT_EQ(row.size(), 7U) << row[0];
  EXPECT_THAT(rows[1], ::testing::ElementsAre("drag_link", "ball_to_ball", "800.0", "mm", "0.5",
                                              "1", HasSubstr("order this")));
  const CutDimension* tube = dimension(list.items[0], "tube_length");
  EXPECT_THAT(rows, ::testing::Contains(::testing::Contains(tube->words + "; " + tube->note)));
}

TEST(CutListCsv, QuotesWhatNeedsIt) {
  CutList list;
  CutItem item;
  item.name = "odd, \"name\"\r\nof two lines";
  CutDimension row;
  row.name = "a";
  row.words = "plain";
  row.value = 1.25;
  item.dimensions = {row};
  list.items = {item};
  const std::string text = cut_list_csv(list);
  EXPECT_THAT(text, HasSubstr("\"odd, \"\"name\"\"\r\nof two lines\",a,1.2,mm"));
  EXPECT_EQ(read_csv(text)[1][0], item.name);
}

TEST(CutListJson, CarriesUnitsInItsNames) {
  const auto root = nlohmann::json::parse(cut_list_json(example_list()));
  const auto& first = root["items"][0]["dimensions"][0];
  EXPECT_EQ(first["name"], "ball_to_ball_mm");
  EXPECT_DOUBLE_EQ(first["value"], 800.0);
  EXPECT_DOUBLE_EQ(first["tolerance"], 0.5);
  EXPECT_EQ(root["not_listed_yet"][0], "Shafts: not measured yet");
}

TEST(DragLinkDrawing, ShowsEveryDimensionOfTheLink) {
  const DragLinkPart part = example_part();
  const CutItem item = drag_link_item(part);
  const std::string drawing = svg(drag_link_sheet(part, "tender", Projection::first_angle));
  for (const char* name :
       {"ball_to_ball", "tube_length", "arm_end_free_length", "knuckle_end_free_length",
        "arm_end_engagement", "knuckle_end_engagement", "arm_end_shank_length",
        "knuckle_end_shank_length", "arm_end_thread_depth", "adjustment_wanted",
        "adjustment_longer", "adjustment_shorter", "stud_clocking", "force"})
    EXPECT_THAT(drawing, HasSubstr(value_text(*dimension(item, name)))) << name;
  for (const char* words :
       {"M24x1.5-LH", "M24x1.5,", "\u00d838 x 8", "1:2, tube broken", "800.0 \u00b10.5",
        "Steering and brakes can kill", "20.0\u00b0 clockwise"})
    EXPECT_THAT(drawing, HasSubstr(words));
  DragLinkStation open = example_station();
  open.tolerance.reset();
  EXPECT_THAT(svg(drag_link_sheet(example_part(open), "tender", Projection::first_angle)),
              HasSubstr("800.0 (tolerance blank until measured in)"));
}

// xmllint is a reader that we did not write.
TEST(DragLinkDrawing, IsWellFormedXml) {
  const fs::path folder = empty_folder("svg_xml");
  CutList list = example_list();
  list.project = "<wagon> & \"tender\" 'one'\x01";
  ASSERT_TRUE(write_cut_list(list, folder).ok());
  const std::string command = "xmllint --noout '" + (folder / "drag-link.svg").string() + "'";
  EXPECT_EQ(std::system(command.c_str()), 0);
}

// Nothing runs out of the frame (x 20 to 410, y 10 to 287): both projections, short and long links,
// studs clocked any way.
TEST(DragLinkDrawing, StaysInItsFrame) {
  const auto expect_inside = [](const Sheet& sheet) {
    for (const SheetText& text : sheet.texts) {
      const double width = text_width(text.words, text.height);
      const double left = text.at.x - (text.anchor == TextAnchor::start    ? 0.0
                                       : text.anchor == TextAnchor::middle ? 0.5 * width
                                                                           : width);
      EXPECT_GE(left, 20.0) << text.words;
      EXPECT_LE(left + width, 410.0) << text.words;
      EXPECT_LE(text.at.y, 287.0) << text.words;
    }
    for (const SheetArc& arc : sheet.arcs) {
      EXPECT_GE(arc.centre.y - arc.radius, 10.0);
      EXPECT_GE(arc.centre.x - arc.radius, 20.0);
      EXPECT_LE(arc.centre.x + arc.radius, 410.0);
    }
    for (const SheetLine& line : sheet.lines)
      for (const PaperPoint& point : line.through) {
        EXPECT_GE(point.x, 20.0);
        EXPECT_LE(point.x, 410.0);
        EXPECT_GE(point.y, 10.0);
        EXPECT_LE(point.y, 287.0);
      }
    for (const SheetDimension& each : sheet.dimensions) EXPECT_GE(each.line_y, 10.0) << each.words;
  };
  for (const Projection projection : {Projection::first_angle, Projection::third_angle})
    for (const double length : {400.0, 800.0, 1600.0})
      for (const double clocking : {0.0, 1.0, 14.0, 20.0, 96.0, 170.0, -3.0, -96.0, -170.0}) {
        Mechanism mechanism = example_mechanism(example_station());
        mechanism.steering->stud_clocking = radians_from_degrees(clocking);
        LinkResult link = example_length();
        link.centring_length = length;
        expect_inside(drag_link_sheet(drag_link_part(mechanism, link, example_locks()),
                                      std::string(90, 't'), projection));
      }
}

struct Box {
  double left, right, top, bottom;
};

Box box_of(const SheetText& text) {
  const double width = text_width(text.words, text.height);
  const double left = text.at.x - (text.anchor == TextAnchor::start    ? 0.0
                                   : text.anchor == TextAnchor::middle ? 0.5 * width
                                                                       : width);
  return {left, left + width, text.at.y - text.height, text.at.y};
}

// No two texts lie over each other, and no line of the clocking view runs through its labels.
TEST(DragLinkDrawing, TextsKeepClearOfEachOther) {
  for (const Projection projection : {Projection::first_angle, Projection::third_angle})
    for (double clocking = -180.0; clocking <= 180.0; clocking += 3.5) {
      Mechanism mechanism = example_mechanism(example_station());
      mechanism.steering->stud_clocking = radians_from_degrees(clocking);
      const Sheet sheet = drag_link_sheet(
          drag_link_part(mechanism, example_length(), example_locks()), "tender", projection, 2);
      for (std::size_t i = 0; i < sheet.texts.size(); ++i)
        for (std::size_t j = i + 1; j < sheet.texts.size(); ++j) {
          const Box one = box_of(sheet.texts[i]);
          const Box other = box_of(sheet.texts[j]);
          EXPECT_FALSE(one.left < other.right && other.left < one.right && one.top < other.bottom &&
                       other.top < one.bottom)
              << clocking << ": " << sheet.texts[i].words << " / " << sheet.texts[j].words;
        }
    }
}

// 3.5 degrees on the tube's own radius are less than a line's width apart.
TEST(DragLinkDrawing, ASmallClockingIsDrawnLargeWithItsFigure) {
  Mechanism mechanism = example_mechanism(example_station());
  mechanism.steering->stud_clocking = radians_from_degrees(-3.5);
  const Sheet sheet = drag_link_sheet(drag_link_part(mechanism, example_length(), example_locks()),
                                      "tender", Projection::first_angle);
  ASSERT_EQ(sheet.arcs.size(), 3U);  // between the studs and a tail outside each
  const SheetArc& between = sheet.arcs.front();
  EXPECT_NEAR(between.end_deg - between.start_deg, 3.5, 1e-9);
  constexpr double kThreeLines = 2.0;  // mm, three lines of 0.35 and the gaps between
  EXPECT_GT(between.radius * radians_from_degrees(3.5), kThreeLines);
  EXPECT_TRUE(std::any_of(sheet.texts.begin(), sheet.texts.end(),
                          [](const SheetText& text) { return text.words == "3.5\u00b0"; }));
}

TEST(DragLinkDrawing, NamesTheRelaysEndAndSaysWhatTheSwingIs) {
  Mechanism mechanism = example_mechanism(example_station());
  auto box = std::make_shared<SteeringBoxStation>(*mechanism.project.steering_box);
  box->relays.emplace_back();
  mechanism.project.steering_box = box;
  const DragLinkPart part = drag_link_part(mechanism, example_length(), example_locks());
  const std::string drawing = svg(drag_link_sheet(part, "wagon", Projection::first_angle, 1));
  EXPECT_THAT(drawing, HasSubstr("RELAY END"));
  EXPECT_THAT(drawing, HasSubstr("seen from the relay end along the link"));
  EXPECT_THAT(drawing, ::testing::Not(HasSubstr("ARM END")));
  EXPECT_THAT(drawing, HasSubstr("Ball-stud swing needed is over both locks"));
  EXPECT_THAT(drawing, HasSubstr("Settle it before"));
  EXPECT_THAT(dimension(drag_link_item(part), "stud_clocking")->words,
              HasSubstr("relay end to knuckle end"));
}

TEST(WriteCutList, MakesTheFolderAndLeavesNoHalves) {
  const fs::path folder = empty_folder("write") / "deep" / "er";
  const auto written = write_cut_list(example_list(), folder);
  ASSERT_TRUE(written.ok());
  ASSERT_EQ(written->size(), 3U);
  EXPECT_EQ(content(folder / "cut-list.txt"), cut_list_text(example_list()));
  EXPECT_EQ(content(folder / "cut-list.csv"), cut_list_csv(example_list()));
  std::size_t files = 0;
  for ([[maybe_unused]] const auto& entry : fs::directory_iterator(folder)) ++files;
  EXPECT_EQ(files, 3U);
  ASSERT_TRUE(write_cut_list(example_list(), folder).ok());  // over an older one
}

TEST(WriteCutList, SaysWhyItCannot) {
  const fs::path folder = empty_folder("blocked");
  fs::create_directories(folder);
  std::ofstream(folder / "file") << "in the way";
  const auto written = write_cut_list(example_list(), folder / "file");
  ASSERT_FALSE(written.ok());
  EXPECT_THAT(written.problems().front().file, HasSubstr("file"));
  EXPECT_FALSE(written.problems().front().found.empty());
  // A folder stands where the list should go.
  fs::create_directories(folder / "cut-list.csv" / "inside");
  const auto half = write_cut_list(example_list(), folder);
  ASSERT_FALSE(half.ok());
  EXPECT_THAT(half.problems().front().file, HasSubstr("cut-list.csv"));
  EXPECT_FALSE(fs::exists(folder / "cut-list.csv.part"));
}

}  // namespace
}  // namespace tackbench
