#include "ui/panels/cut_list_panel.h"

#include <QSignalSpy>
#include <QTemporaryDir>
#include <fstream>
#include <sstream>

#include "core/fabrication/cut_list_writers.h"
#include "core/fabrication/make_cut_list.h"
#include "tests/ui/panels/panel_support.h"

namespace tackbench::ui {
namespace {

class CutListTest : public testing::Test {
 protected:
  void SetUp() override {
    session_.take(sample("tender-as-first-tacked"), {});
    session_.wait_until_fresh();
    panel_.resize(320, 900);
    panel_.show();
    settle();
  }

  CutList list() const {
    const JudgedTruck& judged = session_.judged();
    return make_cut_list(*judged.mechanism, judged.results, judged.findings);
  }

  Session session_;
  CutListPanel panel_{session_};
};

TEST_F(CutListTest, ShowsEveryItemWithItsCautionsFirst) {
  const QString text = panel_.shown_text();
  const CutList expected = list();
  ASSERT_FALSE(expected.items.empty());
  ASSERT_FALSE(expected.cautions.empty());
  EXPECT_TRUE(text.startsWith(QString::fromStdString(expected.cautions.front())));
  for (const CutItem& item : expected.items) {
    EXPECT_TRUE(text.contains(QString::fromStdString(item.title))) << item.title;
    for (const CutDimension& dimension : item.dimensions) {
      const std::string value = dimension.value ? value_text(dimension) : std::string();
      EXPECT_TRUE(text.contains(QString::fromStdString(value))) << dimension.words;
    }
  }
  keep_picture(panel_, QStringLiteral("cut-list"));
  expect_nothing_clipped(panel_);
  expect_names(panel_);
}

TEST_F(CutListTest, IsCurrentAndSaysWhenItIsNot) {
  const QString before = panel_.shown_text();
  const QString fresh = panel_.state_words();
  ASSERT_TRUE(session_.set_field("drag_link.quantity", "7").empty());
  EXPECT_NE(panel_.state_words(), fresh);
  session_.wait_until_fresh();
  EXPECT_NE(panel_.shown_text(), before);
  EXPECT_TRUE(panel_.shown_text().contains(QStringLiteral("make 7")));
  EXPECT_EQ(panel_.state_words(), fresh);
}

TEST_F(CutListTest, SavesWhatTheProjectIsNow) {
  const QTemporaryDir folder;
  const QSignalSpy saved(&panel_, &CutListPanel::saved);
  ASSERT_TRUE(session_.set_field("drag_link.quantity", "7").empty());
  // The checks are still at work: saving waits for them.
  const auto written = panel_.save_into(folder.path().toStdString());
  ASSERT_TRUE(written.ok());
  EXPECT_EQ(saved.size(), 1);
  std::ifstream file(folder.path().toStdString() + "/cut-list.txt");
  std::stringstream text;
  text << file.rdbuf();
  EXPECT_EQ(text.str(), cut_list_text(list()));
  EXPECT_NE(text.str().find("make 7"), std::string::npos);
}

TEST_F(CutListTest, AFolderThatCannotBeIsToldInWords) {
  const QTemporaryDir folder;
  const std::string file = folder.path().toStdString() + "/file";
  std::ofstream(file) << "not a folder";
  EXPECT_FALSE(panel_.save_into(file).ok());
  EXPECT_FALSE(panel_.state_words().isEmpty());
}

TEST_F(CutListTest, SaysWhyItCannotBeWorkedOut) {
  const QString before = panel_.shown_text();
  ASSERT_TRUE(session_.set_field("steering_box.output_point_mm", "[-870, 479, -10]").empty());
  session_.wait_until_fresh();
  EXPECT_TRUE(panel_.state_words().contains("792.9")) << panel_.state_words().toStdString();
  EXPECT_TRUE(panel_.state_words().contains("from before"));
  EXPECT_EQ(panel_.shown_text(), before);
  settle();
  keep_picture(panel_, QStringLiteral("cut-list-cannot"));
  expect_nothing_clipped(panel_);
  const QTemporaryDir folder;
  EXPECT_FALSE(panel_.save_into(folder.path().toStdString()).ok());
  EXPECT_TRUE(panel_.state_words().contains("792.9"));

  // Opened like that there is nothing from before, least of all of another document.
  session_.take(session_.project(), {});
  session_.wait_until_fresh();
  EXPECT_TRUE(panel_.state_words().contains("792.9"));
  EXPECT_FALSE(panel_.state_words().contains("from before"));
  EXPECT_TRUE(panel_.shown_text().isEmpty()) << panel_.shown_text().toStdString();
}

}  // namespace
}  // namespace tackbench::ui
