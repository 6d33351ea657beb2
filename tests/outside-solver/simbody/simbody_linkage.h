// Pin joints and rigid rods as a Simbody multibody system, solved by its general constraint
// projection. Plain C++17 types only: Simbody's headers stay behind this one.
#pragma once

#include <array>
#include <memory>

namespace tackbench {

class SimbodyLinkage {
 public:
  using Triple = std::array<double, 3>;
  using Body = int;
  static constexpr Body kChassis = 0;
  static constexpr Body kAxle = 1;

  // `axle_origin` in the chassis frame as drawn. All points below are chassis points as drawn, mm.
  explicit SimbodyLinkage(const Triple& axle_origin);
  ~SimbodyLinkage();
  SimbodyLinkage(const SimbodyLinkage&) = delete;
  SimbodyLinkage& operator=(const SimbodyLinkage&) = delete;

  // A body that turns about the axis through `point`, positive right-handed.
  Body add_hinged(Body parent, const Triple& point, const Triple& axis);
  void add_rod(Body from, const Triple& from_point, Body to, const Triple& to_point, double length);
  // No more bodies or rods; `driven` is the body whose angle is given.
  void finish(Body driven);

  void as_drawn();
  // One projection from wherever the linkage stands. `turn` of the driven body, rad; axle shifted
  // and then turned by roll, pitch, yaw in that order about chassis axes. False when it does not
  // converge.
  bool project_to(double turn, const Triple& axle_shift, const Triple& roll_pitch_yaw);
  double angle(Body body) const;   // of a hinged body from drawn, rad
  double worst_rod_error() const;  // mm

 private:
  struct System;
  std::unique_ptr<System> system_;
};

}  // namespace tackbench
