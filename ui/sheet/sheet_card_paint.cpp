// What the sheet looks like.
#include <QFontMetricsF>
#include <QPaintEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/look/palette.h"
#include "ui/sheet/live_numbers.h"
#include "ui/sheet/paper_marks.h"
#include "ui/sheet/rulers.h"
#include "ui/sheet/sheet_card.h"
#include "ui/sheet/sheet_painter.h"

namespace tackbench::ui {

namespace {

constexpr double kStaleOpacity = 0.42;
constexpr std::size_t kMostNumbers = 3;
constexpr double kTagHeading = 13.0;     // pixels
constexpr double kTagText = 12.0;        // pixels
constexpr double kMostTagWidth = 300.0;  // pixels

TagLayout::Cover cover_of(Ink ink) {
  switch (ink) {
    case Ink::soft:
    case Ink::hidden:
    case Ink::centre:
    case Ink::ghost:
      return TagLayout::Cover::faint;
    default:
      return TagLayout::Cover::line;
  }
}

QPointF nearest_on(const QRectF& rect, const QPointF& p) {
  return {std::clamp(p.x(), rect.left(), rect.right()),
          std::clamp(p.y(), rect.top(), rect.bottom())};
}

}  // namespace

QFont SheetCard::sized(double pixels, bool heavy) const {
  QFont made = font();
  made.setPixelSize(static_cast<int>(std::lround(pixels)));
  made.setBold(heavy);
  return made;
}

QFont SheetCard::title_font() const {
  constexpr double kUsual = 15.0;
  constexpr double kLeast = 9.0;
  if (scene_.filling()) return lettering(kUsual, font());
  return lettering(std::clamp(0.45 * kLeastViewGap * transform_.scale(), kLeast, kUsual), font());
}

void SheetCard::paintEvent(QPaintEvent* event) {
  const bool whole = event->rect() == rect();
  QPainter painter(this);
  const double ratio = devicePixelRatioF();
  const QSize pixels = size() * ratio;
  if (ground_layer_stale_ || ground_layer_.size() != pixels) {
    ground_layer_ = QPixmap(pixels);
    ground_layer_.setDevicePixelRatio(ratio);
    QPainter ground(&ground_layer_);
    paint_ground_layer(ground);
    ground_layer_stale_ = false;
    layers_.forget_pictures();
  }
  painter.fillRect(rect(), ui::palette().card);
  painter.setPen(QPen(ui::palette().hair, 1.0));
  painter.drawRect(paper());
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(paper().adjusted(1.0, 1.0, 0.0, 0.0));
  painter.setFont(sized(12.0));
  if (scene_.nothing_drawn()) {
    painter.drawPixmap(QPointF(0, 0), ground_layer_);
    return;  // the bare sheet stands here
  }
  paint_views(painter);
  paint_wandering(painter);
  paint_guides(painter);
  grips_.paint(painter, scene_, transform_, ui::palette(), hovered_, session_.selected());
  if (session_.project().sheet)
    for (const SheetNote& note : session_.project().sheet->notes)
      paint_note(painter, note, grips_, scene_, transform_, ui::palette(), unit());
  measure_.paint(painter, scene_, transform_, ui::palette(), unit());
  gaps_.paint(painter, scene_, transform_, ui::palette(), session_.posed_fresh());
  paint_findings(painter);
  paint_titles(painter);
  paint_tags(painter, whole);
}

void SheetCard::paint_ground_layer(QPainter& painter) {
  const Palette& colours = ui::palette();
  painter.fillRect(rect(), colours.paper);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(paper().adjusted(1.0, 1.0, -1.0, -1.0));
  // A project without settings of its sheet has no photographs: those of the last one go.
  backdrops_.paint(painter, session_.project().sheet ? *session_.project().sheet : SheetSettings{},
                   session_.file().parent_path(), scene_, transform_, colours);
  if (scene_.nothing_drawn()) return;
  painter.setFont(sized(11.0));
  const Rulers rulers(scene_, transform_, unit(), paper());
  if (grid_) rulers.paint_grid(painter, colours);
  rulers.paint(painter, colours);
  rulers.paint_scale_bar(painter, colours, paper().bottomLeft() + QPointF(34.0, -18.0));
  paint_projection_symbol(painter, colours, paper().bottomRight() + QPointF(-48.0, -20.0),
                          projection());
}

void SheetCard::paint_views(QPainter& painter) {
  painter.setFont(sized(11.5));
  if (scene_.closes()) {
    layers_.paint(painter, ground_layer_, scene_, transform_, ui::palette(), paper(),
                  session_.selected(), ghosts_);
    return;
  }
  // The last good position faint; a project that does not compile has no other.
  SheetPainter ink(painter, transform_, ui::palette());
  painter.drawPixmap(QPointF(0, 0), ground_layer_);
  for (const SheetView view : kSheetViews) {
    if (!scene_.is_shown(view)) continue;
    painter.setOpacity(0.3);
    ink.draw(scene_.last_good(view), scene_.origin(view));
    painter.setOpacity(1.0);
    if (!scene_.is_stale()) ink.draw(scene_.view(view), scene_.origin(view));
  }
}

// The shaft line led off, over the ink: thin and dashed, a ring at each joint.
void SheetCard::paint_wandering(QPainter& painter) {
  for (const WanderPlay::LedOff& led : motion_.wander.led_off()) {
    for (const SheetView view : kSheetViews) {
      if (!scene_.is_shown(view)) continue;
      QPolygonF through;
      for (const Vec3& place : led.line_mm) through.append(place_in(view, place));
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(ui::palette().moves, 1.6, Qt::DashLine));
      painter.drawPolyline(through);
      painter.setPen(QPen(ui::palette().moves, 1.2));
      for (qsizetype i = 1; i + 1 < through.size(); ++i) painter.drawEllipse(through[i], 4.5, 4.5);
    }
  }
}

