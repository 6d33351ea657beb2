#include "ui/sheet/gap_layer.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "ui/sheet/live_numbers.h"

namespace tackbench::ui {

namespace {

constexpr double kNear = 150.0;          // mm: further gaps of no chosen part are not drawn
constexpr double kNearToChosen = 300.0;  // mm
constexpr std::size_t kMostNear = 5;
constexpr std::size_t kMostOfChosen = 12;
constexpr double kTick = 5.0;       // half of the line across each end, pixels
constexpr double kSeenEndOn = 3.0;  // shorter lines are a spot, pixels
constexpr double kStaleOpacity = 0.42;

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(GapLayer)
};

bool overlaps(const PairGap& pair) {
  return pair.gap.high_mm < 0.0 || pair.gap.outcome == GapOutcome::deeper_than;
}

struct Ends {
  QPointF from;
  QPointF to;
};

Ends ends_of(const PairGap& pair, const SheetScene& scene, const SheetTransform& transform,
             SheetView view) {
  return {transform.to_screen(scene.on_sheet(view, pair.gap.on_first)),
          transform.to_screen(scene.on_sheet(view, pair.gap.on_second))};
}

void draw_line(QPainter& painter, const Ends& ends) {
  const QPointF step = ends.to - ends.from;
  const double length = std::hypot(step.x(), step.y());
  if (length < kSeenEndOn) {
    painter.drawEllipse(0.5 * (ends.from + ends.to), 3.5, 3.5);
    return;
  }
  painter.drawLine(ends.from, ends.to);
  const QPointF across(-step.y() / length * kTick, step.x() / length * kTick);
  for (const QPointF& end : {ends.from, ends.to}) painter.drawLine(end - across, end + across);
}

}  // namespace

void GapLayer::show(const PosedTruck& truck, const std::string& chosen) {
  shown_.clear();
  if (!on_ || !truck.mechanism) return;
  if (of_ != truck.mechanism) {
    solids_ = truck_solids(*truck.mechanism);
    of_ = truck.mechanism;
  }
  std::size_t near = 0;
  std::size_t of_chosen = 0;
  for (const PairGap& pair :
       gaps(*solids_, *truck.mechanism, truck.pose, {kNear, chosen, kNearToChosen})) {
    const bool is_chosen =
        is_of(solids_->parts[pair.first], chosen) || is_of(solids_->parts[pair.second], chosen);
    const bool one_of_near = pair.gap.high_mm <= kNear && near < kMostNear;
    if (!one_of_near && !(is_chosen && of_chosen < kMostOfChosen)) continue;
    near += one_of_near ? 1 : 0;
    of_chosen += is_chosen ? 1 : 0;
    shown_.push_back(pair);
  }
}

QString GapLayer::number(const PairGap& pair, ShownUnit unit) {
  constexpr double kWorthSaying = 0.05;  // mm
  const double gap = pair.gap.high_mm;
  if (!overlaps(pair)) {
    const QString plain = shown_on_sheet(gap, Unit::millimetre, unit);
    return pair.assumed && !plain.startsWith('~') ? '~' + plain : plain;
  }
  const QString depth = QString::fromStdString(shown_length(-gap, unit));
  if (pair.gap.outcome != GapOutcome::deeper_than) return Texts::tr("overlaps by %1").arg(depth);
  return -gap < kWorthSaying ? Texts::tr("overlaps")
                             : Texts::tr("overlaps by more than %1").arg(depth);
}

QString GapLayer::names(const PairGap& pair) const {
  return QString::fromStdString(part(pair.first).name) + ", " +
         QString::fromStdString(part(pair.second).name);
}

QString GapLayer::nearest_words(ShownUnit unit) const {
  if (shown_.empty()) return {};
  return Texts::tr("; gap in this position: %1 %2")
      .arg(names(shown_.front()), number(shown_.front(), unit));
}

QString GapLayer::caption() const {
  if (shown_.empty()) return Texts::tr("No gap this side of 150 mm in this position");
  const bool assumed =
      std::any_of(shown_.begin(), shown_.end(), [](const PairGap& pair) { return pair.assumed; });
  QString text = Texts::tr("Gaps in this position");
  text += '\n' + Texts::tr("tyres without growth");
  if (assumed) text += Texts::tr("; ~: a size is assumed");
  return text;
}

void GapLayer::paint(QPainter& painter, const SheetScene& scene, const SheetTransform& transform,
                     const Palette& colours, bool fresh) const {
  if (!on_) return;
  painter.save();
  if (!fresh) painter.setOpacity(kStaleOpacity);
  painter.setBrush(Qt::NoBrush);
  for (const SheetView view : kSheetViews) {
    if (!scene.is_shown(view)) continue;
    for (const PairGap& pair : shown_) {
      const Ends ends = ends_of(pair, scene, transform, view);
      // Paper about it keeps it apart from the drawing under it.
      painter.setPen(QPen(colours.paper, 4.5, Qt::SolidLine, Qt::RoundCap));
      draw_line(painter, ends);
      painter.setPen(
          QPen(overlaps(pair) ? colours.past : colours.ink, 2.0, Qt::SolidLine, Qt::FlatCap));
      draw_line(painter, ends);
    }
  }
  painter.restore();
}

void GapLayer::avoid_lines(TagLayout& layout, const SheetScene& scene,
                           const SheetTransform& transform, SheetView view) const {
  if (!on_) return;
  for (const PairGap& pair : shown_) {
    const Ends ends = ends_of(pair, scene, transform, view);
    layout.avoid_line(ends.from, ends.to);
    layout.avoid_round(ends.from, kTick);
    layout.avoid_round(ends.to, kTick);
  }
}

std::vector<Tag> GapLayer::tags(const SheetScene& scene, const SheetTransform& transform,
                                SheetView view, ShownUnit unit) const {
  std::vector<Tag> list;
  if (!on_) return list;
  for (const PairGap& pair : shown_) {
    const Ends ends = ends_of(pair, scene, transform, view);
    Tag tag;
    tag.beside = 0.5 * (ends.from + ends.to);
    tag.heading = number(pair, unit);
    tag.under = names(pair);
    tag.edge = overlaps(pair) ? palette().past : palette().ink;
    list.push_back(tag);
  }
  return list;
}

}  // namespace tackbench::ui
