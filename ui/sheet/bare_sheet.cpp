#include "ui/sheet/bare_sheet.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QMouseEvent>
#include <QPainter>
#include <QPolygonF>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "core/project/starting_guesses.h"
#include "ui/look/palette.h"
#include "ui/look/style.h"

namespace tackbench::ui {

namespace {

struct Thing {
  QPointF at;  // on the faint truck
  const char* words = nullptr;
};

// The faint truck is drawn in a box 100 wide and 60 high, its front to the left.
constexpr QSizeF kBox(100.0, 60.0);
constexpr double kNumberRadius = 10.0;

const std::array<Thing, kBareThings>& things() {
  static const std::array<Thing, kBareThings> list{{
      {{72.0, 37.0}, QT_TRANSLATE_NOOP("BareSheet", "Rails: width, depth, both ends")},
      {{24.0, 46.0}, QT_TRANSLATE_NOOP("BareSheet", "Front axle: kingpins, track, tyres, springs")},
      {{41.0, 36.5},
       QT_TRANSLATE_NOOP("BareSheet", "Steering box: both ends, ratio, which way it turns")},
      {{33.0, 45.5}, QT_TRANSLATE_NOOP("BareSheet", "Arm and drag link: ball to ball")},
      {{47.0, 17.0}, QT_TRANSLATE_NOOP("BareSheet", "Column: hand wheel, axis, lower end")},
      {{42.5, 28.0}, QT_TRANSLATE_NOOP("BareSheet", "Shaft line: joints and supports")},
      {{37.0, 30.0}, QT_TRANSLATE_NOOP("BareSheet", "Cab, seat and pedals")},
  }};
  return list;
}

void paint_outline(QPainter& painter, const Palette& colours, double scale) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colours.hair, 1.4 / scale));
  painter.drawRect(QRectF(5, 34, 90, 6));  // rails
  for (const double x : {24.0, 80.0}) {
    painter.drawEllipse(QPointF(x, 46), 10.0, 10.0);
    painter.drawEllipse(QPointF(x, 46), 4.0, 4.0);
  }
  painter.drawPolyline(QPolygonF(
      {QPointF(34, 34), QPointF(33, 8), QPointF(36, 4), QPointF(62, 4), QPointF(63, 34)}));  // cab
  painter.drawLine(QPointF(43, 12), QPointF(51, 21));  // hand wheel, on edge
  painter.drawPolyline(QPolygonF({QPointF(47, 17), QPointF(43, 25), QPointF(41, 34)}));
  painter.drawRect(QRectF(38.5, 33, 5, 6));  // box
  painter.drawPolyline(QPolygonF({QPointF(41, 38), QPointF(42, 46), QPointF(24, 45)}));
  painter.drawPolyline(QPolygonF({QPointF(61, 12), QPointF(57, 27), QPointF(49, 27)}));    // seat
  painter.drawPolyline(QPolygonF({QPointF(36, 22), QPointF(38, 31), QPointF(36.5, 33)}));  // pedal
  painter.drawLine(QPointF(0, 56), QPointF(100, 56));
}

void paint_number(QPainter& painter, const Palette& colours, const QPointF& at, std::size_t index,
                  bool done) {
  const QColor ink = done ? colours.ink : colours.moves;
  painter.setPen(QPen(ink, 1.4));
  painter.setBrush(colours.card);
  painter.drawEllipse(at, kNumberRadius, kNumberRadius);
  painter.drawText(QRectF(at.x() - kNumberRadius, at.y() - kNumberRadius, 2.0 * kNumberRadius,
                          2.0 * kNumberRadius),
                   Qt::AlignCenter, QString::number(index + 1));
}

}  // namespace

std::array<BareThing, kBareThings> bare_things(const Project& project) {
  const auto guesses = guesses_by_station(project);
  const auto of = [&](Station station) {
    const auto found = guesses.find(station);
    return found == guesses.end() ? 0 : found->second;
  };
  std::array<BareThing, kBareThings> list{{
      {"shapes.rails", project.shapes && project.shapes->rails, of(Station::shapes)},
      {"front_axle", project.front_axle != nullptr, of(Station::front_axle)},
      {"steering_box", project.steering_box != nullptr, of(Station::steering_box)},
      {"drag_link", project.drag_link != nullptr, of(Station::drag_link)},
      {"column", project.column != nullptr, of(Station::column)},
      {"shaft_line", project.shaft_line != nullptr, of(Station::shaft_line)},
      {"cab", project.cab && project.pedals && project.driver,
       of(Station::pedals) + of(Station::driver)},
  }};
  // Cab, seat and pedals are begun one after the other.
  if (project.cab) list[6].path = !project.pedals ? "pedals" : !project.driver ? "driver" : "cab";
  return list;
}

