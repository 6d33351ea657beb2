// Plays the ways in which a shaft line is free to wander, one after the other, for every drawing of
// the truck alike. Where less motion is wanted the ends of every way stand still instead.
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
  // It is shown, moving or still.
  bool playing() const { return playing_; }
  void play(bool on);
  bool still() const { return still_; }
  void set_still(bool still);
  // Where in the motion: each way swings once to either side while this goes on by 1.
  double phase() const { return phase_; }
  void set_phase(double phase);

  // The truck with its line led off, and that line from the hand wheel through its joints to the
  // box, chassis, mm.
  struct LedOff {
    Pose pose;
    std::vector<Vec3> line_mm;
  };
  // One for this moment while it plays, two a way while it stands still; none otherwise.
  std::vector<LedOff> led_off() const;
  // The pose of this moment; the truck's own when nothing moves.
  Pose pose() const;

 Q_SIGNALS:
  void possible_changed();
  void playing_changed(bool on);
  void moved();

 private:
  void follow();
  void run();
  LedOff led_off_by(std::size_t way, double far_mm) const;

  Session& session_;
  QTimer timer_;
  bool playing_ = false;
  bool still_ = false;
  double phase_ = 0.0;
  bool was_possible_ = false;
};

}  // namespace tackbench::ui
