#include "ui/desk/desk_words.h"

#include <QCoreApplication>

namespace tackbench::ui {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("DeskWords", text);
}

}  // namespace

std::vector<DeskWord> desk_words() {
  return {
      {"hand_wheel",
       {tr("Hand wheel"),
        tr("Turns and degrees from straight ahead. It goes as far as the lock check lets it, else "
           "to the ends of the box. Drag its rim; Left and Right turn it, Home is straight.")}},
      {"arm", {tr("Arm"), tr("How far the arm of the box stands from the box's own centre.")}},
      {"wheels",
       {tr("Wheels: left, right"),
        tr("Steer of each road wheel: where its plane points, from straight ahead, left "
           "positive.")}},
      {"full_left", {tr("full left"), tr("Turns the hand wheel to the end of the left lock.")}},
      {"straight", {tr("straight"), tr("Turns the hand wheel back to straight ahead.")}},
      {"full_right", {tr("full right"), tr("Turns the hand wheel to the end of the right lock.")}},
      {"bump_left",
       {tr("Bump left"), tr("How far the left wheel has risen from ride height; below it the "
                            "number is negative. With Shift both wheels move.")}},
      {"bump_right", {tr("Bump right"), tr("The same of the right wheel.")}},
      {"linked", {tr("both"), tr("Moves both wheels together; Shift does so for one move.")}},
      {"full_bump", {tr("full bump"), tr("Both wheels up as far as the axle's travel goes.")}},
      {"ride_height", {tr("ride height"), tr("Both wheels where the truck stands by itself.")}},
      {"full_droop", {tr("full droop"), tr("Both wheels down as far as the axle's travel goes.")}},
      {"pedal",
       {tr("Brake, Clutch, Accelerator"),
        tr("How much of its own travel the pedal is pressed: 0 % at rest, 100 % at its stop.")}},
      {"more",
       {tr("more, pedals"), tr("Shows brake wind-up and cab shake in the pedals' place, and back, "
                               "where there is no room for all.")}},
      {"wind_up",
       {tr("Wind-up"), tr("How far the axle pitches when the brakes twist its springs.")}},
      {"shake",
       {tr("Cab along, across, up"),
        tr("How far the cab has moved on its mounts: forward, to the left and up are positive.")}},
      {"cycle",
       {tr("Motion to play"), tr("Lock to lock, bump and droop, or both, once round from where the "
                                 "truck stands.")}},
      {"play", {tr("Play"), tr("Plays the chosen motion, or holds it where it is.")}},
      {"fold", {tr("Fold the motion desk"), tr("To one row: what is moved, in words.")}},
      {"unfold", {tr("Unfold the motion desk"), tr("Back to all levers and the hand wheel.")}},
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
