// A truck as solids in space: every part's mesh in its drawn place, chassis frame, mm, and where
// each body goes in a pose. Drawn place: cab unshaken, axle at ride height, wheels straight ahead
// as swivel 0 draws them, box at its centre, hand wheel at zero, pedals at rest. Moving the truck
// changes transforms alone.
//
// Sizes that no station gives (section of a lever, thickness of a rim's disc) are drawn as such
// parts commonly are; nothing is computed from them.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/mechanism/part_motion.h"
#include "core/mechanism/pose.h"
#include "core/project/grips.h"
#include "core/scene/mesh.h"

namespace tackbench {

enum class SceneRole {
  fixed,   // rails, axle, box, brackets, what stands on the chassis
  moving,  // levers, links, shafts, hand wheel, pedals
  tyre,
  soft,  // cab, driver's points, what is only around; what lies behind is seen through it
};

struct ScenePiece {
  std::string part;  // member path of the record or grip that it shows; empty: cannot be chosen
  SceneRole role = SceneRole::fixed;
  Mesh fine;
  Mesh coarse;
};

// A place that moves with a body or with a pedal's linkage.
struct ScenePlace {
  enum class Carrier { body, piston, bell_crank };
  Carrier carrier = Carrier::body;
  Vec3 drawn_mm = Vec3::Zero();
  Body body = Body::chassis;
  int index = 0;       // of the relay or pedal
  int bell_crank = 0;  // of that pedal

  bool operator==(const ScenePlace&) const = default;
};

// How a body moves.
struct RidesBody {
  Body body = Body::chassis;
  int index = 0;

  bool operator==(const RidesBody&) const = default;
};
struct TurnsWithColumn {
  bool operator==(const TurnsWithColumn&) const = default;
};  // hand wheel, column shaft, hand-side yoke of the first joint
struct TurnsWithBoxInput {
  bool operator==(const TurnsWithBoxInput&) const = default;
};  // box input without joints
struct TurnsWithCross {
  int cross = 0;
  CrossPart part = CrossPart::spider;

  bool operator==(const TurnsWithCross&) const = default;
};
// A rigid thing that starts at one place and points to another, turned about that line as little as
// can be.
struct Reaches {
  ScenePlace from;
  ScenePlace to;

  bool operator==(const Reaches&) const = default;
};
// The drag link: reaches from arm or last relay to knuckle and spins as the studs want.
struct SpinsOnStuds {
  ScenePlace from;
  ScenePlace to;

  bool operator==(const SpinsOnStuds&) const = default;
};
struct TurnsOnBellCrank {
  int pedal = 0;
  int bell_crank = 0;

  bool operator==(const TurnsOnBellCrank&) const = default;
};
// A length of one half of a leaf spring, by its middle: `part` of the way from seat to eye.
struct BendsWithLeaf {
  Side side = Side::left;
  bool shackle_half = false;
  double part = 0.0;

  bool operator==(const BendsWithLeaf&) const = default;
};
// The shackle: from its eye towards its hanger.
struct HangsShackle {
  Side side = Side::left;
  Vec3 hanger_mm = Vec3::Zero();

  bool operator==(const HangsShackle&) const = default;
};
using Rider = std::variant<RidesBody, TurnsWithColumn, TurnsWithBoxInput, TurnsWithCross, Reaches,
                           SpinsOnStuds, TurnsOnBellCrank, BendsWithLeaf, HangsShackle>;

struct SceneBody {
  Rider rider;
  std::vector<ScenePiece> pieces;
};

struct Scene {
  std::vector<SceneBody> bodies;
  Bounds bounds;          // of all that is drawn, without the ground
  double ground_z = 0.0;  // under the front tyres at ride height, chassis
};

// Parts whose stations are left out or do not compile yet are left out.
Scene make_scene(const Mechanism& mechanism);

using SceneMotion = PartMotion;  // drawn place to pose

// One motion a body, rigid and finite whatever the pose's outcome. The pose must be of that
// mechanism.
void pose_scene(const Scene& scene, const Mechanism& mechanism, const Pose& pose,
                std::vector<SceneMotion>& motions);

// Where a place goes, chassis.
Vec3 moved_place(const Mechanism& mechanism, const Pose& pose, const ScenePlace& place);

// Fixed eyes, seats and shackle eyes as drawn, and each half's bend.
struct LeafDrawing {
  Vec3 seat_mm = Vec3::Zero();  // drawn
  double length = 0.0;          // of the half, mm
  double eye_offset = 0.0;
  double towards = 1.0;       // +1: this half runs forward from the seat
  double bend_at_ride = 0.0;  // rad
  double eye_height = 0.0;    // of its eye, chassis Z, mm
};
LeafDrawing leaf_drawing(const SuspensionPath& path, Side side, bool shackle_half);
// Frame of the half's main leaf at `part` of its length: origin on its middle line, X along the
// truck and up the leaf's slope, for that seat place, axle pitch and bend.
Placement<Chassis, Chassis> leaf_frame(const LeafDrawing& leaf, const Vec3& seat_mm, double pitch,
                                       double bend, double part);

}  // namespace tackbench
