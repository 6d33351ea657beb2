// The hand on the sheet: mouse, pad and keys.
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QTouchEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>
#include <limits>

#include "ui/motion/hand_steps.h"
#include "ui/sheet/paper_marks.h"
#include "ui/sheet/rulers.h"
#include "ui/sheet/sheet_card.h"

namespace tackbench::ui {

namespace {

constexpr double kLineReach = 6.0;  // pixels
constexpr double kSnapReach = 5.0;  // pixels
constexpr double kPanStep = 40.0;   // pixels

double distance_to_segment(const QPointF& p, const QPointF& a, const QPointF& b) {
  const QPointF along = b - a;
  const double squared = QPointF::dotProduct(along, along);
  const double t =
      squared > 0.0 ? std::clamp(QPointF::dotProduct(p - a, along) / squared, 0.0, 1.0) : 0.0;
  const QPointF off = p - (a + t * along);
  return std::hypot(off.x(), off.y());
}

}  // namespace

std::string SheetCard::part_at(const QPointF& pointer) const {
  std::string found;
  double least = kLineReach;
  const auto consider = [&](double away, const std::string& part) {
    if (part.empty() || !(away <= least)) return;
    least = away;
    found = part;
  };
  for (const SheetView which : kSheetViews) {
    if (!scene_.is_shown(which)) continue;
    const TruckView& view = scene_.view(which);
    const ViewPoint& origin = scene_.origin(which);
    for (const DrawnLine& line : view.lines) {
      const std::size_t count = line.through.size();
      for (std::size_t i = 0; i + (line.closed ? 0 : 1) < count; ++i)
        consider(distance_to_segment(pointer, transform_.to_screen(origin + line.through[i]),
                                     transform_.to_screen(origin + line.through[(i + 1) % count])),
                 line.part);
    }
    for (const DrawnRound& round : view.rounds) {
      const QPointF off = transform_.to_screen(origin + round.centre) - pointer;
      consider(std::abs(std::hypot(off.x(), off.y()) - round.radius * transform_.scale()),
               round.part);
    }
    for (const DrawnSymbol& symbol : view.symbols) {
      const QPointF off = transform_.to_screen(origin + symbol.at) - pointer;
      consider(std::hypot(off.x(), off.y()) - 4.0, symbol.part);
    }
  }
  return found;
}

std::optional<SheetView> SheetCard::title_at(const QPointF& pointer) const {
  for (const SheetView view : kSheetViews)
    if (scene_.is_shown(view) &&
        title_place(scene_, transform_, view, title_font(), paper()).contains(pointer))
      return view;
  return std::nullopt;
}

bool SheetCard::place_photograph(const QPointF& pointer) {
  const auto& sheet = session_.project().sheet;
  if (!placing_.active() || !sheet || placing_.index() >= sheet->backdrops.size()) return false;
  const std::size_t index = placing_.index();
  const auto placed = placing_.choose(pointer, picked_at(pointer).at_mm, sheet->backdrops[index],
                                      scene_, transform_);
  describe(placing_.asks());
  if (placed) photographs_->replace(tr("Place the photograph"), index, *placed);
  update();
  return true;
}

Picked SheetCard::picked_at(const QPointF& pointer) const {
  Picked picked;
  if (const auto hit = grips_.hit(pointer, scene_, transform_, {})) {
    const GripPlace* place = grips_.find(hit->path);
    picked.path = hit->path;
    picked.words = QString::fromStdString(place->grip.words);
    picked.view = hit->view;
    picked.at_mm = place->posed_mm;
    picked.in_view = seen(hit->view, place->posed_mm);
    return picked;
  }
  const ViewPoint sheet = transform_.to_sheet(pointer);
  picked.view = scene_.view_at(sheet);
  picked.in_view = sheet - scene_.origin(picked.view);
  picked.words = tr("a place on the paper");
  return picked;
}

void SheetCard::mousePressEvent(QMouseEvent* event) {
  if (hand_.at<SheetHand::DragsPoint>()) return;
  if (hand_.drag()) end_drag();
  entry_->close_entry();
  const QPointF press = last_ = event->position();
  if (event->button() == Qt::MiddleButton) {
    hand_.take(SheetHand::Pans{});
    return;
  }
  if (event->button() != Qt::LeftButton) return;
  hand_.let_go();
  if (place_photograph(press)) return;
  if (measure_.active() && paper().contains(press) && !title_at(press)) {
    measure_.pick(picked_at(press));
    if (const auto measured = measure(measure_.points()))
      describe(measured_words(measure_.points(), *measured, unit()));
    update();
    return;
  }
  SheetHand::Pressed pressed;
  pressed.at = press;
  pressed.grip = hovered_ = grips_.hit(press, scene_, transform_, session_.selected());
  if (hovered_) {
    focused_ = hovered_->view;
    session_.select(hovered_->path);
    const GripPlace& place = *grips_.find(hovered_->path);
    hand_.show_path(posed_path(place.grip, place.moved, keeps_line(event->modifiers())));
  } else if (paper().contains(press)) {
    focused_ = scene_.view_at(transform_.to_sheet(press));
    const ViewPoint at = transform_.to_sheet(press) - scene_.origin(focused_);
    pressed.control =
        control_at(session_.posed(), part_at(press), hand_view(focused_).ray(at), std::nullopt);
  }
  pressed.view = focused_;
  hand_.take(pressed);
  update();
}

void SheetCard::mouseMoveEvent(QMouseEvent* event) {
  const QPointF pointer = event->position();
  if (const auto* pressed = hand_.at<SheetHand::Pressed>();
      pressed && is_drag(pressed->at, pointer))
    start_moving(SheetHand::Pressed(*pressed), pointer);
  if (hand_.idle()) {
    hover(pointer);
  } else if (hand_.at<SheetHand::DragsPoint>()) {
    drag_to(pointer, event->modifiers());
  } else if (const auto* moves = hand_.at<SheetHand::MovesControl>()) {
    drag_control(*moves, pointer);
  } else if (hand_.at<SheetHand::Pans>()) {
    transform_.pan(pointer - last_);
    fitted_ = false;
    view_moved();
  }
  last_ = pointer;
}

// The hand has gone far enough from where it pressed: it moves what it pressed on.
void SheetCard::start_moving(const SheetHand::Pressed& pressed, const QPointF& pointer) {
  last_ = pressed.at;
  if (pressed.grip) {
    start_drag(pressed);
  } else if (pressed.control) {
    SheetHand::MovesControl moves{*pressed.control, pressed.view};
    const ViewPoint& origin = scene_.origin(pressed.view);
    if (moves.control.kind == ControlKind::road_wheel)
      moves.control.way = way_of_wheel(session_.posed(), moves.control, hand_view(pressed.view),
                                       transform_.to_sheet(pressed.at) - origin,
                                       transform_.to_sheet(pointer) - origin);
    hand_.take(moves);
  } else {
    hand_.take(SheetHand::Pans{});
    setCursor(Qt::ClosedHandCursor);
  }
}

void SheetCard::mouseReleaseEvent(QMouseEvent* event) {
  const auto* pressed = hand_.at<SheetHand::Pressed>();
  const bool on_paper = pressed && !pressed->grip;
  if (hand_.drag()) {
    end_drag();
  } else {
    hand_.let_go();
  }
  unsetCursor();
  if (on_paper && event->button() == Qt::LeftButton) session_.select(part_at(event->position()));
  hover(event->position());
  update();
}

void SheetCard::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  if (const auto title = title_at(event->position())) {
    fill_with(scene_.filling() ? std::nullopt : title);
    return;
  }
  const auto hit = grips_.hit(event->position(), scene_, transform_, session_.selected());
  if (!hit || measure_.active()) return;
  session_.select(hit->path);
  focused_ = hit->view;
  enter_exactly();
}

