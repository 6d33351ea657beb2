// How solids, their edges and the points look by OpenGL: shaders and the passes they belong to.
#pragma once

#include <Qt3DRender/QMaterial>
#include <Qt3DRender/QParameter>
#include <Qt3DRender/QRenderPassFilter>

#include "ui/look/palette.h"

namespace tackbench::ui {

// Passes in the order in which they are drawn.
enum class SpacePass { shadow, ground, outline, solid, soft, marks };

Qt3DRender::QRenderPassFilter* pass_filter(SpacePass pass, Qt3DCore::QNode* parent);

// One of each for the whole scene; colours of faces and edges come with the vertices.
class SolidMaterials {
 public:
  explicit SolidMaterials(Qt3DCore::QNode* parent);

  Qt3DRender::QMaterial& solid() { return *solid_; }  // shadow, outline, faces
  Qt3DRender::QMaterial& soft() { return *soft_; }    // faces that let through what is behind
  Qt3DRender::QMaterial& ghost() { return *ghost_; }  // one colour, more of it at the rims
  Qt3DRender::QMaterial& edges() { return *edges_; }
  Qt3DRender::QMaterial& ground() { return *ground_; }
  Qt3DRender::QMaterial& points() { return *points_; }
  Qt3DRender::QMaterial& lines() { return *lines_; }  // over everything

  void set_picture(const QSizeF& device_pixels, double ratio);
  void set_ghosts(const QColor& colour);
  void set_ground(double z_mm, bool seen, const QColor& shadow);

 private:
  Qt3DRender::QMaterial* solid_;
  Qt3DRender::QMaterial* soft_;
  Qt3DRender::QMaterial* ghost_;
  Qt3DRender::QMaterial* edges_;
  Qt3DRender::QMaterial* ground_;
  Qt3DRender::QMaterial* points_;
  Qt3DRender::QMaterial* lines_;
  Qt3DRender::QParameter* pixel_;
  Qt3DRender::QParameter* ratio_;
  Qt3DRender::QParameter* ground_z_;
  Qt3DRender::QParameter* shadow_;
  Qt3DRender::QParameter* ghost_colour_;
};

}  // namespace tackbench::ui
