#include "ui/desk/desk_words.h"

#include <QCoreApplication>

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(DeskWords)
};

}  // namespace

std::vector<DeskWord> desk_words() {
  return {
      {"hand_wheel",
       {Texts::tr("Hand wheel"),
        Texts::tr(
            "Turns and degrees from straight ahead. It goes as far as the lock check lets it, else "
            "to the ends of the box. Drag its rim; Left and Right turn it, Home is straight.")}},
      {"arm",
       {Texts::tr("Arm"),
        Texts::tr("How far the arm of the box stands from the box's own centre.")}},
      {"wheels",
       {Texts::tr("Wheels: left, right"),
        Texts::tr("Steer of each road wheel: where its plane points, from straight ahead, left "
                  "positive.")}},
      {"full_left",
       {Texts::tr("full left"), Texts::tr("Turns the hand wheel to the end of the left lock.")}},
      {"straight",
       {Texts::tr("straight"), Texts::tr("Turns the hand wheel back to straight ahead.")}},
      {"full_right",
       {Texts::tr("full right"), Texts::tr("Turns the hand wheel to the end of the right lock.")}},
      {"bump_left",
       {Texts::tr("Bump left"),
        Texts::tr("How far the left wheel has risen from ride height; below it the "
                  "number is negative. With Shift both wheels move.")}},
      {"bump_right", {Texts::tr("Bump right"), Texts::tr("The same of the right wheel.")}},
      {"linked",
       {Texts::tr("both"), Texts::tr("Moves both wheels together; Shift does so for one move.")}},
      {"full_bump",
       {Texts::tr("full bump"), Texts::tr("Both wheels up as far as the axle's travel goes.")}},
      {"ride_height",
       {Texts::tr("ride height"), Texts::tr("Both wheels where the truck stands by itself.")}},
      {"full_droop",
       {Texts::tr("full droop"), Texts::tr("Both wheels down as far as the axle's travel goes.")}},
      {"pedal",
       {Texts::tr("Brake, Clutch, Accelerator"),
        Texts::tr(
            "How much of its own travel the pedal is pressed: 0 % at rest, 100 % at its stop.")}},
      {"more",
       {Texts::tr("more, pedals"),
        Texts::tr("Shows brake wind-up and cab shake in the pedals' place, and back, "
                  "where there is no room for all.")}},
      {"wind_up",
       {Texts::tr("Wind-up"),
        Texts::tr("How far the axle pitches when the brakes twist its springs.")}},
      {"shake",
       {Texts::tr("Cab along, across, up"),
        Texts::tr(
            "How far the cab has moved on its mounts: forward, to the left and up are positive.")}},
      {"cycle",
       {Texts::tr("Motion to play"),
        Texts::tr("Lock to lock, bump and droop, or both, once round from where the "
                  "truck stands.")}},
      {"play", {Texts::tr("Play"), Texts::tr("Plays the chosen motion, or holds it where it is.")}},
      {"fold",
       {Texts::tr("Fold the motion desk"), Texts::tr("To one row: what is moved, in words.")}},
      {"unfold",
       {Texts::tr("Unfold the motion desk"), Texts::tr("Back to all levers and the hand wheel.")}},
  };
}

QString desk_meaning(const QString& object_name) {
  QString part = object_name;
  if (part.startsWith(QLatin1String("folded_"))) part.remove(0, 7);
  while (!part.isEmpty() && (part.back().isDigit() || part.back() == '_')) part.chop(1);
  for (const DeskWord& each : desk_words())
    if (each.part == part) return each.said.meaning;
  return {};
}

}  // namespace tackbench::ui
