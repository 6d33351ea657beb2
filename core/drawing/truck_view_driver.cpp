// The driver's places and the cab's own.
#include <cmath>

#include "core/drawing/truck_parts.h"

namespace tackbench {

namespace {

// A seat as it is drawn; people are drawn elsewhere.
constexpr double kSeatHalf = 240.0;
constexpr double kCushion = 430.0;
constexpr double kBack = 560.0;
constexpr double kUnderSeat = 70.0;

void draw_seat(const TruckAtPose& truck, const DriverStation& driver, TruckPen& pen) {
  const Vec3 seat = driver.seat_reference.mm + Vec3(0.0, 0.0, -kUnderSeat);
  const Vec3 back(-std::sin(driver.back_angle), 0.0, std::cos(driver.back_angle));
  const auto at = [&truck](const Vec3& cab) { return truck.in_cab(Point<Cab>{cab}); };
  const char* const part = "driver.seat_reference_mm";
  if (pen.sees(SheetView::side)) {
    const Vec3 root = seat + Vec3(-90.0, 0.0, 0.0);
    pen.path({at(seat + Vec3(kCushion, 0.0, 25.0)), at(root), at(root + kBack * back)}, Ink::soft,
             part);
    return;
  }
  const Vec3 half = kSeatHalf * Vec3::UnitY();
  const Vec3 front = seat + Vec3(kCushion, 0.0, 0.0);
  const Vec3 rear = seat + Vec3(-90.0, 0.0, 0.0);
  const auto loop = [&](const Vec3& a, const Vec3& b) {
    pen.path({at(a - half), at(a + half), at(b + half), at(b - half), at(a - half)}, Ink::soft,
             part);
  };
  if (pen.sees(SheetView::plan)) loop(front, rear);
  loop(rear, rear + kBack * back);
}

}  // namespace

void draw_driver(const TruckAtPose& truck, TruckPen& pen) {
  if (truck.project.driver) {
    const DriverStation& driver = *truck.project.driver;
    draw_seat(truck, driver, pen);
    pen.symbol(JointSymbol::datum, truck.in_cab(driver.seat_reference), Vec3::UnitX(), Ink::soft,
               "driver.seat_reference_mm");
    pen.symbol(JointSymbol::datum, truck.in_cab(driver.heel_point), Vec3::UnitX(), Ink::soft,
               "driver.heel_point_mm");
  }
  if (truck.project.cab)
    pen.symbol(JointSymbol::datum, truck.in_cab(Point<Cab>{}), Vec3::UnitX(), Ink::soft, "cab");
}

}  // namespace tackbench
