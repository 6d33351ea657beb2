#include "core/basics/units.h"

namespace tackbench {

namespace {

// Inside value of one shown unit.
double inside_per_shown(Unit unit) {
  switch (unit) {
    case Unit::degree:
    case Unit::degree_per_25_mm:
    case Unit::degree_per_mm:
      return kRadiansPerDegree;
    case Unit::turn:
      return kRadiansPerTurn;
    case Unit::percent:
      return 0.01;
    case Unit::newton_metre:
      return 1000.0;
    case Unit::number:
    case Unit::millimetre:
    case Unit::newton:
    case Unit::kilogram:
    case Unit::count:
    case Unit::megapascal:
    case Unit::newton_per_mm:
      return 1.0;
  }
  return 1.0;
}

}  // namespace

double shown_from_inside(Unit unit, double inside) {
  return inside / inside_per_shown(unit);
}
double inside_from_shown(Unit unit, double shown) {
  return shown * inside_per_shown(unit);
}

const char* member_suffix(Unit unit) {
  switch (unit) {
    case Unit::millimetre:
      return "_mm";
    case Unit::degree:
      return "_deg";
    case Unit::turn:
      return "_turns";
    case Unit::percent:
      return "_percent";
    case Unit::newton:
      return "_n";
    case Unit::newton_metre:
      return "_nm";
    case Unit::kilogram:
      return "_kg";
    case Unit::degree_per_25_mm:
      return "_deg_per_25_mm";
    case Unit::degree_per_mm:
      return "_deg_per_mm";
    case Unit::megapascal:
      return "_mpa";
    case Unit::newton_per_mm:
      return "_n_per_mm";
    case Unit::number:
    case Unit::count:
      return "";
  }
  return "";
}

const char* symbol(Unit unit) {
  switch (unit) {
    case Unit::millimetre:
      return "mm";
    case Unit::degree:
      return "deg";
    case Unit::turn:
      return "turns";
    case Unit::percent:
      return "%";
    case Unit::newton:
      return "N";
    case Unit::newton_metre:
      return "N m";
    case Unit::kilogram:
      return "kg";
    case Unit::degree_per_25_mm:
      return "deg per 25 mm";
    case Unit::degree_per_mm:
      return "deg per mm";
    case Unit::megapascal:
      return "MPa";
    case Unit::newton_per_mm:
      return "N per mm";
    case Unit::number:
    case Unit::count:
      return "";
  }
  return "";
}

}  // namespace tackbench
