#include "tests/outside-solver/simbody/simbody_linkage.h"

#include <Simbody.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace tackbench {

namespace {

constexpr double kAccuracy = 1e-10;

SimTK::Vec3 simbody(const SimbodyLinkage::Triple& v) {
  return {v[0], v[1], v[2]};
}

}  // namespace

struct SimbodyLinkage::System {
  SimTK::MultibodySystem system;
  SimTK::SimbodyMatterSubsystem matter{system};
  SimTK::Body::Rigid body{SimTK::MassProperties(1.0, SimTK::Vec3(0), SimTK::Inertia(1.0))};
  SimTK::Vec3 axle_origin;
  SimTK::MobilizedBody::Free axle;
  std::vector<SimTK::MobilizedBody::Pin> hinged;
  SimTK::MobilizedBody::Pin driven;
  std::vector<SimTK::Constraint::Rod> rods;
  std::vector<bool> on_axle;
  SimTK::State drawn;
  SimTK::State state;

  SimTK::MobilizedBody& at(Body id) {
    if (id == kChassis) return matter.updGround();
    if (id == kAxle) return axle;
    return hinged[id - 2];
  }
  // Body frames coincide with the chassis as drawn, those on the axle with the axle's.
  SimTK::Vec3 station(Body id, const Triple& point) const {
    return on_axle[id] ? simbody(point) - axle_origin : simbody(point);
  }
};

SimbodyLinkage::SimbodyLinkage(const Triple& axle_origin) : system_(std::make_unique<System>()) {
  System& s = *system_;
  s.axle_origin = simbody(axle_origin);
  s.axle = SimTK::MobilizedBody::Free(s.matter.updGround(), SimTK::Transform(s.axle_origin), s.body,
                                      SimTK::Transform());
  s.on_axle = {false, true};
  s.hinged.reserve(16);
}

SimbodyLinkage::~SimbodyLinkage() = default;

SimbodyLinkage::Body SimbodyLinkage::add_hinged(Body parent, const Triple& point,
                                                const Triple& axis) {
  System& s = *system_;
  const SimTK::Transform frame(SimTK::Rotation(SimTK::UnitVec3(simbody(axis)), SimTK::ZAxis),
                               s.station(parent, point));
  s.hinged.emplace_back(SimTK::MobilizedBody::Pin(s.at(parent), frame, s.body, frame));
  s.on_axle.push_back(s.on_axle[parent]);
  return static_cast<Body>(s.hinged.size()) + 1;
}

void SimbodyLinkage::add_rod(Body from, const Triple& from_point, Body to, const Triple& to_point,
                             double length) {
  System& s = *system_;
  s.rods.emplace_back(s.at(from), s.station(from, from_point), s.at(to), s.station(to, to_point),
                      length);
}

void SimbodyLinkage::finish(Body driven) {
  System& s = *system_;
  s.driven = s.hinged[driven - 2];
  s.state = s.system.realizeTopology();
  s.system.realizeModel(s.state);
  s.driven.lockAt(s.state, 0.0);
  s.axle.lock(s.state);
  s.system.realizeModel(s.state);
  s.drawn = s.state;
}

void SimbodyLinkage::as_drawn() {
  system_->state = system_->drawn;
}

bool SimbodyLinkage::project_to(double turn, const Triple& axle_shift,
                                const Triple& roll_pitch_yaw) {
  System& s = *system_;
  const SimTK::Rotation axle_turn(SimTK::SpaceRotationSequence, roll_pitch_yaw[0], SimTK::XAxis,
                                  roll_pitch_yaw[1], SimTK::YAxis, roll_pitch_yaw[2], SimTK::ZAxis);
  try {
    s.driven.lockAt(s.state, turn);
    s.axle.setQToFitTransform(s.state, SimTK::Transform(axle_turn, simbody(axle_shift)));
    s.axle.lock(s.state);
    s.system.realize(s.state, SimTK::Stage::Position);
    s.system.projectQ(s.state, kAccuracy);
    s.system.realize(s.state, SimTK::Stage::Position);
  } catch (const SimTK::Exception::Base&) {
    return false;
  }
  return true;
}

double SimbodyLinkage::angle(Body body) const {
  return system_->hinged[body - 2].getAngle(system_->state);
}

double SimbodyLinkage::worst_rod_error() const {
  double worst = 0.0;
  for (const SimTK::Constraint::Rod& rod : system_->rods) {
    // Simbody's own error is half the difference of squared lengths.
    worst = std::max(
        worst, std::abs(rod.getPositionError(system_->state)) / rod.getRodLength(system_->state));
  }
  return worst;
}

}  // namespace tackbench
