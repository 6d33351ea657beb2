// How the project wants to be shown: units, projection, photographs behind the views, notes.
#pragma once

#include "core/basics/shown_number.h"
#include "core/project/common.h"

namespace tackbench {

enum class Projection { first_angle, third_angle };
enum class SheetView { side, front, plan };

// A photograph behind a view, placed by two points of known distance and a level line.
struct Backdrop {
  std::string name;
  SheetView view = SheetView::side;
  FileReference file;
  Vec3 first_pixel = Vec3::Zero();  // x, y in pixels, z unused
  Vec3 second_pixel = Vec3::Zero();
  Vec3 first_point = Vec3::Zero();  // where the first pixel lies, chassis frame, mm
  double known_distance = 1000.0;   // between the two, mm
  double level_angle = 0.0;         // the picture's turn, rad
  double fade = 0.5;                // 0 gone to 1 full
  bool locked = false;
  UnknownMembers unknown;
};

// A measured distance or angle kept on the sheet.
struct SheetNote {
  std::string name;
  std::string from;
  std::string corner;  // of an angle; empty for a distance
  std::string to;
  std::string text;
  UnknownMembers unknown;
};

// What a bare start was told; it sets the faint truck behind what is not measured yet.
struct StartOfProject {
  Side drive = Side::left;  // which side the hand wheel and the box are on
  bool box_ahead = false;   // of the front axle
  std::string moved;        // what is moved, in the builder's words
  UnknownMembers unknown;
};

struct SheetSettings {
  ShownUnit unit = ShownUnit::millimetre;
  Projection projection = Projection::first_angle;
  std::vector<Backdrop> backdrops;
  std::vector<SheetNote> notes;
  std::optional<StartOfProject> start;
  UnknownMembers unknown;
};

}  // namespace tackbench
