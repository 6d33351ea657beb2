// The window's menus and keys.
#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <algorithm>
#include <array>

#include "core/project/field_items.h"
#include "core/project/field_path.h"
#include "ui/desk/motion_desk.h"
#include "ui/look/palette.h"
#include "ui/panels/shaft_strip.h"
#include "ui/panels/station_sheet.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/first_page.h"
#include "ui/windows/help_dialog.h"
#include "ui/windows/preferences.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {

QAction* BenchWindow::add(QMenu* menu, const char* name, const QString& words,
                          const QKeySequence& keys, std::function<void()> then) {
  auto* action = new QAction(words, this);
  action->setObjectName(name);
  action->setShortcut(keys);
  connect(action, &QAction::triggered, this, [then = std::move(then)] { then(); });
  menu->addAction(action);
  addAction(action);
  return action;
}

void BenchWindow::make_menus() {
  make_file_menu();
  make_edit_menu();
  make_show_menu();
  make_motion_menu();
  make_help_menu();
}

void BenchWindow::make_file_menu() {
  QMenu* menu = menus_->addMenu(tr("&File"));
  add(menu, "new", tr("New..."), QKeySequence::New, [this] { ask_new(); });
  add(menu, "open", tr("Open..."), QKeySequence::Open, [this] { ask_open(); });
  recent_ = menu->addMenu(tr("Open again"));
  connect(recent_, &QMenu::aboutToShow, this, &BenchWindow::fill_recent);
  menu->addSeparator();
  add(menu, "save", tr("Save"), QKeySequence::Save, [this] { save(); });
  add(menu, "save as", tr("Save as..."), QKeySequence("Ctrl+Shift+S"), [this] { ask_save_as(); });
  add(menu, "save cut list", tr("Save the cut list..."), QKeySequence("Ctrl+L"),
      [this] { ask_save_cut_list(); });
  menu->addSeparator();
  add(menu, "another window", tr("Another window"), QKeySequence("Ctrl+Shift+N"),
      [this] { Q_EMIT another_window_wanted({}); });
  add(menu, "close", tr("Close"), QKeySequence::Close, [this] { close(); });
  add(menu, "quit", tr("Quit"), QKeySequence::Quit, [] { QApplication::closeAllWindows(); });
}

void BenchWindow::make_edit_menu() {
  QMenu* menu = menus_->addMenu(tr("&Edit"));
  add(menu, "undo", tr("Undo"), QKeySequence::Undo, [this] { session_.undo(); });
  add(menu, "redo", tr("Redo"), QKeySequence("Ctrl+Shift+Z"), [this] { session_.redo(); });
  menu->addSeparator();
  add(menu, "exact place", tr("Exact place..."), QKeySequence("Ctrl+E"),
      [this] { sheet_->enter_exactly(); });
  QAction* measure = add(menu, "measure", tr("Measure"), QKeySequence("Ctrl+M"), [] {});
  measure->setCheckable(true);
  connect(measure, &QAction::toggled, sheet_, &SheetCard::set_measuring);
  connect(sheet_, &SheetCard::measuring_changed, measure, &QAction::setChecked);
  add(menu, "keep measured", tr("Keep what is measured"), {}, [this] { sheet_->keep_measured(); });
  menu->addSeparator();
  QAction* freed = add(menu, "free right knuckle", tr("Right knuckle of its own"), {}, [] {});
  freed->setCheckable(true);
  freed->setToolTip(tr("Otherwise it is the left one's mirror image and moves with it"));
  connect(freed, &QAction::triggered, this, [this](bool own) { free_right_knuckle(own); });
  const auto show_freed = [this, freed] {
    const auto& axle = session_.project().front_axle;
    freed->setEnabled(axle != nullptr);
    freed->setChecked(axle && axle->right_knuckle);
  };
  connect(&session_, &Session::project_changed, this, show_freed);
  show_freed();
  menu->addSeparator();
  const auto record = [&](const char* name, const QString& words, const char* root) {
    add(menu, name, words, {}, [this, root] {
      fold_side(false);
      side_->show_record(root);
    });
  };
  record("cab", tr("The cab's place"), "cab");
  record("measurements", tr("Measurements"), "measurements");
  record("limits", tr("Own limits"), "limits");
}

void BenchWindow::free_right_knuckle(bool own) {
  const Project& project = session_.project();
  if (!project.front_axle || own == project.front_axle->right_knuckle.has_value()) return;
  if (own) {
    if (auto freed = with_group_added(project, "front_axle.right_knuckle"); freed.ok())
      session_.edit(tr("Free the right knuckle"), std::move(freed).value());
    return;
  }
  auto axle = std::make_shared<FrontAxleStation>(*project.front_axle);
  axle->right_knuckle.reset();
  Project mirrored = project;
  mirrored.front_axle = std::move(axle);
  session_.edit(tr("Right knuckle as the left one's mirror image"), std::move(mirrored));
}

