// The drag link as a part to make: a tube threaded at both ends, two ends screwed into it, two lock
// nuts. Lengths in mm, angles in rad, forces in N.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/checks/link_check.h"
#include "core/checks/link_travel.h"
#include "core/checks/lock_check.h"
#include "core/mechanism/mechanism.h"

namespace tackbench {

struct LinkEndPart {
  LinkEnd end;                // as the project has it
  LinkEndSize size;           // its sizes; zero while the part is not sized
  double free_length = 0.0;   // ball centre to the tube's end face
  double thread_out = 0.0;    // can be unscrewed with one diameter of engagement kept (from
                              // memory: steel in steel has its full strength there)
  double thread_in = 0.0;     // can be screwed in: until the lock nut is out of thread, and no
                              // deeper than the tube is tapped
  double thread_depth = 0.0;  // of the tube's thread: engagement, its share of the adjustment,
                              // two pitches of run-out (common practice)
  double wall_outside = 0.0;  // of the tube outside the thread's major diameter
  double area_outside = 0.0;  // of the tube outside the thread, mm^2
  bool bore_carries_thread = false;
  std::optional<double> swing_needed;  // over both locks
  bool swing_over_travel = false;      // and over the axle's travel; else at ride height alone
};

// The greatest force given, and what was not given.
struct LinkForce {
  std::optional<double> newtons;
  std::string name;  // "assist limit"
  std::string how;   // how it was worked out; empty when it was given as it is
  std::vector<std::string> not_given;
};

struct DragLinkPart {
  bool sized = false;  // both ends' sizes and the tube are given; otherwise lengths of the tube,
                       // adjustment and threads are not known
  double ball_to_ball = 0.0;           // to order: box centred, wheels straight
  std::optional<double> given_length;  // of a link already there
  double given_box_offset = 0.0;       // box input off its centre with the given one, rad
  bool given_can_be_set = false;       // the given one reaches ball_to_ball by its adjustment
  double tube_length = 0.0;            // cut length of the tube, along its line
  LinkTube tube;
  double bend_offset = 0.0;
  LinkEndPart arm;
  LinkEndPart knuckle;
  bool opposite_hands = false;
  double longer = 0.0;  // adjustment left each way; with opposite hands by turning the tube alone
  double shorter = 0.0;
  double adjustment_wanted = 0.0;
  double clocking = 0.0;  // arm housing to knuckle housing, clockwise positive as seen from the
                          // arm end looking along the link, rad
  bool clocking_given = false;
  std::optional<double> best_clocking;  // that would use least swing over both locks
  std::optional<double> swing_at_best;
  std::optional<double> tolerance;
  LinkForce force;
  Side knuckle_side = Side::left;
  bool from_relay = false;  // its hand-side ball sits on a relay, not on the pitman arm
  int quantity = 1;
};

// Wants a mechanism with its steering compiled. `locks` and `travel` (of the truck with the link to
// order) may be missing; swings are those over the axle's travel where they are known.
DragLinkPart drag_link_part(const Mechanism& mechanism, const LinkResult& link,
                            const std::optional<LockResult>& locks,
                            const std::optional<LinkTravel>& travel = std::nullopt);

// "arm end", or "relay end" where a relay carries that ball.
std::string hand_end_words(const DragLinkPart& part);

// Length change a turn of the tube: sum of both pitches with opposite hands, difference otherwise.
double length_per_tube_turn(const DragLinkPart& part);

}  // namespace tackbench
