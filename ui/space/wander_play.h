// Plays the ways in which a shaft line is free to wander, one after the other.
#pragma once

#include <QObject>
#include <QTimer>
#include <vector>

#include "core/mechanism/pose.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class WanderPlay : public QObject {
  Q_OBJECT

 public:
  explicit WanderPlay(Session& session, QObject* parent = nullptr);

  // The shaft check says that the line wanders, of the truck as it stands.
  bool possible() const;
  int ways() const;
  bool playing() const { return timer_.isActive(); }
  void play(bool on);
  // Where in the motion: each way swings once to either side while this goes on by 1.
  double phase() const { return phase_; }
  void set_phase(double phase);
  // The truck's pose led off by the motion of this moment; the pose itself when nothing plays.
  Pose pose() const;

 Q_SIGNALS:
  void possible_changed();
  void playing_changed(bool on);
  void moved();

 private:
  void follow();

  Session& session_;
  QTimer timer_;
  double phase_ = 0.0;
  bool was_possible_ = false;
};

}  // namespace tackbench::ui
