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
  show_unfit(tr("It is open, but some of its values do not fit each other."));
  Preferences::add_recent_file(text_of(session_.file()));
  return true;
}

void BenchWindow::open_sample(const QString& name) {
  Result<Project> project = sample_project(name);
  if (project) take_new(std::move(project).value());
}

void BenchWindow::take_new(Project project) {
  session_.take(std::move(project), {});
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
  if (!file.endsWith(".tack")) {
    file += ".tack";
    // Whether to write over it was asked for the name without its ending.
    if (QFileInfo::exists(file) &&
        !ask(tr("There is a file %1 already.").arg(QFileInfo(file).fileName()),
             tr("Write over it")))
      return false;
  }
  return save_to(file.toStdString());
}

bool BenchWindow::ask(const QString& words, const QString& yes) {
  QMessageBox box(this);
  box.setWindowTitle(tr("Write over a file"));
  box.setText(words);
  const QAbstractButton* button = box.addButton(yes, QMessageBox::AcceptRole);
  box.setDefaultButton(box.addButton(QMessageBox::Cancel));
  box.exec();
  return box.clickedButton() == button;
}

bool BenchWindow::may_write_over(const std::filesystem::path& file) {
  if (file != session_.file() || !watch_.differs() || !watch_.is_there()) return true;
  return ask(tr("%1 was changed on disk since it was opened here. Saving would write over what "
                "is there now.")
                 .arg(text_of(file.filename())),
             tr("Write over it"));
}

bool BenchWindow::save_to(const std::filesystem::path& file) {
  const QStringList refused = session_.settle_entries();
  if (!may_write_over(file)) return false;
  const Problems problems = session_.save(file);
  if (!problems.empty()) {
    show_problems(tr("It could not be saved."), problems);
    return false;
  }
  watch_.follow(session_.file());
  notice_->close_notice();
  show_unfit(tr("It is saved, but some of its values do not fit each other."));
  if (!refused.isEmpty())
    notice_->say(tr("It is saved, without what is typed in a field:") + '\n' + refused.join('\n'));
  Preferences::add_recent_file(text_of(session_.file()));
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
  const QStringList refused = session_.settle_entries();
  if (refused.isEmpty() && !session_.unsaved()) return true;
  QMessageBox box(this);
  box.setWindowTitle(tr("Not saved"));
  const QString name = QString::fromStdString(session_.project().name);
  box.setText(session_.unsaved() ? tr("\"%1\" has changes that are not saved.").arg(name)
                                 : tr("Something typed into \"%1\" is not taken.").arg(name));
  if (!refused.isEmpty())
    box.setInformativeText(tr("What is typed in a field cannot be saved:") + '\n' +
                           refused.join('\n'));
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

void BenchWindow::file_changed_on_disk() {
  const auto close_own = [this] {
    if (notice_->words() == said_of_file_) notice_->close_notice();
  };
  const std::filesystem::path file = session_.file();
  if (!watch_.is_there()) {
    session_.set_file_differs(true);
    notice_->say(tr("%1 is gone from the disk. What you have here is untouched; saving puts it "
                    "back.")
                     .arg(text_of(file.filename())));
    said_of_file_ = notice_->words();
    return;
  }
  const Result<UnfinishedProject> there = read_unfinished(file);
  if (there && equal_project(there->project, session_.project())) {
    watch_.accept();
    session_.set_file_differs(false);
    return close_own();
  }
  if (!watch_.differs()) return close_own();
  // What stands here may be nowhere else by now.
  session_.set_file_differs(true);
  if (there) {
    notice_->say(tr("The file changed on disk since it was opened here."),
                 {{tr("Load the file"), [this] { load_again(); }},
                  // Known from here on: saving need not ask again.
                  {tr("Keep mine"), [this] { watch_.accept(); }}});
  } else {
    show_problems(tr("The file changed on disk and can no longer be opened. What you have here is "
                     "untouched; saving would put it back."),
                  there.problems());
  }
  said_of_file_ = notice_->words();
}

void BenchWindow::load_again() {
  const Problems problems = session_.load_again();
  if (!problems.empty()) return show_problems(tr("The file cannot be loaded."), problems);
  watch_.follow(session_.file());
  notice_->say(tr("The file is loaded; undo brings back what stood here."));
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
  if (!dialog.project() || !may_leave()) return;
  session_.take(*dialog.project(), dialog.chosen().file, true);
  // The old copy stays until there is another.
  if (recovery_.keep_now()) discard(dialog.chosen());
}

}  // namespace tackbench::ui
