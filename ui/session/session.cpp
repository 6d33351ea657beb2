#include "ui/session/session.h"

#include <QCoreApplication>
#include <QMetaObject>
#include <utility>

#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "ui/session/drawable_part.h"

namespace tackbench::ui {

namespace {

Change change_between(const Project& before, const Project& after, ChangeKind kind) {
  Change change;
  change.kind = kind;
  const auto station = [&](Station which, const auto& a, const auto& b) {
    if (a != b) change.stations.push_back(which);
  };
  station(Station::column, before.column, after.column);
  station(Station::shaft_line, before.shaft_line, after.shaft_line);
  station(Station::steering_box, before.steering_box, after.steering_box);
  station(Station::drag_link, before.drag_link, after.drag_link);
  station(Station::front_axle, before.front_axle, after.front_axle);
  station(Station::pedals, before.pedals, after.pedals);
  station(Station::driver, before.driver, after.driver);
  station(Station::shapes, before.shapes, after.shapes);
  change.others = before.cab != after.cab || before.sheet != after.sheet ||
                  before.limits != after.limits || before.measurements != after.measurements ||
                  before.name != after.name || before.notes != after.notes;
  return change;
}

// Compiles and solves; a project that does not compile leaves the last mechanism posed.
PosedTruck pose_truck(const Project& project, const Controls& controls, Revision revision,
                      const std::shared_ptr<const Mechanism>& last) {
  PosedTruck truck;
  truck.revision = revision;
  truck.controls = controls;
  truck.mechanism = last;
  const auto same = [&] { return last && same_project(last->project, project); };
  if (!same()) {
    Result<Mechanism> compiled = compile(project);
    if (compiled) {
      truck.mechanism = std::make_shared<const Mechanism>(std::move(compiled).value());
    } else {
      truck.problems = compiled.problems();
      // Nobody waits for the last fault to be gone: what can be drawn is drawn, unless more of it
      // stands there already, as when one value is wrong for a moment.
      const auto part = drawable_part(project);
      if (part && (!has_stations_of(last->project, part->project) ||
                   !has_stations_of(project, last->project)))
        truck.mechanism = std::make_shared<const Mechanism>(*part);
    }
  }
  truck.pose = solved_pose(*truck.mechanism, controls);
  return truck;
}

std::shared_ptr<const Mechanism> empty_mechanism() {
  Result<Mechanism> compiled = compile(Project{});
  return std::make_shared<const Mechanism>(compiled ? std::move(compiled).value() : Mechanism{});
}

// A photograph or a recovery note would find nothing by a path that depends on where the program
// was started.
std::filesystem::path absolute_path(const std::filesystem::path& file) {
  if (file.empty()) return file;
  std::error_code failed;
  std::filesystem::path absolute = std::filesystem::absolute(file, failed);
  return failed ? file : absolute.lexically_normal();
}

}  // namespace

Session::Session(QObject* parent) : QObject(parent) {
  show_nothing();
}

void Session::show_nothing() {
  PosedTruck posed;
  posed.mechanism = empty_mechanism();
  posed.pose = solved_pose(*posed.mechanism, controls_);
  posed_ = std::make_shared<const PosedTruck>(std::move(posed));
  JudgedTruck judged;
  judged.mechanism = posed_->mechanism;
  judged_ = std::make_shared<const JudgedTruck>(std::move(judged));
}

Session::~Session() {
  // No job may post to an object that is half gone.
  at_once_.stop();
  checks_.stop();
  at_once_.wait_until_idle();
  checks_.wait_until_idle();
}

ShownUnit Session::shown_unit() const {
  return project_.sheet ? project_.sheet->unit : ShownUnit::millimetre;
}

bool Session::unsaved() const {
  return never_saved_ || file_differs_ || !same_project(project_, saved_);
}

void Session::take(Project project, std::filesystem::path file, bool as_unsaved) {
  drag_.reset();
  steps_.clear();
  posed_before_.reset();
  judged_before_.reset();
  controls_ = {};
  selected_.clear();
  file_ = absolute_path(file);
  saved_ = project;
  never_saved_ = as_unsaved;
  file_differs_ = false;
  opened_revision_ = revision_ + 1;
  show_nothing();
  change_to(std::move(project), ChangeKind::opened);
  Q_EMIT controls_changed();
  Q_EMIT selection_changed();
  Q_EMIT file_changed();
  Q_EMIT undo_changed();
}

Problems Session::open(const std::filesystem::path& file) {
  Result<UnfinishedProject> read = read_unfinished(file);
  if (!read) return read.problems();
  take(std::move(read).value().project, file);
  return {};
}

Problems Session::save(const std::filesystem::path& file) {
  end_drag();
  settle_entries();
  const std::filesystem::path wanted = absolute_path(file);
  const Result<Done> done = save_project(project_, wanted);
  if (!done) return done.problems();
  const bool elsewhere = file_ != wanted;
  file_ = wanted;
  became_saved();
  if (elsewhere) judge_now();  // photographs and scans are seen from the file's folder
  return {};
}

void Session::became_saved() {
  saved_ = project_;
  never_saved_ = false;
  file_differs_ = false;
  Q_EMIT file_changed();
}

Problems Session::load_again() {
  end_drag();
  settle_entries();
  Result<UnfinishedProject> read = read_unfinished(file_);
  if (!read) return read.problems();
  edit(tr("Load the file"), std::move(read).value().project);
  became_saved();
  return {};
}

void Session::set_file_differs(bool differs) {
  if (file_differs_ == differs) return;
  file_differs_ = differs;
  Q_EMIT file_changed();
}

QStringList Session::settle_entries() {
  QStringList refused;
  Q_EMIT entries_wanted(&refused);
  return refused;
}

void Session::edit(const QString& name, Project after) {
  end_drag();
  if (equal_project(project_, after)) return;
  remember_before();
  steps_.add({name, project_, after});
  change_to(std::move(after), ChangeKind::edited);
  Q_EMIT undo_changed();
  Q_EMIT file_changed();
}

Problems Session::set_field(const std::string& path, const std::string& text) {
  const Result<std::string> words = field_words(project_, path);
  const QString name =
      words ? tr("Set %1").arg(QString::fromStdString(*words)) : tr("Set %1").arg(path.c_str());
  return set_fields(name, {{path, text}});
}

Problems Session::set_fields(const QString& name,
                             const std::vector<std::pair<std::string, std::string>>& values) {
  end_drag();
  Project after = project_;
  for (const auto& [path, text] : values) {
    Result<Project> next = with_field(after, path, text);
    if (!next) return next.problems();
    after = std::move(next).value();
  }
  edit(name, std::move(after));
  return {};
}

void Session::begin_drag(const QString& name) {
  end_drag();
  remember_before();
  drag_ = Drag{name, project_};
}

void Session::drag_to(Project project) {
  if (!drag_) return;
  change_to(std::move(project), ChangeKind::dragged);
}

void Session::end_drag() {
  if (!drag_) return;
  const Drag drag = *std::exchange(drag_, std::nullopt);
  if (equal_project(drag.before, project_)) {
    // The very pointers of before: nothing looks changed.
    if (!same_project(drag.before, project_)) change_to(drag.before, ChangeKind::edited);
  } else {
    steps_.add({drag.name, drag.before, project_});
  }
  Q_EMIT undo_changed();
  Q_EMIT file_changed();
}

void Session::cancel_drag() {
  if (!drag_) return;
  const Drag drag = *std::exchange(drag_, std::nullopt);
  change_to(drag.before, ChangeKind::edited);
  Q_EMIT undo_changed();
  Q_EMIT file_changed();
}

void Session::undo() {
  end_drag();
  settle_entries();
  if (!steps_.can_undo()) return;
  remember_before();
  change_to(steps_.step_back().before, ChangeKind::undone);
  Q_EMIT undo_changed();
  Q_EMIT file_changed();
}

void Session::redo() {
  end_drag();
  settle_entries();
  if (!steps_.can_redo()) return;
  remember_before();
  change_to(steps_.step_forward().after, ChangeKind::redone);
  Q_EMIT undo_changed();
  Q_EMIT file_changed();
}

void Session::set_controls(const Controls& controls) {
  if (controls == controls_) return;
  controls_ = controls;
  ++revision_;
  Q_EMIT controls_changed();
  pose_now();
}

void Session::select(const std::string& path) {
  if (path == selected_) return;
  selected_ = path;
  Q_EMIT selection_changed();
}

void Session::remember_before() {
  // What came before may not have been posed yet: never an older state in its stead.
  posed_before_ = posed_fresh() ? posed_
                                : std::make_shared<const PosedTruck>(pose_truck(
                                      project_, controls_, revision_, posed_->mechanism));
  if (judged_fresh()) judged_before_ = judged_;
}

void Session::change_to(Project project, ChangeKind kind) {
  const Change change = change_between(project_, project, kind);
  project_ = std::move(project);
  ++revision_;
  judged_revision_ = revision_;
  cannot_work_out_.clear();
  const bool outer = std::exchange(telling_change_, true);
  Q_EMIT project_changed(change);
  telling_change_ = outer;
  pose_now();
  judge_now();
}

void Session::pose_now() {
  at_once_.submit(
      [this, project = project_, controls = controls_, revision = revision_,
       last = posed_->mechanism](const std::stop_token&) {
        auto truck =
            std::make_shared<const PosedTruck>(pose_truck(project, controls, revision, last));
        QMetaObject::invokeMethod(
            this, [this, truck = std::move(truck)] { arrived(truck); }, Qt::QueuedConnection);
      },
      false);
}

void Session::judge_now() {
  checks_stopped_ = false;
  Q_EMIT judged_changed();
  checks_.submit(
      [this, project = project_, file = file_,
       revision = judged_revision_](const std::stop_token& token) {
        Result<Mechanism> compiled = compile(project);
        if (token.stop_requested()) return;
        if (!compiled) {
          QMetaObject::invokeMethod(
              this, [this, revision, why = compiled.problems()] { could_not_judge(revision, why); },
              Qt::QueuedConnection);
          return;
        }
        JudgedTruck truck;
        truck.revision = revision;
        truck.mechanism = std::make_shared<const Mechanism>(std::move(compiled).value());
        truck.results = run_checks(*truck.mechanism);
        if (token.stop_requested()) return;
        truck.findings =
            all_findings(*truck.mechanism, truck.results, references_.of(project, file));
        QMetaObject::invokeMethod(
            this,
            [this, shared = std::make_shared<const JudgedTruck>(std::move(truck))] {
              arrived(shared);
            },
            Qt::QueuedConnection);
      },
      true);
}

void Session::arrived(std::shared_ptr<const PosedTruck> truck) {
  if (truck->revision < opened_revision_) return;
  if (truck->revision <= posed_->revision && posed_->revision != 0) return;
  posed_ = std::move(truck);
  Q_EMIT posed_changed();
}

void Session::arrived(std::shared_ptr<const JudgedTruck> truck) {
  if (truck->revision != judged_revision_ || checks_stopped_) return;
  judged_ = std::move(truck);
  Q_EMIT judged_changed();
}

// Nothing to judge in a project that does not compile: the last findings stay, and stay stale.
void Session::could_not_judge(Revision revision, Problems why) {
  if (revision != judged_revision_ || checks_stopped_) return;
  cannot_work_out_ = std::move(why);
  Q_EMIT judged_changed();
}

void Session::stop_checks() {
  if (judged_fresh() || !cannot_work_out_.empty()) return;
  checks_stopped_ = true;
  checks_.stop();
  Q_EMIT judged_changed();
}

void Session::run_checks_again() {
  if (!judged_fresh()) judge_now();
}

void Session::wait_until_fresh() {
  at_once_.wait_until_idle();
  checks_.wait_until_idle();
  QCoreApplication::sendPostedEvents(this);
}

}  // namespace tackbench::ui
