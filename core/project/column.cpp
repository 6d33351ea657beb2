#include "core/project/column.h"

namespace tackbench {

Direction<Cab> column_axis(const ColumnStation& column) {
  return {(column.output_end.mm - column.hand_wheel_centre.mm).normalized()};
}

}  // namespace tackbench
