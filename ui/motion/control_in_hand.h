// The truck's own controls taken in a drawing of it, on the sheet or in space: hand wheel, road
// wheels and pedal pads.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "core/drawing/truck_view.h"
#include "core/mechanism/controls.h"
#include "core/scene/camera.h"
#include "ui/session/session.h"

namespace tackbench::ui {

// How a drawing shows the truck to a hand: x to the right and y up on it, in any one unit.
struct HandView {
  std::function<ViewPoint(const Vec3&)> place;    // where a chassis place appears
  std::function<SightRay(const ViewPoint&)> ray;  // what lies under a place, chassis, mm
};
// Places in view mm.
HandView hand_view(SheetView view);

enum class ControlKind { hand_wheel, road_wheel, pedal };
enum class WheelWay { steers, rises };

struct ControlInHand {
  ControlKind kind = ControlKind::hand_wheel;
  Side side = Side::left;             // of the road wheel
  WheelWay way = WheelWay::rises;     // of the road wheel
  Vec3 on_knuckle_mm = Vec3::Zero();  // where the road wheel was taken, in the knuckle's frame
  int pedal = 0;
};

// The control that a drawn part belongs to, taken along that line of sight; none for other parts.
// `met_mm`: where the line meets it, chassis; a drawing without depth does not know.
std::optional<ControlInHand> control_at(const PosedTruck& truck, const std::string& part,
                                        const SightRay& ray, std::optional<Vec3> met_mm);

// Whether a road wheel steers or rises when the hand goes that way: whichever carries what it holds
// along with it, of those that can be seen to move.
WheelWay way_of_wheel(const PosedTruck& truck, const ControlInHand& control, const HandView& view,
                      const ViewPoint& from, const ViewPoint& to);

// Controls after the hand went from one place to the next: the hand wheel turns as its rim's plane
// is drawn round, edge on by the way along its near rim; a road wheel steers about its kingpin or
// rises; a pedal follows its pad. Not held within the truck's reach yet.
Controls moved_by_hand(const PosedTruck& truck, const Controls& controls,
                       const ControlInHand& control, const HandView& view, const ViewPoint& from,
                       const ViewPoint& to);

// The same for the session's truck, which stays within its reach: the hand wheel ends where the
// lock check ends it.
void move_control(Session& session, const ControlInHand& control, const HandView& view,
                  const ViewPoint& from, const ViewPoint& to);

}  // namespace tackbench::ui