void SheetCard::paint_path(QPainter& painter, const Path& path) {
  painter.setPen(QPen(ui::palette().moves, 0.9, Qt::DotLine));
  painter.setBrush(Qt::NoBrush);
  const double reach_mm = 140.0 / transform_.scale();
  for (const SheetView view : kSheetViews) {
    if (!scene_.is_shown(view)) continue;
    QPolygonF through;
    for (const ViewPoint& p : seen_path(path, view, reach_mm))
      through.append(transform_.to_screen(scene_.origin(view) + p));
    painter.drawPolyline(through);
  }
}

void SheetCard::paint_guides(QPainter& painter) {
  const auto* pressed = hand_.at<SheetHand::Pressed>();
  const GripDrag* drag = hand_.drag();
  if (drag || (pressed && pressed->grip)) paint_path(painter, hand_.path());
  // Thin guides carry the point from view to view.
  const GripPlace* place = place_in_hand();
  const bool lifted = drag || hovered_;
  if (place && !scene_.filling()) {
    QColor faint = ui::palette().moves;
    faint.setAlphaF(lifted ? 0.75F : 0.35F);
    painter.setPen(QPen(faint, 0.7, Qt::DotLine));
    const QPointF side = place_in(SheetView::side, place->posed_mm);
    painter.drawLine(side, place_in(SheetView::front, place->posed_mm));
    painter.drawLine(side, place_in(SheetView::plan, place->posed_mm));
  }
  if (!drag) return;
  painter.setPen(QPen(ui::palette().moves, 1.0, Qt::DotLine));
  for (const SnapGuide& guide : hand_.guides())
    painter.drawLine(transform_.to_screen(scene_.origin(drag->view()) + guide.from),
                     transform_.to_screen(scene_.origin(drag->view()) + guide.to));
}

// The point that is moved, else the one under the pointer, else the selected one.
const GripPlace* SheetCard::place_in_hand() const {
  if (const GripDrag* drag = hand_.drag()) return grips_.find(drag->grip().path);
  return grips_.find(hovered_ ? hovered_->path : session_.selected());
}

void SheetCard::paint_findings(QPainter& painter) {
  painter.save();
  if (!session_.judged_fresh()) painter.setOpacity(kStaleOpacity);
  // The thin rings where the hand is at work.
  findings_.paint(painter, grips_, scene_, transform_, ui::palette(),
                  scene_.filling().value_or(focused_));
  painter.restore();
}

