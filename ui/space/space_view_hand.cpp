// The hand in space: mouse, wheel and keys.
#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>
#include <QWindow>
#include <algorithm>
#include <cmath>

#include "core/scene/pick.h"
#include "ui/motion/hand_steps.h"
#include "ui/space/space_view.h"

namespace tackbench::ui {

namespace {

constexpr double kPointReach = 9.0;  // pixels
constexpr double kPartReach = 5.0;   // pixels
constexpr double kKeyOrbit = 24.0;   // pixels a press
constexpr double kKeyPan = 30.0;
constexpr double kKeyZoom = 0.85;

PicturePoint on_picture(const QPointF& at) {
  return {at.x(), at.y()};
}

// Up is up to the hand, down counts on the picture.
ViewPoint in_hand(const QPointF& at) {
  return {at.x(), -at.y()};
}

std::optional<HeldAxis> axis_of_key(int key) {
  switch (key) {
    case Qt::Key_X:
      return HeldAxis::x;
    case Qt::Key_Y:
      return HeldAxis::y;
    case Qt::Key_Z:
      return HeldAxis::z;
    default:
      return std::nullopt;
  }
}

}  // namespace

bool SpaceView::eventFilter(QObject* watched, QEvent* event) {
  if (watched == &canvas_->widget() && event->type() == QEvent::Resize) {
    if (fitted_)
      fit();
    else
      show_now();
    say_selected();
  }
  // Beneath something the widget itself is what the hand meets.
  if (watched != &canvas_->touched() && watched != &canvas_->widget())
    return QWidget::eventFilter(watched, event);
  switch (event->type()) {
    case QEvent::MouseButtonPress:
      return press_at(*static_cast<QMouseEvent*>(event));
    case QEvent::MouseMove:
      return move_to(*static_cast<QMouseEvent*>(event));
    case QEvent::MouseButtonRelease:
      return release_at(*static_cast<QMouseEvent*>(event));
    case QEvent::Wheel:
      return wheel_by(*static_cast<QWheelEvent*>(event));
    case QEvent::KeyPress:
      keyPressEvent(static_cast<QKeyEvent*>(event));
      return true;
    case QEvent::KeyRelease:
      keyReleaseEvent(static_cast<QKeyEvent*>(event));
      return true;
    case QEvent::Leave:
      if (hand_ == Hand::idle) hover(QPointF(-1e6, -1e6));
      return false;
    default:
      return QWidget::eventFilter(watched, event);
  }
}

// Of several under the pointer the chosen one, else the nearest to the pointer.
const SpacePoint* SpaceView::point_under(const QPointF& at) const {
  const SpacePoint* found = nullptr;
  double least = kPointReach;
  for (const SpacePoint& point : shown_.points) {
    const auto seen = shown_.camera.seen(point.posed_mm, picture_size());
    if (!seen) continue;
    double away = std::hypot(seen->at.x - at.x(), seen->at.y - at.y());
    if (point.grip.path == shown_.selected && away <= kPointReach) away = -1.0;
    if (away > least) continue;
    least = away;
    found = &point;
  }
  return found;
}

HandView SpaceView::hand_view() const {
  const Camera camera = shown_.camera;
  const PictureSize size = picture_size();
  return {[camera, size](const Vec3& chassis_mm) {
            const auto seen = camera.seen(chassis_mm, size);
            return seen ? ViewPoint{seen->at.x, -seen->at.y} : ViewPoint{};
          },
          [camera, size](const ViewPoint& at) {
            return camera.ray({at.x, -at.y}, size);
          }};
}

std::optional<ControlInHand> SpaceView::control_under(const QPointF& at) const {
  const auto hit = pick_near(*shown_.scene, shown_.motions, shown_.camera, picture_size(),
                             on_picture(at), kPartReach);
  if (!hit) return std::nullopt;
  return control_at(session_.posed(), shown_.scene->bodies[hit->body].pieces[hit->piece].part,
                    shown_.camera.ray(on_picture(at), picture_size()), hit->at_mm);
}

// A window inside the widget has a pointer of its own.
void SpaceView::show_hand(Qt::CursorShape shape) {
  canvas_->widget().setCursor(shape);
  if (auto* window = qobject_cast<QWindow*>(&canvas_->touched())) window->setCursor(shape);
}

void SpaceView::hover(const QPointF& at) {
  const SpacePoint* point = point_under(at);
  const std::string path = point != nullptr ? point->grip.path : std::string();
  const auto control = point == nullptr ? control_under(at) : std::nullopt;
  if (point != nullptr)
    say(words_of(*point));
  else if (control)
    say(words_of(control->kind));
  else
    say_selected();
  show_hand(point != nullptr || control ? Qt::OpenHandCursor : Qt::ArrowCursor);
  if (path == shown_.hovered) return;
  shown_.hovered = path;
  show_now();
}

QString SpaceView::words_of(ControlKind control) {
  switch (control) {
    case ControlKind::hand_wheel:
      return tr("Drag the rim round to turn the hand wheel");
    case ControlKind::road_wheel:
      return tr("Drag sideways to steer, up or down for bump and droop");
    case ControlKind::pedal:
      return tr("Drag the pad to press the pedal");
  }
  return {};
}

bool SpaceView::press_at(const QMouseEvent& event) {
  if (!hasFocus()) setFocus(Qt::MouseFocusReason);
  if (hand_ == Hand::dragging) return true;
  if (nudging_) end_drag();
  press_ = last_ = event.position();
  const bool pan = event.button() == Qt::MiddleButton || event.button() == Qt::RightButton ||
                   event.modifiers().testFlag(Qt::ShiftModifier);
  if (const SpacePoint* point = point_under(press_);
      point != nullptr && event.button() == Qt::LeftButton) {
    shown_.hovered = point->grip.path;
    hand_ = Hand::pressed;
    session_.select(shown_.hovered);
    return true;
  }
  shown_.hovered.clear();
  control_.reset();
  if (!pan && event.button() == Qt::LeftButton) control_ = control_under(press_);
  hand_ = pan ? Hand::panning : Hand::pressed;
  return true;
}

bool SpaceView::move_to(const QMouseEvent& event) {
  const QPointF at = event.position();
  const QPointF step = at - last_;
  switch (hand_) {
    case Hand::idle:
      hover(at);
      return true;
    case Hand::pressed:
      if (!is_drag(press_, at)) return true;
      if (!shown_.hovered.empty()) {
        start_drag();
        drag_to(at, event.modifiers());
        return true;
      }
      if (control_) {
        take_control(at);
        return true;
      }
      hand_ = Hand::orbiting;
      [[fallthrough]];
    case Hand::orbiting:
      shown_.camera.orbit(step.x(), step.y(), picture_size());
      break;
    case Hand::panning:
      shown_.camera.pan(step.x(), step.y(), picture_size());
      break;
    case Hand::on_control:
      drag_control(at);
      return true;
    case Hand::dragging:
      last_ = at;
      drag_to(at, event.modifiers());
      return true;
  }
  last_ = at;
  fitted_ = false;
  in_motion();
  show_now();
  return true;
}

bool SpaceView::release_at(const QMouseEvent& event) {
  const Hand was = std::exchange(hand_, Hand::idle);
  if (was == Hand::dragging) {
    end_drag();
  } else if (was == Hand::pressed && shown_.hovered.empty() && event.button() == Qt::LeftButton) {
    const auto hit = pick_near(*shown_.scene, shown_.motions, shown_.camera, picture_size(),
                               on_picture(event.position()), kPartReach);
    session_.select(hit ? shown_.scene->bodies[hit->body].pieces[hit->piece].part : std::string());
  }
  hover(event.position());
  return true;
}

bool SpaceView::wheel_by(const QWheelEvent& event) {
  zoom(std::pow(0.9985, event.angleDelta().y()), event.position());
  return true;
}

void SpaceView::take_control(const QPointF& at) {
  if (control_->kind == ControlKind::road_wheel)
    control_->way =
        way_of_wheel(session_.posed(), *control_, hand_view(), in_hand(press_), in_hand(at));
  hand_ = Hand::on_control;
  last_ = press_;
  show_hand(Qt::ClosedHandCursor);
  drag_control(at);
}

void SpaceView::drag_control(const QPointF& at) {
  move_control(session_, *control_, hand_view(), in_hand(last_), in_hand(at));
  last_ = at;
}

void SpaceView::start_drag() {
  const SpacePoint* point = point_at_path(shown_.hovered);
  if (point == nullptr) return;
  motion_.wander.play(false);
  const auto seen = place_of(point->posed_mm);
  drag_offset_ = seen ? *seen - press_ : QPointF();
  drag_.emplace(session_.project(), *point);
  session_.begin_drag(tr("Move %1").arg(QString::fromStdString(point->grip.words)));
  hand_ = Hand::dragging;
  show_hand(Qt::ClosedHandCursor);
}

void SpaceView::drag_to(const QPointF& at, Qt::KeyboardModifiers held) {
  if (!drag_) return;
  SpaceDragHow how;
  how.axis = axis_;
  how.keep_line = keeps_line(held);
  how.whole_units = !held.testFlag(Qt::ControlModifier);
  how.unit = session_.shown_unit();
  shown_.held_line = drag_->line(how);
  take(drag_->to(shown_.camera.ray(on_picture(at + drag_offset_), picture_size()),
                 shown_.camera.backward(), how));
}

void SpaceView::take(Result<Project> after) {
  if (after) {
    session_.drag_to(std::move(after).value());
    return;  // shown when the truck has followed
  }
  const Problem& problem = after.problems().front();
  say(QString::fromStdString(problem.found + "; " + problem.wanted));
}

void SpaceView::end_drag() {
  drag_.reset();
  nudging_ = false;
  nudged_ = 0.0;
  shown_.held_line.reset();
  show_hand(Qt::ArrowCursor);
  session_.end_drag();
  say_selected();
  show_now();
}

void SpaceView::cancel_drag() {
  drag_.reset();
  nudging_ = false;
  nudged_ = 0.0;
  hand_ = Hand::idle;
  shown_.held_line.reset();
  show_hand(Qt::ArrowCursor);
  session_.cancel_drag();
  say_selected();
  show_now();
}

// With X, Y or Z held the arrows move the chosen point along that axis.
bool SpaceView::nudge(int step, Qt::KeyboardModifiers held) {
  const SpacePoint* point = point_at_path(session_.selected());
  if (point == nullptr || !axis_) return false;
  if (!nudging_) {
    motion_.wander.play(false);
    drag_.emplace(session_.project(), *point);
    session_.begin_drag(tr("Move %1").arg(QString::fromStdString(point->grip.words)));
    nudging_ = true;
    nudged_ = 0.0;
  }
  nudged_ += step * nudge_step(session_.shown_unit(), held);
  take(drag_->along(*axis_, nudged_));
  return true;
}

void SpaceView::step_selection(int step) {
  const auto count = static_cast<int>(shown_.points.size());
  if (count == 0) return;
  int at = step > 0 ? -1 : 0;
  for (int i = 0; i < count; ++i)
    if (shown_.points[static_cast<std::size_t>(i)].grip.path == session_.selected()) at = i;
  session_.select(shown_.points[static_cast<std::size_t>((at + step + count) % count)].grip.path);
}

bool SpaceView::arrow_key(const QKeyEvent& event) {
  const int right = (event.key() == Qt::Key_Right) - (event.key() == Qt::Key_Left);
  const int up = (event.key() == Qt::Key_Up) - (event.key() == Qt::Key_Down);
  if (right == 0 && up == 0) return false;
  if (hand_ == Hand::dragging) return true;
  if (axis_ && nudge(right + up, event.modifiers())) return true;
  if (event.modifiers().testFlag(Qt::ShiftModifier))
    shown_.camera.pan(-kKeyPan * right, kKeyPan * up, picture_size());
  else
    shown_.camera.orbit(-kKeyOrbit * right, kKeyOrbit * up, picture_size());
  fitted_ = false;
  in_motion();
  show_now();
  return true;
}

void SpaceView::zoom(double factor, const QPointF& about) {
  shown_.camera.zoom(factor, on_picture(about), picture_size());
  fitted_ = false;
  in_motion();
  show_now();
}

bool SpaceView::plain_key(int key) {
  const QPointF middle = QRectF(canvas_->widget().rect()).center();
  switch (view_key(key)) {
    case ViewKey::nearer:
      zoom(kKeyZoom, middle);
      return true;
    case ViewKey::farther:
      zoom(1.0 / kKeyZoom, middle);
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
  switch (key) {
    case Qt::Key_Escape:
      if (drag_)
        cancel_drag();
      else if (motion_.wander.playing())
        motion_.wander.play(false);
      else if (!session_.selected().empty())
        session_.select({});
      else
        return false;
      return true;
    case Qt::Key_1:
      look(StandardView::left);
      return true;
    case Qt::Key_2:
      look(StandardView::front);
      return true;
    case Qt::Key_3:
      look(StandardView::plan);
      return true;
    case Qt::Key_4:
      look(StandardView::front_left_above);
      return true;
    default:
      return false;
  }
}

void SpaceView::keyPressEvent(QKeyEvent* event) {
  const bool with_command = event->modifiers().testFlag(Qt::ControlModifier);
  if (const auto axis = axis_of_key(event->key()); axis && !with_command) {
    if (axis_ != axis && nudging_) end_drag();
    axis_ = axis;
    if (hand_ == Hand::dragging) drag_to(last_, event->modifiers());
    return;
  }
  if (arrow_key(*event)) return;
  if (!with_command && plain_key(event->key())) return;
  QWidget::keyPressEvent(event);
}

void SpaceView::keyReleaseEvent(QKeyEvent* event) {
  if (event->isAutoRepeat()) return;
  if (axis_of_key(event->key()) == axis_ && axis_) {
    axis_.reset();
    if (nudging_)
      end_drag();
    else if (hand_ == Hand::dragging)
      drag_to(last_, event->modifiers());
    return;
  }
  QWidget::keyReleaseEvent(event);
}

void SpaceView::focusOutEvent(QFocusEvent* event) {
  axis_.reset();
  if (nudging_) end_drag();
  QWidget::focusOutEvent(event);
}

}  // namespace tackbench::ui
