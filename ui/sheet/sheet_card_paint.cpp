// What the sheet looks like.
#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/look/palette.h"
#include "ui/sheet/empty_truck.h"
#include "ui/sheet/finding_places.h"
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

void SheetCard::paintEvent(QPaintEvent*) {
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
    paint_empty_truck(painter, ui::palette(), paper(), session_.project());
    if (!scene_.closes()) paint_tags(painter);
    return;
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
  paint_tags(painter);
}

void SheetCard::paint_ground_layer(QPainter& painter) {
  const Palette& colours = ui::palette();
  painter.fillRect(rect(), colours.paper);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(paper().adjusted(1.0, 1.0, -1.0, -1.0));
  if (session_.project().sheet)
    backdrops_.paint(painter, *session_.project().sheet, session_.file().parent_path(), scene_,
                     transform_, colours);
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
  const bool held = hand_ == Hand::pressed || drag_;
  if (held && (hovered_ || drag_)) paint_path(painter, path_);
  // Thin guides carry the point from view to view.
  const GripPlace* place = grips_.find(drag_      ? drag_->grip().path
                                       : hovered_ ? hovered_->path
                                                  : session_.selected());
  const bool lifted = drag_ || hovered_;
  if (place && !scene_.filling()) {
    QColor faint = ui::palette().moves;
    faint.setAlphaF(lifted ? 0.75F : 0.35F);
    painter.setPen(QPen(faint, 0.7, Qt::DotLine));
    const QPointF side = place_in(SheetView::side, place->posed_mm);
    painter.drawLine(side, place_in(SheetView::front, place->posed_mm));
    painter.drawLine(side, place_in(SheetView::plan, place->posed_mm));
  }
  if (!drag_) return;
  painter.setPen(QPen(ui::palette().moves, 1.0, Qt::DotLine));
  for (const SnapGuide& guide : guides_)
    painter.drawLine(transform_.to_screen(scene_.origin(drag_->view()) + guide.from),
                     transform_.to_screen(scene_.origin(drag_->view()) + guide.to));
}

