#include "ui/windows/glossary.h"

#include <QCoreApplication>
#include <algorithm>

namespace tackbench::ui {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("Glossary", text);
}

std::vector<GlossaryWord> hand_to_box() {
  return {
      {tr("assist"), tr("power assistance, assist cut-off"),
       tr("What pushes along with the hands. Its cut-off stops it before the lock ends, so that it "
          "does not push against the stop.")},
      {tr("arm"), tr("pitman arm, drop arm"),
       tr("The lever on the box's output; the drag link, or the first relay, hangs on it.")},
      {tr("box"), tr("steering box, steering gear"),
       tr("Turns the shaft's many turns into the arm's small angle. Its input is where the shaft "
          "comes in. Its own centre is where it has as much travel left as right.")},
      {tr("cab shake"), tr("cab along, across, up"),
       tr("How far the cab moves on its mounts: forward, to the left, up.")},
      {tr("clocking"), tr("phasing"),
       tr("How the yokes at a shaft's two ends stand to each other about the shaft; set wrong, the "
          "box's input speeds up and slows down twice a turn. Of a ball stud: how its housing is "
          "turned about the link.")},
      {tr("column"), tr("steering column"),
       tr("From the hand wheel to the first joint of the shaft line.")},
      {tr("couple"), tr("secondary couple"),
       tr("The bending that a joint at an angle puts into its shafts.")},
      {tr("double-D"), tr("DD shaft"), tr("A round shaft with two flats, gripped by its yoke.")},
      {tr("engagement"), tr("overlap"),
       tr("How much of a slip's two halves, or of a thread and its tube, lies in each other.")},
      {tr("hand wheel"), tr("steering wheel"),
       tr("What the driver holds; counted in turns and degrees from straight ahead, left "
          "positive.")},
      {tr("joint"), tr("universal joint, cardan joint"),
       tr("A cross between two yokes; it bends a shaft and makes its speed ripple.")},
      {tr("play"), tr("free play, lash"),
       tr("Movement before anything follows. A rod wants a little before it moves its piston.")},
      {tr("ripple"),
       {},
       tr("The speed of the box input over that of the hand wheel, going up and "
          "down twice a turn.")},
      {tr("rod end"), tr("spherical eye"),
       tr("A ball in an eye with a shank; it locates a point and lets it tilt.")},
      {tr("shaft line"), {}, tr("All shafts and joints between the column and the box.")},
      {tr("slip"), tr("sliding shaft, slip home"),
       tr("Two halves of a shaft that slide in each other so that cab and box may move; home when "
          "it can close no further.")},
      {tr("spline"), tr("serration"),
       tr("Teeth that carry torque; they allow clocking only in steps of one tooth.")},
      {tr("support"), tr("support bearing"),
       tr("Holds a shaft between its joints: a rod end holds a point, a block holds the line.")},
      {tr("wander"), tr("free to wander"),
       tr("A shaft whose joints can move sideways because nothing holds them.")},
      {tr("yoke"), tr("fork"), tr("What holds the cross of a joint, one on either shaft.")},
  };
}

std::vector<GlossaryWord> link_to_road() {
  return {
      {tr("Ackermann"),
       {},
       tr("How much more the inner wheel steers than the outer, against the "
          "share at which both roll about one centre.")},
      {tr("axle"), tr("beam axle"), tr("One beam that carries both front wheels.")},
      {tr("ball stud"), tr("ball joint"),
       tr("A ball with a tapered stud at the end of a link. Its swing is how far it tilts in its "
          "housing.")},
      {tr("bump and droop"), tr("jounce, rebound, full bump, full droop"),
       tr("A wheel going up from ride height, and down.")},
      {tr("bump steer"), tr("steer by itself"),
       tr("Steering that nobody asked for, when the axle rises or falls.")},
      {tr("caster"), tr("castor"), tr("How far the kingpin leans back, seen from the side.")},
      {tr("drag link"), tr("pull-and-push rod"),
       tr("From the arm of the box, or the last relay, to one knuckle.")},
      {tr("effective angle"), tr("transmission angle"),
       tr("Between a link and the lever that it pushes; 90 degrees is best, 0 is toggle.")},
      {tr("kickback"), {}, tr("The hand wheel turned by the axle's travel.")},
      {tr("kingpin"), tr("swivel pin"), tr("What a front wheel's knuckle turns about.")},
      {tr("knuckle"), tr("stub axle, swivel"),
       tr("Carries a front wheel and turns about the kingpin; its steering arm is pushed by the "
          "drag link, the other by the tie rod.")},
      {tr("laden"), tr("empty"), tr("With its load; how high the axle then stands.")},
      {tr("lever"),
       {},
       tr("What turns about a pivot: an arm, a relay, a pedal. On the motion "
          "desk: a control to be pushed up and down.")},
      {tr("link"), {}, tr("A rod with a ball at each end.")},
      {tr("lock"), tr("full left, full right, lock to lock"),
       tr("The end of the steering to one side, whatever ends it.")},
      {tr("lock stop"), tr("axle stop"),
       tr("A bolt on the knuckle that meets a pad on the axle and ends the lock before anything "
          "dearer does.")},
      {tr("relay"), tr("idler, bell-crank"), tr("A lever between the arm and the drag link.")},
      {tr("ride height"), {}, tr("Where the truck stands by itself on level ground.")},
      {tr("roll"), {}, tr("One wheel up and the other down, left wheel up positive.")},
      {tr("roll steer"), {}, tr("Steering that nobody asked for, when the axle rolls.")},
      {tr("shackle"), {}, tr("The swinging end of a leaf spring.")},
      {tr("steer"), tr("road wheels, inner wheel, outer wheel"),
       tr("Where a road wheel's plane points, from straight ahead, left positive. Not the turn "
          "about the kingpin, which leans.")},
      {tr("tie rod"), tr("track rod"), tr("From one knuckle to the other.")},
      {tr("toe"), {}, tr("Wheels that point a little together; toe-in is positive.")},
      {tr("toggle"), tr("over centre"),
       tr("Lever and link in one line: the link can no longer say which way the lever goes.")},
      {tr("track"), {}, tr("From the middle of one front tyre to that of the other.")},
      {tr("turning circle"), tr("kerb to kerb, wall to wall"),
       tr("The least circle that the outer tyre, or the outermost corner, runs on.")},
      {tr("wind-up"), tr("brake wind-up"),
       tr("The axle's pitch when the brakes twist its springs.")},
  };
}

