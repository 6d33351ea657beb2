#include "ui/panels/station_numbers.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/basics/shown_number.h"
#include "ui/panels/station_words.h"

namespace tackbench::ui {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("StationNumbers", text);
}

// Gathers the numbers of one station; each piece says whether it comes of the pose or the checks.
class NumbersOf {
 public:
  explicit NumbersOf(const Session& session)
      : session_(session),
        project_(session.project()),
        posed_(session.posed()),
        results_(session.judged().results),
        lengths_(session.shown_unit()) {}

  StationNumbers of(Station station) {
    switch (station) {
      case Station::column:
        column();
        break;
      case Station::shaft_line:
        shaft_line();
        break;
      case Station::steering_box:
        steering_box();
        break;
      case Station::drag_link:
        drag_link();
        break;
      case Station::front_axle:
        front_axle();
        break;
      case Station::pedals:
        pedals();
        break;
      case Station::driver:
        driver();
        break;
      case Station::shapes:
        shapes();
        break;
    }
    return std::move(numbers_);
  }

 private:
  bool stale_pose() const { return !session_.posed_fresh(); }
  bool stale_checks() const { return !session_.judged_fresh(); }
  bool solved() const { return posed_.pose.outcome == Outcome::solved; }

  QString length(double mm) const { return QString::fromStdString(shown_length(mm, lengths_)); }
  static QString degrees(double rad) {
    return QString::fromStdString(shown_bare(rad, Unit::degree)) + QChar(0x00b0);
  }
  static QString plain(double value) {
    return QString::fromStdString(shown_bare(value, Unit::number));
  }

  void first(const QString& words, bool stale) {
    numbers_.first = words;
    numbers_.first_stale = stale;
  }
  void second(const QString& words, bool stale) {
    numbers_.second = words;
    numbers_.second_stale = stale;
  }

  void column() {
    if (!project_.column) return;
    const Placement<Chassis, Cab> cab =
        project_.cab ? chassis_from_cab(*project_.cab) : Placement<Chassis, Cab>{};
    const Vec3 along = (cab * column_axis(*project_.column)).along;
    const QString tilt = tr("tilt %1").arg(
        degrees(std::atan2(std::abs(along.z()), std::hypot(along.x(), along.y()))));
    const auto& locks = results_.locks;
    if (!locks || !locks->left.found || !locks->right.found) return first(tilt, false);
    first(tr("%1 turns").arg(QString::number(locks->turns_total, 'f', 2)), stale_checks());
    second(tilt, false);
  }

  void shaft_line() {
    if (!project_.shaft_line) return;
    const auto& check = results_.shaft;
    if (!check) {
      return first(tr("%1 joints").arg(project_.shaft_line->joints.size()), false);
    }
    first(tr("ripple %1 %")
              .arg(QString::fromStdString(shown_bare(check->ripple.ripple, Unit::percent))),
          stale_checks());
    if (results_.wandering && results_.wandering->free_ways > 0)
      return second(tr("free to wander"), stale_checks());
    double worst = 0.0;
    for (const JointAngleResult& joint : check->joints) worst = std::max(worst, joint.worst);
    if (!check->joints.empty()) second(tr("joints to %1").arg(degrees(worst)), stale_checks());
  }

  void steering_box() {
    const auto& steering = posed_.mechanism->steering;
    if (!steering) {
      if (project_.steering_box && project_.steering_box->ratio)
        first(tr("%1 : 1").arg(plain(*project_.steering_box->ratio)), false);
      return;
    }
    const double input = steering->box.input_from_output(posed_.pose.steering.arm);
    first(tr("%1 : 1").arg(plain(steering->box.ratio_at(solved() ? input : 0.0))), stale_pose());
    if (solved()) second(tr("arm %1").arg(degrees(posed_.pose.steering.arm)), stale_pose());
  }

  static double link_length(const Pose& pose) {
    return (pose.steering.drag_link.to_mm - pose.steering.drag_link.from_mm).norm();
  }

  void drag_link() {
    if (!posed_.mechanism->steering) return;
    if (!solved()) return second(tr("does not close"), stale_pose());
    const double now = link_length(posed_.pose);
    first(length(now), stale_pose());
    const PosedTruck* before = session_.posed_before();
    if (before != nullptr && before->pose.outcome == Outcome::solved &&
        before->mechanism->steering) {
      const QString change =
          change_words(now - link_length(before->pose), Unit::millimetre, lengths_);
      if (!change.isEmpty()) {
        return second(session_.dragging() ? tr("%1 since drag").arg(change)
                                          : tr("%1 by last edit").arg(change),
                      stale_pose());
      }
    }
    const Vec3& along = posed_.pose.steering.drag_link.along;
    const double down = std::atan2(-along.z(), std::hypot(along.x(), along.y()));
    second(down >= 0.0 ? tr("falls %1").arg(degrees(down)) : tr("rises %1").arg(degrees(-down)),
           stale_pose());
  }

  void front_axle() {
    if (!posed_.mechanism->steering || !solved()) {
      if (project_.front_axle) first(tr("track %1").arg(length(project_.front_axle->track)), false);
      return;
    }
    const SteeringPose& pose = posed_.pose.steering;
    first(tr("L %1 R %2").arg(degrees(pose.left.steer), degrees(pose.right.steer)), stale_pose());
    const auto& locks = results_.locks;
    if (locks && locks->left.found && locks->right.found)
      second(tr("locks %1, %2")
                 .arg(degrees(locks->left.inner_steer), degrees(locks->right.inner_steer)),
             stale_checks());
  }

  void pedals() {
    if (!project_.pedals) return;
    for (const PedalResult& pedal : results_.pedals) {
      if (pedal.use != PedalUse::brake || !pedal.ratio_rest || *pedal.ratio_rest <= 0.0) continue;
      first(tr("brake %1 : 1").arg(plain(*pedal.ratio_rest)), stale_checks());
      if (pedal.stroke_wanted)
        second(tr("%1 of %2 stroke")
                   .arg(QString::fromStdString(
                            shown_bare(pedal.stroke_reached, Unit::millimetre, lengths_)),
                        QString::fromStdString(
                            shown_bare(*pedal.stroke_wanted, Unit::millimetre, lengths_))),
               stale_checks());
      return;
    }
    first(tr("%1 pedals").arg(project_.pedals->pedals.size()), false);
  }

  void driver() {
    if (!project_.driver) return;
    const DriverStation& driver = *project_.driver;
    first(tr("seat %1").arg(length(driver.seat_reference.mm.z() - driver.heel_point.mm.z())),
          false);
    second(tr("above the heel"), false);
  }

  void shapes() {
    if (!project_.shapes) return;
    const std::size_t count = project_.shapes->shapes.size();
    first(count == 1 ? tr("1 shape") : tr("%1 shapes").arg(count), false);
    const std::size_t pairs = project_.shapes->stretch_pairs.size();
    if (pairs > 0)
      second(pairs == 1 ? tr("1 stretch pair") : tr("%1 stretch pairs").arg(pairs), false);
  }

  const Session& session_;
  const Project& project_;
  const PosedTruck& posed_;
  const CheckResults& results_;
  ShownUnit lengths_;
  StationNumbers numbers_;
};

}  // namespace

StationNumbers station_numbers(const Session& session, Station station) {
  return NumbersOf(session).of(station);
}

}  // namespace tackbench::ui
