#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "tests/layering/include_scan.h"

namespace tackbench::layering {
namespace {

namespace fs = std::filesystem;

struct Source {
  std::string path;  // from the top
  std::string text;
};

// Every header and source below the given top folders.
std::vector<Source> sources_under(const std::vector<std::string>& tops) {
  const fs::path root = TACKBENCH_SOURCE_FOLDER;
  std::vector<Source> sources;
  for (const std::string& top : tops) {
    if (!fs::exists(root / top)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(root / top)) {
      const auto extension = entry.path().extension();
      if (extension != ".h" && extension != ".cpp") continue;
      std::ifstream file(entry.path());
      sources.push_back({fs::relative(entry.path(), root).generic_string(),
                         {std::istreambuf_iterator<char>(file), {}}});
    }
  }
  return sources;
}

std::vector<std::string> faults_in(const Source& source) {
  std::vector<std::string> faults;
  for (const Include& include : includes_in(source.path, source.text))
    if (auto fault = fault_of(include)) faults.push_back(*std::move(fault));
  return faults;
}

TEST(Layering, EveryIncludeFollowsAnAllowedArrow) {
  const auto sources = sources_under({"core", "ui", "app", "tests"});
  ASSERT_GT(sources.size(), 10U) << "the scan found hardly anything: is the folder right?";
  for (const Source& source : sources)
    for (const std::string& fault : faults_in(source)) ADD_FAILURE() << fault;
}

TEST(Layering, FilesStayShort) {
  for (const Source& source : sources_under({"core", "ui", "app", "tests"})) {
    const auto lines = std::count(source.text.begin(), source.text.end(), '\n');
    const bool header = source.path.ends_with(".h");
    EXPECT_LT(lines, header ? 250 : 600) << source.path << " has too many concepts in it: split it";
  }
}

struct Planted {
  const char* file;
  const char* text;
  const char* part_of_fault;  // empty: allowed
};

class PlantedInclude : public testing::TestWithParam<Planted> {};

TEST_P(PlantedInclude, IsJudged) {
  const Planted& planted = GetParam();
  const auto faults = faults_in({planted.file, planted.text});
  if (std::string_view(planted.part_of_fault).empty()) {
    EXPECT_TRUE(faults.empty()) << faults.front();
    return;
  }
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].find(planted.part_of_fault), std::string::npos) << faults[0];
}

INSTANTIATE_TEST_SUITE_P(
    Arrows, PlantedInclude,
    testing::Values(
        Planted{"core/mechanism/pose.cpp", "#include \"core/project/project.h\"\n", ""},
        Planted{"core/mechanism/pose.cpp", "#include \"core/mechanism/crank.h\"\n", ""},
        Planted{"core/mechanism/pose.cpp", "// x\n  #  include \"core/checks/lock_check.h\"\n",
                "core/mechanism/pose.cpp:2: \"core/checks/lock_check.h\": mechanism may not see "
                "checks"},
        Planted{"core/basics/units.h", "#include \"core/geometry/line.h\"\n", "basics may not see"},
        Planted{"core/project-file/read.cpp", "#include \"core/mechanism/pose.h\"\n",
                "project-file may not see mechanism"},
        Planted{"core/project/project.cpp", "#include \"core/project-file/read.h\"\n",
                "project may not see project-file"},
        Planted{"core/runner/runner.cpp", "#include \"core/project/project.h\"\n",
                "runner may not see project"},
        Planted{"core/fabrication/cut_list.cpp", "#include \"core/drawing/line.h\"\n", ""},
        Planted{"core/findings/catalogue.cpp", "#include \"core/drawing/line.h\"\n",
                "findings may not see drawing"},
        Planted{"core/drawing/view.cpp", "#include \"core/findings/finding.h\"\n",
                "drawing may not see findings"},
        Planted{"core/checks/lock.cpp", "#include \"ui/session/session.h\"\n",
                "core may not see ui"},
        Planted{"core/checks/lock.cpp", "#include \"app/command-line/options.h\"\n",
                "core may not see app"},
        Planted{"core/checks/lock.cpp", "#include <QString>\n", "no Qt"},
        Planted{"core/checks/lock.cpp", "#include <QtCore/qstring.h>\n", "no Qt"},
        Planted{"core/checks/lock.cpp", "#include \"lock.h\"\n", "path from the top"},
        Planted{"core/garage/door.cpp", "#include <vector>\n", "not in the table of rooms"},
        Planted{"ui/sheet/view.cpp", "#include \"app/desktop/main_window.h\"\n",
                "sheet may not see app"},
        Planted{"ui/sheet/view.cpp", "#include <QWidget>\n", ""},
        Planted{"ui/sheet/view.cpp", "#include \"ui/session/session.h\"\n", ""},
        Planted{"ui/sheet/view.cpp", "#include \"ui/windows/bench_window.h\"\n",
                "sheet may not see windows"},
        Planted{"ui/session/session.cpp", "#include \"ui/look/palette.h\"\n",
                "session may not see look"},
        Planted{"ui/garage/door.cpp", "#include <vector>\n", "not in the table of rooms"},
        Planted{"app/command-line/main.cpp", "#include <QCoreApplication>\n", "Qt belongs to"},
        Planted{"app/command-line/main.cpp", "#include \"tests/support/trucks.h\"\n",
                "nothing but tests"},
        Planted{"app/command-line/main.cpp", "#include \"core/findings/finding.h\"\n", ""}));

}  // namespace
}  // namespace tackbench::layering
