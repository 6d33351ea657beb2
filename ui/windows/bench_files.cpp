// Opening, saving and what happens to files meanwhile.
#include <QAbstractButton>
#include <QCloseEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMessageBox>

#include "core/findings/finding_words.h"
#include "core/project-file/project_file.h"
#include "core/project/value_checks.h"
#include "ui/panels/cut_list_panel.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/new_project_dialog.h"
#include "ui/windows/notice_bar.h"
#include "ui/windows/preferences.h"
#include "ui/windows/recovered_dialog.h"
#include "ui/windows/sample_projects.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {

namespace {

constexpr std::size_t kMostListed = 10;

QString text_of(const std::filesystem::path& path) {
  return QString::fromStdString(path.string());
}

// A pipe or a device, in short what the window would wait for, perhaps without end.
bool would_wait(const std::filesystem::path& path) {
  std::error_code ignored;
  const std::filesystem::file_status status = std::filesystem::status(path, ignored);
  return std::filesystem::is_other(status);
}

}  // namespace

void BenchWindow::show_problems(const QString& heading, const Problems& problems) {
  QStringList lines;
  for (std::size_t i = 0; i < problems.size() && i < kMostListed; ++i)
    lines << QString::fromStdString(one_line(problems[i]));
  if (problems.size() > kMostListed)
    lines << tr("and %n more", nullptr, static_cast<int>(problems.size() - kMostListed));
  notice_->say(heading + '\n' + lines.join('\n'));
}

void BenchWindow::show_unfit(const QString& heading) {
  Problems problems = value_problems(session_.project());
  for (Problem& problem : problems)
    problem = {{}, {}, in_plain_words(session_.project(), one_line(problem)), {}};
  if (!problems.empty()) show_problems(heading, problems);
}

bool BenchWindow::open_file(const QString& file) {
  if (would_wait(file.toStdString())) {
    notice_->say(tr("%1 cannot be opened: it is no file but a pipe or a device.").arg(file));
    return false;
  }
  const Problems problems = session_.open(file.toStdString());
  if (!problems.empty()) {
    show_problems(tr("%1 cannot be opened.").arg(QFileInfo(file).fileName()), problems);
    return false;
  }
  notice_->close_notice();
  show_unfit(tr("It is open, but some of its values do not fit each other."));
  Preferences::add_recent_file(QFileInfo(file).absoluteFilePath());
  watch_file();
  return true;
}

void BenchWindow::open_sample(const QString& name) {
  Result<Project> project = sample_project(name);
  if (project) take_new(std::move(project).value());
}

void BenchWindow::take_new(Project project) {
  session_.take(std::move(project), {});
  watch_file();
}

void BenchWindow::ask_new() {
  NewProjectDialog dialog(this);
  if (dialog.exec() != QDialog::Accepted || !may_leave()) return;
  if (auto project = dialog.project()) take_new(std::move(*project));
}

void BenchWindow::ask_open() {
  if (!may_leave()) return;
  const QString file =
      QFileDialog::getOpenFileName(this, tr("Open a project"), {}, tr("Projects (*.tack)"));
  if (!file.isEmpty()) open_file(file);
}

void BenchWindow::fill_recent() {
  recent_->clear();
  for (const QString& file : Preferences::recent_files()) {
    QAction* action = recent_->addAction(QFileInfo(file).fileName());
    action->setToolTip(file);
    connect(action, &QAction::triggered, this, [this, file] {
      if (may_leave()) open_file(file);
    });
  }
  if (recent_->isEmpty()) recent_->addAction(tr("Nothing yet"))->setEnabled(false);
}

bool BenchWindow::save() {
  return session_.file().empty() ? ask_save_as() : save_to(session_.file());
}

bool BenchWindow::ask_save_as() {
  QString file = QFileDialog::getSaveFileName(
      this, tr("Save the project"),
      session_.file().empty() ? tr("my-truck.tack") : text_of(session_.file()),
      tr("Projects (*.tack)"));
  if (file.isEmpty()) return false;
  if (!file.endsWith(".tack")) file += ".tack";
  return save_to(file.toStdString());
}

bool BenchWindow::save_to(const std::filesystem::path& file) {
  if (!watcher_.files().isEmpty()) watcher_.removePaths(watcher_.files());
  const Problems problems = session_.save(file);
  watch_file();
  if (!problems.empty()) {
    show_problems(tr("It could not be saved."), problems);
    return false;
  }
  show_unfit(tr("It is saved, but some of its values do not fit each other."));
  Preferences::add_recent_file(QFileInfo(text_of(file)).absoluteFilePath());
  show_title();
  return true;
}

void BenchWindow::ask_save_cut_list() {
  fold_side(false);
  side_->show_page(SidePage::cut_list);
  const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder for the cut list"));
  if (folder.isEmpty()) return;
  const auto written = side_->cut_list().save_into(folder.toStdString());
  if (!written) {
    show_problems(tr("The cut list could not be saved."), written.problems());
    return;
  }
  QStringList names;
  for (const std::filesystem::path& file : *written) names << text_of(file.filename());
  notice_->say(tr("Saved in %1: %2").arg(folder, names.join(", ")));
}

bool BenchWindow::may_leave() {
  session_.end_drag();
  if (!session_.unsaved()) return true;
  QMessageBox box(this);
  box.setWindowTitle(tr("Not saved"));
  box.setText(tr("\"%1\" has changes that are not saved.")
                  .arg(QString::fromStdString(session_.project().name)));
  box.setStandardButtons(QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel);
  box.setDefaultButton(QMessageBox::Save);
  for (QAbstractButton* button : box.buttons()) button->setIcon({});
  switch (box.exec()) {
    case QMessageBox::Save:
      return save();
    case QMessageBox::Discard:
      return true;
    default:
      return false;
  }
}

void BenchWindow::watch_file() {
  if (!watcher_.files().isEmpty()) watcher_.removePaths(watcher_.files());
  if (!session_.file().empty()) watcher_.addPath(text_of(session_.file()));
}

void BenchWindow::file_changed_on_disk() {
  const std::filesystem::path file = session_.file();
  const Result<UnfinishedProject> there = read_unfinished(file);
  // Written by renaming, the watched file is a new one each time.
  watch_file();
  if (there && equal_project(there->project, session_.project())) return;
  // Whatever is on disk, it is not what is here: closing has to ask.
  session_.file_differs();
  recovery_.keep_now();
  if (!there) {
    show_problems(tr("The file changed on disk and can no longer be opened. What you have here is "
                     "untouched; saving would put it back."),
                  there.problems());
    return;
  }
  notice_->say(tr("The file changed on disk since it was opened here."),
               {{tr("Load the file"), [this, file] { open_file(text_of(file)); }},
                {tr("Keep mine"), [] {}}});
}

void BenchWindow::offer_recovered() {
  std::vector<LeftBehind> copies = left_behind(recovery_.copy().parent_path());
  if (copies.empty()) return;
  RecoveredDialog dialog(std::move(copies), this);
  dialog.exec();
  switch (dialog.answer()) {
    case RecoveredDialog::Answer::later:
      return;
    case RecoveredDialog::Answer::discard:
      discard(dialog.chosen());
      return;
    case RecoveredDialog::Answer::take:
      break;
  }
  if (!dialog.project()) return;
  session_.take(*dialog.project(), dialog.chosen().file, true);
  recovery_.keep_now();  // ours now, before the old copy goes
  discard(dialog.chosen());
  watch_file();
}

}  // namespace tackbench::ui
