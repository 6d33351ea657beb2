// Rails and the ground.
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// Thickness of a pressed rail as drawn; nobody measures it here.
constexpr double kRailPlate = 10.0;

// X behind which nothing but the rails is drawn.
double rearmost(const TruckAtPose& truck) {
  double least = 0.0;
  const auto reach = [&least](double x) {
    if (x < least) least = x;
  };
  const Project& project = truck.project;
  if (project.column) reach(truck.in_cab(project.column->hand_wheel_centre).x() - 250.0);
  if (project.driver) reach(truck.in_cab(project.driver->seat_reference).x() - 450.0);
  if (project.steering_box) reach(project.steering_box->output_point.mm.x() - 200.0);
  if (project.front_axle) {
    const Suspension& suspension = project.front_axle->suspension;
    if (suspension.leaf) {
      reach(suspension.leaf->seat.mm.x() - suspension.leaf->fixed_half - 150.0);
      reach(suspension.leaf->seat.mm.x() - suspension.leaf->shackle_half - 150.0);
    }
    if (suspension.radius_arms) reach(suspension.radius_arms->chassis_pivot.mm.x() - 150.0);
    reach(-project.front_axle->tyre.diameter);
  }
  return least;
}

struct RailEnds {
  double front = 0.0;
  double rear = 0.0;
  bool broken = false;  // the rear is left out
};

RailEnds rail_ends(const TruckAtPose& truck, const Rails& rails) {
  constexpr double kPastTheRest = 250.0;
  constexpr double kWorthBreaking = 600.0;
  RailEnds ends{rails.front_end, rails.rear_end, false};
  const double wanted = std::min(rearmost(truck), rails.front_end) - kPastTheRest;
  if (rails.rear_end < wanted - kWorthBreaking) {
    ends.rear = wanted;
    ends.broken = true;
  }
  return ends;
}

// Long break line (ISO 128, thin with a zigzag) between two places on the view.
void draw_break(const Vec3& from, const Vec3& to, TruckPen& pen) {
  const Vec3 along = to - from;
  const Vec3 middle = from + 0.5 * along;
  const double step = 14.0;
  const Vec3 unit = along.normalized();
  const Vec3 ahead = step * Vec3::UnitX();
  pen.path({from - 25.0 * unit, middle - step * unit, middle - 0.5 * step * unit + ahead,
            middle + 0.5 * step * unit - ahead, middle + step * unit, to + 25.0 * unit},
           Ink::soft, "");
}

void draw_side(const Rails& rails, const RailEnds& ends, TruckPen& pen) {
  const auto line = [&](double z, Ink ink) {
    pen.path({Vec3(ends.front, 0.0, z), Vec3(ends.rear, 0.0, z)}, ink, "shapes.rails");
  };
  const double bottom = -rails.depth;
  pen.face({Vec3(ends.front, 0, 0), Vec3(ends.rear, 0, 0), Vec3(ends.rear, 0, bottom),
            Vec3(ends.front, 0, bottom)},
           ends.broken ? Ink::soft : Ink::fixed, "shapes.rails");
  line(0.0, Ink::fixed);
  line(bottom, Ink::fixed);
  line(-kRailPlate, Ink::soft);
  line(bottom + kRailPlate, Ink::soft);
  const auto end = [&](double x, const char* part) {
    pen.path({Vec3(x, 0, 0), Vec3(x, 0, bottom)}, Ink::fixed, part);
  };
  end(ends.front, "shapes.rails.front_end_mm");
  if (ends.broken)
    draw_break(Vec3(ends.rear, 0, bottom), Vec3(ends.rear, 0, 0), pen);
  else
    end(ends.rear, "shapes.rails.rear_end_mm");
}

// Open section of the near end, flanges inward.
void draw_front(const Rails& rails, TruckPen& pen) {
  for (const double side : {1.0, -1.0}) {
    const double outer = side * rails.outside_width / 2.0;
    const double inner = outer - side * rails.flange;
    const double web = outer - side * std::min(kRailPlate, rails.flange);
    const double bottom = -rails.depth;
    const double x = rails.front_end;
    pen.face({Vec3(x, inner, 0), Vec3(x, outer, 0), Vec3(x, outer, bottom), Vec3(x, inner, bottom),
              Vec3(x, inner, bottom + kRailPlate), Vec3(x, web, bottom + kRailPlate),
              Vec3(x, web, -kRailPlate), Vec3(x, inner, -kRailPlate)},
             Ink::fixed, "shapes.rails");
  }
}

