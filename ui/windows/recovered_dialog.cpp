#include "ui/windows/recovered_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/project-file/project_file.h"
#include "core/project/project_difference.h"
#include "ui/look/style.h"

namespace tackbench::ui {

namespace {

constexpr std::size_t kMostListed = 12;

QString words_about(const LeftBehind& copy) {
  const QString when = QLocale().toString(copy.kept.toLocalTime(), QLocale::ShortFormat);
  const QString file =
      copy.file.empty() ? QObject::tr("never saved") : QString::fromStdString(copy.file.string());
  return QObject::tr("%1, kept %2 (%3)").arg(copy.name, when, file);
}

QString words_of_differences(const std::vector<FieldDifference>& found) {
  if (found.empty()) return QObject::tr("It is the same as the file.");
  QStringList lines{QObject::tr("Against the file, %n value(s) differ:", nullptr,
                                static_cast<int>(found.size()))};
  for (std::size_t i = 0; i < found.size() && i < kMostListed; ++i) {
    const FieldDifference& each = found[i];
    const auto shown = [](const std::string& text) {
      return text.empty() ? QObject::tr("nothing") : QString::fromStdString(text);
    };
    lines << QObject::tr("%1: %2, was %3")
                 .arg(QString::fromStdString(each.words), shown(each.after), shown(each.before));
  }
  if (found.size() > kMostListed)
    lines << QObject::tr("and %n more", nullptr, static_cast<int>(found.size() - kMostListed));
  return lines.join('\n');
}

}  // namespace

RecoveredDialog::RecoveredDialog(std::vector<LeftBehind> copies, QWidget* parent)
    : QDialog(parent),
      copies_(std::move(copies)),
      list_(new QListWidget(this)),
      differences_(new QLabel(this)) {
  setWindowTitle(tr("Work that was not saved"));
  auto* words = new QLabel(
      tr("The program ended without saving this. Look at what differs and say what is to become "
         "of it; the file itself is untouched."),
      this);
  words->setWordWrap(true);
  list_->setAccessibleName(tr("What was kept"));
  for (const LeftBehind& copy : copies_) list_->addItem(words_about(copy));
  differences_->setWordWrap(true);
  differences_->setAlignment(Qt::AlignTop);
  differences_->setMinimumHeight(160);
  differences_->setAccessibleName(tr("What differs"));

  auto* buttons = new QDialogButtonBox(this);
  take_ = buttons->addButton(tr("Open what was kept"), QDialogButtonBox::AcceptRole);
  QPushButton* discard = buttons->addButton(tr("Throw it away"), QDialogButtonBox::DestructiveRole);
  QPushButton* later = buttons->addButton(tr("Ask again later"), QDialogButtonBox::RejectRole);
  connect(take_, &QPushButton::clicked, this, [this] {
    answer_ = Answer::take;
    accept();
  });
  connect(discard, &QPushButton::clicked, this, [this] {
    answer_ = Answer::discard;
    accept();
  });
  connect(later, &QPushButton::clicked, this, &QDialog::reject);
  connect(list_, &QListWidget::currentRowChanged, this, &RecoveredDialog::choose);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(20, 20, 20, 16);
  column->addWidget(words);
  column->addWidget(list_);
  column->addWidget(differences_, 1);
  column->addWidget(buttons);
  list_->setCurrentRow(0);
  resize(620, 460);
  dress(*this);
}

const LeftBehind& RecoveredDialog::chosen() const {
  return copies_[static_cast<std::size_t>(std::max(0, list_->currentRow()))];
}

QString RecoveredDialog::difference_words() const {
  return differences_->text();
}

void RecoveredDialog::choose(int row) {
  project_.reset();
  if (row < 0) return;
  const LeftBehind& copy = copies_[static_cast<std::size_t>(row)];
  const Result<UnfinishedProject> kept = read_unfinished(copy.copy);
  take_->setEnabled(kept.ok());
  if (!kept) {
    differences_->setText(tr("The copy cannot be read: %1")
                              .arg(QString::fromStdString(one_line(kept.problems().front()))));
    return;
  }
  project_ = kept->project;
  if (copy.file.empty()) {
    differences_->setText(tr("It was never saved, so there is nothing to compare it with."));
    return;
  }
  const Result<UnfinishedProject> saved = read_unfinished(copy.file);
  differences_->setText(saved.ok()
                            ? words_of_differences(differences(saved->project, kept->project))
                            : tr("The file that it belongs to cannot be read any more."));
}

}  // namespace tackbench::ui