BareSheet::BareSheet(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setMouseTracking(true);
  dress(*this);
  setAttribute(Qt::WA_NoSystemBackground);
  for (std::size_t i = 0; i < kBareThings; ++i) {
    auto* line = new QPushButton(this);
    set_look(*line, "link");
    line->setObjectName(QStringLiteral("bare %1").arg(i + 1));
    connect(line, &QPushButton::clicked, this, [this, i] { choose(i); });
    lines_[i] = line;
  }
  connect(&session_, &Session::project_changed, this, &BareSheet::refresh);
  refresh();
}

void BareSheet::choose(std::size_t index) {
  Q_EMIT begin_wanted(QString::fromStdString(things_.at(index).path));
}

void BareSheet::show_why(const QString& why) {
  if (why_ == why) return;
  why_ = why;
  update();
}

void BareSheet::refresh() {
  things_ = bare_things(session_.project());
  for (std::size_t i = 0; i < kBareThings; ++i) {
    const BareThing& thing = things_[i];
    QString words = QCoreApplication::translate("BareSheet", things()[i].words);
    if (!thing.begun) {
      words += tr(": not measured yet");
    } else if (thing.guesses > 0) {
      words += thing.guesses == 1 ? tr(": begun, 1 value is still a guess")
                                  : tr(": begun, %1 values are still guesses").arg(thing.guesses);
    }
    lines_[i]->setText(words);
    lines_[i]->setAccessibleName(words);
    lines_[i]->setToolTip(thing.begun ? tr("Open it") : tr("Begin it"));
  }
  place_lines();
  update();
}

double BareSheet::line_height() const {
  return QFontMetricsF(font()).height() + 7.0;
}

QRectF BareSheet::list() const {
  const double line = line_height();
  return {24.0, height() - 9.0 * line - 12.0, width() - 48.0, 9.0 * line};
}

double BareSheet::list_left() const {
  return std::max(24.0, (width() - 420.0) / 2.0);
}

double BareSheet::scale() const {
  const double wide = width() - 48.0;
  const double high = list().top() - 36.0;
  return std::max(0.5, std::min(wide / kBox.width(), high / kBox.height()));
}

QPointF BareSheet::corner() const {
  const QPointF middle(width() / 2.0, 20.0 + (list().top() - 36.0) / 2.0);
  return middle - QPointF(kBox.width(), kBox.height()) * scale() / 2.0;
}

QPointF BareSheet::number_place(std::size_t index) const {
  return corner() + things().at(index).at * scale();
}

std::optional<std::size_t> BareSheet::number_at(const QPointF& at) const {
  std::optional<std::size_t> nearest;
  double least = kNumberRadius + 4.0;
  for (std::size_t i = 0; i < kBareThings; ++i) {
    const QPointF off = at - number_place(i);
    const double away = std::hypot(off.x(), off.y());
    if (away >= least) continue;
    least = away;
    nearest = i;
  }
  return nearest;
}

void BareSheet::place_lines() {
  const double line = line_height();
  for (std::size_t i = 0; i < kBareThings; ++i) {
    const double y = list().top() + (static_cast<double>(i) + 1.2) * line;
    const int left = static_cast<int>(list_left() + 26.0);
    lines_[i]->setGeometry(left, static_cast<int>(y),
                           std::min(lines_[i]->sizeHint().width(), width() - left - 4),
                           static_cast<int>(line));
  }
}

void BareSheet::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  place_lines();
}

void BareSheet::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange && lines_[0] != nullptr) place_lines();
}

void BareSheet::mousePressEvent(QMouseEvent* event) {
  const auto number = number_at(event->position());
  if (event->button() == Qt::LeftButton && number) return choose(*number);
  event->ignore();  // the sheet's
}

void BareSheet::mouseMoveEvent(QMouseEvent* event) {
  const auto number = number_at(event->position());
  if (number) {
    setCursor(Qt::PointingHandCursor);
    setToolTip(lines_[*number]->text());
  } else {
    unsetCursor();
    setToolTip({});
  }
  event->ignore();
}

void BareSheet::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Palette& colours = ui::palette();
  painter.save();
  painter.translate(corner());
  painter.scale(scale(), scale());
  paint_outline(painter, colours, scale());
  painter.restore();

  const QFontMetricsF metrics(font());
  const double top = list().top() + metrics.ascent();
  painter.setPen(colours.ink);
  const bool all = std::all_of(things_.begin(), things_.end(),
                               [](const BareThing& each) { return each.done(); });
  painter.drawText(QPointF(list_left(), top),
                   all ? tr("All seven things are measured, but they do not fit each other")
                       : tr("Seven things to measure; choose one to begin it"));
  if (!why_.isEmpty()) {
    painter.setPen(colours.past);
    painter.drawText(QRectF(24.0, 6.0, width() - 48.0, 2.0 * metrics.height()),
                     Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, why_);
  }
  for (std::size_t i = 0; i < kBareThings; ++i) {
    paint_number(painter, colours, number_place(i), i, things_[i].done());
    const QPointF beside(list_left() + 10.0, lines_[i]->geometry().center().y() + 0.5);
    paint_number(painter, colours, beside, i, things_[i].done());
  }
}

}  // namespace tackbench::ui