void BenchWindow::make_show_menu() {
  QMenu* menu = menus_->addMenu(tr("&Show"));
  const std::array<std::pair<const char*, QString>, 4> pages{{{"show findings", tr("Findings")},
                                                              {"show station", tr("Station")},
                                                              {"show graphs", tr("Graphs")},
                                                              {"show cut list", tr("Cut list")}}};
  for (std::size_t i = 0; i < pages.size(); ++i)
    add(menu, pages[i].first, pages[i].second,
        QKeySequence(QString("Ctrl+%1").arg(static_cast<int>(i) + 1)), [this, i] {
          fold_side(false);
          side_->show_page(static_cast<SidePage>(i));
        });
  add(menu, "fold side", tr("Fold the side column away"), QKeySequence("F9"),
      [this] { fold_side(side_->isVisible()); });
  add(menu, "fold shaft", tr("Fold the shaft"), QKeySequence("F8"),
      [this] { shaft_->fold_by_hand(!shaft_->folded()); });
  add(menu, "fold desk", tr("Fold the motion desk"), QKeySequence("F7"),
      [this] { desk_->fold_by_hand(!desk_->folded()); });
  menu->addSeparator();
  add(menu, "all views", tr("All views"), QKeySequence("Ctrl+0"), [this] {
    sheet_->fill_with(std::nullopt);
    sheet_->fit();
  });
  const std::array<std::pair<QString, SheetView>, 3> views{{{tr("Side alone"), SheetView::side},
                                                            {tr("Front alone"), SheetView::front},
                                                            {tr("Plan alone"), SheetView::plan}}};
  for (const auto& [words, view] : views)
    add(menu, "one view", words, {}, [this, which = view] { sheet_->fill_with(which); });
  QAction* grid = add(menu, "grid", tr("Grid"), {}, [] {});
  grid->setCheckable(true);
  grid->setChecked(sheet_->grid());
  connect(grid, &QAction::toggled, sheet_, &SheetCard::set_grid);
  connect(sheet_, &SheetCard::grid_changed, grid, &QAction::setChecked);
  QAction* swept = add(menu, "swept", tr("Swept places"), {}, [] {});
  swept->setCheckable(true);
  connect(swept, &QAction::toggled, this, [this](bool on) { motion_.swept.show(on); });
  connect(&motion_.swept, &SweptPlaces::changed, swept,
          [this, swept] { swept->setChecked(motion_.swept.shown()); });
  QAction* gaps = add(menu, "gaps", tr("Gaps in this position"), {}, [] {});
  gaps->setCheckable(true);
  connect(gaps, &QAction::toggled, sheet_, &SheetCard::set_gaps);
  QAction* photographs = add(menu, "photographs", tr("Photographs behind the views"), {}, [] {});
  photographs->setCheckable(true);
  connect(photographs, &QAction::toggled, sheet_, &SheetCard::show_photographs);
  connect(sheet_, &SheetCard::photographs_changed, photographs, &QAction::setChecked);
  QAction* space = add(menu, "view in space", tr("View in space"), QKeySequence("Ctrl+5"), [] {});
  space->setCheckable(true);
  space->setChecked(true);
  connect(space, &QAction::toggled, this, [this](bool on) {
    space_->setVisible(on);
    if (giving_room_) return;
    space_folding_.by_hand(!on);
    Preferences::set_space_folded(space_folding_.room, !on);
  });
  connect(space_, &LooseCard::put_away, space, [space] { space->setChecked(false); });
  QAction* spread = add(menu, "spread space", tr("View in space over the whole sheet"),
                        QKeySequence("Ctrl+Shift+5"), [] {});
  spread->setCheckable(true);
  connect(spread, &QAction::toggled, this, [this, space](bool on) {
    if (on) space->setChecked(true);
    space_->set_spread(on);
  });
  connect(space_, &LooseCard::spread_changed, spread, &QAction::setChecked);
  menu->addSeparator();

  QMenu* units = menu->addMenu(tr("Lengths in"));
  const std::array<std::pair<QString, ShownUnit>, 3> kinds{
      {{tr("millimetres"), ShownUnit::millimetre},
       {tr("inches, decimal"), ShownUnit::inch_decimal},
       {tr("inches, fractions"), ShownUnit::inch_fraction}}};
  for (const auto& [words, kind] : kinds)
    add(units, "unit", words, {}, [this, which = kind] { set_shown_unit(which); });
  QMenu* light = menu->addMenu(tr("Light"));
  auto* group = new QActionGroup(this);
  const std::array<std::pair<QString, Theme>, 3> themes{{{tr("as the desktop"), Theme::as_desktop},
                                                         {tr("day"), Theme::day},
                                                         {tr("night"), Theme::night}}};
  for (const auto& [words, theme] : themes) {
    QAction* action = add(light, "light", words, {}, [which = theme] {
      use_theme(which);
      Preferences::set_theme(which);
    });
    action->setCheckable(true);
    action->setChecked(used_theme() == theme);
    group->addAction(action);
  }
  add(menu, "whole screen", tr("Whole screen"), QKeySequence("F11"),
      [this] { setWindowState(windowState() ^ Qt::WindowFullScreen); });
}

