// Lengths and angles that follow when a point is moved, each with the place where it is read.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/basics/shown_number.h"
#include "ui/session/truck_state.h"

namespace tackbench::ui {

struct LiveNumber {
  std::string key;     // same thing before and after
  QString words;       // "drag link"
  double value = 0.0;  // inside
  Unit unit = Unit::millimetre;
  Vec3 at_mm = Vec3::Zero();  // chassis
};

// Of what is posed; never a number that is not finite.
std::vector<LiveNumber> live_numbers(const PosedTruck& truck);

struct NumberChange {
  LiveNumber now;
  double change = 0.0;  // inside
};
// Those that differ by what a screen shows, the greatest change in proportion first.
std::vector<NumberChange> changed_numbers(const PosedTruck& before, const PosedTruck& now);

// "+3.1", with a true minus; inside units.
QString shown_change(double change, Unit unit, ShownUnit lengths);
// "803.6": lengths without their unit in mm, as a drawing has them; angles with a degree sign.
QString shown_on_sheet(double value, Unit unit, ShownUnit lengths);

}  // namespace tackbench::ui
