#include "ui/look/station_title.h"

#include <QCoreApplication>

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Stations)
};

}  // namespace

QString station_title(Station station) {
  switch (station) {
    case Station::column:
      return Texts::tr("Column");
    case Station::shaft_line:
      return Texts::tr("Shaft line");
    case Station::steering_box:
      return Texts::tr("Steering box");
    case Station::drag_link:
      return Texts::tr("Drag link");
    case Station::front_axle:
      return Texts::tr("Front axle");
    case Station::pedals:
      return Texts::tr("Pedals");
    case Station::driver:
      return Texts::tr("Driver");
    case Station::shapes:
      return Texts::tr("Shapes");
  }
  return {};
}

}  // namespace tackbench::ui