void SheetCard::leaveEvent(QEvent*) {
  if (!hand_.idle()) return;
  hovered_.reset();
  hovered_title_.reset();
  update();
}

void SheetCard::hover(const QPointF& pointer) {
  const auto hit = grips_.hit(pointer, scene_, transform_, session_.selected());
  const auto title = hit ? std::nullopt : title_at(pointer);
  if (hit == hovered_ && title == hovered_title_) return;
  hovered_ = hit;
  hovered_title_ = title;
  if (hit || title) {
    setCursor(hit ? Qt::OpenHandCursor : Qt::PointingHandCursor);
  } else {
    unsetCursor();
  }
  update();
}

void SheetCard::forget_hand() {
  if (!hand_.idle()) unsetCursor();
  hand_.let_go();
  before_.reset();
  make_ghosts();
}

void SheetCard::start_drag(const SheetHand::Pressed& pressed) {
  const GripPlace* place = grips_.find(pressed.grip->path);
  if (!place) return;
  const SheetView view = pressed.grip->view;
  const ViewPoint under_hand = transform_.to_sheet(pressed.at) - scene_.origin(view);
  GripDrag drag(session_.project(), *place, view, grips_.places());
  begin_drag_of(*place);
  hand_.take(SheetHand::DragsPoint{std::move(drag), seen(view, place->posed_mm) - under_hand});
  setCursor(Qt::ClosedHandCursor);
  make_ghosts();
}