void SheetCard::paint_titles(QPainter& painter) {
  painter.setFont(title_font());
  for (const SheetView view : kSheetViews) {
    if (!scene_.is_shown(view)) continue;
    const QRectF place = title_place(scene_, transform_, view, title_font(), paper());
    paint_title(painter, ui::palette(), place, view, hovered_title_ == view);
    if (view != focused_ || !hasFocus()) continue;
    painter.setPen(QPen(ui::palette().moves, 1.6));
    painter.drawLine(place.bottomLeft() + QPointF(4, 0), place.bottomRight() - QPointF(4, 0));
  }
}

Tag SheetCard::point_tag(const GripPlace& place) const {
  const auto length = [this](double mm) { return shown_on_sheet(mm, Unit::millimetre, unit()); };
  const GripDrag* drag = hand_.drag();
  Tag tag;
  tag.is_point = true;
  const SheetView view = drag ? drag->view() : hovered_ ? hovered_->view : focused_;
  tag.beside = place_in(view, place.posed_mm);
  tag.heading = QString::fromStdString(place.grip.words);
  const Vec3& at = place.grip.at_mm;
  tag.under = QString("X %1  Y %2  Z %3").arg(length(at.x()), length(at.y()), length(at.z()));
  if (drag) {
    const Vec3 change = at - drag->grip().at_mm;
    QStringList parts;
    for (const auto& [axis, index] : {std::pair{'X', 0}, {'Y', 1}, {'Z', 2}})
      if (std::abs(change[index]) >= 0.05)
        parts +=
            QString("%1 %2").arg(axis).arg(shown_change(change[index], Unit::millimetre, unit()));
    if (!parts.isEmpty()) tag.under += '\n' + tr("%1 since drag").arg(parts.join("  "));
  }
  // A line each: the guide itself shows what a long name leaves out.
  const QFontMetricsF metrics(sized(kTagText));
  for (const SnapGuide& guide : hand_.guides())
    tag.under += '\n' + metrics.elidedText(guide.words, Qt::ElideMiddle, kMostTagWidth);
  if (!hand_.refused().isEmpty()) {
    tag.under += '\n' + hand_.refused();
    tag.edge = ui::palette().past;
  }
  return tag;
}

std::vector<Tag> SheetCard::tags() const {
  std::vector<Tag> list;
  if (placing_.active()) {
    Tag tag;
    tag.beside = {paper().center().x(), paper().top() + 40.0};
    tag.under = placing_.asks();
    tag.leader = false;
    list.push_back(tag);
  }
  if (!scene_.closes()) {
    Tag tag;
    tag.beside = {paper().center().x(), paper().top() + 40.0};
    tag.under = scene_.why_not();
    tag.edge = ui::palette().past;
    tag.leader = false;
    list.push_back(tag);
  }
  const GripPlace* place = place_in_hand();
  if (place && !entry_->is_open()) list.push_back(point_tag(*place));
  if (before_) {
    const auto changes = changed_numbers(*before_, session_.posed());
    const SheetView view = hand_.drag() ? hand_.drag()->view() : focused_;
    for (std::size_t i = 0; i < std::min(changes.size(), kMostNumbers); ++i) {
      const NumberChange& one = changes[i];
      Tag tag;
      tag.beside = place_in(view, one.now.at_mm);
      tag.heading = one.now.words + ' ' + shown_on_sheet(one.now.value, one.now.unit, unit());
      tag.change = shown_change(one.change, one.now.unit, unit());
      tag.under = tr("%1 since drag").arg(tag.change);
      tag.fresh = session_.posed_fresh();
      tag.is_number = true;
      list.push_back(tag);
    }
  }
  if (auto tag = findings_.tag(grips_, scene_, transform_, ui::palette())) {
    tag->fresh = session_.judged_fresh();
    list.push_back(*std::move(tag));
  }
  if (const auto measured = measure(measure_.points())) {
    Tag tag;
    tag.beside = transform_.to_screen(scene_.origin(measure_.points().back().view) +
                                      measure_.points().back().in_view);
    tag.under = measured_words(measure_.points(), *measured, unit());
    list.push_back(tag);
  }
  return list;
}

