// A Project becomes a Mechanism: parts that are measured are compiled, what they lack is listed.
#include "core/mechanism/compile_parts.h"
#include "core/mechanism/solve.h"

namespace tackbench {

namespace {

void note_missing(const Project& project, Mechanism& mechanism) {
  const auto need = [&mechanism](bool there, const char* place, const char* words) {
    if (!there) mechanism.missing.push_back({place, words});
  };
  need(project.column != nullptr, "column",
       "measure the hand wheel's centre and the column's lower end");
  need(project.steering_box != nullptr, "steering_box",
       "measure the box: input end, output axis, arm, ratio and travel");
  if (project.steering_box) {
    need(project.steering_box->left_turns_arm.has_value(), "steering_box.left_turns_arm",
         "read off the box which way its output shaft goes when the hand wheel turns left");
  }
  need(project.drag_link != nullptr, "drag_link",
       "measure the steering-arm ball that the drag link drives");
  need(project.front_axle != nullptr, "front_axle",
       "measure the axle: kingpins, track, tie rod, tyres and springs");
}

void compile_steering(const Project& project, Mechanism& mechanism, Problems& problems) {
  if (!project.steering_box || !project.steering_box->left_turns_arm || !project.drag_link ||
      !project.front_axle) {
    return;
  }
  Steering steering;
  steering.driven_side = project.drag_link->knuckle;
  compile_box_and_relays(*project.steering_box, steering, problems);
  compile_knuckles(*project.front_axle, mechanism.suspension->origin_mm, steering, problems);
  if (!problems.empty()) return;
  const Placement<Chassis, Axle> at_ride = chassis_from_axle(*mechanism.suspension, AxlePose{});
  compile_drag_link(*project.drag_link, at_ride, steering, problems);
  mechanism.steering = std::move(steering);
}

void compile_pedals(const Project& project, Mechanism& mechanism, Problems& problems) {
  if (!project.pedals) return;
  for (std::size_t i = 0; i < project.pedals->pedals.size(); ++i) {
    if (i >= kMostPedals) break;  // the reader refuses more than three
    Result<PedalLinkage> pedal = compile_pedal(project.pedals->pedals[i]);
    if (pedal) {
      mechanism.pedals.push_back(std::move(pedal).value());
      continue;
    }
    for (Problem problem : pedal.problems()) {
      problem.place = "pedals.pedals[" + std::to_string(i) + "]." + problem.place;
      problems.push_back(std::move(problem));
    }
  }
}

}  // namespace

Result<Mechanism> compile(const Project& project) {
  Mechanism mechanism;
  Problems problems;
  mechanism.project = project;
  if (project.cab) mechanism.chassis_from_cab = chassis_from_cab(*project.cab);
  note_missing(project, mechanism);

  if (project.column && project.steering_box) {
    Result<ShaftLine> line = compile_shaft_line(project);
    if (line) {
      mechanism.shaft_line = std::move(line).value();
    } else {
      problems.insert(problems.end(), line.problems().begin(), line.problems().end());
    }
  }
  if (project.front_axle) {
    for (Problem& problem : suspension_faults(*project.front_axle)) {
      problem.place = "front_axle." + problem.place;
      problems.push_back(std::move(problem));
    }
    mechanism.suspension = compile_suspension(*project.front_axle);
  }
  Problems steering_problems;
  compile_steering(project, mechanism, steering_problems);
  problems.insert(problems.end(), steering_problems.begin(), steering_problems.end());
  compile_pedals(project, mechanism, problems);
  if (!problems.empty()) return problems;
  return mechanism;
}

Pose blank_pose(const Mechanism& mechanism) {
  Pose pose;
  if (mechanism.steering) pose.steering.relays.resize(mechanism.steering->relays.size());
  pose.pedal_count = static_cast<int>(mechanism.pedals.size());
  return pose;
}

}  // namespace tackbench
