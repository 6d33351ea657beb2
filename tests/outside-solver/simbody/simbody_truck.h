// The same steering linkage for Simbody, built from the project's own points: it shares no formula
// with the mechanism under test.
#pragma once

#include "core/mechanism/controls.h"
#include "core/project/project.h"
#include "tests/outside-solver/simbody/simbody_linkage.h"

namespace tackbench {

class SimbodyTruck {
 public:
  // Wants steering box, drag link and front axle. Levers stand as drawn.
  explicit SimbodyTruck(const Project& project);

  // One projection from wherever the linkage stands now. `arm` from the box's centre, rad, positive
  // as a left turn moves it. False when it does not converge.
  bool project_to(double arm, const AxlePose& axle);
  // The same in small steps from the drawn position, so that it stays on the drawn branch.
  bool walk_to(double arm, const AxlePose& axle, int steps);

  double swivel(Side side) const;  // from drawn, left positive, rad
  double worst_rod_error() const { return linkage_.worst_rod_error(); }  // mm

 private:
  SimbodyLinkage linkage_;
  SimbodyLinkage::Body left_ = 0;
  SimbodyLinkage::Body right_ = 0;
};

}  // namespace tackbench