void SheetCard::avoid_drawing(TagLayout& layout) const {
  for (const SheetView which : kSheetViews) {
    if (!scene_.is_shown(which)) continue;
    const ViewPoint& origin = scene_.origin(which);
    const TruckView& view = scene_.view(which);
    for (const DrawnLine& line : view.lines) {
      const std::size_t count = line.through.size();
      for (std::size_t i = 0; i + (line.closed ? 0 : 1) < count; ++i)
        layout.avoid_line(transform_.to_screen(origin + line.through[i]),
                          transform_.to_screen(origin + line.through[(i + 1) % count]),
                          cover_of(line.ink));
    }
    for (const DrawnRound& round : view.rounds)
      layout.avoid_round(transform_.to_screen(origin + round.centre),
                         round.radius * transform_.scale(), cover_of(round.ink));
    for (const DrawnSymbol& symbol : view.symbols)
      layout.avoid_round(transform_.to_screen(origin + symbol.at), 7.0);
    gaps_.avoid_lines(layout, scene_, transform_, which);
    layout.avoid(title_place(scene_, transform_, which, title_font(), paper()));
  }
}

// What lies on the sheet and hides it: its own panels and loose cards, and those of the window.
void SheetCard::avoid_widgets(TagLayout& layout) const {
  const QWidget* inner = nullptr;
  for (const QWidget* outer = this; outer; inner = outer, outer = outer->parentWidget()) {
    for (const QObject* child : outer->children()) {
      const auto* widget = qobject_cast<const QWidget*>(child);
      if (!widget || widget == inner || widget->isWindow() || !widget->isVisible()) continue;
      const QRect place(widget->mapTo(outer, QPoint(0, 0)), widget->size());
      layout.avoid(QRectF(place.translated(-mapTo(outer, QPoint(0, 0)))).adjusted(-2, -2, 2, 2));
    }
    if (outer->isWindow()) break;
  }
}

QSizeF SheetCard::tag_size(const Tag& tag) const {
  const QFontMetricsF heavy(sized(kTagHeading, true));
  const QFontMetricsF light(sized(kTagText));
  const QRectF under = light.boundingRect(QRectF(0, 0, kMostTagWidth, 400),
                                          Qt::AlignLeft | Qt::TextWordWrap, tag.under);
  const double heading = tag.heading.isEmpty() ? 0.0 : heavy.height();
  const double width = std::min(heavy.horizontalAdvance(tag.heading), kMostTagWidth);
  // No words have no line of their own.
  const double lines = tag.under.isEmpty() ? 0.0 : under.height();
  return {std::max(width, under.width()) + 18.0, heading + lines + 10.0};
}

void SheetCard::paint_leader(QPainter& painter, const Tag& tag, const QRectF& place) {
  painter.setOpacity(tag.fresh ? 1.0 : kStaleOpacity);
  painter.setPen(QPen(tag.edge.value_or(ui::palette().moves), 0.9));
  painter.drawLine(nearest_on(place, tag.beside), tag.beside);
}

void SheetCard::paint_tag(QPainter& painter, const Tag& tag, const QRectF& place) {
  const QFont heavy = sized(kTagHeading, true);
  const QFontMetricsF metrics(heavy);
  const QColor edge = tag.edge.value_or(ui::palette().moves);
  painter.setOpacity(tag.fresh ? 1.0 : kStaleOpacity);
  painter.setPen(QPen(edge, 1.2));
  painter.setBrush(ui::palette().card);
  painter.drawRoundedRect(place, 4.0, 4.0);
  QRectF inside = place.adjusted(9.0, 5.0, -9.0, -3.0);
  if (!tag.heading.isEmpty()) {
    painter.setFont(heavy);
    painter.setPen(ui::palette().ink);
    painter.drawText(QRectF(inside.topLeft(), QSizeF(inside.width(), metrics.height())),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(tag.heading, Qt::ElideMiddle, kMostTagWidth));
    inside.setTop(inside.top() + metrics.height());
  }
  painter.setFont(sized(kTagText));
  painter.setPen(tag.edge ? ui::palette().ink : ui::palette().moves);
  painter.drawText(inside, Qt::AlignLeft | Qt::TextWordWrap, tag.under);
  painter.setOpacity(1.0);
}

