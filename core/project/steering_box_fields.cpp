#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, RatioRow& r) {
  v.number(required(deg("input_deg", -3600, 3600, "input turn",
                        "from the box's centre, left turn of the hand wheel positive")),
           r.input);
  v.number(required(plain("ratio", 0.05, 100, "ratio", "input turn over output turn there")),
           r.ratio);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, PitmanArm& r) {
  v.number(required(mm("length_mm", 30, 600, "arm length",
                       "output axis to ball centre, square to the axis")),
           r.length);
  v.number(mm("offset_mm", -400, 400, "arm offset",
              "ball centre from the output point along the output axis"),
           r.offset);
  v.number(deg("clocking_deg", -360, 360, "arm clocking",
               "with the box at its centre, right-handed about the output axis from the direction "
               "square to it nearest to down (output axis upright: nearest to rearward)"),
           r.clocking);
  v.optional_whole(count("spline_teeth", 6, 120, "spline tooth count",
                         "sets the steps in which the arm can be clocked"),
                   r.spline_teeth);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Relay& r) {
  v.text(name_field(), r.name);
  v.point(required(place("pivot_mm", "relay pivot", "on its axis")), r.pivot);
  v.axis(required(label("axis", "relay axis")), r.axis);
  v.point(required(place("input_ball_mm", "input ball", "box at its centre, wheels straight")),
          r.input_ball);
  v.point(required(place("output_ball_mm", "output ball", "box at its centre, wheels straight")),
          r.output_ball);
  v.optional_number(mm("link_length_mm", 30, 5000, "length of the link that drives it",
                       "ball to ball; without it as drawn"),
                    r.link_length);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, SteeringBoxStation& r) {
  v.point(required(place("input_end_mm", "end of the input shaft")), r.input_end);
  v.axis(required(label("input_axis", "input axis", "from hand to road")), r.input_axis);
  v.group(label("input", "section of the input shaft"), r.input);
  v.point(
      required(place("output_point_mm", "output point", "on the output axis, where the arm sits")),
      r.output_point);
  v.axis(required(label("output_axis", "output axis", "out of the box through the arm")),
         r.output_axis);
  v.optional_choice(label("left_turns_arm", "way the arm turns when the hand wheel turns left",
                          "seen from the arm's side; read it off the box"),
                    r.left_turns_arm);
  v.optional_number(
      plain("ratio", 0.05, 100, "ratio", "input over output turn where there is no table"),
      r.ratio);
  v.list(label("ratio_table", "row of the ratio table", "by rising input; empty = constant ratio"),
         r.ratio_table);
  v.number(required(deg("travel_left_deg", 0, 180, "travel to the left",
                        "output turn from the box's centre to its end")),
           r.travel_left);
  v.number(required(deg("travel_right_deg", 0, 180, "travel to the right",
                        "output turn from the box's centre to its end")),
           r.travel_right);
  v.optional_number(deg("assist_cut_left_deg", 0, 180, "assist cut-off to the left",
                        "output turn from the box's centre"),
                    r.assist_cut_left);
  v.optional_number(deg("assist_cut_right_deg", 0, 180, "assist cut-off to the right",
                        "output turn from the box's centre"),
                    r.assist_cut_right);
  v.group(required(label("arm", "pitman arm")), r.arm);
  v.list(label("relays", "relay", "in order of motion"), r.relays);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
