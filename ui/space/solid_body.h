// Meshes as buffers for OpenGL, with one colour of face and edge for each piece.
#pragma once

#include <Qt3DCore/QAttribute>
#include <Qt3DCore/QBuffer>
#include <Qt3DCore/QEntity>
#include <Qt3DCore/QTransform>
#include <Qt3DRender/QGeometryRenderer>
#include <memory>
#include <string>
#include <vector>

#include "ui/look/palette.h"
#include "ui/space/solid_material.h"
#include "ui/space/space_shown.h"

namespace tackbench::ui {

// Any number of vertices drawn as points or pairs of ends; all of it may be given anew.
class VertexList {
 public:
  struct Vertex {
    Vec3 at_mm = Vec3::Zero();
    QColor face;
    QColor line;
    double size = 0.0;  // of a point, pixels
  };
  enum class Kind { points, lines };

  VertexList(Kind kind, Qt3DRender::QMaterial& material, Qt3DCore::QEntity& parent);
  void set(const std::vector<Vertex>& vertices);

 private:
  Qt3DCore::QEntity* entity_;
  Qt3DCore::QBuffer* buffer_;
  std::vector<Qt3DCore::QAttribute*> attributes_;
  Qt3DRender::QGeometryRenderer* renderer_;
};

// One body of the scene: its pieces in one mesh, moved by one transform.
class SolidBody {
 public:
  SolidBody(const SceneBody& body, SolidMaterials& materials, Qt3DCore::QEntity& parent);
  SolidBody(const SolidBody&) = delete;
  SolidBody& operator=(const SolidBody&) = delete;
  ~SolidBody();

  void move(const SceneMotion& motion);
  // Shows the coarse or the fine meshes of `body`, the one it was made of or its like; they become
  // buffers when they are first shown.
  void set_detail(const SceneBody& body, bool coarse);
  void paint(const Palette& colours, const std::string& selected);
  // Coarse faces of its solid pieces, to be shown in more places; null without any.
  Qt3DRender::QGeometryRenderer* coarse_faces() const;

 private:
  struct Span {
    std::string part;
    SceneRole role = SceneRole::fixed;
    int vertices = 0;
    int line_ends = 0;
  };
  // Pieces of one kind in one detail.
  struct Part {
    Qt3DCore::QEntity* faces = nullptr;
    Qt3DRender::QGeometryRenderer* renderer = nullptr;  // of the faces
    Qt3DCore::QEntity* lines = nullptr;
    Qt3DCore::QBuffer* face_colours = nullptr;  // of face and outline
    Qt3DCore::QBuffer* line_colours = nullptr;
    std::vector<Span> spans;
    bool soft = false;
    bool coarse = false;
  };

  void add(const SceneBody& body, bool soft, bool coarse);

  SolidMaterials& materials_;
  Qt3DCore::QEntity* entity_;
  Qt3DCore::QTransform* transform_;
  std::vector<Part> parts_;
};

// Bodies where they could be, as translucent faces without buffers of their own. To be gone before
// the bodies that they show.
class SolidGhosts {
 public:
  SolidGhosts(Qt3DRender::QMaterial& material, Qt3DCore::QEntity& parent)
      : material_(material), parent_(parent) {}

  void show(const std::vector<SpaceGhost>& ghosts,
            const std::vector<std::unique_ptr<SolidBody>>& bodies);
  void clear();

 private:
  Qt3DRender::QMaterial& material_;
  Qt3DCore::QEntity& parent_;
  std::vector<SpaceGhost> shown_;
  std::vector<Qt3DCore::QEntity*> entities_;
};

// The same pieces with the same meshes: nothing of it has to be made anew.
bool alike(const SceneBody& a, const SceneBody& b);

}  // namespace tackbench::ui
