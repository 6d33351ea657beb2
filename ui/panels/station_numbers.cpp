#include "ui/panels/station_numbers.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/basics/shown_number.h"
#include "ui/panels/station_words.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(StationNumbers)
};

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
  QString bare_length(double mm) const {
    return QString::fromStdString(shown_bare(mm, Unit::millimetre, lengths_));
  }
  static QString degrees(double rad) {
    return QString::fromStdString(shown_bare(rad, Unit::degree)) + QChar(0x00b0);
  }
  static QString plain(double value) {
    return QString::fromStdString(shown_bare(value, Unit::number));
  }

  void first(const QString& words, bool stale, const QString& figure = {}) {
    numbers_.first = words;
    numbers_.figure = figure.isEmpty() ? words : figure;
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
    const QString from_level =
        degrees(std::atan2(std::abs(along.z()), std::hypot(along.x(), along.y())));
    const QString tilt = Texts::tr("tilt %1").arg(from_level);
    const auto& locks = results_.locks;
    if (!locks || !locks->left.found || !locks->right.found) return first(tilt, false, from_level);
    const QString turns = QString::number(locks->turns_total, 'f', 2);
    first(Texts::tr("%1 turns").arg(turns), stale_checks(), turns);
    second(tilt, false);
  }

  void shaft_line() {
    if (!project_.shaft_line) return;
    const auto& check = results_.shaft;
    if (!check) {
      return first(Texts::tr("%1 joints").arg(project_.shaft_line->joints.size()), false);
    }
    const QString percent = QString::fromStdString(shown_bare(check->ripple.ripple, Unit::percent));
    first(Texts::tr("ripple %1 %").arg(percent), stale_checks(), percent + " %");
    if (results_.wandering && results_.wandering->free_ways > 0)
      return second(Texts::tr("free to wander"), stale_checks());
    double worst = 0.0;
    for (const JointAngleResult& joint : check->joints) worst = std::max(worst, joint.worst);
    if (!check->joints.empty())
      second(Texts::tr("joints to %1").arg(degrees(worst)), stale_checks());
  }

  void steering_box() {
    const auto& steering = posed_.mechanism->steering;
    if (!steering) {
      if (project_.steering_box && project_.steering_box->ratio)
        first(Texts::tr("%1 : 1").arg(plain(*project_.steering_box->ratio)), false);
      return;
    }
    const double input = steering->box.input_from_output(posed_.pose.steering.arm);
    const QString ratio = plain(steering->box.ratio_at(solved() ? input : 0.0));
    first(Texts::tr("%1 : 1").arg(ratio), stale_pose(), ratio);
    if (solved()) second(Texts::tr("arm %1").arg(degrees(posed_.pose.steering.arm)), stale_pose());
  }

  static double link_length(const Pose& pose) {
    return (pose.steering.drag_link.to_mm - pose.steering.drag_link.from_mm).norm();
  }

  void drag_link() {
    if (!posed_.mechanism->steering) return;
    if (!solved()) return second(Texts::tr("does not close"), stale_pose());
    const double now = link_length(posed_.pose);
    first(length(now), stale_pose(), bare_length(now));
    const PosedTruck* before = session_.posed_before();
    if (before != nullptr && before->pose.outcome == Outcome::solved &&
        before->mechanism->steering) {
      const QString change =
          change_words(now - link_length(before->pose), Unit::millimetre, lengths_);
      if (!change.isEmpty()) {
        return second(session_.dragging() ? Texts::tr("%1 since drag").arg(change)
                                          : Texts::tr("%1 by last edit").arg(change),
                      stale_pose());
      }
    }
    const Vec3& along = posed_.pose.steering.drag_link.along;
    const double down = std::atan2(-along.z(), std::hypot(along.x(), along.y()));
    second(down >= 0.0 ? Texts::tr("falls %1").arg(degrees(down))
                       : Texts::tr("rises %1").arg(degrees(-down)),
           stale_pose());
  }

  void front_axle() {
    if (!posed_.mechanism->steering || !solved()) {
      if (project_.front_axle)
        first(Texts::tr("track %1").arg(length(project_.front_axle->track)), false,
              bare_length(project_.front_axle->track));
      return;
    }
    const SteeringPose& pose = posed_.pose.steering;
    first(Texts::tr("L %1 R %2").arg(degrees(pose.left.steer), degrees(pose.right.steer)),
          stale_pose(), Texts::tr("L %1").arg(degrees(pose.left.steer)));
    const auto& locks = results_.locks;
    if (locks && locks->left.found && locks->right.found)
      second(Texts::tr("locks %1, %2")
                 .arg(degrees(locks->left.inner_steer), degrees(locks->right.inner_steer)),
             stale_checks());
  }

  void pedals() {
    if (!project_.pedals) return;
    for (const PedalResult& pedal : results_.pedals) {
      if (pedal.use != PedalUse::brake || !pedal.ratio_rest || *pedal.ratio_rest <= 0.0) continue;
      const QString ratio = plain(*pedal.ratio_rest);
      first(Texts::tr("brake %1 : 1").arg(ratio), stale_checks(), ratio);
      if (pedal.stroke_wanted)
        second(Texts::tr("%1 of %2 stroke")
                   .arg(QString::fromStdString(
                            shown_bare(pedal.stroke_reached, Unit::millimetre, lengths_)),
                        QString::fromStdString(
                            shown_bare(*pedal.stroke_wanted, Unit::millimetre, lengths_))),
               stale_checks());
      return;
    }
    first(Texts::tr("%1 pedals").arg(project_.pedals->pedals.size()), false);
  }

  void driver() {
    if (!project_.driver) return;
    const DriverStation& driver = *project_.driver;
    const double height = driver.seat_reference.mm.z() - driver.heel_point.mm.z();
    first(Texts::tr("seat %1").arg(length(height)), false, bare_length(height));
    second(Texts::tr("above the heel"), false);
  }

  void shapes() {
    if (!project_.shapes) return;
    const std::size_t count = project_.shapes->shapes.size();
    first(count == 0   ? Texts::tr("no shapes")
          : count == 1 ? Texts::tr("1 shape")
                       : Texts::tr("%1 shapes").arg(count),
          false, QString::number(count));
    const std::size_t pairs = project_.shapes->stretch_pairs.size();
    if (pairs > 0)
      second(pairs == 1 ? Texts::tr("1 stretch pair") : Texts::tr("%1 stretch pairs").arg(pairs),
             false);
  }

  const Session& session_;
  const Project& project_;
  const PosedTruck& posed_;
  const CheckResults& results_;
  ShownUnit lengths_;
  StationNumbers numbers_;
};

}  // namespace

