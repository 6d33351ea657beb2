#include "ui/panels/finding_card.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyle>

#include "core/findings/finding_words.h"
#include "core/findings/limits.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"
#include "ui/look/type.h"
#include "ui/panels/limit_choice.h"
#include "ui/panels/margin.h"
#include "ui/panels/why_text.h"

namespace tackbench::ui {

FindingCard::FindingCard(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      mark_(new VerdictMark(this)),
      sentence_(new QLabel(this)),
      bar_(new MarginBar(this)),
      limit_(new QLabel(this)) {
  setFocusPolicy(Qt::StrongFocus);
  set_look(*this, "plain");
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(8, 7, 6, 7);
  row->setSpacing(7);
  row->addWidget(mark_, 0, Qt::AlignTop);
  auto* column = new QVBoxLayout;
  column->setSpacing(3);
  row->addLayout(column, 1);
  sentence_->setWordWrap(true);
  sentence_->setTextFormat(Qt::PlainText);
  column->addWidget(sentence_);
  auto* margin = new QHBoxLayout;
  margin->setSpacing(8);
  margin->addWidget(bar_);
  set_look(*limit_, "soft");
  limit_->setWordWrap(true);
  limit_->setTextFormat(Qt::PlainText);
  margin->addWidget(limit_, 1);
  column->addLayout(margin);
}

void FindingCard::show_finding(const Finding& finding, bool stale) {
  const bool other = finding.name != finding_.name;
  finding_ = finding;
  stale_ = stale;
  mark_->show_verdict(finding.verdict, stale);
  const Project& project = session_.project();
  sentence_->setText(QString::fromStdString(in_plain_words(project, finding.sentence)));
  if (const char* look = stale ? "faded" : ""; sentence_->property("look").toString() != look) {
    set_look(*sentence_, look);
    sentence_->style()->unpolish(sentence_);
    sentence_->style()->polish(sentence_);
  }
  const auto share = margin_share(finding);
  bar_->show_margin(share, finding.verdict, stale);
  bar_->setVisible(share.has_value());
  QString limit;
  if (finding.verdict == Verdict::not_judged) {
    const QString why = QString::fromStdString(in_plain_words(project, finding.why_not_judged));
    limit = sentence_->text().contains(why, Qt::CaseInsensitive) ? tr("Not judged")
                                                                 : tr("Not judged: %1").arg(why);
  } else if (is_yes_or_no(finding)) {
    // A plain state: nothing is a little past.
    limit = finding.verdict == Verdict::past ? tr("not as it has to be") : tr("as it has to be");
  } else if (finding.limit) {
    limit = QString::fromStdString(limit_words(*finding.limit, session_.shown_unit()));
  }
  limit_->setText(limit);
  limit_->setVisible(!limit.isEmpty());
  setAccessibleName(verdict_words(finding.verdict, stale) + QStringLiteral(": ") +
                    sentence_->text());
  QStringList spoken;
  if (share) spoken += bar_->accessibleName();
  if (!limit.isEmpty()) spoken += limit;
  setAccessibleDescription(spoken.join(QStringLiteral("; ")));
  sentence_->setToolTip(QString::fromStdString(finding_words(finding.name).meaning));
  setObjectName(QString::fromStdString(finding.name));
  if (other) open(false);
  if (is_open()) show_why();
  update();
}

void FindingCard::open(bool open) {
  if (open && why_ == nullptr) make_why();
  if (why_ == nullptr) return;
  if (open) {
    show_why();
  } else {
    close_form();
  }
  why_->setVisible(open);
  update();
}

void FindingCard::make_why() {
  why_ = new QWidget(this);
  set_look(*why_, "plain");
  auto* column = new QVBoxLayout(why_);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(4);
  why_text_ = new QLabel(why_);
  why_text_->setFont(type_font(TypeSize::small));
  why_text_->setWordWrap(true);
  why_text_->setTextFormat(Qt::RichText);
  why_text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  why_text_->setObjectName(QStringLiteral("why"));
  column->addWidget(why_text_);
  motion_ = new QPushButton(why_);
  motion_->setObjectName(QStringLiteral("motion"));
  motion_->setCheckable(true);
  connect(motion_, &QPushButton::clicked, this, &FindingCard::motion_wanted);
  column->addWidget(motion_, 0, Qt::AlignLeft);
  limit_button_ = new QPushButton(tr("Choose another limit"), why_);
  limit_button_->setAccessibleName(limit_button_->text());
  limit_button_->setObjectName(QStringLiteral("choose limit"));
  connect(limit_button_, &QPushButton::clicked, this, &FindingCard::choose_limit);
  column->addWidget(limit_button_, 0, Qt::AlignLeft);
  refusal_ = new QLabel(why_);
  set_look(*refusal_, "wrong");
  refusal_->setWordWrap(true);
  refusal_->hide();
  column->addWidget(refusal_);
  static_cast<QVBoxLayout*>(layout()->itemAt(1)->layout())->addWidget(why_);
}

void FindingCard::show_why() {
  why_text_->setText(why_text(session_.project(), finding_, session_.shown_unit()));
  show_motion();
  limit_button_->setVisible(finding_.limit.has_value() && form_ == nullptr);
  if (form_ == nullptr) refusal_->hide();
}

void FindingCard::offer_motion(bool possible, bool playing) {
  motion_possible_ = possible;
  motion_playing_ = playing;
  if (motion_ != nullptr) show_motion();
}

void FindingCard::show_motion() {
  motion_->setVisible(motion_possible_);
  motion_->setChecked(motion_playing_);
  motion_->setText(motion_playing_ ? tr("Stop") : tr("Play how it wanders"));
  motion_->setAccessibleName(motion_playing_ ? tr("Stop playing how the shaft line wanders")
                                             : tr("Play how the shaft line is free to wander"));
}

void FindingCard::choose_limit() {
  if (!finding_.limit || form_ != nullptr) return;
  const QString fixed = fixed_words(*finding_.limit);
  refusal_->setText(fixed);
  refusal_->setVisible(!fixed.isEmpty());
  if (!fixed.isEmpty()) return;
  form_ = new LimitForm(session_, *finding_.limit, why_);
  connect(form_, &LimitForm::done, this, &FindingCard::close_form);
  why_->layout()->addWidget(form_);
  limit_button_->hide();
  form_->line("least").setFocus();
}

void FindingCard::close_form() {
  if (form_ == nullptr) return;
  // The click that led here comes from one of its buttons.
  form_->hide();
  form_->deleteLater();
  form_ = nullptr;
  limit_button_->setVisible(finding_.limit.has_value());
}

void FindingCard::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return QWidget::mousePressEvent(event);
  setFocus(Qt::MouseFocusReason);
  Q_EMIT chosen();
}

void FindingCard::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
      Q_EMIT chosen();
      return;
    case Qt::Key_Down:
      focusNextPrevChild(true);
      return;
    case Qt::Key_Up:
      focusNextPrevChild(false);
      return;
    default:
      QWidget::keyPressEvent(event);
  }
}

void FindingCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Palette& colours = ui::palette();
  const QRectF place = QRectF(rect()).adjusted(1, 1, -1, -1);
  painter.setPen(Qt::NoPen);
  if (finding_.verdict == Verdict::past && !stale_) {
    painter.setBrush(tint(colours.past, colours.card, 0.12));
    painter.drawRoundedRect(place, 4, 4);
  }
  if (stale_) {
    painter.setClipRect(rect());
    painter.setPen(QPen(tint(colours.hair, colours.card, 0.45), 1.0));
    for (int x = -height(); x < width(); x += 9) painter.drawLine(x, height(), x + height(), 0);
    painter.setClipping(false);
  }
  painter.setBrush(Qt::NoBrush);
  if (is_open()) {
    painter.setPen(QPen(colours.ink, 1.6));
    painter.drawRoundedRect(place, 4, 4);
  }
  if (hasFocus()) {
    painter.setPen(QPen(colours.moves, 1.6));
    painter.drawRoundedRect(place.adjusted(1, 1, -1, -1), 3, 3);
  }
}

}  // namespace tackbench::ui
