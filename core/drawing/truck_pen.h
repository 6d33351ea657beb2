// Draws plain bodies in one projected view into a TruckView. Inside this room only. Everything that
// it is given is in the chassis frame, mm.
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/truck_outline.h"
#include "core/drawing/truck_view.h"

namespace tackbench {

class TruckPen {
 public:
  // A ghost pen puts everything down in Ink::ghost, unfilled and without symbols.
  TruckPen(TruckView& view, bool ghost) : out_(view), ghost_(ghost) {}

  SheetView view() const { return out_.view; }
  bool sees(SheetView view) const { return out_.view == view; }
  bool is_ghost() const { return ghost_; }
  ViewPoint at(const Vec3& chassis_mm) const { return seen(out_.view, chassis_mm); }
  // How much of a unit vector points to the eye.
  double towards_eye(const Vec3& unit) const { return unit.dot(sight(out_.view)); }

  // What is not finite is left out.
  void add(DrawnLine line);

  void path(std::span<const Vec3> through, Ink ink, std::string_view part);
  void path(std::initializer_list<Vec3> through, Ink ink, std::string_view part) {
    path(std::span<const Vec3>(through.begin(), through.size()), ink, part);
  }
  // Closed and filled.
  void face(std::span<const Vec3> corners, Ink ink, std::string_view part);
  void face(std::initializer_list<Vec3> corners, Ink ink, std::string_view part) {
    face(std::span<const Vec3>(corners.begin(), corners.size()), ink, part);
  }

  // Outline of the hull of discs, filled.
  void solid(std::span<const Disc> discs, double rounding, Ink ink, std::string_view part);
  // Round bar between two places; `to_radius` makes it a cone.
  void rod(const Vec3& from, const Vec3& to, double radius, Ink ink, std::string_view part);
  void cone(const Vec3& from, double from_radius, const Vec3& to, double to_radius, Ink ink,
            std::string_view part);
  // Flat lever from its root to its ball, square to the unit `axis`.
  void lever(const Vec3& root, double root_radius, const Vec3& ball, double ball_radius,
             const Vec3& axis, double half_thickness, Ink ink, std::string_view part);
  void sphere(const Vec3& centre, double radius, Ink ink, std::string_view part);
  // Box between two corners of its own frame: outline and the edges between visible faces.
  // `see_through`: not filled.
  void block(const Placement<Chassis, Chassis>& place, const Vec3& least, const Vec3& greatest,
             Ink ink, std::string_view part, bool see_through = false);

  // Circle in space, an edge without a wash.
  void ring(const Disc& disc, Ink ink, std::string_view part);
  // Outline of the swollen disc likewise: the rim of a hand wheel.
  void rim(const Disc& disc, double rounding, Ink ink, std::string_view part);
  // What of it faces the eye, above chassis height `least_z` except in plan.
  void near_arc(const Disc& disc, double least_z, Ink ink, std::string_view part);
  // Coil spring as a zigzag.
  void coil(const Vec3& from, const Vec3& to, double half_width, Ink ink, std::string_view part);

  void symbol(JointSymbol symbol, const Vec3& place, const Vec3& along, Ink ink,
              std::string_view part);
  void round(const Vec3& centre, double radius, Ink ink, bool filled, std::string_view part);

 private:
  TruckView& out_;
  bool ghost_;
};

}  // namespace tackbench
