// A project of our own that has a bit of everything the tests of the reader want to break.
#pragma once

#include <string>

namespace tackbench::testing {

// A whole text in the current format; dimensions invented.
inline std::string small_project_text() {
  return R"({
  "tackbench_format": 1,
  "name": "yard tender",
  "column": {
    "hand_wheel_centre_mm": [-900, 480, 900],
    "output_end_mm": [-300, 470, 550],
    "bearings": [
      {"name": "upper", "from_hand_wheel_mm": 120},
      {"name": "lower", "from_hand_wheel_mm": 600, "kind": "bush"}
    ]
  },
  "shaft_line": {
    "joints": [
      {"name": "upper joint", "centre_mm": [-280, 470, 540], "rides_on": "cab"},
      {"name": "lower joint", "centre_mm": [300, 450, 60]}
    ],
    "shafts": [{"name": "shaft", "slip": "double_d", "fork_offset_deg": 12.5}],
    "supports": [{"name": "upper eye", "shaft": 0, "eye_mm": [0, 460, 300], "swing_limit_deg": 15}]
  },
  "steering_box": {
    "input_end_mm": [320, 450, 40],
    "input_axis": [0.8, 0, -0.6],
    "output_point_mm": [400, 520, -40],
    "output_axis": [0, 1, 0],
    "left_turns_arm": "clockwise",
    "ratio_table": [{"input_deg": -300, "ratio": 20}, {"input_deg": 300, "ratio": 22}],
    "arm": {"length_mm": 180},
    "travel_left_deg": 45,
    "travel_right_deg": 44
  },
  "drag_link": {
    "knuckle_ball_mm": [20, 620, -160],
    "tube": {"outside_diameter_mm": 35, "wall_mm": 5},
    "arm_end": {"stud_axis": [0, 3, 4], "thread": {"diameter_mm": 20, "pitch_mm": 1.5, "hand": "left"}}
  },
  "front_axle": {
    "track_mm": 1800,
    "wheel_centre_height_mm": -200,
    "tyre": {"diameter_mm": 900, "width_mm": 255, "loaded_radius_mm": 430},
    "left_knuckle": {
      "kingpin_point_mm": [0, 800, -200],
      "kingpin_inclination_deg": 6,
      "caster_deg": 3,
      "tie_rod_ball_mm": [-150, 740, -200],
      "stops": [
        {"name": "left stop", "lock": "left", "tip_centre_mm": [-80, 700, -200],
         "bolt_axis": [-1, 0, 0], "pad_centre_mm": [-120, 650, -200],
         "pad_normal_direction": [1, 0, 0]}
      ]
    },
    "suspension": {"kind": "leaf", "bump_mm": 80, "droop_mm": 80,
      "leaf": {"fixed_eye_mm": [600, 425, -60], "seat_mm": [0, 425, -120],
               "fixed_half_mm": 600, "shackle_half_mm": 600}},
    "road": {"wheelbase_mm": 3300, "body_corners_mm": [[900, 1000, 0], [900, -1000, 0]]}
  },
  "measurements": {
    "datums": [{"name": "rail bolt", "at_mm": [0, 430, 0]}],
    "tapes": [{"name": "1", "from": "rail bolt", "to": "steering_box.input_end_mm",
               "distance_mm": 324}]
  }
}
)";
}

// The same with one piece replaced; fails the program when the piece is not there.
inline std::string small_project_with(const std::string& piece, const std::string& replacement) {
  std::string text = small_project_text();
  return text.replace(text.find(piece), piece.size(), replacement);  // throws when not found
}

}  // namespace tackbench::testing
