#include "ui/fields/entry_field.h"

#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QStyle>
#include <QVBoxLayout>
#include <array>
#include <utility>

#include "core/project/field_path.h"
#include "ui/fields/checked_edit.h"
#include "ui/fields/entry_text.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"
#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

constexpr int kNumberWidth = 96;
constexpr int kUnitWidth = 30;
constexpr const char* kNone = "none";

QString first_letter_large(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

}  // namespace

EntryField::EntryField(Session& session, FieldEntry entry, QWidget* parent)
    : QWidget(parent), session_(session), entry_(std::move(entry)) {
  set_look(*this, "plain");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 2, 2, 2);
  column->setSpacing(2);
  auto* row = new QWidget(this);
  set_look(*row, "plain");
  column->addWidget(row);
  words_ = new QLabel(first_letter_large(entry_.words), row);
  words_->setWordWrap(true);
  switch (entry_.kind) {
    case EntryKind::text:
    case EntryKind::number:
    case EntryKind::whole:
      make_line(row);
      break;
    case EntryKind::point:
    case EntryKind::direction:
      make_three(row);
      break;
    case EntryKind::choice:
      make_choice(row);
      break;
    case EntryKind::flag:
      make_flag(row);
      break;
  }
  wrong_ = new QLabel(this);
  set_look(*wrong_, "wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  column->addWidget(wrong_);
  refresh();
}

void EntryField::name_editor(QWidget& editor, const QString& more) {
  const Result<std::string> words = field_words(session_.project(), entry_.path);
  QString name = words ? QString::fromStdString(*words) : entry_.words;
  if (!more.isEmpty()) name += QStringLiteral(", ") + more;
  editor.setAccessibleName(name);
  const QString range = range_words(entry_, unit_for(entry_, session_.shown_unit()));
  QStringList tip;
  if (!entry_.note.isEmpty()) tip += first_letter_large(entry_.note);
  if (!range.isEmpty()) tip += range;
  if (entry_.optional) tip += tr("May be left empty: not given");
  editor.setAccessibleDescription(tip.join(QStringLiteral(". ")));
  editor.setToolTip(tip.join(QLatin1Char('\n')));
  editor.setObjectName(QString::fromStdString(entry_.path));
}

EntryLine* EntryField::add_line(int coordinate) {
  auto* line = new EntryLine(session_, entry_, coordinate, this);
  lines_.push_back(line);
  connect(line, &EntryLine::entered, this, &EntryField::entered);
  connect(line, &EntryLine::refused, this, &EntryField::refuse);
  connect(line, &EntryLine::taken, this, [this] { refuse({}); });
  return line;
}

void EntryField::make_line(QWidget* into) {
  EntryLine* line = add_line(-1);
  name_editor(*line);
  if (entry_.kind == EntryKind::text) {
    auto* column = new QVBoxLayout(into);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(words_);
    column->addWidget(line);
    return;
  }
  auto* row = new QHBoxLayout(into);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(6);
  row->addWidget(words_, 1);
  line->setFixedWidth(kNumberWidth);
  row->addWidget(line);
  unit_ = new QLabel(into);
  set_look(*unit_, "soft");
  unit_->setMinimumWidth(kUnitWidth);
  row->addWidget(unit_);
}

void EntryField::make_three(QWidget* into) {
  auto* grid = new QGridLayout(into);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(4);
  grid->setVerticalSpacing(1);
  grid->addWidget(words_, 0, 0, 1, 2);
  unit_ = new QLabel(into);
  set_look(*unit_, "soft");
  unit_->setAlignment(Qt::AlignRight | Qt::AlignBottom);
  corner_ = new QHBoxLayout;
  corner_->setSpacing(2);
  corner_->addStretch(1);
  corner_->addWidget(unit_);
  grid->addLayout(corner_, 0, 2);
  const bool place = entry_.unit == Unit::millimetre && entry_.least < 0.0;
  const std::array<QString, 3> axes =
      place || entry_.kind == EntryKind::direction
          ? std::array{tr("X forward"), tr("Y left"), tr("Z up")}
          : std::array{QStringLiteral("X"), QStringLiteral("Y"), QStringLiteral("Z")};
  for (int i = 0; i < 3; ++i) {
    const QString& axis = axes.at(static_cast<std::size_t>(i));
    EntryLine* line = add_line(i);
    name_editor(*line, axis);
    line->setMinimumWidth(40);
    auto* label = new QLabel(axis, into);
    set_look(*label, "soft");
    grid->addWidget(label, 1, i);
    grid->addWidget(line, 2, i);
    grid->setColumnStretch(i, 1);
  }
}

