#include "ui/windows/glossary.h"

#include <QCoreApplication>
#include <algorithm>

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Glossary)
};

std::vector<GlossaryWord> hand_to_box() {
  return {
      {Texts::tr("assist"), Texts::tr("power assistance, assist cut-off"),
       Texts::tr("What pushes along with the hands. Its cut-off stops it before the lock ends, so "
                 "that it "
                 "does not push against the stop.")},
      {Texts::tr("arm"), Texts::tr("pitman arm, drop arm"),
       Texts::tr("The lever on the box's output; the drag link, or the first relay, hangs on it.")},
      {Texts::tr("box"), Texts::tr("steering box, steering gear"),
       Texts::tr(
           "Turns the shaft's many turns into the arm's small angle. Its input is where the shaft "
           "comes in. Its own centre is where it has as much travel left as right.")},
      {Texts::tr("cab shake"), Texts::tr("cab along, across, up"),
       Texts::tr("How far the cab moves on its mounts: forward, to the left, up.")},
      {Texts::tr("clocking"), Texts::tr("phasing"),
       Texts::tr(
           "How the yokes at a shaft's two ends stand to each other about the shaft; set wrong, "
           "the "
           "box's input speeds up and slows down twice a turn. Of a ball stud: how its housing is "
           "turned about the link.")},
      {Texts::tr("column"), Texts::tr("steering column"),
       Texts::tr("From the hand wheel to the first joint of the shaft line.")},
      {Texts::tr("couple"), Texts::tr("secondary couple"),
       Texts::tr("The bending that a joint at an angle puts into its shafts.")},
      {Texts::tr("double-D"), Texts::tr("DD shaft"),
       Texts::tr("A round shaft with two flats, gripped by its yoke.")},
      {Texts::tr("engagement"), Texts::tr("overlap"),
       Texts::tr(
           "How much of a slip's two halves, or of a thread and its tube, lies in each other.")},
      {Texts::tr("hand wheel"), Texts::tr("steering wheel"),
       Texts::tr("What the driver holds; counted in turns and degrees from straight ahead, left "
                 "positive.")},
      {Texts::tr("joint"), Texts::tr("universal joint, cardan joint"),
       Texts::tr("A cross between two yokes; it bends a shaft and makes its speed ripple.")},
      {Texts::tr("play"), Texts::tr("free play, lash"),
       Texts::tr(
           "Movement before anything follows. A rod wants a little before it moves its piston.")},
      {Texts::tr("ripple"),
       {},
       Texts::tr("The speed of the box input over that of the hand wheel, going up and "
                 "down twice a turn.")},
      {Texts::tr("rod end"), Texts::tr("spherical eye"),
       Texts::tr("A ball in an eye with a shank; it locates a point and lets it tilt.")},
      {Texts::tr("shaft line"),
       {},
       Texts::tr("All shafts and joints between the column and the box.")},
      {Texts::tr("slip"), Texts::tr("sliding shaft, slip home"),
       Texts::tr(
           "Two halves of a shaft that slide in each other so that cab and box may move; home when "
           "it can close no further.")},
      {Texts::tr("spline"), Texts::tr("serration"),
       Texts::tr("Teeth that carry torque; they allow clocking only in steps of one tooth.")},
      {Texts::tr("support"), Texts::tr("support bearing"),
       Texts::tr(
           "Holds a shaft between its joints: a rod end holds a point, a block holds the line.")},
      {Texts::tr("wander"), Texts::tr("free to wander"),
       Texts::tr("A shaft whose joints can move sideways because nothing holds them.")},
      {Texts::tr("yoke"), Texts::tr("fork"),
       Texts::tr("What holds the cross of a joint, one on either shaft.")},
  };
}

