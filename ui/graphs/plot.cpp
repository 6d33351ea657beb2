#include "ui/graphs/plot.h"

// The library's header uses keywords of Qt that are switched off in our sources.
#define signals Q_SIGNALS
#define slots Q_SLOTS
#define emit Q_EMIT
#define foreach Q_FOREACH
#include <qcustomplot.h>
#undef signals
#undef slots
#undef emit
#undef foreach

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QVBoxLayout>
#include <algorithm>
#include <limits>

#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

// The library takes a number that is none for a gap in a line.
constexpr double kGap = std::numeric_limits<double>::quiet_NaN();
constexpr Qt::PenStyle kStyles[] = {Qt::SolidLine, Qt::DashLine, Qt::DashDotLine,
                                    Qt::DashDotDotLine};

QColor faint(QColor colour) {
  colour.setAlphaF(0.35F);
  return colour;
}

}  // namespace

Plot::Plot(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Graph"));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  plot_ = new QCustomPlot(this);
  plot_->setFocusPolicy(Qt::NoFocus);
  plot_->setLocale(QLocale::c());  // numbers as everywhere else: a point, no groups
  plot_->installEventFilter(this);
  plot_->setCursor(Qt::SizeHorCursor);
  layout->addWidget(plot_);
  line_ = new QCPItemStraightLine(plot_);
  // What a line is stands below the axes and never over a curve.
  auto* below = new QCPLayoutGrid;
  plot_->plotLayout()->addElement(1, 0, below);
  below->addElement(0, 0, plot_->legend);
  below->setMargins(QMargins(4, 0, 4, 4));
  plot_->plotLayout()->setRowStretchFactor(1, 0.001);
  plot_->legend->setIconSize(26, 10);
  plot_->legend->setRowSpacing(0);
}

double Plot::in_axis(double place) const {
  return axis_number(place, picture_.words.across.unit, picture_.lengths);
}

void Plot::show_picture(PlotPicture picture) {
  picture_ = std::move(picture);
  draw();
}