void EntryField::add_corner(QWidget& corner) {
  if (corner_ != nullptr) corner_->addWidget(&corner);
}

void EntryField::make_choice(QWidget* into) {
  choice_ = new CalmCombo(into);
  name_editor(*choice_);
  choice_->set_name(choice_->accessibleName());
  if (entry_.optional) choice_->addItem(tr("not given"), QString::fromLatin1(kNone));
  for (const std::string& word : entry_.choices)
    choice_->addItem(choice_words_shown(word), QString::fromStdString(word));
  connect(choice_, &QComboBox::activated, this, &EntryField::set_choice);
  connect(choice_, &CalmCombo::entered, this, &EntryField::entered);
  auto* row = new QHBoxLayout(into);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(6);
  row->addWidget(words_, 1);
  row->addWidget(choice_);
  choice_->setFixedWidth(kNumberWidth + kUnitWidth + 6);
}

void EntryField::make_flag(QWidget* into) {
  flag_ = new QCheckBox(into);
  name_editor(*flag_);
  flag_->installEventFilter(this);
  connect(flag_, &QCheckBox::clicked, this, [this](bool on) {
    refuse(fault_words(set_member(session_, entry_.path, on ? "true" : "false")));
    refresh();
  });
  auto* row = new QHBoxLayout(into);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(6);
  row->addWidget(words_, 1);
  row->addWidget(flag_);
  flag_->setFixedWidth(kNumberWidth + kUnitWidth + 6);
}

bool EntryField::eventFilter(QObject* watched, QEvent* event) {
  if (watched == flag_ && event->type() == QEvent::FocusIn) Q_EMIT entered();
  return QWidget::eventFilter(watched, event);
}

void EntryField::set_choice(int index) {
  const std::string word = choice_->itemData(index).toString().toStdString();
  refuse(fault_words(set_member(session_, entry_.path, word)));
  refresh();
}

void EntryField::refresh() {
  for (EntryLine* line : lines_) line->refresh();
  if (unit_ != nullptr) {
    // A direction is a proportion of its three figures.
    unit_->setText(entry_.kind == EntryKind::direction
                       ? QString()
                       : unit_sign(entry_.unit, unit_for(entry_, session_.shown_unit())));
  }
  const Result<std::string> text = field_text(session_.project(), entry_.path);
  if (!text) return;
  if (choice_ != nullptr)
    choice_->setCurrentIndex(choice_->findData(QString::fromStdString(*text)));
  if (flag_ != nullptr) {
    flag_->setChecked(*text == "true");
    flag_->setText(flag_->isChecked() ? tr("yes") : tr("no"));
  }
}

void EntryField::show_chosen(bool chosen) {
  if (chosen_ == chosen) return;
  chosen_ = chosen;
  update();
}

void EntryField::show_guess(bool guess) {
  if (guess == shows_guess()) return;
  if (guess_ == nullptr) {
    guess_ = new QLabel(tr("A guess: not measured yet"), this);
    set_look(*guess_, "soft");
    static_cast<QVBoxLayout*>(layout())->insertWidget(1, guess_);
  }
  guess_->setVisible(guess);
  for (EntryLine* line : lines_) {
    QFont font = line->font();
    font.setItalic(guess);
    line->setFont(font);
  }
}

void EntryField::refuse(const QString& why) {
  refused_ = why;
  show_wrong();
}

void EntryField::show_fault(const QString& words) {
  if (fault_ == words) return;
  fault_ = words;
  show_wrong();
}

void EntryField::show_wrong() {
  const QString words = refused_.isEmpty() ? fault_ : refused_ + tr(". The value before is kept.");
  wrong_->setText(first_letter_large(words));
  wrong_->setVisible(!words.isEmpty());
  for (EntryLine* line : lines_) {
    const bool wrong = !refused_.isEmpty() && line->isModified();
    if (line->property("wrong").toBool() == wrong) continue;
    line->setProperty("wrong", wrong);
    line->style()->unpolish(line);
    line->style()->polish(line);
  }
}

void EntryField::take_keyboard() {
  if (!lines_.empty()) lines_.front()->setFocus(Qt::OtherFocusReason);
  if (choice_ != nullptr) choice_->setFocus(Qt::OtherFocusReason);
  if (flag_ != nullptr) flag_->setFocus(Qt::OtherFocusReason);
}

void EntryField::paintEvent(QPaintEvent*) {
  if (!chosen_) return;
  // Selection is a heavier ink line.
  QPainter painter(this);
  painter.fillRect(QRect(0, 2, 2, height() - 4), ui::palette().ink);
}

}  // namespace tackbench::ui