void SheetCard::begin_drag_of(const GripPlace& place) {
  session_.begin_drag(tr("Move %1").arg(QString::fromStdString(place.grip.words)));
  before_.reset();
  if (session_.posed_before()) before_ = *session_.posed_before();
  layers_.forget_motion();
  tag_spot_.reset();
}

void SheetCard::drag_to(const QPointF& pointer, Qt::KeyboardModifiers held) {
  const auto* drags = hand_.at<SheetHand::DragsPoint>();
  if (!drags) return;
  DragHow how;
  how.keep_line = keeps_line(held);
  how.snapping = !held.testFlag(Qt::ControlModifier);
  how.unit = unit();
  how.catch_mm = kSnapReach / transform_.scale();
  take(drags->drag.to(
      transform_.to_sheet(pointer) - scene_.origin(drags->drag.view()) + drags->offset, how));
}

void SheetCard::take(DragStep step) {
  if (auto after = hand_.take_step(std::move(step))) {
    session_.drag_to(*std::move(after));  // painted when the truck has followed
  } else {
    update();
  }
}

void SheetCard::end_drag() {
  hand_.let_go();
  make_ghosts();
  session_.end_drag();
  follow_pose();
}

void SheetCard::cancel_drag() {
  forget_hand();
  session_.cancel_drag();
  update();
}

void SheetCard::drag_control(const SheetHand::MovesControl& moves, const QPointF& pointer) {
  const ViewPoint& origin = scene_.origin(moves.view);
  move_control(session_, moves.control, hand_view(moves.view), transform_.to_sheet(last_) - origin,
               transform_.to_sheet(pointer) - origin);
}

void SheetCard::nudge(int right, int up, Qt::KeyboardModifiers held) {
  const GripPlace* place = grips_.find(session_.selected());
  if (!place) return;
  // A drag that something else has ended is not gone on with.
  if (!hand_.at<SheetHand::NudgesPoint>() || !session_.dragging()) {
    // Keys may come faster than the truck is posed: the point stands where the project has it now.
    GripPlace now = *place;
    if (const auto grip = grip_at(session_.project(), place->grip.path)) now.grip = *grip;
    now.posed_mm = (now.moved * Point<Chassis>{now.grip.at_mm}).mm;
    GripDrag drag(session_.project(), now, focused_, grips_.places());
    begin_drag_of(now);
    hand_.take(SheetHand::NudgesPoint{std::move(drag), {}});
    make_ghosts();
  }
  auto& nudges = *hand_.at<SheetHand::NudgesPoint>();
  const double step = nudge_step(unit(), held);
  nudges.so_far = nudges.so_far + ViewPoint{right * step, up * step};
  take(nudges.drag.by(nudges.so_far, held.testFlag(Qt::AltModifier)));
}

void SheetCard::step_selection(int step) {
  const std::string next = grips_.beside(session_.selected(), step);
  if (next.empty()) return;
  session_.select(next);
  // A point that is chosen by key has to be in sight.
  if (const auto at = grip_place(next, focused_); at && !paper().contains(*at)) {
    transform_.pan(paper().center() - *at);
    fitted_ = false;
    view_moved();
  }
}

bool SheetCard::arrow_key(QKeyEvent* event) {
  const int key = event->key();
  const int right = (key == Qt::Key_Right) - (key == Qt::Key_Left);
  const int up = (key == Qt::Key_Up) - (key == Qt::Key_Down);
  if (right == 0 && up == 0) return false;
  if (!hand_.idle() && !hand_.at<SheetHand::NudgesPoint>()) return true;
  if (grips_.find(session_.selected())) {
    nudge(right, up, event->modifiers());
  } else {
    transform_.pan(QPointF(-right * kPanStep, up * kPanStep));
    fitted_ = false;
    view_moved();
  }
  return true;
}

// Of the window's own keys those that move a selected point are meant for the sheet: Ctrl with an
// arrow nudges it by a tenth.
bool SheetCard::wants_shortcut(const QKeyEvent& event) const {
  const int key = event.key();
  const bool arrow =
      key == Qt::Key_Left || key == Qt::Key_Right || key == Qt::Key_Up || key == Qt::Key_Down;
  return hasFocus() && arrow && event.modifiers().testFlag(Qt::ControlModifier) &&
         grips_.find(session_.selected()) != nullptr;
}