void Plot::set_cursor(double place) {
  if (place == cursor_) return;
  cursor_ = place;
  draw_cursor();
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

double Plot::across_of(double place) const {
  return plot_->mapToParent(QPoint()).x() + plot_->xAxis->coordToPixel(in_axis(place));
}

QPixmap Plot::picture() {
  constexpr int kWidth = 960;
  constexpr int kHeight = 640;
  plot_->plotLayout()->insertRow(0);
  QFont large = font();
  large.setPointSizeF(1.3 * large.pointSizeF());
  auto* title = new QCPTextElement(plot_, picture_.words.title, large);
  title->setTextColor(tackbench::ui::palette().ink);
  plot_->plotLayout()->addElement(0, 0, title);
  draw_names(kWidth);
  QPixmap picture = plot_->toPixmap(kWidth, kHeight);
  plot_->plotLayout()->remove(title);
  plot_->plotLayout()->simplify();
  draw_names(width());
  plot_->replot(QCustomPlot::rpQueuedReplot);
  return picture;
}

void Plot::draw() {
  plot_->clearGraphs();
  faint_ = 0;
  add_curves(picture_.before, true);
  add_curves(picture_.curves, false);
  draw_axes();
  draw_cursor();
  draw_names(width());
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

void Plot::add_curves(const std::vector<Curve>& curves, bool as_before) {
  const Palette& colours = tackbench::ui::palette();
  std::size_t own = 0;
  for (const Curve& curve : curves) {
    QVector<double> x;
    QVector<double> y;
    for (std::size_t i = 0; i < curve.x.size(); ++i) {
      x.push_back(in_axis(curve.x[i]));
      y.push_back(curve.y[i] ? axis_number(*curve.y[i], curve.unit, picture_.lengths) : kGap);
    }
    QCPGraph* graph = plot_->addGraph();
    graph->setData(x, y, true);
    QColor colour = curve.wished ? colours.soft : own == 1 ? colours.ink : colours.moves;
    const Qt::PenStyle style =
        curve.wished ? Qt::DotLine : kStyles[own < 2 ? 0 : std::min<std::size_t>(own - 1, 3)];
    if (as_before || picture_.stale) colour = faint(colour);
    graph->setPen(QPen(colour, as_before ? 1.2 : 2.0, style));
    if (as_before) {
      graph->removeFromLegend();
      ++faint_;
    }
    if (!curve.wished) ++own;
  }
}

void Plot::draw_axes() {
  const Palette& colours = tackbench::ui::palette();
  plot_->setBackground(QBrush(colours.card));
  plot_->axisRect()->setBackground(QBrush(colours.paper));
  plot_->xAxis->setLabel(axis_title(picture_.words.across, picture_.lengths));
  plot_->yAxis->setLabel(axis_title(picture_.words.up, picture_.lengths));
  for (QCPAxis* axis : {plot_->xAxis, plot_->yAxis}) {
    axis->setBasePen(QPen(colours.soft));
    axis->setTickPen(QPen(colours.soft));
    axis->setSubTickPen(QPen(colours.hair));
    axis->setTickLabelColor(colours.ink);
    axis->setLabelColor(colours.ink);
    axis->setTickLabelFont(font());
    axis->setLabelFont(font());
    axis->grid()->setPen(QPen(colours.hair, 0.7, Qt::DotLine));
    axis->grid()->setZeroLinePen(QPen(colours.hair, 1.2));
    axis->ticker()->setTickCount(axis == plot_->xAxis ? 4 : 5);
  }
  plot_->legend->setVisible(!picture_.curves.empty());
  plot_->legend->setFont(font());
  plot_->legend->setTextColor(picture_.stale ? colours.soft : colours.ink);
  plot_->legend->setBrush(QBrush(colours.card));
  plot_->legend->setBorderPen(Qt::NoPen);
  if (picture_.curves.empty()) return;

  plot_->yAxis->rescale();
  const QCPRange seen = plot_->yAxis->range();
  // A line as good as level is shown as level, not as the noise of its last digits.
  constexpr double kLeastHeight = 0.02;
  const double half = std::max(0.55 * seen.size(), kLeastHeight);
  plot_->yAxis->setRange(seen.center() - half, seen.center() + half);
  const std::vector<double>& x = picture_.curves.front().x;
  const double first = in_axis(x.front());
  const double last = in_axis(x.back());
  const double beside = 0.02 * (last - first);  // a cursor at an end shows whole
  plot_->xAxis->setRange(first - beside, last + beside);
}

void Plot::set_values(const std::vector<QString>& values) {
  values_ = values;
  draw_names(width());
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

void Plot::describe(const QString& words) {
  if (accessibleDescription() == words) return;
  setAccessibleDescription(words);
  QAccessibleEvent event(this, QAccessible::DescriptionChanged);
  QAccessible::updateAccessibility(&event);
}

// Behind the faint curves stand the others, in order.
void Plot::draw_names(int width) {
  const QFontMetrics text(font());
  const int room = width - plot_->legend->iconSize().width() - 24;
  for (int i = faint_; i < plot_->graphCount(); ++i) {
    const auto own = static_cast<std::size_t>(i - faint_);
    const QString value = own < values_.size() ? "  " + values_[own] : QString();
    const QString name = QString::fromStdString(picture_.curves[own].words);
    plot_->graph(i)->setName(
        text.elidedText(name, Qt::ElideMiddle, room - text.horizontalAdvance(value)) + value);
  }
}

void Plot::draw_cursor() {
  const bool on_graph = !picture_.curves.empty() &&
                        cursor_ >= picture_.curves.front().x.front() - 1e-9 &&
                        cursor_ <= picture_.curves.front().x.back() + 1e-9;
  line_->setVisible(on_graph);
  line_->setPen(QPen(tackbench::ui::palette().moves, hasFocus() ? 2.4 : 1.4));
  line_->point1->setCoords(in_axis(cursor_), 0.0);
  line_->point2->setCoords(in_axis(cursor_), 1.0);
}

void Plot::move_to(double place) {
  if (picture_.curves.empty()) return;
  const std::vector<double>& x = picture_.curves.front().x;
  const double ended = std::clamp(place, x.front(), x.back());
  set_cursor(ended);
  Q_EMIT cursor_moved(ended);
}

bool Plot::eventFilter(QObject* watched, QEvent* event) {
  const bool pressed = event->type() == QEvent::MouseButtonPress;
  if (!pressed && event->type() != QEvent::MouseMove) return QWidget::eventFilter(watched, event);
  const auto* mouse = static_cast<QMouseEvent*>(event);
  if (pressed) setFocus(Qt::MouseFocusReason);
  const bool held =
      pressed ? mouse->button() == Qt::LeftButton : mouse->buttons().testFlag(Qt::LeftButton);
  if (held)
    move_to(inside_number(plot_->xAxis->pixelToCoord(mouse->position().x()),
                          picture_.words.across.unit, picture_.lengths));
  return true;
}

void Plot::keyPressEvent(QKeyEvent* event) {
  if (picture_.curves.empty()) return QWidget::keyPressEvent(event);
  const std::vector<double>& x = picture_.curves.front().x;
  const double step = (x.back() - x.front()) / static_cast<double>(x.size() - 1) *
                      (event->modifiers().testFlag(Qt::ShiftModifier) ? 10.0 : 1.0);
  switch (event->key()) {
    case Qt::Key_Left:
      return move_to(cursor_ - step);
    case Qt::Key_Right:
      return move_to(cursor_ + step);
    case Qt::Key_Home:
      return move_to(x.front());
    case Qt::Key_End:
      return move_to(x.back());
    default:
      QWidget::keyPressEvent(event);
  }
}

void Plot::focusInEvent(QFocusEvent* event) {
  draw_cursor();
  plot_->replot(QCustomPlot::rpQueuedReplot);
  QWidget::focusInEvent(event);
}

void Plot::focusOutEvent(QFocusEvent* event) {
  draw_cursor();
  plot_->replot(QCustomPlot::rpQueuedReplot);
  QWidget::focusOutEvent(event);
}

void Plot::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  draw_names(width());
}

void Plot::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) draw();
  QWidget::changeEvent(event);
}

}  // namespace tackbench::ui
