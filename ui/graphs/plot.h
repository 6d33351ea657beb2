// Curves on ruled paper with a cursor line that a hand can drag. The only place that knows the
// plotting library.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <vector>

#include "ui/graphs/graph_choice.h"

class QCustomPlot;
class QCPItemStraightLine;

namespace tackbench::ui {

// What a plot draws; inside units, turned into shown ones here.
struct PlotPicture {
  GraphWords words;
  ShownUnit lengths = ShownUnit::millimetre;
  std::vector<Curve> curves;
  std::vector<Curve> before;  // faint; may be empty
  bool stale = false;         // the curves are of a truck that is being worked out again: faded
};

class Plot : public QWidget {
  Q_OBJECT

 public:
  explicit Plot(QWidget* parent = nullptr);

  void show_picture(PlotPicture picture);
  // Inside unit of the x axis; outside the curves no line is shown.
  void set_cursor(double place);
  double cursor() const { return cursor_; }
  // Where a place of the x axis lies, in this widget.
  double across_of(double place) const;
  // Said behind each curve's name, in order of the curves.
  void set_values(const std::vector<QString>& values);
  // For a screen reader, which hears each change while it is here.
  void describe(const QString& words);
  // With its title, for a report.
  QPixmap picture();
  int faint_curves() const { return faint_; }
  bool stale() const { return picture_.stale; }

  QSize sizeHint() const override { return {300, 260}; }
  QSize minimumSizeHint() const override { return {220, 160}; }

 Q_SIGNALS:
  void cursor_moved(double place);  // by hand

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void draw();
  void draw_axes();
  void add_curves(const std::vector<Curve>& curves, bool as_before);
  void draw_cursor();
  void draw_names(int width);
  void move_to(double place);
  double in_axis(double place) const;

  PlotPicture picture_;
  double cursor_ = 0.0;
  std::vector<QString> values_;
  int faint_ = 0;
  QCustomPlot* plot_ = nullptr;
  QCPItemStraightLine* line_ = nullptr;
};

}  // namespace tackbench::ui
