#include "core/findings/finding.h"

#include <cmath>

namespace tackbench {

const char* verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::within:
      return "within";
    case Verdict::close:
      return "close";
    case Verdict::past:
      return "past";
    case Verdict::not_judged:
      return "not judged";
  }
  return "not judged";
}

const char* station_word(Station station) {
  switch (station) {
    case Station::column:
      return "Column";
    case Station::shaft_line:
      return "Shaft line";
    case Station::steering_box:
      return "Steering box";
    case Station::drag_link:
      return "Drag link";
    case Station::front_axle:
      return "Front axle";
    case Station::pedals:
      return "Pedals";
    case Station::driver:
      return "Driver";
    case Station::shapes:
      return "Shapes";
  }
  return "";
}

const char* station_name(Station station) {
  switch (station) {
    case Station::column:
      return "column";
    case Station::shaft_line:
      return "shaft_line";
    case Station::steering_box:
      return "steering_box";
    case Station::drag_link:
      return "drag_link";
    case Station::front_axle:
      return "front_axle";
    case Station::pedals:
      return "pedals";
    case Station::driver:
      return "driver";
    case Station::shapes:
      return "shapes";
  }
  return "";
}

Verdict judge(double value, const Limit& limit) {
  if (!std::isfinite(value) || (!limit.least && !limit.most)) return Verdict::not_judged;
  if ((limit.least && value < *limit.least) || (limit.most && value > *limit.most))
    return Verdict::past;
  if ((limit.least_inner && value < *limit.least_inner) ||
      (limit.most_inner && value > *limit.most_inner))
    return Verdict::close;
  return Verdict::within;
}

}  // namespace tackbench
