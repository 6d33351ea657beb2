// The view in space: the truck as solids, led round by the hand. Points are dragged here as on the
// sheet; what is chosen here is chosen everywhere.
#pragma once

#include <QTimer>
#include <QWidget>
#include <functional>
#include <memory>
#include <optional>

#include "ui/motion/control_in_hand.h"
#include "ui/motion/shown_motion.h"
#include "ui/session/session.h"
#include "ui/space/point_drag.h"
#include "ui/space/space_canvas.h"

class QAbstractButton;
class QBoxLayout;
class QCheckBox;
class QKeyEvent;
class QMouseEvent;
class QPushButton;
class QWheelEvent;

namespace tackbench::ui {

class ShortLabel;
class SolidCanvas;

// By OpenGL where there is one, or as a line drawing by choice.
enum class SpaceDrawing { best, lines };

class SpaceView : public QWidget {
  Q_OBJECT

 public:
  SpaceView(Session& session, ShownMotion& motion, QWidget* parent = nullptr,
            SpaceDrawing drawing = SpaceDrawing::best);
  ~SpaceView() override;

  void look(StandardView view);
  void fit();
  void set_following(bool on);
  bool following() const;
  // One more button at the right end of the head, for what holds this view.
  QAbstractButton* add_head_button(const QString& words, const QString& help,
                                   std::function<void()> then);
  // Why it is drawn in lines; empty with OpenGL.
  const QString& why_lines() const { return why_lines_; }

  const Camera& camera() const { return shown_.camera; }
  void set_camera(const Camera& camera);
  const SpaceShown& shown() const { return shown_; }
  // Something of the window lies over the picture and has to stay in sight.
  void lie_beneath(bool on) { canvas_->lie_beneath(on); }
  QWidget& picture() const { return canvas_->widget(); }
  // Where mouse and wheel events of the picture arrive.
  QObject& touched() const { return canvas_->touched(); }
  // Null where it is drawn in lines.
  SolidCanvas* solids() const { return solids_; }
  // Where a chassis place is on the picture; where a point stands. Empty behind the eye.
  std::optional<QPointF> place_of(const Vec3& chassis_mm) const;
  std::optional<QPointF> point_place(const std::string& path) const;
  // Times that the solids were made anew.
  int built() const { return built_; }

  QSize sizeHint() const override { return {460, 330}; }
  QSize minimumSizeHint() const override { return {300, 186}; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  enum class Hand { idle, pressed, dragging, on_control, orbiting, panning };

  // --- following the session (space_view.cpp)
  void make_layout();
  QAbstractButton* add_button(QBoxLayout& row, const QString& words, const QString& help,
                              std::function<void()> then);
  void follow_pose();
  void follow_selection();
  void take_pose();
  void show_now();
  void fit_camera();
  void make_ghosts();
  void in_motion();
  void say(const QString& words);
  void say_selected();
  void describe();
  QString words_of(const SpacePoint& point) const;
  static QString words_of(ControlKind control);
  const SpacePoint* point_at_path(const std::string& path) const;
  PictureSize picture_size() const;

  // --- hand and keys (space_view_hand.cpp)
  bool press_at(const QMouseEvent& event);
  bool move_to(const QMouseEvent& event);
  bool release_at(const QMouseEvent& event);
  bool wheel_by(const QWheelEvent& event);
  void show_hand(Qt::CursorShape shape);
  void hover(const QPointF& at);
  const SpacePoint* point_under(const QPointF& at) const;
  std::optional<ControlInHand> control_under(const QPointF& at) const;
  HandView hand_view() const;
  void zoom(double factor, const QPointF& about);
  void take_control(const QPointF& at);
  void drag_control(const QPointF& at);
  void start_drag();
  void drag_to(const QPointF& at, Qt::KeyboardModifiers held);
  void take(Result<Project> after);
  void end_drag();
  void cancel_drag();
  bool nudge(int step, Qt::KeyboardModifiers held);
  void step_selection(int step);
  bool arrow_key(const QKeyEvent& event);
  bool plain_key(int key);

  Session& session_;
  ShownMotion& motion_;
  SpaceShown shown_;
  SpaceCanvas* canvas_ = nullptr;  // its widget is a child of this one
  SolidCanvas* solids_ = nullptr;
  QString why_lines_;
  std::shared_ptr<const Mechanism> built_for_;
  int built_ = 0;
  bool fitted_ = true;  // nobody has led the eye since it was last fitted
  QTimer at_rest_;      // fine meshes again, or a pose that was held back
  bool pose_waits_ = false;

  QBoxLayout* head_ = nullptr;
  ShortLabel* words_ = nullptr;
  QAbstractButton* follow_ = nullptr;
  QPushButton* play_ = nullptr;
  QCheckBox* swept_ = nullptr;

  Hand hand_ = Hand::idle;
  QPointF press_;
  QPointF last_;
  std::optional<ControlInHand> control_;  // under the press
  std::optional<PointDrag> drag_;
  QPointF drag_offset_;  // of the point from the pointer, pixels
  std::optional<HeldAxis> axis_;
  double nudged_ = 0.0;  // mm along the axis since the first step
  bool nudging_ = false;
};

}  // namespace tackbench::ui
