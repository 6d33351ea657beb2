// Where the moving parts can go, for every drawing of the truck alike: a few poses at the ends of
// its motion.
#pragma once

#include <QObject>
#include <memory>
#include <vector>

#include "ui/session/session.h"

namespace tackbench::ui {

class SweptPlaces : public QObject {
  Q_OBJECT

 public:
  explicit SweptPlaces(Session& session, QObject* parent = nullptr);

  bool shown() const { return shown_; }
  void show(bool on);
  // Full left and right lock, then full bump with every pedal pressed and full droop: those that
  // can be solved. Empty while nothing is shown; what a drag changes comes when it
  // ends.
  const std::vector<Pose>& poses() const { return poses_; }
  // Whose poses they are; null with none.
  const std::shared_ptr<const Mechanism>& mechanism() const { return mechanism_; }

 Q_SIGNALS:
  void changed();

 private:
  void follow();

  Session& session_;
  bool shown_ = false;
  std::shared_ptr<const Mechanism> mechanism_;
  double left_ = 0.0;  // hand wheel at the locks, rad
  double right_ = 0.0;
  std::vector<Pose> poses_;
};

}  // namespace tackbench::ui
