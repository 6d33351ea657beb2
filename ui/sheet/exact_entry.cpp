#include "ui/sheet/exact_entry.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>
#include <cmath>
#include <optional>

#include "core/basics/entered_number.h"
#include "core/basics/units.h"
#include "core/project/number_text.h"
#include "ui/sheet/exact_place.h"

namespace tackbench::ui {

namespace {

// Exactly what the project holds, so that a value that nobody touched is never rounded.
QString exact_text(double mm, ShownUnit unit) {
  const double micrometres = std::round(mm * 1000.0) / 1000.0;
  if (unit == ShownUnit::millimetre) return QString::fromStdString(number_text(micrometres));
  return QString::fromStdString(number_text(std::round(mm / kMillimetresPerInch * 1e5) / 1e5));
}

}  // namespace

ExactEntry::ExactEntry(Session& session, QWidget* parent)
    : QFrame(parent),
      session_(session),
      name_(new QLabel(this)),
      axes_{new QLineEdit(this), new QLineEdit(this), new QLineEdit(this)},
      other_(new QComboBox(this)),
      distance_(new QLineEdit(this)),
      reason_(new QLabel(this)) {
  setFrameShape(QFrame::Box);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  setAccessibleName(tr("Exact place of a point"));
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(12, 10, 12, 10);
  grid->setVerticalSpacing(5);
  QFont heavy = font();
  heavy.setBold(true);
  name_->setFont(heavy);
  grid->addWidget(name_, 0, 0, 1, 2);
  const std::array<QString, 3> words{tr("X, forward of the front wheel centres"),
                                     tr("Y, left of the centreline"),
                                     tr("Z, above the rails' top")};
  const std::array<QString, 3> letters{tr("&X"), tr("&Y"), tr("&Z")};
  for (std::size_t i = 0; i < 3; ++i) {
    auto* label = new QLabel(letters[i], this);
    label->setBuddy(axes_[i]);
    axes_[i]->setAccessibleName(words[i]);
    axes_[i]->setToolTip(words[i]);
    grid->addWidget(label, static_cast<int>(i) + 1, 0);
    grid->addWidget(axes_[i], static_cast<int>(i) + 1, 1);
  }
  auto* to = new QLabel(tr("&Distance to"), this);
  to->setBuddy(other_);
  other_->setAccessibleName(tr("The other point"));
  other_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  other_->setMinimumContentsLength(18);
  distance_->setAccessibleName(tr("Distance to the other point"));
  distance_->setPlaceholderText(tr("choose a point"));
  grid->addWidget(to, 4, 0);
  grid->addWidget(other_, 4, 1);
  grid->addWidget(distance_, 5, 1);
  reason_->setWordWrap(true);
  reason_->setForegroundRole(QPalette::BrightText);
  reason_->setAccessibleName(tr("Why the entry cannot be used"));
  grid->addWidget(reason_, 6, 0, 1, 2);
  auto* set = new QPushButton(tr("Set"), this);
  set->setAccessibleName(tr("Set the place"));
  set->setDefault(true);
  grid->addWidget(set, 7, 1, Qt::AlignRight);
  connect(set, &QPushButton::clicked, this, &ExactEntry::accept);
  connect(other_, &QComboBox::currentIndexChanged, this, &ExactEntry::show_distance);
  hide();
}

void ExactEntry::open_for(const std::string& path, const QPointF& at, const QRectF& room, int axis,
                          const QString& first) {
  path_ = path;
  fill();
  if (!isVisibleTo(parentWidget())) show();
  resize(std::max(260, sizeHint().width()), sizeHint().height());
  QPointF corner = at + QPointF(22.0, 16.0);
  if (corner.x() + width() > room.right()) corner.setX(at.x() - 22.0 - width());
  corner.setX(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())));
  corner.setY(std::clamp(corner.y(), room.top(), std::max(room.top(), room.bottom() - height())));
  move(corner.toPoint());
  raise();
  QLineEdit* edit = axes_[static_cast<std::size_t>(std::clamp(axis, 0, 2))];
  edit->setFocus();
  if (first.isEmpty()) {
    edit->selectAll();
  } else {
    edit->setText(first);
  }
}

void ExactEntry::fill() {
  const auto grip = grip_at(session_.project(), path_);
  if (!grip) return;
  lengths_ = session_.shown_unit();
  reason_->clear();
  reason_->hide();
  QString words = QString::fromStdString(grip->words);
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  const QString unit = QString::fromStdString(unit_words(Unit::millimetre, lengths_));
  name_->setText(tr("%1, in %2").arg(words, unit));
  for (std::size_t i = 0; i < 3; ++i) {
    shown_[i] = exact_text(grip->at_mm[static_cast<Eigen::Index>(i)], lengths_);
    axes_[i]->setText(shown_[i]);
    axes_[i]->setPlaceholderText(unit);
  }
  const QSignalBlocker quiet(other_);
  const QString kept = other_->currentData().toString();
  other_->clear();
  other_->addItem(tr("none"), QString());
  for (const Grip& other : grips(session_.project()))
    if (other.path != path_)
      other_->addItem(QString::fromStdString(other.words), QString::fromStdString(other.path));
  other_->setCurrentIndex(std::max(0, other_->findData(kept)));
  show_distance();
}

