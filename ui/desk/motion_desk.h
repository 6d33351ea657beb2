// The truck's own controls: a hand wheel to turn, a lever at each road wheel, the pedals, and the
// whole motion played. It sets the session's controls and shows them; it keeps nothing else.
#pragma once

#include <QTimer>
#include <QWidget>
#include <vector>

#include "core/checks/control_reach.h"
#include "ui/desk/motion_cycle.h"
#include "ui/session/session.h"

class QBoxLayout;
class QLabel;
class QPushButton;
class QScrollArea;
class QToolButton;

namespace tackbench::ui {

class CalmCombo;
class HandWheelDial;
class Lever;
class ShortLabel;

class MotionDesk : public QWidget {
  Q_OBJECT

 public:
  explicit MotionDesk(Session& session, QWidget* parent = nullptr);

  // One row of words, or all of it.
  void set_folded(bool folded);
  bool folded() const { return folded_; }
  void fold_by_hand(bool folded);
  // With less motion wanted nothing is played.
  void set_reduced_motion(bool reduced);

  // Plays one round from where the controls are; it ends there too. Stopping holds the truck
  // where it is.
  void play(MotionCycle cycle);
  void stop();
  void play_or_stop();  // the motion chosen on the desk
  bool playing() const { return timer_.isActive(); }

  // To the end that the lock check gives, or the box's.
  void full_left();
  void full_right();
  void straight();
  void full_bump();
  void full_droop();
  void ride_height();

 Q_SIGNALS:
  void folded_by_hand(bool folded);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void build_wheel(QBoxLayout& row);
  void build_axle(QBoxLayout& row);
  void build_more(QBoxLayout& row);
  void build_play(QBoxLayout& row);
  void build_folded_row();
  QPushButton* button(const QString& words, const char* name, void (MotionDesk::*action)());

  void set_by_hand(const Controls& controls);
  void turn_hand_wheel(double angle);
  void move_bump(Side side, double bump, bool shift);
  void step_on();

  void read_truck();  // ends, pedals and units, from the session
  void show_controls();
  void show_pose();
  void rebuild_pedals();
  void show_levers();
  void show_folded_buttons();

  Session& session_;
  ControlReach reach_;
  bool folded_ = false;
  bool reduced_motion_ = false;

  // The round being played.
  QTimer timer_;
  MotionCycle cycle_ = MotionCycle::lock_to_lock;
  Controls start_;
  double share_ = 0.0;
  bool stepping_ = false;  // the controls change by the round itself

  QScrollArea* shelf_ = nullptr;
  QWidget* body_ = nullptr;
  QWidget* row_ = nullptr;
  HandWheelDial* dial_ = nullptr;
  QLabel* turns_ = nullptr;
  QLabel* degrees_ = nullptr;
  QLabel* numbers_ = nullptr;
  ShortLabel* folded_words_ = nullptr;
  QWidget* folded_axle_ = nullptr;
  QWidget* axle_ = nullptr;
  Lever* bump_left_ = nullptr;
  Lever* bump_right_ = nullptr;
  QToolButton* linked_ = nullptr;
  QToolButton* more_ = nullptr;
  QWidget* more_levers_ = nullptr;
  Lever* wind_up_ = nullptr;
  std::vector<Lever*> shake_;
  QBoxLayout* pedal_row_ = nullptr;
  QWidget* pedal_box_ = nullptr;
  std::vector<Lever*> pedals_;
  std::vector<std::string> pedal_names_;
  CalmCombo* cycle_choice_ = nullptr;
  QPushButton* play_ = nullptr;
  QPushButton* folded_play_ = nullptr;
};

}  // namespace tackbench::ui