std::vector<GlossaryWord> around_it() {
  return {
      {tr("booster"), tr("servo"), tr("Multiplies the foot's force on a brake's rod.")},
      {tr("cross-member"), {}, tr("From one chassis rail to the other.")},
      {tr("firewall"), tr("bulkhead"), tr("The wall between cab and engine.")},
      {tr("full stroke"), tr("release stroke"),
       tr("How far a master cylinder's piston can go; a brake needs all of it when one circuit is "
          "lost. A clutch needs the stroke at which it lets go.")},
      {tr("heel point"), {}, tr("Where the driver's heel rests on the floor.")},
      {tr("master cylinder"), {}, tr("The cylinder that a pedal's rod pushes.")},
      {tr("pad"),
       {},
       tr("What the foot presses, at the end of a pedal; also what a stop bolt "
          "meets on the axle.")},
      {tr("pedal ratio"), tr("pad travel, rod travel"),
       tr("Pad travel over rod travel: how many times the foot's force reaches the rod.")},
      {tr("pedal"), tr("brake, clutch, accelerator"),
       tr("A lever for a foot; pressed 0 % at rest, 100 % at its own stop.")},
      {tr("rail"), tr("chassis rail, frame rail"),
       tr("One of the two beams of the chassis. Heights count from their top.")},
      {tr("rod"), tr("pushrod, push rod"), tr("From a pedal to its cylinder or booster.")},
  };
}

std::vector<GlossaryWord> our_own() {
  return {
      {tr("common practice"), tr("from memory"),
       tr("A limit that is a rule of the trade, not law: change it to your own.")},
      {tr("controls"), tr("motion desk"),
       tr("What moves the build: hand wheel, bump, wind-up, cab shake and pedals.")},
      {tr("cut list"), {}, tr("The parts to make, dimensioned.")},
      {tr("finding"),
       {},
       tr("One answer about the build: its number, its limit, its verdict and "
          "where it is worst.")},
      {tr("margin"), {}, tr("What is left to a limit, or what is missing.")},
      {tr("point"), {}, tr("A named place of the build that can be dragged or typed.")},
      {tr("projection"), tr("first angle, third angle"),
       tr("Which view stands on which side of the sheet.")},
      {tr("station"),
       {},
       tr("A group of the build in the order in which motion flows from hand to "
          "road, or around it.")},
      {tr("stretch pair"),
       {},
       tr("Two points whose least and greatest distance matter: a damper, "
          "a hose, a strap.")},
      {tr("swept places"), tr("envelope"),
       tr("Where the moving parts get to at full lock and at the ends of the axle's travel.")},
      {tr("verdict"), tr("within, close, past, not judged"),
       tr("Within its limit; within but beyond its inner value; beyond its limit; or not judged "
          "because a limit or a measure is missing. None of them says that a part is fit for the "
          "road.")},
      {tr("view in space"), tr("from the left, the front, above, a corner"),
       tr("The truck as solids on a card of its own; drag to go round it.")},
  };
}

}  // namespace

std::vector<GlossaryWord> glossary() {
  std::vector<GlossaryWord> all = hand_to_box();
  for (const auto& more : {link_to_road(), around_it(), our_own()})
    all.insert(all.end(), more.begin(), more.end());
  std::sort(all.begin(), all.end(), [](const GlossaryWord& a, const GlossaryWord& b) {
    return QString::localeAwareCompare(a.word.toLower(), b.word.toLower()) < 0;
  });
  return all;
}

}  // namespace tackbench::ui