void BenchWindow::make_motion_menu() {
  QMenu* menu = menus_->addMenu(tr("&Motion"));
  add(menu, "straight", tr("Straight, at ride height"), QKeySequence("Ctrl+Home"),
      [this] { session_.set_controls({}); });
  add(menu, "full left", tr("Full left"), QKeySequence("Ctrl+Left"),
      [this] { desk_->full_left(); });
  add(menu, "full right", tr("Full right"), QKeySequence("Ctrl+Right"),
      [this] { desk_->full_right(); });
  add(menu, "full bump", tr("Full bump"), QKeySequence("Ctrl+Up"), [this] { desk_->full_bump(); });
  add(menu, "full droop", tr("Full droop"), QKeySequence("Ctrl+Down"),
      [this] { desk_->full_droop(); });
  menu->addSeparator();
  QAction* play =
      add(menu, "play", tr("Play, or stop"), QKeySequence("F4"), [this] { desk_->play_or_stop(); });
  QAction* less = add(menu, "less motion", tr("Less motion"), {}, [] {});
  less->setCheckable(true);
  connect(less, &QAction::toggled, this, [this, play](bool on) {
    desk_->set_reduced_motion(on);
    motion_.wander.set_still(on);
    play->setEnabled(!on);
    Preferences::set_less_motion(on);
  });
  less->setChecked(Preferences::less_motion());
  QAction* wander = add(menu, "wander", tr("Play how the shaft wanders"), {}, [] {});
  wander->setCheckable(true);
  connect(wander, &QAction::toggled, this, [this](bool on) { motion_.wander.play(on); });
  connect(&motion_.wander, &WanderPlay::playing_changed, wander, &QAction::setChecked);
  const auto show_possible = [this, wander] { wander->setEnabled(motion_.wander.possible()); };
  connect(&motion_.wander, &WanderPlay::possible_changed, wander, show_possible);
  show_possible();
  menu->addSeparator();
  add(menu, "stop checks", tr("Stop the checks"), {}, [this] { session_.stop_checks(); });
  add(menu, "run checks", tr("Run the checks again"), QKeySequence("F5"),
      [this] { session_.run_checks_again(); });
}

void BenchWindow::make_help_menu() {
  QMenu* menu = menus_->addMenu(tr("&Help"));
  add(menu, "tour", tr("Tour"), {}, [this] { begin_tour(); });
  const auto page = [&](const char* name, const QString& words, const QKeySequence& keys,
                        HelpPage which) {
    add(menu, name, words, keys, [this, which] {
      auto* dialog = new HelpDialog(which, this);
      dialog->setAttribute(Qt::WA_DeleteOnClose);
      dialog->show();
    });
  };
  page("help keys", tr("Keys"), QKeySequence::HelpContents, HelpPage::keys);
  page("help words", tr("Words of the trade"), {}, HelpPage::words);
  page("help numbers", tr("What the numbers mean"), {}, HelpPage::numbers);
  page("help cautions", tr("Cautions, and what is not checked"), {}, HelpPage::cautions);
}

void BenchWindow::show_undo() {
  const auto say = [](const QString& verb, const QString& name) {
    return name.isEmpty() ? verb : tr("%1 \"%2\"").arg(verb, name);
  };
  QAction* undo = action("undo");
  undo->setEnabled(session_.can_undo());
  undo->setText(say(tr("Undo"), session_.undo_name()));
  QAction* redo = action("redo");
  redo->setEnabled(session_.can_redo());
  redo->setText(say(tr("Redo"), session_.redo_name()));
  const QFontMetrics metrics(undo_->font());
  undo_->setText(metrics.elidedText(undo->text(), Qt::ElideMiddle, std::min(260, width() / 6)));
  undo_->setToolTip(undo->text());
  undo_->setAccessibleDescription(undo->text());
  undo_->setEnabled(session_.can_undo());
}

void BenchWindow::show_unit() {
  switch (session_.shown_unit()) {
    case ShownUnit::millimetre:
      unit_->setText(tr("mm"));
      break;
    case ShownUnit::inch_decimal:
      unit_->setText(tr("in"));
      break;
    case ShownUnit::inch_fraction:
      unit_->setText(tr("in 1/16"));
      break;
  }
}

// The unit is the project's own, so switching it is an edit that can be undone.
void BenchWindow::set_shown_unit(ShownUnit unit) {
  if (unit == session_.shown_unit()) return;
  Project after = session_.project();
  auto sheet = after.sheet ? std::make_shared<SheetSettings>(*after.sheet)
                           : std::make_shared<SheetSettings>();
  sheet->unit = unit;
  after.sheet = std::move(sheet);
  session_.edit(tr("Switch unit"), std::move(after));
  show_unit();
}

}  // namespace tackbench::ui
