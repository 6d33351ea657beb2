#include "ui/panels/shaft_strip.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>
#include <algorithm>

#include "ui/look/palette.h"
#include "ui/look/style.h"
#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

constexpr int kShaftY = 17;  // of the drawn shaft
constexpr int kTagsY = 33;   // top of the tags
constexpr int kGap = 8;      // between tags
constexpr int kAround = 40;  // between those on the shaft and those around it
constexpr int kFirstX = 28;  // right of the hand wheel
constexpr int kFoldWidth = 26;
constexpr std::size_t kOnShaft = 5;  // stations that motion flows through

int tag_height(bool folded) {
  return folded ? 40 : 62;
}

QString around_words() {
  return QCoreApplication::translate("ShaftStrip", "around it:");
}

// A universal joint seen from the side: two forks about a cross.
void paint_joint(QPainter& painter, double x, double y, const Palette& colours) {
  painter.fillRect(QRectF(x - 9, y - 7, 18, 14), colours.desk);
  painter.setPen(QPen(colours.ink, 2.0, Qt::SolidLine, Qt::FlatCap));
  for (const double side : {-1.0, 1.0}) {
    const QPointF fork[] = {{x + side * 3.5, y - 6},
                            {x + side * 9, y - 6},
                            {x + side * 9, y + 6},
                            {x + side * 3.5, y + 6}};
    painter.drawPolyline(fork, 4);
  }
  painter.drawLine(QPointF(x, y - 7), QPointF(x, y + 7));
  painter.setPen(QPen(colours.ink, 1.4));
  painter.drawLine(QPointF(x - 3.5, y), QPointF(x + 3.5, y));
}

void paint_ball(QPainter& painter, double x, double y, const Palette& colours) {
  painter.setPen(QPen(colours.ink, 2.0));
  painter.setBrush(colours.desk);
  painter.drawEllipse(QPointF(x, y), 5, 5);
}

}  // namespace

ShaftStrip::ShaftStrip(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  dress(*this);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Stations from hand to road"));
  for (const Station station : kStations) {
    auto* tag = new StationTag(session, station, this);
    tag->installEventFilter(this);
    connect(tag, &QAbstractButton::clicked, this, [this, station] {
      show_chosen(station);
      Q_EMIT station_chosen(station);
    });
    tags_.push_back(tag);
  }
  const auto other = [&](const QString& words, const QString& spoken, const QString& path) {
    auto* button = new QPushButton(words, this);
    set_look(*button, "link");
    button->setAccessibleName(spoken);
    button->setToolTip(spoken);
    button->setObjectName(path);
    connect(button, &QPushButton::clicked, this, [this, path] { Q_EMIT member_chosen(path); });
    others_.push_back(button);
  };
  other(tr("Cab"), tr("The cab's place"), QStringLiteral("cab"));
  other(tr("Rails"), tr("The chassis rails"), QStringLiteral("shapes.rails"));
  auto* fold = new QPushButton(this);
  set_look(*fold, "link");
  fold_ = fold;
  connect(fold_, &QAbstractButton::clicked, this, [this] { fold_by_hand(!folded_); });
  set_folded(false);
  connect(&session_, &Session::posed_changed, this, &ShaftStrip::refresh);
  connect(&session_, &Session::judged_changed, this, &ShaftStrip::refresh);
  connect(&session_, &Session::controls_changed, this, &ShaftStrip::refresh);
  connect(&session_, &Session::project_changed, this, &ShaftStrip::refresh);
}

void ShaftStrip::refresh() {
  for (StationTag* tag : tags_) tag->refresh();
  update();
}

void ShaftStrip::fold_by_hand(bool folded) {
  set_folded(folded);
  Q_EMIT folded_by_hand(folded);
}

void ShaftStrip::set_folded(bool folded) {
  folded_ = folded;
  for (StationTag* tag : tags_) tag->fold(folded);
  fold_->setText(folded ? QStringLiteral("\u25be") : QStringLiteral("\u25b4"));
  fold_->setAccessibleName(folded ? tr("Unfold the stations") : tr("Fold the stations"));
  fold_->setToolTip(fold_->accessibleName());
  updateGeometry();
  place_tags();
  update();
}

void ShaftStrip::show_chosen(std::optional<Station> station) {
  for (StationTag* tag : tags_) tag->setChecked(station && tag->station() == *station);
}

std::optional<Station> ShaftStrip::chosen() const {
  for (const StationTag* tag : tags_)
    if (tag->isChecked()) return tag->station();
  return std::nullopt;
}

StationTag& ShaftStrip::tag(Station station) const {
  return *tags_.at(static_cast<std::size_t>(station));
}

QSize ShaftStrip::sizeHint() const {
  return {1200, kTagsY + tag_height(folded_) + 6};
}

