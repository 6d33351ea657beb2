// The window of one project: shaft across the top, sheet with the view in space, side column,
// motion desk.
#pragma once

#include <QPointer>
#include <QWidget>
#include <functional>
#include <memory>

#include "ui/motion/shown_motion.h"
#include "ui/session/file_watch.h"
#include "ui/session/recovery.h"
#include "ui/session/session.h"
#include "ui/windows/folding.h"

class QAction;
class QLabel;
class QMenu;
class QMenuBar;
class QPushButton;
class QToolButton;

namespace tackbench::ui {

class LooseCard;
class MotionDesk;
class NoticeBar;
class SheetCard;
class ShaftStrip;
class SideColumn;
class Tour;

class BenchWindow : public QWidget {
  Q_OBJECT

 public:
  explicit BenchWindow(std::filesystem::path recovery_folder, QWidget* parent = nullptr);
  ~BenchWindow() override;

  Session& session() { return session_; }
  ShownMotion& motion() { return motion_; }
  SheetCard& sheet() { return *sheet_; }
  LooseCard& space() { return *space_; }
  SideColumn& side() { return *side_; }
  ShaftStrip& shaft() { return *shaft_; }
  MotionDesk& desk() { return *desk_; }
  NoticeBar& notice() { return *notice_; }
  QMenuBar& menus() { return *menus_; }
  // The action of that name (objectName), for keys and tests; null when there is none.
  QAction* action(const QString& name) const;

  // True when it is open; otherwise the faults were shown.
  bool open_file(const QString& file);
  void open_sample(const QString& name);
  void take_new(Project project);
  // Offers what a crash left behind.
  void offer_recovered();
  void begin_tour();
  void set_shown_unit(ShownUnit unit);
  // False when the user wants to stay.
  bool may_leave();

 Q_SIGNALS:
  // With that file; with an empty name, a bare start.
  void another_window_wanted(const QString& file);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  // --- menus and actions (bench_menus.cpp)
  void make_menus();
  void make_file_menu();
  void make_edit_menu();
  void make_show_menu();
  void make_motion_menu();
  void make_help_menu();
  QAction* add(QMenu* menu, const char* name, const QString& words, const QKeySequence& keys,
               std::function<void()> then);
  void fill_recent();
  void show_undo();
  void show_unit();

  // --- files (bench_files.cpp)
  void ask_new();
  void ask_open();
  bool save();
  bool ask_save_as();
  bool save_to(const std::filesystem::path& file);
  void ask_save_cut_list();
  bool ask(const QString& words, const QString& yes);
  // False when the file is another one by now and is to stay so.
  bool may_write_over(const std::filesystem::path& file);
  void file_changed_on_disk();
  void load_again();
  void show_problems(const QString& heading, const Problems& problems);
  // Given as the left one's mirror image to begin with; not own: the mirror image again.
  void free_right_knuckle(bool own);
  // Says which values of the open project do not fit each other, if any.
  void show_unfit(const QString& heading);

  void make_layout();
  void follow_session();
  void show_title();
  void show_member(const QString& path);
  void show_finding(const QString& name);
  void go_round();

  // --- what folds, by itself and by hand (bench_folding.cpp)
  void follow_folding();
  void fold_side(bool fold);
  void give_room();
  double drawing_share() const;  // of the window, were the side column open

  Session session_;
  ShownMotion motion_{session_};
  Recovery recovery_;
  FileWatch watch_;
  QString said_of_file_;  // the last notice about what happened to the file on disk

  QMenuBar* menus_;
  QMenu* recent_ = nullptr;
  QLabel* name_;
  QLabel* state_;
  QPushButton* undo_;
  QPushButton* unit_;
  ShaftStrip* shaft_;
  NoticeBar* notice_;
  SheetCard* sheet_;
  LooseCard* space_;
  QToolButton* side_handle_;
  SideColumn* side_;
  MotionDesk* desk_;
  QPointer<Tour> tour_;
  Folding shaft_folding_;
  Folding side_folding_;
  Folding desk_folding_;
  Folding space_folding_;
  bool giving_room_ = false;  // it is the window that folds, not a hand
};

}  // namespace tackbench::ui
