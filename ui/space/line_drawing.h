// The scene as a lit hidden-line drawing, by the processor alone.
#pragma once

#include <QPainter>
#include <vector>

#include "ui/look/palette.h"
#include "ui/space/depth_picture.h"
#include "ui/space/space_shown.h"

namespace tackbench::ui {

class LineDrawing {
 public:
  // `size` in the painter's own pixels, each of `ratio` times as many on the device.
  void paint(QPainter& painter, const QSize& size, double ratio, const SpaceShown& shown,
             const Palette& colours);
  const DepthPicture& picture() const { return picture_; }

 private:
  struct Corner {
    PictureCorner at;
    Vec3 in_eye_mm = Vec3::Zero();  // right, up, towards the eye, from the eye
    bool before_eye = false;
  };
  struct Stroke {
    QColor colour;
    double width = 1.0;
    std::vector<QLineF> lines;
  };

  void fill_solids(const SpaceShown& shown, const Palette& colours);
  void add_all_edges(const SpaceShown& shown, const Palette& colours);
  void place_corners(const Mesh& mesh, const SceneMotion& motion);
  void fill_faces(const Mesh& mesh, const QColor& colour, double cover);
  void add_edges(const Mesh& mesh, const SceneMotion& motion, Stroke& stroke);
  void add_seen(const Vec3& from_mm, const Vec3& to_mm, std::vector<QLineF>& lines);
  void stain_ground(const SpaceShown& shown, const Palette& colours);
  void draw_ground(QPainter& painter, const SpaceShown& shown, const Palette& colours);
  void draw_held_line(QPainter& painter, const HeldLine& held, const Palette& colours);
  void draw_points(QPainter& painter, const SpaceShown& shown, const Palette& colours);
  Corner corner_of(const Vec3& chassis_mm) const;
  Stroke& stroke_of(const QColor& colour, double width);

  DepthPicture picture_;
  std::vector<Corner> corners_;  // of the mesh in hand
  std::vector<Stroke> strokes_;
  Camera camera_;
  PictureSize size_;
  double ratio_ = 1.0;
  Mat3 eye_axes_ = Mat3::Identity();  // rows: right, up, towards the eye
  double pixels_a_unit_ = 1.0;
};

// Lines of a grid on the ground about the truck, chassis, mm: pairs of ends.
std::vector<std::pair<Vec3, Vec3>> ground_lines(const Scene& scene);

}  // namespace tackbench::ui
