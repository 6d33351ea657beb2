// Marks of the verdicts: each has a shape and a word besides its colour. Ring with tick: within;
// square with stroke: close; plain cross: past; open ring: not judged. Hatched: being worked out
// again.
#pragma once

#include <QPainter>
#include <QString>
#include <QWidget>

#include "core/findings/finding.h"

namespace tackbench::ui {

void paint_verdict_mark(QPainter& painter, const QRectF& place, Verdict verdict,
                        bool stale = false);

// "past"; "past, being worked out again".
QString verdict_words(Verdict verdict, bool stale = false);

// A mark by itself, spoken as its word.
class VerdictMark : public QWidget {
  Q_OBJECT

 public:
  explicit VerdictMark(QWidget* parent = nullptr, int side = 16);
  void show_verdict(Verdict verdict, bool stale);
  Verdict verdict() const { return verdict_; }
  bool stale() const { return stale_; }
  QSize sizeHint() const override { return {side_, side_}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  int side_;
  Verdict verdict_ = Verdict::not_judged;
  bool stale_ = false;
};

}  // namespace tackbench::ui
