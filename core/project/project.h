// The document: a copyable value, each station behind a pointer to const. A copy costs nothing and
// the same pointer means "unchanged". A null station is left out or not measured yet. Nothing here
// knows files, screens or solvers.
#pragma once

#include <memory>

#include "core/project/cab.h"
#include "core/project/column.h"
#include "core/project/drag_link.h"
#include "core/project/driver.h"
#include "core/project/front_axle.h"
#include "core/project/limits.h"
#include "core/project/measurements.h"
#include "core/project/pedals.h"
#include "core/project/shaft_line.h"
#include "core/project/shapes.h"
#include "core/project/sheet_settings.h"
#include "core/project/steering_box.h"

namespace tackbench {

template <class Station>
using StationPointer = std::shared_ptr<const Station>;

struct Project {
  std::string name;
  std::string notes;

  StationPointer<CabStation> cab;
  StationPointer<ColumnStation> column;
  StationPointer<ShaftLineStation> shaft_line;
  StationPointer<SteeringBoxStation> steering_box;
  StationPointer<DragLinkStation> drag_link;
  StationPointer<FrontAxleStation> front_axle;
  StationPointer<PedalsStation> pedals;
  StationPointer<DriverStation> driver;
  StationPointer<ShapesStation> shapes;
  StationPointer<MeasurementsStation> measurements;
  StationPointer<SheetSettings> sheet;
  StationPointer<LimitsStation> limits;

  UnknownMembers unknown;
};

}  // namespace tackbench
