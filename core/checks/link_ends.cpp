#include "core/checks/link_ends.h"

namespace tackbench {

namespace {

std::string hand_lever_name(const Steering& steering, int link) {
  if (link == 0) return "the arm";
  return steering.relays[static_cast<std::size_t>(link - 1)].name;
}

std::string knuckle_name(Side side) {
  return side == Side::left ? "the left knuckle" : "the right knuckle";
}

}  // namespace

std::string link_end_name(const Steering& steering, const LinkEndPlace& place) {
  const int relays = static_cast<int>(steering.relays.size());
  if (place.link < relays) {
    const std::string& relay = steering.relays[static_cast<std::size_t>(place.link)].name;
    return "link to " + relay + " at " +
           (place.road_end ? relay : hand_lever_name(steering, place.link));
  }
  if (place.link == relays)
    return "drag link at " +
           (place.road_end ? std::string("the knuckle") : hand_lever_name(steering, relays));
  return "tie rod at " +
         knuckle_name(place.road_end ? steering.follower().side : steering.driven().side);
}

LeastLeverage least_leverage(const Steering& steering, const SteeringPose& pose) {
  LeastLeverage least;
  const auto look = [&least](double leverage, int link, bool road_end) {
    if (leverage < least.leverage) least = {leverage, {link, road_end}};
  };
  const int relays = static_cast<int>(steering.relays.size());
  for (int i = 0; i < relays; ++i) {
    const LinkPose& link = pose.relays[static_cast<std::size_t>(i)].link;
    look(link.from_leverage, i, false);
    look(link.to_leverage, i, true);
  }
  look(pose.drag_link.from_leverage, relays, false);
  look(pose.drag_link.to_leverage, relays, true);
  // The tie rod's pose runs from left to right, whichever knuckle is driven.
  const bool left_follows = steering.follower().side == Side::left;
  look(pose.tie_rod.from_leverage, relays + 1, left_follows);
  look(pose.tie_rod.to_leverage, relays + 1, !left_follows);
  return least;
}

std::optional<Vec3> drag_link_hand_ball(const Steering& steering, double arm) {
  Vec3 ball = steering.arm.ball(arm);
  for (const RelayStage& relay : steering.relays) {
    const LoopAnswer answer = solve_loop(relay.from_arm, ball);
    if (!answer.closes) return std::nullopt;
    ball = relay.output.ball(answer.angle);
  }
  return ball;
}

}  // namespace tackbench