std::vector<GlossaryWord> link_to_road() {
  return {
      {Texts::tr("Ackermann"),
       {},
       Texts::tr("How much more the inner wheel steers than the outer, against the "
                 "share at which both roll about one centre.")},
      {Texts::tr("axle"), Texts::tr("beam axle"),
       Texts::tr("One beam that carries both front wheels.")},
      {Texts::tr("ball stud"), Texts::tr("ball joint"),
       Texts::tr(
           "A ball with a tapered stud at the end of a link. Its swing is how far it tilts in its "
           "housing.")},
      {Texts::tr("bump and droop"), Texts::tr("jounce, rebound, full bump, full droop"),
       Texts::tr("A wheel going up from ride height, and down.")},
      {Texts::tr("bump steer"), Texts::tr("steer by itself"),
       Texts::tr("Steering that nobody asked for, when the axle rises or falls.")},
      {Texts::tr("caster"), Texts::tr("castor"),
       Texts::tr("How far the kingpin leans back, seen from the side.")},
      {Texts::tr("drag link"), Texts::tr("pull-and-push rod"),
       Texts::tr("From the arm of the box, or the last relay, to one knuckle.")},
      {Texts::tr("effective angle"), Texts::tr("transmission angle"),
       Texts::tr("Between a link and the lever that it pushes; 90 degrees is best, 0 is toggle.")},
      {Texts::tr("kickback"), {}, Texts::tr("The hand wheel turned by the axle's travel.")},
      {Texts::tr("kingpin"), Texts::tr("swivel pin"),
       Texts::tr("What a front wheel's knuckle turns about.")},
      {Texts::tr("knuckle"), Texts::tr("stub axle, swivel"),
       Texts::tr(
           "Carries a front wheel and turns about the kingpin; its steering arm is pushed by the "
           "drag link, the other by the tie rod.")},
      {Texts::tr("laden"), Texts::tr("empty"),
       Texts::tr("With its load; how high the axle then stands.")},
      {Texts::tr("lever"),
       {},
       Texts::tr("What turns about a pivot: an arm, a relay, a pedal. On the motion "
                 "desk: a control to be pushed up and down.")},
      {Texts::tr("link"), {}, Texts::tr("A rod with a ball at each end.")},
      {Texts::tr("lock"), Texts::tr("full left, full right, lock to lock"),
       Texts::tr("The end of the steering to one side, whatever ends it.")},
      {Texts::tr("lock stop"), Texts::tr("axle stop"),
       Texts::tr(
           "A bolt on the knuckle that meets a pad on the axle and ends the lock before anything "
           "dearer does.")},
      {Texts::tr("relay"), Texts::tr("idler, bell-crank"),
       Texts::tr("A lever between the arm and the drag link.")},
      {Texts::tr("ride height"),
       {},
       Texts::tr("Where the truck stands by itself on level ground.")},
      {Texts::tr("roll"),
       {},
       Texts::tr("One wheel up and the other down, left wheel up positive.")},
      {Texts::tr("roll steer"),
       {},
       Texts::tr("Steering that nobody asked for, when the axle rolls.")},
      {Texts::tr("shackle"), {}, Texts::tr("The swinging end of a leaf spring.")},
      {Texts::tr("steer"), Texts::tr("road wheels, inner wheel, outer wheel"),
       Texts::tr(
           "Where a road wheel's plane points, from straight ahead, left positive. Not the turn "
           "about the kingpin, which leans.")},
      {Texts::tr("tie rod"), Texts::tr("track rod"), Texts::tr("From one knuckle to the other.")},
      {Texts::tr("toe"), {}, Texts::tr("Wheels that point a little together; toe-in is positive.")},
      {Texts::tr("toggle"), Texts::tr("over centre"),
       Texts::tr(
           "Lever and link in one line: the link can no longer say which way the lever goes.")},
      {Texts::tr("track"),
       {},
       Texts::tr("From the middle of one front tyre to that of the other.")},
      {Texts::tr("turning circle"), Texts::tr("kerb to kerb, wall to wall"),
       Texts::tr("The least circle that the outer tyre, or the outermost corner, runs on.")},
      {Texts::tr("wind-up"), Texts::tr("brake wind-up"),
       Texts::tr("The axle's pitch when the brakes twist its springs.")},
  };
}

