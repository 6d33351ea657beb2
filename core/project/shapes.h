// Shapes: what stands around the moving parts, and stretch pairs between any two points.
#pragma once

#include "core/project/common.h"

namespace tackbench {

enum class ShapeKind { box, tube, cylinder, plate, mesh };

struct PlateHole {
  double across = 0.0;  // hole centre from the plate's middle along its own X, mm
  double up = 0.0;      // along its own Y, mm
  double diameter = 50.0;
  UnknownMembers unknown;
};

struct Shape {
  std::string name;
  ShapeKind kind = ShapeKind::box;
  RidesOn rides_on = RidesOn::chassis;
  Vec3 place = Vec3::Zero();        // middle of box or plate; start of tube or cylinder, mm
  Vec3 size = Vec3(100, 100, 100);  // box: along its X, Y, Z; plate: along X, Y and thickness, mm
  Vec3 turn = Vec3::Zero();         // roll, pitch, yaw of box, plate or mesh, rad
  Vec3 end = Vec3::Zero();          // tube and cylinder: middle of the far end, mm
  double diameter = 50.0;           // tube and cylinder, mm
  double wall = 0.0;                // tube, mm
  double rounding = 0.0;            // edge radius, mm
  bool hot = false;                 // exhaust or the like
  std::vector<PlateHole> holes;
  std::optional<FileReference> mesh;  // scan
  double mesh_scale = 1.0;            // mm per unit of the scan
  UnknownMembers unknown;
};

struct AnchoredPoint {
  RidesOn rides_on = RidesOn::chassis;
  Vec3 at = Vec3::Zero();  // mm in that body's frame as drawn (axle and knuckles: chassis axes at
                           // ride height, wheels straight)
  UnknownMembers unknown;
};

// Two points whose least and greatest distance matter: damper, assist ram, hose, strap.
struct StretchPair {
  std::string name;
  AnchoredPoint from;
  AnchoredPoint to;
  std::optional<double> least;     // closed length, mm
  std::optional<double> greatest;  // open length, mm
  UnknownMembers unknown;
};

struct Rails {
  double outside_width = 860.0;  // over both rails, mm
  double flange = 70.0;          // width of one rail, mm
  double depth = 200.0;          // mm
  double front_end = 900.0;      // X of the front end, mm
  double rear_end = -3500.0;     // X of the rear end, mm
  UnknownMembers unknown;
};

struct ShapesStation {
  std::optional<Rails> rails;
  std::vector<Shape> shapes;
  std::vector<StretchPair> stretch_pairs;
  UnknownMembers unknown;
};

}  // namespace tackbench
