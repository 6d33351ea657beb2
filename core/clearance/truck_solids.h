// A truck as convex solids: what could touch what. Each part knows the bodies it rides on, its name
// in the words of the trade, and what it may touch by what it is: parts of one body, and parts that
// meet in a joint (a ball in its socket, a yoke on its shaft, an arm on its kingpin, a spring hung
// under its rail).
//
// Drawn place: cab unshaken, axle at ride height, wheels straight as swivel 0 draws them, box at
// its centre, hand wheel at zero, pedals at rest. Chassis frame, mm.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/geometry/convex_solid.h"
#include "core/mechanism/pose.h"
#include "core/project/grips.h"

namespace tackbench {

// What a solid moves with.
struct SolidBody {
  enum class Kind {
    of_grips,            // `body` and its index
    relay_link,          // that drives relay `index`
    drag_link,           //
    tie_rod,             //
    hand_side_of_joint,  // shaft end and yoke before turning joint `index` of the shaft line
    road_side_of_joint,  // and after it
  };
  Kind kind = Kind::of_grips;
  Body body = Body::chassis;
  int index = 0;

  bool operator==(const SolidBody&) const = default;
  // Chassis and cab; all else moves when the truck is steered, rises or is braked.
  bool stands() const;
};

struct SolidPiece {
  ConvexSolid solid;  // drawn place
  SolidBody body;
  bool assumed = false;  // some size is not in the document: as such parts commonly are
};

struct SolidPart {
  std::string name;  // "left tyre"
  std::string path;  // member path of the record that it shows
  std::vector<SolidPiece> pieces;
  std::vector<std::string> joints;  // those it takes part in
};

// Parts that have to keep clear of each other; one of them moves.
struct SolidPair {
  std::size_t first = 0;  // in `parts`; moves
  std::size_t second = 0;
  bool both_move = false;
};

struct TruckSolids {
  std::vector<SolidPart> parts;
  std::vector<SolidPair> pairs;
  std::vector<std::string> left_out;  // shapes that are not solids here, and why
};

// Parts whose stations are left out or do not compile are left out. Tyres stand without their
// growth.
std::shared_ptr<const TruckSolids> truck_solids(const Mechanism& mechanism);

// From the drawn place to the pose. Identity for what the mechanism has not got.
Placement<Chassis, Chassis> solid_motion(const Mechanism& mechanism, const Pose& pose,
                                         const SolidBody& body);

}  // namespace tackbench
