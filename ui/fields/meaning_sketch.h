// A small line drawing of what a number means: where a length is taken, which way an angle opens.
#pragma once

#include <QWidget>

#include "ui/fields/field_tree.h"

namespace tackbench::ui {

enum class MeaningKind {
  place,      // a point in the truck
  direction,  // an arrow
  size,       // three edges of a block
  turn,       // roll, pitch, yaw
  length,     // between two ends
  distance,   // along an axis, signed
  diameter,
  radius,
  wall,      // of a tube
  travel,    // how far something slides
  angle,     // between two lines
  clocking,  // about a shaft
  teeth,     // round a spline
  count,
  ratio,  // one turn against another
  share,  // part of a whole
  force,
  spring_rate,
  strength,
  choice,
  flag,
  text,
};

MeaningKind meaning_of(const FieldEntry& entry);

class MeaningSketch : public QWidget {
  Q_OBJECT

 public:
  explicit MeaningSketch(QWidget* parent = nullptr);
  void show_meaning(MeaningKind kind);
  MeaningKind meaning() const { return kind_; }
  QSize sizeHint() const override { return {96, 64}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  MeaningKind kind_ = MeaningKind::text;
};

// Draws it in a field of 96 by 64.
void paint_meaning(QPainter& painter, MeaningKind kind);

}  // namespace tackbench::ui
