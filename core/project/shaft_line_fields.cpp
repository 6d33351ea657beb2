#include "core/project/field_visitor.h"
#include "core/project/fields.h"

namespace tackbench {

void visit_fields(FieldVisitor& v, ShaftJoint& r) {
  v.text(name_field(), r.name);
  v.choice(label("kind", "kind of joint"), r.kind);
  v.choice(label("rides_on", "body that carries the joint", "chassis or cab; frame of its centre"),
           r.rides_on);
  v.vector(required(place("centre_mm", "joint centre", "in the frame of rides_on")), r.centre);
  v.number(mm("cross_spacing_mm", 10, 300, "cross spacing", "double joints: between the crosses"),
           r.cross_spacing);
  v.optional_number(deg("angle_limit_deg", 0.1, 90, "joint angle limit", "from the maker's sheet"),
                    r.angle_limit);
  v.number(mm("yoke_depth_mm", 0, 200, "yoke depth",
              "joint centre to the end face of the shaft in its yoke"),
           r.yoke_depth);
  v.number(mm("grip_length_mm", 0, 200, "grip length", "of shaft inside the yoke's bore"),
           r.grip_length);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, Shaft& r) {
  v.text(name_field(), r.name);
  v.choice(label("slip", "slip", "what slides between the two halves"), r.slip);
  v.group(label("section", "section where the yokes grip"), r.section);
  v.number(mm("outside_diameter_mm", 5, 150, "outside diameter", "of the plain length"),
           r.outside_diameter);
  v.number(mm("inside_diameter_mm", 0, 149, "inside diameter", "0 for a bar"), r.inside_diameter);
  v.number(deg("fork_offset_deg", -360, 360, "fork offset",
               "from the pin of the hand-side yoke to the pin of the road-side yoke, right-handed "
               "about the shaft from hand to road; 0 = aligned"),
           r.fork_offset);
  v.optional_number(mm("engagement_mm", 0, 1000, "engagement", "slip: overlap as drawn"),
                    r.engagement);
  v.optional_number(mm("engagement_least_mm", 0, 1000, "least engagement",
                       "slip: wanted; without it 1.5 diameters (common practice)"),
                    r.engagement_least);
  v.optional_number(mm("slide_in_left_mm", 0, 1000, "slide left to close",
                       "slip: how far it can still close as drawn"),
                    r.slide_in_left);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, ShaftSupport& r) {
  v.text(name_field(), r.name);
  v.choice(label("kind", "kind of support"), r.kind);
  v.whole(count("shaft", 0, 2, "number of the shaft that it carries",
                "0 = the shaft after the first joint"),
          r.shaft);
  v.flag(label("collar", "collar", "holds the shaft lengthways too"), r.collar);
  v.flag(label("on_road_half", "seat on the road half", "slip shafts: on the half at the road end"),
         r.on_road_half);
  v.choice(
      label("rides_on", "body that carries the support", "chassis or cab; frame of eye and base"),
      r.rides_on);
  v.vector(required(place("eye_mm", "centre of the eye", "in the frame of rides_on")), r.eye);
  v.vector(place("base_mm", "middle of the bracket's foot", "in the frame of rides_on"), r.base);
  v.number(mm("bore_mm", 3, 100, "bore of the eye", "a spacer sleeve fills what is over"), r.bore);
  v.number(mm("width_mm", 1, 200, "width of the eye", "along the shaft"), r.width);
  v.optional_number(deg("swing_limit_deg", 0.1, 90, "swing limit",
                        "tilt of the shaft in the eye, from the maker"),
                    r.swing_limit);
  v.unknown_members(r.unknown);
}

void visit_fields(FieldVisitor& v, ShaftLineStation& r) {
  v.list(label("joints", "joint", "0 to 4, from hand to road"), r.joints);
  v.list(label("shafts", "shaft", "one fewer than joints"), r.shafts);
  v.list(label("supports", "support bearing"), r.supports);
  v.number(deg("first_yoke_clocking_deg", -360, 360, "clocking of the first yoke",
               "pin of the first joint's hand-side yoke at hand-wheel zero, right-handed about the "
               "column axis from the direction square to it nearest to up"),
           r.first_yoke_clocking);
  v.optional_number(mm("push_back_mm", 0, 1000, "push-back",
                       "how far box and firewall are pushed rearward; the builder's choice"),
                    r.push_back);
  v.unknown_members(r.unknown);
}

}  // namespace tackbench
