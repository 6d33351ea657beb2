#include "core/project/cab.h"

namespace tackbench {

Placement<Chassis, Cab> chassis_from_cab(const CabStation& cab) {
  return {pitch_turn(cab.pitch), cab.place};
}

}  // namespace tackbench