bool SheetCard::plain_key(QKeyEvent* event) {
  switch (view_key(event->key())) {
    case ViewKey::nearer:
      zoom_in();
      return true;
    case ViewKey::farther:
      zoom_out();
      return true;
    case ViewKey::fit:
      fit();
      return true;
    case ViewKey::next_point:
      step_selection(1);
      return true;
    case ViewKey::point_before:
      step_selection(-1);
      return true;
    case ViewKey::none:
      break;
  }
  switch (event->key()) {
    case Qt::Key_Escape:
      if (hand_.drag()) {
        cancel_drag();
      } else if (placing_.active()) {
        placing_.stop();
      } else if (measure_.active()) {
        if (measure_.points().empty())
          set_measuring(false);
        else
          measure_.take_back();
      } else if (!findings_.chosen().empty()) {
        clear_finding();
      } else if (!session_.selected().empty()) {
        session_.select({});
      } else if (scene_.filling()) {
        fill_with(std::nullopt);
      } else {
        return false;
      }
      update();
      return true;
    case Qt::Key_V:
      focus_view(kSheetViews[(static_cast<std::size_t>(focused_) + 1) % kSheetViews.size()]);
      return true;
    case Qt::Key_G:
      set_grid(!grid_);
      return true;
    case Qt::Key_M:
      set_measuring(!measure_.active());
      return true;
    case Qt::Key_B:
      show_photographs(!photographs());
      return true;
    case Qt::Key_K:
      if (!measure_.active()) return false;
      keep_measured();
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_F2:
      if (!grips_.find(session_.selected())) return false;
      enter_exactly();
      return true;
    default:
      return false;
  }
}

void SheetCard::keyPressEvent(QKeyEvent* event) {
  if (arrow_key(event)) return;
  const QString text = event->text();
  const bool begins_number = text.size() == 1 &&
                             (text[0].isDigit() || text[0] == '.' || text[0] == '-') &&
                             !event->modifiers().testFlag(Qt::ControlModifier) && hand_.idle();
  if (begins_number && grips_.find(session_.selected())) {
    enter_exactly(text);
    return;
  }
  const bool with_command = event->modifiers().testFlag(Qt::ControlModifier) &&
                            event->key() != Qt::Key_Plus && event->key() != Qt::Key_Equal &&
                            event->key() != Qt::Key_Minus;
  if (!with_command && plain_key(event)) return;
  drag_to(last_, event->modifiers());
  QWidget::keyPressEvent(event);
}

void SheetCard::keyReleaseEvent(QKeyEvent* event) {
  if (hand_.at<SheetHand::NudgesPoint>() && !event->isAutoRepeat()) {
    const int key = event->key();
    if (key == Qt::Key_Left || key == Qt::Key_Right || key == Qt::Key_Up || key == Qt::Key_Down)
      end_drag();
  }
  QWidget::keyReleaseEvent(event);
}

void SheetCard::focusOutEvent(QFocusEvent* event) {
  if (hand_.at<SheetHand::NudgesPoint>()) end_drag();
  QWidget::focusOutEvent(event);
}

void SheetCard::wheelEvent(QWheelEvent* event) {
  event->accept();
  // Two fingers laid down or lifted say no way yet.
  if (event->pixelDelta().isNull() && event->angleDelta().isNull()) return;
  const bool pad = event->phase() != Qt::NoScrollPhase && !event->pixelDelta().isNull();
  if (pad && !event->modifiers().testFlag(Qt::ControlModifier)) {
    transform_.pan(event->pixelDelta());
    fitted_ = false;
    view_moved();
  } else {
    zoom_by(event->position(), std::pow(1.0018, event->angleDelta().y()));
  }
}

bool SheetCard::gesture(QEvent* event) {
  if (event->type() == QEvent::NativeGesture) {
    const auto* native = static_cast<QNativeGestureEvent*>(event);
    if (native->gestureType() != Qt::ZoomNativeGesture) return false;
    zoom_by(native->position(), 1.0 + native->value());
    return true;
  }
  if (event->type() == QEvent::TouchBegin || event->type() == QEvent::TouchUpdate ||
      event->type() == QEvent::TouchEnd)
    return touch(*static_cast<QTouchEvent*>(event));
  return false;
}

// Two fingers on a screen zoom and shift the paper; one is a mouse.
bool SheetCard::touch(const QTouchEvent& event) {
  const bool two = event.type() != QEvent::TouchEnd && event.points().size() == 2;
  if (!two) return std::exchange(fingers_, std::nullopt).has_value();
  const QPointF a = event.points()[0].position();
  const QPointF b = event.points()[1].position();
  const Fingers now{(a + b) / 2.0, std::max(std::hypot(a.x() - b.x(), a.y() - b.y()), 1.0)};
  if (fingers_) {
    transform_.pan(now.centre - fingers_->centre);
    zoom_by(now.centre, now.apart / fingers_->apart);
  } else {
    if (hand_.drag()) cancel_drag();
    hand_.let_go();
  }
  fingers_ = now;
  return true;
}

}  // namespace tackbench::ui