std::vector<GlossaryWord> around_it() {
  return {
      {Texts::tr("booster"), Texts::tr("servo"),
       Texts::tr("Multiplies the foot's force on a brake's rod.")},
      {Texts::tr("cross-member"), {}, Texts::tr("From one chassis rail to the other.")},
      {Texts::tr("firewall"), Texts::tr("bulkhead"), Texts::tr("The wall between cab and engine.")},
      {Texts::tr("full stroke"), Texts::tr("release stroke"),
       Texts::tr(
           "How far a master cylinder's piston can go; a brake needs all of it when one circuit is "
           "lost. A clutch needs the stroke at which it lets go.")},
      {Texts::tr("heel point"), {}, Texts::tr("Where the driver's heel rests on the floor.")},
      {Texts::tr("master cylinder"), {}, Texts::tr("The cylinder that a pedal's rod pushes.")},
      {Texts::tr("pad"),
       {},
       Texts::tr("What the foot presses, at the end of a pedal; also what a stop bolt "
                 "meets on the axle.")},
      {Texts::tr("pedal ratio"), Texts::tr("pad travel, rod travel"),
       Texts::tr("Pad travel over rod travel: how many times the foot's force reaches the rod.")},
      {Texts::tr("pedal"), Texts::tr("brake, clutch, accelerator"),
       Texts::tr("A lever for a foot; pressed 0 % at rest, 100 % at its own stop.")},
      {Texts::tr("rail"), Texts::tr("chassis rail, frame rail"),
       Texts::tr("One of the two beams of the chassis. Heights count from their top.")},
      {Texts::tr("rod"), Texts::tr("pushrod, push rod"),
       Texts::tr("From a pedal to its cylinder or booster.")},
  };
}

std::vector<GlossaryWord> our_own() {
  return {
      {Texts::tr("common practice"), Texts::tr("from memory"),
       Texts::tr("A limit that is a rule of the trade, not law: change it to your own.")},
      {Texts::tr("controls"), Texts::tr("motion desk"),
       Texts::tr("What moves the build: hand wheel, bump, wind-up, cab shake and pedals.")},
      {Texts::tr("cut list"), {}, Texts::tr("The parts to make, dimensioned.")},
      {Texts::tr("finding"),
       {},
       Texts::tr("One answer about the build: its number, its limit, its verdict and "
                 "where it is worst.")},
      {Texts::tr("margin"), {}, Texts::tr("What is left to a limit, or what is missing.")},
      {Texts::tr("point"),
       {},
       Texts::tr("A named place of the build that can be dragged or typed.")},
      {Texts::tr("projection"), Texts::tr("first angle, third angle"),
       Texts::tr("Which view stands on which side of the sheet.")},
      {Texts::tr("station"),
       {},
       Texts::tr("A group of the build in the order in which motion flows from hand to "
                 "road, or around it.")},
      {Texts::tr("stretch pair"),
       {},
       Texts::tr("Two points whose least and greatest distance matter: a damper, "
                 "a hose, a strap.")},
      {Texts::tr("swept places"), Texts::tr("envelope"),
       Texts::tr(
           "Where the moving parts get to at full lock and at the ends of the axle's travel.")},
      {Texts::tr("verdict"), Texts::tr("within, close, past, not judged"),
       Texts::tr(
           "Within its limit; within but beyond its inner value; beyond its limit; or not judged "
           "because a limit or a measure is missing. None of them says that a part is fit for the "
           "road.")},
      {Texts::tr("view in space"), Texts::tr("from the left, the front, above, a corner"),
       Texts::tr("The truck as solids on a card of its own; drag to go round it.")},
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
