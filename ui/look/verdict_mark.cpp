#include "ui/look/verdict_mark.h"

#include <QCoreApplication>
#include <QPainterPath>

#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

// Strokes of a mark in a square of 16.
QPainterPath strokes(Verdict verdict) {
  QPainterPath path;
  switch (verdict) {
    case Verdict::within:
      path.addEllipse(QPointF(8, 8), 6.2, 6.2);
      path.moveTo(5.2, 8.3);
      path.lineTo(7.3, 10.4);
      path.lineTo(11, 6);
      break;
    case Verdict::close:
      path.addRoundedRect(QRectF(2.2, 2.2, 11.6, 11.6), 2.2, 2.2);
      path.moveTo(8, 5);
      path.lineTo(8, 8.8);
      path.moveTo(8, 11.1);
      path.lineTo(8, 11.3);
      break;
    case Verdict::past:
      path.moveTo(3, 3);
      path.lineTo(13, 13);
      path.moveTo(13, 3);
      path.lineTo(3, 13);
      break;
    case Verdict::not_judged:
      path.addEllipse(QPointF(8, 8), 6.2, 6.2);
      break;
  }
  return path;
}

void hatch(QPainter& painter, const QColor& colour) {
  QColor light = colour;
  light.setAlphaF(0.55F);
  painter.setPen(QPen(light, 1.0));
  for (int at = -14; at <= 14; at += 4) painter.drawLine(QPointF(at, 15), QPointF(at + 15, 0));
}

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(VerdictMark)
};

}  // namespace

void paint_verdict_mark(QPainter& painter, const QRectF& place, Verdict verdict, bool stale) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(place.topLeft());
  painter.scale(place.width() / 16.0, place.height() / 16.0);
  QColor colour = stale ? palette().soft : palette().verdict(verdict);
  if (stale) {
    QPainterPath square;
    square.addRoundedRect(QRectF(0.5, 0.5, 15, 15), 2, 2);
    painter.setClipPath(square);
    hatch(painter, colour);
    colour.setAlphaF(0.75F);
  }
  QPen pen(colour, verdict == Verdict::past ? 2.4 : 1.7);
  pen.setCapStyle(Qt::RoundCap);
  pen.setJoinStyle(Qt::RoundJoin);
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  painter.drawPath(strokes(verdict));
  painter.restore();
}

QString verdict_words(Verdict verdict, bool stale) {
  QString word;
  switch (verdict) {
    case Verdict::within:
      word = Texts::tr("within");
      break;
    case Verdict::close:
      word = Texts::tr("close");
      break;
    case Verdict::past:
      word = Texts::tr("past");
      break;
    case Verdict::not_judged:
      word = Texts::tr("not judged");
      break;
  }
  return stale ? Texts::tr("%1, being worked out again").arg(word) : word;
}

VerdictMark::VerdictMark(QWidget* parent, int side) : QWidget(parent), side_(side) {
  setFixedSize(side, side);
  show_verdict(Verdict::not_judged, false);
}

void VerdictMark::show_verdict(Verdict verdict, bool stale) {
  verdict_ = verdict;
  stale_ = stale;
  setAccessibleName(verdict_words(verdict, stale));
  setToolTip(verdict_words(verdict, stale));
  update();
}

void VerdictMark::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paint_verdict_mark(painter, rect(), verdict_, stale_);
}

}  // namespace tackbench::ui