void ExactEntry::show_distance() {
  shown_distance_.clear();
  const auto grip = grip_at(session_.project(), path_);
  const auto other = grip_at(session_.project(), other_->currentData().toString().toStdString());
  if (grip && other) shown_distance_ = exact_text((grip->at_mm - other->at_mm).norm(), lengths_);
  distance_->setText(shown_distance_);
  distance_->setEnabled(other.has_value());
}

void ExactEntry::say(const QString& why, QLineEdit* where) {
  reason_->setText(why);
  reason_->show();
  setAccessibleDescription(why);
  adjustSize();
  where->setFocus();
  where->selectAll();
}

void ExactEntry::move_to(const Grip& grip, const Vec3& drawn_mm, QLineEdit* from,
                         const std::function<double(const Vec3&)>& off) {
  Result<Project> after = with_grip_at(session_.project(), grip, drawn_mm);
  if (!after) {
    const Problem& problem = after.problems().front();
    say(QString::fromStdString(problem.found + "; " + problem.wanted), from);
    return;
  }
  // What goes by steps, as an arm on its splines, would stay or land elsewhere: never in silence.
  const auto moved = grip_at(*after, grip.path);
  if (moved && off(moved->at_mm) > length_as_read(session_.shown_unit())) {
    const Problem problem = steps_only(session_.project(), grip, drawn_mm, session_.shown_unit());
    say(QString::fromStdString(problem.found + "; " + problem.wanted), from);
    return;
  }
  session_.edit(tr("Move %1").arg(QString::fromStdString(grip.words)), std::move(after).value());
  close_entry();
}

void ExactEntry::accept() {
  if (accept_distance() || accept_place()) return;
  close_entry();
}

bool ExactEntry::accept_distance() {
  const auto grip = grip_at(session_.project(), path_);
  const auto other = grip_at(session_.project(), other_->currentData().toString().toStdString());
  if (!grip || !other || distance_->text() == shown_distance_) return false;
  const Result<double> entered =
      entered_number(distance_->text().toStdString(), Unit::millimetre, lengths_);
  const Result<Vec3> place = entered ? place_at_distance(*grip, other->at_mm, *entered, lengths_)
                                     : Result<Vec3>(entered.problems());
  if (!place) {
    const Problem& problem = place.problems().front();
    say(QString::fromStdString(problem.found + "; " + problem.wanted), distance_);
    return true;
  }
  move_to(*grip, *place, distance_,
          [&](const Vec3& at_mm) { return std::abs((at_mm - other->at_mm).norm() - *entered); });
  return true;
}

bool ExactEntry::accept_place() {
  const auto grip = grip_at(session_.project(), path_);
  if (!grip) return false;
  Grip moved = *grip;
  QLineEdit* changed = nullptr;
  std::array<std::optional<double>, 3> typed;
  for (std::size_t i = 0; i < 3; ++i) {
    if (axes_[i]->text() == shown_[i]) continue;
    const Result<double> entered =
        entered_number(axes_[i]->text().toStdString(), Unit::millimetre, lengths_);
    const Result<Vec3> place =
        entered ? place_with_coordinate(moved, static_cast<int>(i), *entered, lengths_)
                : Result<Vec3>(entered.problems());
    if (!place) {
      const Problem& problem = place.problems().front();
      say(QString::fromStdString(problem.found + "; " + problem.wanted), axes_[i]);
      return true;
    }
    moved.at_mm = *place;
    typed[i] = *entered;
    changed = axes_[i];
  }
  if (!changed) return false;
  move_to(*grip, moved.at_mm, changed, [&](const Vec3& at_mm) {
    double most = 0.0;
    for (std::size_t i = 0; i < 3; ++i)
      if (typed[i])
        most = std::max(most, std::abs(at_mm[static_cast<Eigen::Index>(i)] - *typed[i]));
    return most;
  });
  return true;
}

void ExactEntry::close_entry() {
  if (!isVisibleTo(parentWidget())) return;
  hide();
  Q_EMIT closed();
}

void ExactEntry::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      accept();
      return;
    case Qt::Key_Escape:
      close_entry();
      return;
    default:
      // Nothing typed here is meant for the sheet beneath.
      event->accept();
  }
}

}  // namespace tackbench::ui