std::vector<StationNumberMeaning> station_number_meanings() {
  return {
      {Station::column, {Texts::tr("%1 turns"), Texts::tr("Hand-wheel turns from lock to lock.")}},
      {Station::column, {Texts::tr("tilt %1"), Texts::tr("The column's axis from level.")}},
      {Station::shaft_line,
       {Texts::tr("ripple %1 %"),
        Texts::tr("How much the box input speeds up and slows down over a turn.")}},
      {Station::shaft_line,
       {Texts::tr("free to wander"),
        Texts::tr("Shafts of the line can move sideways: nothing holds them.")}},
      {Station::shaft_line,
       {Texts::tr("joints to %1"),
        Texts::tr("The greatest angle of any joint, over the cab's shake.")}},
      {Station::shaft_line,
       {Texts::tr("%1 joints"), Texts::tr("How many joints the shaft line has.")}},
      {Station::steering_box,
       {Texts::tr("%1 : 1"),
        Texts::tr("Turn of the box input over turn of the arm, where the arm is now.")}},
      {Station::steering_box,
       {Texts::tr("arm %1"), Texts::tr("How far the arm stands from the box's own centre.")}},
      {Station::drag_link,
       {QStringLiteral("%1"), Texts::tr("Length of the drag link between its ball centres.")}},
      {Station::drag_link,
       {Texts::tr("%1 since drag"),
        Texts::tr("By how much the drag link has changed since you took hold.")}},
      {Station::drag_link,
       {Texts::tr("%1 by last edit"),
        Texts::tr("By how much the last edit has changed the drag link.")}},
      {Station::drag_link,
       {Texts::tr("falls %1"),
        Texts::tr("How far the drag link falls towards the knuckle, from level.")}},
      {Station::drag_link,
       {Texts::tr("rises %1"),
        Texts::tr("How far the drag link rises towards the knuckle, from level.")}},
      {Station::drag_link,
       {Texts::tr("does not close"), Texts::tr("No place of the parts lets all lengths be kept.")}},
      {Station::front_axle,
       {Texts::tr("L %1 R %2"), Texts::tr("Steer of the left and of the right road wheel now.")}},
      {Station::front_axle,
       {Texts::tr("locks %1, %2"),
        Texts::tr("Steer of the inner wheel at the left and at the right lock.")}},
      {Station::front_axle,
       {Texts::tr("track %1"),
        Texts::tr("From the middle of one front tyre to that of the other.")}},
      {Station::pedals,
       {Texts::tr("brake %1 : 1"), Texts::tr("Pedal ratio of the brake at rest.")}},
      {Station::pedals,
       {Texts::tr("%1 of %2 stroke"),
        Texts::tr("Piston stroke that the brake reaches, of the one it needs.")}},
      {Station::pedals, {Texts::tr("%1 pedals"), Texts::tr("How many pedals there are.")}},
      {Station::driver,
       {Texts::tr("seat %1"), Texts::tr("Height of the seat's reference point above the heel.")}},
      {Station::driver, {Texts::tr("above the heel"), Texts::tr("From where that height counts.")}},
      {Station::shapes,
       {Texts::tr("no shapes"),
        Texts::tr("Nothing is given that stands about the parts that move.")}},
      {Station::shapes,
       {Texts::tr("1 shape"), Texts::tr("One shape stands about the parts that move.")}},
      {Station::shapes,
       {Texts::tr("%1 shapes"), Texts::tr("How many shapes stand about the parts that move.")}},
      {Station::shapes,
       {Texts::tr("1 stretch pair"), Texts::tr("Two points whose distance is watched.")}},
      {Station::shapes,
       {Texts::tr("%1 stretch pairs"), Texts::tr("Pairs of points whose distance is watched.")}},
  };
}

StationNumbers station_numbers(const Session& session, Station station) {
  return NumbersOf(session).of(station);
}

}  // namespace tackbench::ui
