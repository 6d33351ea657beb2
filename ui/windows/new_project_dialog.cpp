#include "ui/windows/new_project_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/fields/calm_combo.h"
#include "ui/look/style.h"
#include "ui/windows/caution_words.h"
#include "ui/windows/sample_projects.h"

namespace tackbench::ui {

NewProjectDialog::NewProjectDialog(QWidget* parent)
    : QDialog(parent),
      from_(new QListWidget(this)),
      questions_(new QWidget(this)),
      name_(new QLineEdit(tr("My truck"), this)),
      drive_(new CalmCombo(this)),
      box_(new CalmCombo(this)) {
  setWindowTitle(tr("New project"));
  from_->setAccessibleName(tr("Start from"));
  from_->addItem(tr("A bare start: nothing is measured yet"));
  from_->item(0)->setData(Qt::UserRole, QString());
  for (const SampleProject& sample : sample_projects()) {
    auto* item = new QListWidgetItem(sample.words, from_);
    item->setData(Qt::UserRole, QString(sample.name));
  }
  from_->setCurrentRow(0);
  from_->setMinimumHeight(from_->sizeHintForRow(0) * from_->count() + 12);
  from_->setWordWrap(true);

  auto* form = new QFormLayout(questions_);
  form->setContentsMargins(0, 8, 0, 0);
  name_->setAccessibleName(tr("Name of the project"));
  drive_->setAccessibleName(tr("Which side is the hand wheel on?"));
  drive_->addItems({tr("on the left"), tr("on the right")});
  box_->setAccessibleName(tr("Where is the steering box?"));
  box_->addItems({tr("behind the front axle"), tr("ahead of the front axle")});
  form->addRow(tr("Name"), name_);
  form->addRow(tr("Hand wheel"), drive_);
  form->addRow(tr("Steering box"), box_);
  auto* moved = new QWidget(questions_);
  auto* moved_column = new QVBoxLayout(moved);
  moved_column->setContentsMargins(0, 0, 0, 0);
  for (const QString& what :
       {tr("cab"), tr("column"), tr("steering box"), tr("front axle"), tr("pedals")}) {
    auto* box = new QCheckBox(what, moved);
    moved_.push_back(box);
    moved_column->addWidget(box);
  }
  moved_.front()->setChecked(true);
  form->addRow(tr("What is moved"), moved);

  auto* caution = new QLabel(caution_words(), this);
  caution->setWordWrap(true);
  set_look(*caution, "soft");
  auto* buttons =
      new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, Qt::Horizontal, this);
  buttons->button(QDialogButtonBox::Ok)->setText(tr("Begin"));
  for (QAbstractButton* button : buttons->buttons()) button->setIcon({});
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(from_, &QListWidget::currentRowChanged, questions_,
          [this](int row) { questions_->setEnabled(row == 0); });

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(20, 20, 20, 16);
  column->addWidget(from_);
  column->addWidget(questions_);
  column->addWidget(caution);
  column->addWidget(buttons);
  resize(520, sizeHint().height());
  dress(*this);
}

Project NewProjectDialog::bare_start() const {
  Project project;
  const QString name = name_->text().trimmed();
  project.name = (name.isEmpty() ? tr("My truck") : name).toStdString();
  QStringList moved;
  for (const QCheckBox* box : moved_)
    if (box->isChecked()) moved << box->text();
  auto sheet = std::make_shared<SheetSettings>();
  sheet->start.emplace();
  sheet->start->drive = drive_->currentIndex() == 0 ? Side::left : Side::right;
  sheet->start->box_ahead = box_->currentIndex() == 1;
  sheet->start->moved = moved.join(", ").toStdString();
  project.sheet = std::move(sheet);
  return project;
}

std::optional<Project> NewProjectDialog::project() const {
  const QListWidgetItem* item = from_->currentItem();
  const QString sample = item == nullptr ? QString() : item->data(Qt::UserRole).toString();
  if (sample.isEmpty()) return bare_start();
  Result<Project> read = sample_project(sample);
  if (!read) return std::nullopt;
  return std::move(read).value();
}

}  // namespace tackbench::ui