// The point in the hand comes first, then the numbers, each beside what it measures; those without
// room there go into the tag of the point, which then needs more room itself.
std::vector<PlacedTag> SheetCard::lay_out_tags() {
  std::vector<Tag> list = tags();
  if (list.empty() && !gaps_.on()) return {};
  std::stable_sort(list.begin(), list.end(), [](const Tag& a, const Tag& b) {
    const auto rank = [](const Tag& tag) { return tag.is_point ? 0 : tag.is_number ? 1 : 2; };
    return rank(a) < rank(b);
  });
  const bool has_point = !list.empty() && list.front().is_point;
  TagLayout bare(paper().adjusted(Rulers::kWidth + 12.0, Rulers::kWidth + 4.0, -6.0, -6.0));
  avoid_drawing(bare);
  avoid_widgets(bare);
  if (has_point) bare.avoid(QRectF(list.front().beside, QSizeF()).adjusted(-9.0, -9.0, 9.0, 9.0));
  TagLayout layout = bare;
  std::vector<PlacedTag> placed;
  QString without_room;
  do {
    layout = bare;
    placed.clear();
    without_room.clear();
    std::vector<Tag> kept;
    for (const Tag& tag : list) {
      if (tag.is_number) {
        const auto place = layout.place_close(tag.beside, tag_size(tag));
        if (!place) {
          without_room += '\n' + tag.heading + ", " + tag.change;
          continue;
        }
        placed.push_back({tag, *place});
      } else {
        const QPointF spot = tag.beside + tag_spot_.value_or(QPointF());
        placed.push_back({tag, layout.place(tag.beside, tag_size(tag),
                                            tag.is_point && tag_spot_ ? &spot : nullptr)});
      }
      kept.push_back(tag);
    }
    list = std::move(kept);
    if (has_point) list.front().under += without_room;
  } while (has_point && !without_room.isEmpty());
  tag_spot_.reset();
  if (!placed.empty() && placed.front().tag.is_point)
    tag_spot_ = placed.front().place.topLeft() - placed.front().tag.beside;
  place_gap_tags(layout, placed);
  return placed;
}

void SheetCard::place_gap_tags(TagLayout& layout, std::vector<PlacedTag>& placed) const {
  if (!gaps_.on() || !scene_.closes()) return;
  // What they are first: without it the numbers would say too much.
  Tag caption;
  caption.beside = {paper().center().x(), paper().top() + 30.0};
  caption.under = gaps_.caption();
  caption.edge = ui::palette().soft;
  caption.leader = false;
  placed.push_back({caption, layout.place(caption.beside, tag_size(caption))});
  // The scale bar's number stands there.
  layout.avoid(QRectF(paper().bottomLeft() + QPointF(20.0, -44.0), QSizeF(240.0, 40.0)));
  const SheetView named = scene_.filling().value_or(focused_);
  std::vector<SheetView> order{named};
  for (const SheetView view : kSheetViews)
    if (view != named) order.push_back(view);
  for (const SheetView view : order) {
    if (!scene_.is_shown(view)) continue;
    for (Tag tag : gaps_.tags(scene_, transform_, view, unit())) {
      tag.fresh = session_.posed_fresh();
      // Names stand in one view, where there is always room for them; the others get the number
      // where it finds room.
      if (view == named) {
        placed.push_back({tag, layout.place(tag.beside, tag_size(tag))});
        continue;
      }
      tag.under.clear();
      if (const auto place = layout.place_close(tag.beside, tag_size(tag)))
        placed.push_back({tag, *place});
    }
  }
}

void SheetCard::paint_tags(QPainter& painter, bool whole) {
  const std::vector<PlacedTag> before = std::exchange(placed_tags_, lay_out_tags());
  // Leaders lie under all of them.
  for (const PlacedTag& placed : placed_tags_)
    if (placed.tag.leader) paint_leader(painter, placed.tag, placed.place);
  for (const PlacedTag& placed : placed_tags_) paint_tag(painter, placed.tag, placed.place);
  // Something that came to lie on the sheet drives them elsewhere than where it is painted anew.
  const bool same =
      std::equal(before.begin(), before.end(), placed_tags_.begin(), placed_tags_.end(),
                 [](const PlacedTag& a, const PlacedTag& b) { return a.place == b.place; });
  if (!whole && !same) update();
}

}  // namespace tackbench::ui
