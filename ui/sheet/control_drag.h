// The truck's own controls taken on the drawing: hand wheel, road wheels and pedal pads.
#pragma once

#include <optional>
#include <string>

#include "core/mechanism/controls.h"
#include "ui/session/truck_state.h"
#include "ui/sheet/sheet_scene.h"

namespace tackbench::ui {

enum class ControlKind { hand_wheel, road_wheel, pedal };

struct ControlInHand {
  ControlKind kind = ControlKind::hand_wheel;
  Side side = Side::left;  // of the road wheel
  int pedal = 0;
  SheetView view = SheetView::side;
};

// The control that a drawn part belongs to, pressed at `at` (view mm); none for other parts.
std::optional<ControlInHand> control_at(const PosedTruck& truck, const std::string& part,
                                        SheetView view, const ViewPoint& at);

// Controls after the hand went from one place to the next (view mm): the hand wheel turns about its
// centre, a road wheel steers in plan and rises in the other views, a pedal follows its pad. Held
// within the travel of axle and pedals; a hand wheel seen edge on turns by the way along its rim.
Controls moved_by_hand(const PosedTruck& truck, const Controls& controls,
                       const ControlInHand& control, const ViewPoint& from, const ViewPoint& to);

}  // namespace tackbench::ui
