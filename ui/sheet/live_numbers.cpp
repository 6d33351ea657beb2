#include "ui/sheet/live_numbers.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

class Numbers {
 public:
  explicit Numbers(const PosedTruck& truck) : mechanism_(*truck.mechanism), pose_(truck.pose) {}

  std::vector<LiveNumber> all() {
    if (mechanism_.steering &&
        (pose_.outcome == Outcome::solved || pose_.outcome == Outcome::shaft_line_does_not_close ||
         pose_.outcome == Outcome::pedal_does_not_close))
      add_steering();
    if (mechanism_.shaft_line && pose_.shaft_line.closes) add_shafts();
    return std::move(list_);
  }

 private:
  Q_DECLARE_TR_FUNCTIONS(LiveNumbers)

  void add(std::string key, const QString& words, double value, Unit unit, const Vec3& at_mm) {
    if (std::isfinite(value) && at_mm.allFinite())
      list_.push_back({std::move(key), words, value, unit, at_mm});
  }

  void add_link(const std::string& key, const QString& words, const LinkPose& link) {
    add(key, words, (link.to_mm - link.from_mm).norm(), Unit::millimetre,
        (link.from_mm + link.to_mm) / 2.0);
  }

  void add_steer(const std::string& key, const QString& words, const KnucklePose& knuckle,
                 const KnuckleBody& body) {
    add(key, words, knuckle.steer, Unit::degree,
        (knuckle.chassis_from_knuckle * Point<Knuckle>{body.wheel_centre_mm}).mm);
  }

  void add_steering() {
    const SteeringPose& steering = pose_.steering;
    for (std::size_t i = 0; i < steering.relays.size(); ++i)
      add_link("relay link " + std::to_string(i),
               tr("link to the relay \"%1\"")
                   .arg(QString::fromStdString(mechanism_.steering->relays[i].name)),
               steering.relays[i].link);
    const LinkPose& link = steering.drag_link;
    add_link("drag link", tr("drag link"), link);
    add("slope", tr("drag link's slope"), std::asin(std::clamp(-link.along.z(), -1.0, 1.0)),
        Unit::degree, (link.from_mm + link.to_mm) / 2.0);
    add("at arm", tr("effective angle at the arm"), effective_angle(link.from_leverage),
        Unit::degree, link.from_mm);
    add("at knuckle", tr("effective angle at the knuckle"), effective_angle(link.to_leverage),
        Unit::degree, link.to_mm);
    add_link("tie rod", tr("tie rod"), steering.tie_rod);
    add_steer("steer left", tr("left wheel"), steering.left, mechanism_.steering->left);
    add_steer("steer right", tr("right wheel"), steering.right, mechanism_.steering->right);
  }

  void add_shafts() {
    const auto& joints = mechanism_.shaft_line->station.joints;
    for (int i = 0; i < pose_.shaft_line.cross_count; ++i) {
      const CrossPose& cross = pose_.shaft_line.crosses[static_cast<std::size_t>(i)];
      const auto joint = static_cast<std::size_t>(cross.joint);
      const QString name =
          joint < joints.size() ? QString::fromStdString(joints[joint].name) : QString();
      add("cross " + std::to_string(i), tr("%1 bends").arg(name), cross.angle, Unit::degree,
          cross.centre_mm);
      if (i == 0) continue;
      const CrossPose& before = pose_.shaft_line.crosses[static_cast<std::size_t>(i - 1)];
      if (before.joint == cross.joint) continue;
      add("shaft " + std::to_string(i), tr("shaft, joint to joint"),
          (cross.centre_mm - before.centre_mm).norm(), Unit::millimetre,
          (cross.centre_mm + before.centre_mm) / 2.0);
    }
  }

  const Mechanism& mechanism_;
  const Pose& pose_;
  std::vector<LiveNumber> list_;
};

double shown_least(Unit unit) {
  return unit == Unit::millimetre ? 0.05 : radians_from_degrees(0.05);
}

}  // namespace

std::vector<LiveNumber> live_numbers(const PosedTruck& truck) {
  return Numbers(truck).all();
}

std::vector<NumberChange> changed_numbers(const PosedTruck& before, const PosedTruck& now) {
  const std::vector<LiveNumber> earlier = live_numbers(before);
  std::vector<NumberChange> changes;
  for (LiveNumber& number : live_numbers(now)) {
    const auto same = std::find_if(earlier.begin(), earlier.end(), [&](const LiveNumber& other) {
      return other.key == number.key;
    });
    if (same == earlier.end()) continue;
    const double change = number.value - same->value;
    if (std::abs(change) < shown_least(number.unit)) continue;
    changes.push_back({std::move(number), change});
  }
  // A millimetre and a tenth of a degree weigh about the same to a builder.
  const auto weight = [](const NumberChange& one) {
    if (one.now.key == "drag link") return 1e9;  // what the whole job is about
    return std::abs(one.change) /
           (one.now.unit == Unit::millimetre ? 1.0 : radians_from_degrees(0.1));
  };
  std::stable_sort(
      changes.begin(), changes.end(),
      [&](const NumberChange& a, const NumberChange& b) { return weight(a) > weight(b); });
  return changes;
}

QString shown_on_sheet(double value, Unit unit, ShownUnit lengths) {
  QString bare = QString::fromStdString(shown_bare(value, unit, lengths));
  const qsizetype sign = bare.startsWith('~') ? 1 : 0;
  if (bare.mid(sign).startsWith('-')) bare[sign] = QChar(0x2212);
  if (unit == Unit::degree) return bare + QChar(0x00B0);
  if (unit == Unit::millimetre && lengths != ShownUnit::millimetre) return bare + " in";
  return bare;
}

QString shown_change(double change, Unit unit, ShownUnit lengths) {
  const QString size = shown_on_sheet(std::abs(change), unit, lengths);
  const QChar sign = change < 0.0 ? QChar(0x2212) : QChar('+');
  if (size.startsWith('~')) return QString("~") + sign + size.mid(1);
  return sign + size;
}

}  // namespace tackbench::ui
