#include "ui/windows/first_page.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/findings/cautions.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"

namespace tackbench::ui {

FirstPage::FirstPage(QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Tackbench"));
  auto* title = new QLabel(tr("Tack it on the screen before you tack it in steel."), this);
  set_look(*title, "title");
  title->setWordWrap(true);
  auto* what = new QLabel(
      tr("For somebody who sets a different cab on a chassis: drag the pivots and bearings, and "
         "the whole linkage follows, with what is past its limit and what to cut."),
      this);
  what->setWordWrap(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(28, 24, 28, 20);
  column->setSpacing(12);
  column->addWidget(title);
  column->addWidget(what);
  bool gravest = true;
  for (const std::string& sentence : caution_sentences()) {
    auto* line = new QLabel(QString::fromStdString(sentence), this);
    line->setWordWrap(true);
    if (gravest) set_look(*line, "heading");
    gravest = false;
    column->addWidget(line);
  }
  column->addSpacing(8);
  const auto add = [&](const QString& words, Way way) {
    auto* button = new QPushButton(words, this);
    connect(button, &QPushButton::clicked, this, [this, way] {
      way_ = way;
      accept();
    });
    column->addWidget(button);
    return button;
  };
  add(tr("Show me round the slipway tender"), Way::tour)->setDefault(true);
  add(tr("Begin a new project"), Way::new_project);
  add(tr("Open a project file"), Way::open_file);
  add(tr("Close this page"), Way::close);
  setFixedWidth(520);
  dress(*this);
}

Tour::Tour(std::vector<TourStep> steps, QWidget* window)
    : QFrame(window),
      steps_(std::move(steps)),
      count_(new QLabel(this)),
      words_(new QLabel(this)),
      back_(new QPushButton(tr("Back"), this)),
      next_(new QPushButton(tr("Next"), this)) {
  set_look(*this, "card");
  setAccessibleName(tr("Tour"));
  setFocusPolicy(Qt::StrongFocus);
  set_look(*count_, "soft");
  words_->setWordWrap(true);
  auto* end = new QPushButton(tr("End the tour"), this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 12, 16, 12);
  column->addWidget(count_);
  column->addWidget(words_, 1);
  auto* row = new QHBoxLayout;
  row->addWidget(end);
  row->addStretch(1);
  row->addWidget(back_);
  row->addWidget(next_);
  column->addLayout(row);
  connect(end, &QPushButton::clicked, this, &QObject::deleteLater);
  connect(back_, &QPushButton::clicked, this, [this] { show_step(step_ - 1); });
  connect(next_, &QPushButton::clicked, this, [this] {
    if (step_ + 1 == static_cast<int>(steps_.size())) {
      deleteLater();
    } else {
      show_step(step_ + 1);
    }
  });
  setFixedWidth(380);
  dress(*this);
  show_step(0);
}

QString Tour::words() const {
  return words_->text();
}

void Tour::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    deleteLater();
  } else {
    QFrame::keyPressEvent(event);
  }
}

void Tour::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(palette().color(QPalette::Highlight), 2.0));
  painter.setBrush(palette().color(QPalette::Base));
  painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
}

// Beside what it is about: to its left or right, else inside its upper corner.
void Tour::show_step(int step) {
  step_ = std::clamp(step, 0, static_cast<int>(steps_.size()) - 1);
  const TourStep& now = steps_[static_cast<std::size_t>(step_)];
  count_->setText(tr("%1 of %2").arg(step_ + 1).arg(steps_.size()));
  words_->setText(now.words);
  setAccessibleDescription(now.words);
  back_->setEnabled(step_ > 0);
  next_->setText(step_ + 1 == static_cast<int>(steps_.size()) ? tr("Done") : tr("Next"));
  setFixedHeight(layout()->heightForWidth(width()) + 8);
  QRect about(QPoint(0, 0), parentWidget()->size());
  if (now.about != nullptr)
    about = QRect(now.about->mapTo(parentWidget(), QPoint(0, 0)), now.about->size());
  const QRect room = parentWidget()->rect().adjusted(12, 12, -12, -12);
  QPoint at(about.left() - width() - 12, about.top() + 12);
  if (at.x() < room.left()) at.setX(about.right() + 12);
  if (at.x() + width() > room.right())
    at = QPoint(about.center().x() - width() / 2, about.bottom() + 12);
  if (at.y() + height() > room.bottom()) at.setY(about.top() - height() - 12);
  at.setX(std::clamp(at.x(), room.left(), std::max(room.left(), room.right() - width())));
  at.setY(std::clamp(at.y(), room.top(), std::max(room.top(), room.bottom() - height())));
  move(at);
  show();
  raise();
  setFocus();
}

}  // namespace tackbench::ui
