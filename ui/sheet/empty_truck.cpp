#include "ui/sheet/empty_truck.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPolygonF>
#include <algorithm>

namespace tackbench::ui {

namespace {

struct Thing {
  QPointF at;  // on the faint truck
  const char* words = nullptr;
};

// The faint truck is drawn in a box 100 wide and 60 high, its front to the left.
constexpr QSizeF kBox(100.0, 60.0);

const std::array<Thing, 7>& things() {
  static const std::array<Thing, 7> list{{
      {{72.0, 37.0}, QT_TRANSLATE_NOOP("EmptyTruck", "Rails: width, depth, both ends")},
      {{24.0, 46.0},
       QT_TRANSLATE_NOOP("EmptyTruck", "Front axle: kingpins, track, tyres, springs")},
      {{41.0, 36.5},
       QT_TRANSLATE_NOOP("EmptyTruck", "Steering box: both ends, ratio, which way it turns")},
      {{33.0, 45.5}, QT_TRANSLATE_NOOP("EmptyTruck", "Arm and drag link: ball to ball")},
      {{47.0, 17.0}, QT_TRANSLATE_NOOP("EmptyTruck", "Column: hand wheel, axis, lower end")},
      {{42.5, 28.0}, QT_TRANSLATE_NOOP("EmptyTruck", "Shaft line: joints and supports")},
      {{37.0, 30.0}, QT_TRANSLATE_NOOP("EmptyTruck", "Cab, seat and pedals")},
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

}  // namespace

std::array<bool, 7> measured_things(const Project& project) {
  return {project.shapes && project.shapes->rails,
          project.front_axle != nullptr,
          project.steering_box != nullptr,
          project.drag_link != nullptr,
          project.column != nullptr,
          project.shaft_line != nullptr,
          project.cab && project.pedals && project.driver};
}

void paint_empty_truck(QPainter& painter, const Palette& colours, const QRectF& room,
                       const Project& project) {
  const QFontMetricsF metrics(painter.font());
  const double line = metrics.height() + 7.0;
  const QRectF list(room.left() + 24.0, room.bottom() - 8.0 * line - 20.0, room.width() - 48.0,
                    8.0 * line);
  const QRectF above(room.left() + 24.0, room.top() + 20.0, room.width() - 48.0,
                     list.top() - room.top() - 36.0);
  const double scale =
      std::max(0.5, std::min(above.width() / kBox.width(), above.height() / kBox.height()));
  painter.save();
  painter.translate(above.center() - QPointF(kBox.width(), kBox.height()) * scale / 2.0);
  painter.scale(scale, scale);
  paint_outline(painter, colours, scale);
  painter.restore();

  const auto measured = measured_things(project);
  const auto tr = [](const char* text) { return QCoreApplication::translate("EmptyTruck", text); };
  const QPointF corner = above.center() - QPointF(kBox.width(), kBox.height()) * scale / 2.0;
  const double left = room.left() + std::max(24.0, (room.width() - 420.0) / 2.0);
  painter.setPen(colours.ink);
  const bool all = std::all_of(measured.begin(), measured.end(), [](bool each) { return each; });
  painter.drawText(QPointF(left, list.top() + metrics.ascent()),
                   all ? tr("All seven things are measured, but they do not fit each other")
                       : tr("Seven things to measure; begin with the first"));
  for (std::size_t i = 0; i < things().size(); ++i) {
    const QString number = QString::number(i + 1);
    const auto badge = [&](const QPointF& at) {
      painter.setPen(QPen(measured[i] ? colours.ink : colours.moves, 1.4));
      painter.setBrush(colours.card);
      painter.drawEllipse(at, 10.0, 10.0);
      painter.setPen(measured[i] ? colours.ink : colours.moves);
      painter.drawText(QRectF(at.x() - 10.0, at.y() - 10.0, 20.0, 20.0), Qt::AlignCenter, number);
    };
    badge(corner + things()[i].at * scale);
    const double y = list.top() + (static_cast<double>(i) + 1.3) * line;
    badge(QPointF(left + 10.0, y + metrics.height() / 2.0));
    painter.setPen(colours.soft);
    painter.drawText(QPointF(left + 30.0, y + metrics.ascent()),
                     tr(things()[i].words) + (measured[i] ? QString() : tr(": not measured yet")));
  }
}

}  // namespace tackbench::ui