void draw_plan(const Rails& rails, const RailEnds& ends, TruckPen& pen) {
  for (const double side : {1.0, -1.0}) {
    const double outer = side * rails.outside_width / 2.0;
    const double inner = outer - side * rails.flange;
    const double web = outer - side * std::min(kRailPlate, rails.flange);
    const auto line = [&](double y, Ink ink) {
      pen.path({Vec3(ends.front, y, 0), Vec3(ends.rear, y, 0)}, ink, "shapes.rails");
    };
    line(outer, Ink::fixed);
    line(inner, Ink::fixed);
    line(web, Ink::hidden);
    pen.path({Vec3(ends.front, outer, 0), Vec3(ends.front, inner, 0)}, Ink::fixed,
             "shapes.rails.front_end_mm");
    if (ends.broken)
      draw_break(Vec3(ends.rear, inner, 0), Vec3(ends.rear, outer, 0), pen);
    else
      pen.path({Vec3(ends.rear, outer, 0), Vec3(ends.rear, inner, 0)}, Ink::fixed,
               "shapes.rails.rear_end_mm");
  }
}

// Z of the ground under X with the axle at ride height; front and rear loaded radii.
struct Ground {
  double at_front = 0.0;
  double slope = 0.0;  // rise for each mm of X

  double under(double x) const { return at_front + slope * x; }
};

Ground ground_of(const FrontAxleStation& axle) {
  Ground ground{axle.wheel_centre_height - axle.tyre.loaded_radius, 0.0};
  const Road& road = axle.road;
  if (!road.wheelbase || !road.rear_loaded_radius) return ground;
  if (!road.rear_wheel_height_empty && !road.rear_wheel_height_laden) return ground;
  // Ride height lies between the two.
  const double rear =
      road.rear_wheel_height_empty && road.rear_wheel_height_laden
          ? 0.5 * (*road.rear_wheel_height_empty + *road.rear_wheel_height_laden)
          : road.rear_wheel_height_empty.value_or(road.rear_wheel_height_laden.value_or(0.0));
  if (*road.wheelbase > 0.0)
    ground.slope = (ground.at_front - (rear - *road.rear_loaded_radius)) / *road.wheelbase;
  return ground;
}

}  // namespace

void draw_rails(const TruckAtPose& truck, TruckPen& pen) {
  if (truck.project.shapes && truck.project.shapes->rails) {
    const Rails& rails = *truck.project.shapes->rails;
    const RailEnds ends = rail_ends(truck, rails);
    if (pen.sees(SheetView::side)) draw_side(rails, ends, pen);
    if (pen.sees(SheetView::front)) draw_front(rails, pen);
    if (pen.sees(SheetView::plan)) draw_plan(rails, ends, pen);
  }
  if (!pen.sees(SheetView::plan) || !truck.project.front_axle) return;
  const auto& corners = truck.project.front_axle->road.body_corners;
  for (std::size_t i = 0; i < corners.size(); ++i)
    pen.symbol(JointSymbol::datum, corners[i].mm, Vec3::UnitX(), Ink::soft,
               item("front_axle.road.body_corners_mm", i));
}

DrawnLine ground_line(const TruckAtPose& truck, const TruckView& drawn) {
  DrawnLine line;
  line.ink = Ink::ground;
  if (!truck.project.front_axle || drawn.view == SheetView::plan || drawn.lines.empty())
    return line;
  const Ground ground = ground_of(*truck.project.front_axle);
  constexpr double kPast = 120.0;
  const double left = drawn.least.x - kPast;
  const double right = drawn.greatest.x + kPast;
  const bool side = drawn.view == SheetView::side;
  line.through = {{left, ground.under(side ? -left : 0.0)},
                  {right, ground.under(side ? -right : 0.0)}};
  return line;
}

}  // namespace tackbench