void SheetCard::paint_findings(QPainter& painter) {
  painter.save();
  painter.setBrush(Qt::NoBrush);
  if (!session_.judged_fresh()) painter.setOpacity(kStaleOpacity);
  // Every past finding has a thin ring where the hand is at work, the one that was asked for a
  // heavy one in every view.
  painter.setPen(QPen(ui::palette().past, 1.1));
  std::vector<std::string> ringed;
  for (const Finding& finding : session_.judged().findings) {
    if (finding.verdict != Verdict::past || finding.name == finding_name_) continue;
    const auto places = finding_places(session_.project(), finding);
    const GripPlace* place = places.empty() ? nullptr : grips_.find(places.front());
    if (!place || std::find(ringed.begin(), ringed.end(), places.front()) != ringed.end()) continue;
    ringed.push_back(places.front());
    const SheetView view = scene_.filling().value_or(focused_);
    painter.drawEllipse(place_in(view, place->posed_mm), 10.0, 10.0);
  }
  painter.setPen(QPen(ui::palette().past, 2.4));
  for (const std::string& path : finding_places_) {
    const GripPlace* place = grips_.find(path);
    if (!place) continue;
    for (const SheetView view : kSheetViews)
      if (scene_.is_shown(view)) painter.drawEllipse(place_in(view, place->posed_mm), 14.0, 14.0);
  }
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
  Tag tag;
  tag.is_point = true;
  const SheetView view = drag_ ? drag_->view() : hovered_ ? hovered_->view : focused_;
  tag.beside = place_in(view, place.posed_mm);
  tag.heading = QString::fromStdString(place.grip.words);
  const Vec3& at = place.grip.at_mm;
  tag.under = QString("X %1  Y %2  Z %3").arg(length(at.x()), length(at.y()), length(at.z()));
  if (drag_) {
    const Vec3 change = at - drag_->grip().at_mm;
    QStringList parts;
    for (const auto& [axis, index] : {std::pair{'X', 0}, {'Y', 1}, {'Z', 2}})
      if (std::abs(change[index]) >= 0.05)
        parts +=
            QString("%1 %2").arg(axis).arg(shown_change(change[index], Unit::millimetre, unit()));
    if (!parts.isEmpty()) tag.under += '\n' + parts.join("  ");
  }
  for (const SnapGuide& guide : guides_) tag.under += '\n' + guide.words;
  if (!refused_.isEmpty()) {
    tag.under += '\n' + refused_;
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
  const GripPlace* place = grips_.find(drag_      ? drag_->grip().path
                                       : hovered_ ? hovered_->path
                                                  : session_.selected());
  if (place && !entry_->is_open()) list.push_back(point_tag(*place));
  if (changes_shown_ && session_.posed_before()) {
    const auto changes = changed_numbers(*session_.posed_before(), session_.posed());
    const SheetView view = drag_ ? drag_->view() : focused_;
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
  if (!finding_name_.empty()) {
    if (const GripPlace* found =
            finding_places_.empty() ? nullptr : grips_.find(finding_places_.front())) {
      Tag tag;
      tag.beside = place_in(scene_.filling().value_or(SheetView::side), found->posed_mm);
      tag.under = finding_words_;
      tag.edge = ui::palette().past;
      tag.fresh = session_.judged_fresh();
      list.push_back(tag);
    }
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
                          transform_.to_screen(origin + line.through[(i + 1) % count]));
    }
    for (const DrawnRound& round : view.rounds)
      layout.avoid_round(transform_.to_screen(origin + round.centre),
                         round.radius * transform_.scale());
    for (const DrawnSymbol& symbol : view.symbols)
      layout.avoid_round(transform_.to_screen(origin + symbol.at), 7.0);
    gaps_.avoid_lines(layout, scene_, transform_, which);
    layout.avoid(title_place(scene_, transform_, which, title_font(), paper()));
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

void SheetCard::paint_tag(QPainter& painter, const Tag& tag, const QRectF& place) {
  const QFont heavy = sized(kTagHeading, true);
  const QFontMetricsF metrics(heavy);
  const QColor edge = tag.edge.value_or(ui::palette().moves);
  painter.setOpacity(tag.fresh ? 1.0 : kStaleOpacity);
  painter.setPen(QPen(edge, 0.9));
  if (tag.leader) painter.drawLine(nearest_on(place, tag.beside), tag.beside);
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

void SheetCard::paint_tags(QPainter& painter) {
  std::vector<Tag> list = tags();
  if (list.empty() && !gaps_.on()) return;
  TagLayout layout(paper().adjusted(Rulers::kWidth + 12.0, Rulers::kWidth + 4.0, -6.0, -6.0));
  avoid_drawing(layout);
  // Numbers stand beside what they measure; those without room go into the tag of the point.
  const auto point =
      std::find_if(list.begin(), list.end(), [](const Tag& tag) { return tag.is_point; });
  for (const Tag& tag : list) {
    if (!tag.is_number) continue;
    const auto place = layout.place_close(tag.beside, tag_size(tag));
    if (place) {
      paint_tag(painter, tag, *place);
    } else if (point != list.end()) {
      point->under += '\n' + tag.heading + ", " + tag.change;
    }
  }
  for (const Tag& tag : list) {
    if (tag.is_number) continue;
    const QPointF kept = tag.beside + tag_spot_;
    const QRectF place =
        layout.place(tag.beside, tag_size(tag), tag.is_point && tag_spot_known_ ? &kept : nullptr);
    if (tag.is_point) {
      tag_spot_ = place.topLeft() - tag.beside;
      tag_spot_known_ = true;
    }
    paint_tag(painter, tag, place);
  }
  paint_gap_tags(painter, layout);
}

void SheetCard::paint_gap_tags(QPainter& painter, TagLayout& layout) {
  if (!gaps_.on() || !scene_.closes()) return;
  // What they are first: without it the numbers would say too much.
  Tag caption;
  caption.beside = {paper().center().x(), paper().top() + 30.0};
  caption.under = gaps_.caption();
  caption.edge = ui::palette().soft;
  caption.leader = false;
  paint_tag(painter, caption, layout.place(caption.beside, tag_size(caption)));
  // The scale bar's number stands there.
  layout.avoid(QRectF(paper().bottomLeft() + QPointF(20.0, -44.0), QSizeF(240.0, 40.0)));
  const SheetView named = scene_.filling().value_or(focused_);
  std::vector<SheetView> order{named};
  for (const SheetView view : kSheetViews)
    if (view != named) order.push_back(view);
  std::vector<std::pair<Tag, QRectF>> placed;
  for (const SheetView view : order) {
    if (!scene_.is_shown(view)) continue;
    for (Tag tag : gaps_.tags(scene_, transform_, view, unit())) {
      tag.fresh = session_.posed_fresh();
      // Names stand in one view, where there is always room for them; the others get the number
      // where it finds room.
      if (view == named) {
        placed.emplace_back(tag, layout.place(tag.beside, tag_size(tag)));
        continue;
      }
      tag.under.clear();
      if (const auto place = layout.place_close(tag.beside, tag_size(tag)))
        placed.emplace_back(tag, *place);
    }
  }
  // Leaders lie under all of them.
  for (const auto& [tag, place] : placed) {
    painter.setOpacity(tag.fresh ? 1.0 : kStaleOpacity);
    painter.setPen(QPen(tag.edge.value_or(ui::palette().ink), 0.9));
    painter.drawLine(nearest_on(place, tag.beside), tag.beside);
  }
  for (auto& [tag, place] : placed) {
    tag.leader = false;
    paint_tag(painter, tag, place);
  }
}

}  // namespace tackbench::ui
