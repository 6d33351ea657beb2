// The whole window and every dialog by the keyboard alone: each stop has a name, is in sight and
// shows that it has the focus; dialogs are gone through from top to bottom.
#include <gtest/gtest.h>

#include <QAccessible>
#include <QApplication>
#include <QTest>
#include <set>

#include "core/project-file/project_file.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/desk/motion_desk.h"
#include "ui/panels/shaft_strip.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/space/space_view.h"
#include "ui/windows/first_page.h"
#include "ui/windows/help_dialog.h"
#include "ui/windows/new_project_dialog.h"
#include "ui/windows/recovered_dialog.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

constexpr int kMostStops = 300;

std::string said(QWidget* widget) {
  const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(widget);
  return spoken == nullptr ? std::string() : spoken->text(QAccessible::Name).toStdString();
}

std::string words_about(QWidget* widget) {
  return std::string(widget->metaObject()->className()) + " \"" + said(widget) + "\" in " +
         (widget->parentWidget() == nullptr ? "nothing"
                                            : widget->parentWidget()->metaObject()->className());
}

// What the window shows of a widget and a little about it.
QImage shown(QWidget& window, const QWidget& widget) {
  QApplication::processEvents();
  const QRect around(widget.mapTo(&window, QPoint(-8, -8)), widget.size() + QSize(16, 16));
  return window.grab(around).toImage();
}

// No scrolled page has it outside.
bool in_sight(const QWidget& widget) {
  QRect left = widget.rect();
  const QWidget* at = &widget;
  for (; !at->isWindow(); at = at->parentWidget())
    left = left.translated(at->pos()) & at->parentWidget()->rect();
  return widget.isVisible() && !left.isEmpty();
}

// From where the focus is, by Tab, until a stop comes again. Every stop is looked at.
std::vector<QWidget*> walk(QWidget& window) {
  std::vector<QWidget*> stops;
  std::set<QWidget*> seen;
  for (int i = 0; i < kMostStops; ++i) {
    QWidget* at = window.focusWidget();
    if (at == nullptr || !seen.insert(at).second) return stops;
    stops.push_back(at);
    EXPECT_TRUE(window.isAncestorOf(at) || at == &window) << words_about(at);
    EXPECT_FALSE(said(at).empty()) << words_about(at) << " has no name";
    EXPECT_TRUE(in_sight(*at)) << words_about(at) << " is out of sight";
    const QImage with = shown(window, *at);
    QTest::keyClick(at, Qt::Key_Tab);
    if (window.focusWidget() != at) {
      EXPECT_NE(with, shown(window, *at)) << words_about(at) << " does not show its focus";
    }
  }
  ADD_FAILURE() << "Tab never comes round";
  return stops;
}

class KeyboardTest : public BenchTest {
 protected:
  void SetUp() override { open(); }
};

TEST_F(KeyboardTest, TabGoesThroughTheWholeWindow) {
  for (const SidePage page :
       {SidePage::findings, SidePage::station, SidePage::graphs, SidePage::cut_list}) {
    SCOPED_TRACE(static_cast<int>(page));
    window_->side().show_page(page);
    window_->session().wait_until_fresh();
    QApplication::processEvents();
    window_->sheet().setFocus(Qt::TabFocusReason);
    const std::vector<QWidget*> stops = walk(*window_);
    const auto among = [&](const QWidget& place) {
      return std::any_of(stops.begin(), stops.end(), [&](const QWidget* stop) {
        return stop == &place || place.isAncestorOf(stop);
      });
    };
    EXPECT_TRUE(among(window_->shaft()));
    EXPECT_TRUE(among(window_->space().view()));
    EXPECT_TRUE(among(window_->side()));
    EXPECT_TRUE(among(window_->desk()));
  }
}

TEST_F(KeyboardTest, OneKeyGoesRoundAndShowsWhereItIs) {
  QTest::keyClick(window_.get(), Qt::Key_F6);
  const std::array<QWidget*, 5> round{&window_->shaft(), &window_->sheet(),
                                      &window_->space().view(), &window_->side(), &window_->desk()};
  // The last that holds it: the view in space lies on the sheet.
  std::size_t first = round.size();
  for (std::size_t i = 0; i < round.size(); ++i) {
    QWidget* at = window_->focusWidget();
    if (at == round[i] || round[i]->isAncestorOf(at)) first = i;
  }
  ASSERT_LT(first, round.size());
  for (std::size_t step = 0; step < 2 * round.size(); ++step) {
    QWidget* place = round[(first + step) % round.size()];
    QWidget* at = window_->focusWidget();
    ASSERT_TRUE(at == place || (at != nullptr && place->isAncestorOf(at)))
        << words_about(at) << " has the focus, not " << words_about(place);
    EXPECT_FALSE(said(at).empty()) << words_about(at);
    const QImage with = shown(*window_, *at);
    QTest::keyClick(at, Qt::Key_F6);
    EXPECT_NE(with, shown(*window_, *at)) << words_about(at) << " does not show its focus";
  }
}

// In rows from top to bottom, within a row from left to right.
void expect_reading_order(QWidget& dialog) {
  dialog.show();
  dialog.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
  // From the first that the keyboard reaches.
  QWidget* first = &dialog;
  while (first->focusPolicy() == Qt::NoFocus || !first->isVisibleTo(&dialog)) {
    first = first->nextInFocusChain();
    ASSERT_NE(first, &dialog) << "nothing takes the focus";
  }
  first->setFocus(Qt::TabFocusReason);
  const std::vector<QWidget*> stops = walk(dialog);
  EXPECT_FALSE(stops.empty());
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const QRect before(stops[i - 1]->mapTo(&dialog, QPoint()), stops[i - 1]->size());
    const QRect now(stops[i]->mapTo(&dialog, QPoint()), stops[i]->size());
    const bool same_row = now.top() <= before.center().y() && now.bottom() >= before.center().y();
    EXPECT_TRUE(same_row ? now.left() > before.left() : now.top() > before.top())
        << words_about(stops[i - 1]) << " comes before " << words_about(stops[i]);
  }
}

TEST_F(KeyboardTest, DialogsAreReadFromTopToBottom) {
  {
    SCOPED_TRACE("new project");
    NewProjectDialog dialog;
    expect_reading_order(dialog);
  }
  for (const HelpPage page : {HelpPage::keys, HelpPage::words, HelpPage::cautions}) {
    SCOPED_TRACE(static_cast<int>(page));
    HelpDialog dialog(page);
    expect_reading_order(dialog);
  }
  {
    SCOPED_TRACE("first page");
    FirstPage dialog;
    expect_reading_order(dialog);
  }
  SCOPED_TRACE("recovered");
  const std::filesystem::path copy = folder_.filePath("left.tack").toStdString();
  ASSERT_TRUE(save_project(window_->session().project(), copy).ok());
  RecoveredDialog dialog({{copy, {}, "The tender", QDateTime::currentDateTimeUtc()}});
  expect_reading_order(dialog);
}

}  // namespace
}  // namespace tackbench::ui
