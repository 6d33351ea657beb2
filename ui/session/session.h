// The open project and its one door for edits. Everything on a screen looks at a session and
// listens to its signals; nothing else changes the project.
//
// Every change makes one undo step; a drag is one step; a change that ends where it began makes
// none. After a change the truck is posed and judged on snapshots away from the window's thread;
// results of a state that is gone are dropped.
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/basics/shown_number.h"
#include "core/project/grips.h"
#include "core/project/project.h"
#include "ui/session/kept_references.h"
#include "ui/session/truck_state.h"
#include "ui/session/undo_steps.h"

namespace tackbench::ui {

enum class ChangeKind { opened, edited, dragged, undone, redone };

// What a change touched.
struct Change {
  ChangeKind kind = ChangeKind::edited;
  std::vector<Station> stations;  // whose records differ
  bool others = false;            // cab, sheet, limits, measurements, name, notes
};

class Session : public QObject {
  Q_OBJECT

 public:
  explicit Session(QObject* parent = nullptr);
  ~Session() override;

  // --- the document
  const Project& project() const { return project_; }
  ShownUnit shown_unit() const;
  // Absolute; empty for a project that was never saved.
  const std::filesystem::path& file() const { return file_; }
  // What stands here is on no disk: edited, never saved, or the file is another one by now.
  bool unsaved() const;
  // Replaces the document; undo starts anew. `file` may be empty; `as_unsaved` marks it as not yet
  // saved (a recovered project).
  void take(Project project, std::filesystem::path file, bool as_unsaved = false);
  // Faults, or none when it is open.
  Problems open(const std::filesystem::path& file);
  Problems save(const std::filesystem::path& file);
  // The file as it is on disk now, as one undo step; what stood here comes back by undo.
  Problems load_again();
  // The file on disk holds something else than what was read or saved here, or is gone.
  void set_file_differs(bool differs);

  // --- edits
  // What is typed into fields and not in the project yet is put there; saving, undo and redo begin
  // with it. Gives the words why, where it was refused.
  QStringList settle_entries();
  // A change is being told: whoever listens may look, and edit afterwards.
  bool telling_change() const { return telling_change_; }
  // One undo step from the project to `after`; none when they are equal.
  void edit(const QString& name, Project after);
  // The member set from text as in a file; faults leave the project as it was.
  Problems set_field(const std::string& path, const std::string& text);
  Problems set_fields(const QString& name,
                      const std::vector<std::pair<std::string, std::string>>& values);
  // A drag: begin, any number of moves, end or cancel. Edits in between end it first.
  void begin_drag(const QString& name);
  void drag_to(Project project);
  void end_drag();
  void cancel_drag();
  bool dragging() const { return drag_.has_value(); }

  bool can_undo() const { return steps_.can_undo() && !dragging(); }
  bool can_redo() const { return steps_.can_redo() && !dragging(); }
  QString undo_name() const { return steps_.undo_name(); }
  QString redo_name() const { return steps_.redo_name(); }
  void undo();
  void redo();

  // --- controls and selection: no part of the document
  const Controls& controls() const { return controls_; }
  void set_controls(const Controls& controls);
  // Member path of a grip or record; empty for none.
  const std::string& selected() const { return selected_; }
  void select(const std::string& path);

  // --- results
  Revision revision() const { return revision_; }
  const PosedTruck& posed() const { return *posed_; }
  bool posed_fresh() const { return posed_->revision == revision_; }
  const JudgedTruck& judged() const { return *judged_; }
  bool judged_fresh() const { return judged_->revision == judged_revision_; }
  bool checks_stopped() const { return checks_stopped_; }
  // Why the project as it stands cannot be worked out. Empty while it can, and while the checks are
  // at work. Then judged() is from before, of revision 0 when nothing of this document was judged.
  const Problems& cannot_work_out() const { return cannot_work_out_; }
  // As things stood before the last edit or the drag under way; null before the first.
  const PosedTruck* posed_before() const { return posed_before_.get(); }
  const JudgedTruck* judged_before() const { return judged_before_.get(); }
  // Stops checks under way; they stay not fresh until the next change or run_checks_again().
  void stop_checks();
  void run_checks_again();
  // Blocks until posed() and judged() are fresh (tests, saving a cut list).
  void wait_until_fresh();

 Q_SIGNALS:
  void project_changed(const tackbench::ui::Change& change);
  void controls_changed();
  void selection_changed();
  void posed_changed();   // posed() is new or has gone stale
  void judged_changed();  // judged() is new or has gone stale
  void file_changed();    // file() or unsaved()
  void undo_changed();    // names or possibility of undo and redo
  // Fields put what is typed into the project and add the words why not.
  void entries_wanted(QStringList* refused);

 private:
  struct Drag {
    QString name;
    Project before;
  };

  void show_nothing();
  void became_saved();
  void change_to(Project project, ChangeKind kind);
  void remember_before();
  void pose_now();
  void judge_now();
  void arrived(std::shared_ptr<const PosedTruck> truck);
  void arrived(std::shared_ptr<const JudgedTruck> truck);
  void could_not_judge(Revision revision, Problems why);

  Project project_;
  Project saved_;
  bool never_saved_ = false;
  bool file_differs_ = false;
  bool telling_change_ = false;
  std::filesystem::path file_;
  UndoSteps steps_;
  std::optional<Drag> drag_;
  Controls controls_;
  std::string selected_;

  Revision revision_ = 0;         // of project and controls
  Revision judged_revision_ = 0;  // of the project alone
  Revision opened_revision_ = 0;  // results before it are of another document
  bool checks_stopped_ = false;
  Problems cannot_work_out_;
  std::shared_ptr<const PosedTruck> posed_;
  std::shared_ptr<const JudgedTruck> judged_;
  std::shared_ptr<const PosedTruck> posed_before_;
  std::shared_ptr<const JudgedTruck> judged_before_;
  KeptReferences references_;  // of the checks alone
  Runner at_once_;             // last: their jobs post to this object
  Runner checks_;
};

}  // namespace tackbench::ui
