#include "ui/panels/limit_form.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>

#include "core/basics/entered_number.h"
#include "core/project/number_text.h"
#include "ui/fields/entry_text.h"
#include "ui/look/style.h"
#include "ui/look/type.h"
#include "ui/panels/limit_choice.h"

namespace tackbench::ui {

namespace {

constexpr std::array<const char*, 4> kMembers{"least", "most", "least_inner", "most_inner"};

}  // namespace

LimitForm::LimitForm(Session& session, const Limit& limit, QWidget* parent)
    : QWidget(parent), session_(session), limit_(limit), lengths_(session.shown_unit()) {
  set_look(*this, "plain");
  const std::array<QString, 4> words{tr("At least"), tr("At most"), tr("Close below"),
                                     tr("Close above")};
  const std::array<std::optional<double>, 4> now{limit.least, limit.most, limit.least_inner,
                                                 limit.most_inner};
  FieldEntry number;
  number.kind = EntryKind::number;
  number.unit = limit.unit;
  const QString unit = unit_sign(limit.unit, lengths_);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 4, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(3);
  for (std::size_t i = 0; i < kMembers.size(); ++i) {
    const int row = static_cast<int>(i) / 2 * 2;
    const int column = static_cast<int>(i) % 2;
    auto* label =
        new QLabel(unit.isEmpty() ? words.at(i) : words.at(i) + QStringLiteral(", ") + unit, this);
    label->setWordWrap(true);
    set_look(*label, "soft");
    grid->addWidget(label, row, column);
    auto* line = new QLineEdit(this);
    line->setFont(figure_font(TypeSize::normal));
    line->setMinimumWidth(60);
    line->setPlaceholderText(tr("none"));
    line->setAccessibleName(tr("%1, limit of this finding").arg(words.at(i)));
    line->setObjectName(QString::fromLatin1(kMembers.at(i)));
    if (now.at(i))
      line->setText(
          exact_entry(number, number_text(shown_from_inside(limit.unit, *now.at(i))), lengths_));
    connect(line, &QLineEdit::returnPressed, this, &LimitForm::take);
    grid->addWidget(line, row + 1, column);
    values_.at(i) = line;
  }
  auto* label = new QLabel(tr("Where it comes from"), this);
  set_look(*label, "soft");
  grid->addWidget(label, 4, 0, 1, 2);
  source_ = new QLineEdit(this);
  source_->setObjectName(QStringLiteral("source"));
  source_->setAccessibleName(tr("Where the limit comes from"));
  const LimitChoice* own = own_choice(session.project(), limit.name);
  source_->setText(own != nullptr ? QString::fromStdString(own->source) : tr("builder's choice"));
  grid->addWidget(source_, 5, 0, 1, 2);
  wrong_ = new QLabel(this);
  set_look(*wrong_, "wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  grid->addWidget(wrong_, 6, 0, 1, 2);
  auto* buttons = new QHBoxLayout;
  auto* take_it = new QPushButton(tr("Take"), this);
  take_it->setAccessibleName(tr("Take this limit"));
  take_it->setObjectName(QStringLiteral("take"));
  connect(take_it, &QPushButton::clicked, this, &LimitForm::take);
  buttons->addWidget(take_it);
  if (own != nullptr) {
    auto* shipped = new QPushButton(tr("Shipped limit"), this);
    shipped->setAccessibleName(tr("Go back to the shipped limit"));
    shipped->setObjectName(QStringLiteral("shipped"));
    connect(shipped, &QPushButton::clicked, this, [this] {
      session_.edit(tr("Shipped limit for %1").arg(limit_.name.c_str()),
                    without_own_limit(session_.project(), limit_.name));
      Q_EMIT done();
    });
    buttons->addWidget(shipped);
  }
  buttons->addStretch(1);
  grid->addLayout(buttons, 7, 0, 1, 2);
}

QLineEdit& LimitForm::line(const char* member) const {
  for (std::size_t i = 0; i < kMembers.size(); ++i)
    if (std::string_view(member) == kMembers.at(i)) return *values_.at(i);
  return *source_;
}

void LimitForm::show_wrong(const QString& words) {
  wrong_->setText(words);
  wrong_->setVisible(!words.isEmpty());
}

// Empty outside: a fault, which is shown. Empty inside: none given.
std::optional<std::optional<double>> LimitForm::value_of(std::size_t index) {
  const QString typed = values_.at(index)->text().trimmed();
  if (typed.isEmpty()) return std::optional<double>();
  const Result<double> inside = entered_number(typed.toStdString(), limit_.unit, lengths_);
  if (inside) return std::optional<double>(shown_from_inside(limit_.unit, *inside));
  show_wrong(fault_words(inside.problems()));
  values_.at(index)->setFocus();
  return std::nullopt;
}

void LimitForm::take() {
  show_wrong({});
  LimitChoice choice;
  const std::array<std::optional<double>*, 4> into{&choice.least, &choice.most, &choice.least_inner,
                                                   &choice.most_inner};
  for (std::size_t i = 0; i < into.size(); ++i) {
    const auto value = value_of(i);
    if (!value) return;
    *into.at(i) = *value;
  }
  choice.source = source_->text().trimmed().toStdString();
  const Result<Project> after = with_own_limit(session_.project(), limit_, choice);
  if (!after) return show_wrong(fault_words(after.problems()));
  session_.edit(tr("Own limit for %1").arg(limit_.name.c_str()), *after);
  Q_EMIT done();
}

// The card beneath opens and closes by keys and clicks: none that is meant for the form gets there.
void LimitForm::keyPressEvent(QKeyEvent* event) {
  event->accept();
  if (event->key() == Qt::Key_Escape) return Q_EMIT done();
  if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) return;
  if (auto* button = qobject_cast<QPushButton*>(focusWidget())) button->click();
}

void LimitForm::mousePressEvent(QMouseEvent* event) {
  event->accept();
}

}  // namespace tackbench::ui