QSize ShaftStrip::minimumSizeHint() const {
  return {760, kTagsY + tag_height(folded_) + 6};
}

void ShaftStrip::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  place_tags();
}

void ShaftStrip::place_tags() {
  const int count = static_cast<int>(tags_.size());
  const int room = width() - kFirstX - kAround - kGap - (count - 2) * kGap - kGap;
  const int each = std::max(room / count, 60);
  int x = kFirstX;
  for (std::size_t i = 0; i < tags_.size(); ++i) {
    if (i == kOnShaft) x += kAround - kGap;
    tags_[i]->setGeometry(x, kTagsY, each, tag_height(folded_));
    x += each + kGap;
  }
  left_ = kFirstX - 14;
  right_ = tags_[kOnShaft - 1]->geometry().right() + 14;
  fold_->setGeometry(width() - kFoldWidth - 4, 4, kFoldWidth, 22);
  const QFontMetrics metrics(type_font(TypeSize::small));
  x = tags_[kOnShaft]->geometry().left() + metrics.horizontalAdvance(around_words()) + 6;
  for (QAbstractButton* other : others_) {
    const int wide = other->sizeHint().width();
    other->setGeometry(x, 2, wide, 22);
    x += wide + 2;
  }
}

bool ShaftStrip::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    switch (static_cast<QKeyEvent*>(event)->key()) {
      case Qt::Key_Left:
        go(-1);
        return true;
      case Qt::Key_Right:
        go(1);
        return true;
      case Qt::Key_Return:
      case Qt::Key_Enter:
        static_cast<QAbstractButton*>(watched)->click();
        return true;
      default:
        break;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void ShaftStrip::go(int step) {
  const auto at = std::find_if(tags_.begin(), tags_.end(),
                               [](const StationTag* tag) { return tag->hasFocus(); });
  if (at == tags_.end()) return;
  const auto count = static_cast<int>(tags_.size());
  const int next = (static_cast<int>(at - tags_.begin()) + step + count) % count;
  tags_[static_cast<std::size_t>(next)]->setFocus(Qt::TabFocusReason);
}

void ShaftStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), ui::palette().desk);
  paint_shaft(painter);
}

void ShaftStrip::paint_shaft(QPainter& painter) {
  const Palette& colours = ui::palette();
  const double y = kShaftY;
  // What each tag hangs on.
  painter.setPen(QPen(colours.soft, 1.0));
  for (std::size_t i = 0; i < kOnShaft; ++i) {
    const double x = tags_[i]->geometry().center().x();
    painter.drawLine(QPointF(x, y), QPointF(x, kTagsY));
  }
  painter.setPen(QPen(colours.ink, 3.4, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(left_, y), QPointF(right_, y));
  // The hand wheel seen on edge, the road wheel from the side.
  painter.setBrush(colours.desk);
  painter.setPen(QPen(colours.ink, 2.4));
  painter.drawEllipse(QPointF(left_ - 2, y), 5, 14);
  painter.setPen(QPen(colours.ink, 3.4));
  painter.drawEllipse(QPointF(right_ + 4, y), 13, 13);
  painter.setPen(QPen(colours.ink, 1.4));
  painter.drawEllipse(QPointF(right_ + 4, y), 4, 4);

  // The project's own joints stand between the column and the box.
  const auto& line = session_.project().shaft_line;
  const std::size_t joints = line ? std::min<std::size_t>(line->joints.size(), 4) : 0;
  const double from = tags_[0]->geometry().center().x();
  const double to = tags_[2]->geometry().center().x();
  for (std::size_t i = 0; i < joints; ++i) {
    const double share = (static_cast<double>(i) + 1.0) / (static_cast<double>(joints) + 1.0);
    paint_joint(painter, from + share * (to - from), y, colours);
  }
  // Steering box, and the balls at both ends of the drag link.
  painter.setPen(QPen(colours.ink, 1.8));
  painter.setBrush(colours.card);
  painter.drawRect(QRectF(tags_[2]->geometry().center().x() - 8, y - 7, 16, 14));
  paint_ball(painter, tags_[3]->geometry().left() - kGap / 2.0, y, colours);
  paint_ball(painter, tags_[3]->geometry().right() + kGap / 2.0, y, colours);

  const int around = tags_[kOnShaft]->geometry().left();
  painter.setFont(type_font(TypeSize::small));
  painter.setPen(colours.soft);
  painter.drawText(QRect(around, 4, width() - around - 40, 18), Qt::AlignLeft | Qt::AlignVCenter,
                   around_words());
  painter.setPen(QPen(colours.hair, 1.0));
  painter.drawLine(around, 25, tags_.back()->geometry().right(), 25);
}

}  // namespace tackbench::ui
