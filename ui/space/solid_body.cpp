#include "ui/space/solid_body.h"

#include <QMatrix4x4>
#include <Qt3DCore/QGeometry>
#include <algorithm>

#include "core/scene/pick.h"
#include "ui/space/space_colours.h"

namespace tackbench::ui {

namespace {

using Qt3DCore::QAttribute;
using Qt3DCore::QBuffer;
using Qt3DCore::QEntity;
using Qt3DCore::QGeometry;
using Qt3DRender::QGeometryRenderer;

class Floats {
 public:
  void add(const Vec3& v) {
    for (int i = 0; i < 3; ++i) add(v[i]);
  }
  void add(const QColor& colour) {
    values_.insert(values_.end(), {colour.redF(), colour.greenF(), colour.blueF()});
  }
  void add(double value) { values_.push_back(static_cast<float>(value)); }
  QByteArray bytes() const {
    return {reinterpret_cast<const char*>(values_.data()),
            static_cast<qsizetype>(values_.size() * sizeof(float))};
  }

 private:
  std::vector<float> values_;
};

struct Member {
  const char* name;
  int floats;
  int first;  // float of the vertex at which it starts
};

QAttribute* attribute(QGeometry& geometry, QBuffer& buffer, const Member& member, int stride,
                      int count) {
  auto* made = new QAttribute(&geometry);
  made->setName(member.name);
  made->setBuffer(&buffer);
  made->setVertexBaseType(QAttribute::Float);
  made->setVertexSize(static_cast<uint>(member.floats));
  made->setAttributeType(QAttribute::VertexAttribute);
  made->setByteOffset(static_cast<uint>(member.first) * sizeof(float));
  made->setByteStride(static_cast<uint>(stride) * sizeof(float));
  made->setCount(static_cast<uint>(count));
  geometry.addAttribute(made);
  return made;
}

// For `count` corners of `stride` floats each.
QByteArray zero_floats(qsizetype stride, qsizetype count) {
  return {stride * count * static_cast<qsizetype>(sizeof(float)), '\0'};
}

QBuffer* buffer_of(QGeometry& geometry, const QByteArray& bytes) {
  auto* buffer = new QBuffer(&geometry);
  buffer->setData(bytes);
  return buffer;
}

QEntity* entity_of(QGeometry& geometry, QGeometryRenderer::PrimitiveType type,
                   Qt3DRender::QMaterial& material, QEntity& parent) {
  auto* entity = new QEntity(&parent);
  auto* renderer = new QGeometryRenderer(entity);
  geometry.setParent(renderer);
  renderer->setGeometry(&geometry);
  renderer->setPrimitiveType(type);
  entity->addComponent(renderer);
  entity->addComponent(&material);
  return entity;
}

QMatrix4x4 matrix_of(const SceneMotion& motion) {
  QMatrix4x4 matrix;
  for (int row = 0; row < 3; ++row) {
    for (int column = 0; column < 3; ++column)
      matrix(row, column) = static_cast<float>(motion.turn(row, column));
    matrix(row, 3) = static_cast<float>(motion.shift_mm[row]);
  }
  return matrix;
}

}  // namespace

VertexList::VertexList(Kind kind, Qt3DRender::QMaterial& material, QEntity& parent) {
  auto* geometry = new QGeometry;
  buffer_ = buffer_of(*geometry, {});
  constexpr int kStride = 10;
  for (const Member& member : {Member{"vertexPosition", 3, 0}, Member{"vertexFace", 3, 3},
                               Member{"vertexLine", 3, 6}, Member{"vertexSize", 1, 9}})
    attributes_.push_back(attribute(*geometry, *buffer_, member, kStride, 0));
  entity_ = entity_of(*geometry,
                      kind == Kind::points ? QGeometryRenderer::Points : QGeometryRenderer::Lines,
                      material, parent);
  renderer_ = entity_->componentsOfType<QGeometryRenderer>().front();
  entity_->setEnabled(false);
}

void VertexList::set(const std::vector<Vertex>& vertices) {
  Floats floats;
  for (const Vertex& vertex : vertices) {
    floats.add(vertex.at_mm);
    floats.add(vertex.face);
    floats.add(vertex.line);
    floats.add(vertex.size);
  }
  const QByteArray bytes = floats.bytes();
  entity_->setEnabled(!vertices.empty());
  if (vertices.empty() || bytes == buffer_->data()) return;
  buffer_->setData(bytes);
  for (QAttribute* each : attributes_) each->setCount(static_cast<uint>(vertices.size()));
  renderer_->setVertexCount(static_cast<int>(vertices.size()));
}

SolidBody::SolidBody(const SceneBody& body, SolidMaterials& materials, QEntity& parent)
    : materials_(materials),
      entity_(new QEntity(&parent)),
      transform_(new Qt3DCore::QTransform(entity_)) {
  entity_->addComponent(transform_);
  set_detail(body, true);
}

SolidBody::~SolidBody() {
  delete entity_;
}

void SolidBody::set_detail(const SceneBody& body, bool coarse) {
  const bool there = std::any_of(parts_.begin(), parts_.end(),
                                 [&](const Part& part) { return part.coarse == coarse; });
  if (!there)
    for (const bool soft : {true, false}) add(body, soft, coarse);
  for (Part& part : parts_) {
    part.faces->setEnabled(part.coarse == coarse);
    if (part.lines != nullptr) part.lines->setEnabled(part.coarse == coarse);
  }
}

bool alike(const SceneBody& a, const SceneBody& b) {
  return a.rider == b.rider &&
         std::equal(a.pieces.begin(), a.pieces.end(), b.pieces.begin(), b.pieces.end(),
                    [](const ScenePiece& one, const ScenePiece& other) {
                      return one.part == other.part && one.role == other.role &&
                             one.fine.vertices == other.fine.vertices &&
                             one.fine.triangles == other.fine.triangles;
                    });
}

void SolidBody::add(const SceneBody& body, bool soft, bool coarse) {
  Floats corners;
  std::vector<quint32> triangles;
  Floats ends;
  Part part;
  part.soft = soft;
  part.coarse = coarse;
  int count = 0;
  int end_count = 0;
  for (const ScenePiece& piece : body.pieces) {
    if ((piece.role == SceneRole::soft) != soft) continue;
    const Mesh& mesh = coarse ? piece.coarse : piece.fine;
    for (std::size_t i = 0; i < mesh.vertices.size(); ++i) {
      corners.add(mesh.vertices[i]);
      corners.add(mesh.normals[i]);
    }
    for (const auto& triangle : mesh.triangles)
      for (const std::uint32_t corner : triangle)
        triangles.push_back(corner + static_cast<quint32>(count));
    int piece_ends = 0;
    for (const MeshEdge& edge : mesh.edges) {
      if (!edge.sharp) continue;
      for (const std::uint32_t end : edge.ends) ends.add(mesh.vertices[end]);
      piece_ends += 2;
    }
    part.spans.push_back(
        {piece.part, piece.role, static_cast<int>(mesh.vertices.size()), piece_ends});
    count += static_cast<int>(mesh.vertices.size());
    end_count += piece_ends;
  }
  if (count == 0) return;

  auto* faces = new QGeometry;
  QBuffer* corner_buffer = buffer_of(*faces, corners.bytes());
  attribute(*faces, *corner_buffer, {"vertexPosition", 3, 0}, 6, count);
  attribute(*faces, *corner_buffer, {"vertexNormal", 3, 3}, 6, count);
  part.face_colours = buffer_of(*faces, zero_floats(6, count));
  attribute(*faces, *part.face_colours, {"vertexFace", 3, 0}, 6, count);
  attribute(*faces, *part.face_colours, {"vertexLine", 3, 3}, 6, count);
  auto* index = new QAttribute(faces);
  index->setAttributeType(QAttribute::IndexAttribute);
  index->setVertexBaseType(QAttribute::UnsignedInt);
  index->setBuffer(buffer_of(*faces, {reinterpret_cast<const char*>(triangles.data()),
                                      static_cast<qsizetype>(triangles.size() * sizeof(quint32))}));
  index->setCount(static_cast<uint>(triangles.size()));
  faces->addAttribute(index);
  part.faces = entity_of(*faces, QGeometryRenderer::Triangles,
                         soft ? materials_.soft() : materials_.solid(), *entity_);
  part.renderer = part.faces->componentsOfType<QGeometryRenderer>().front();
  if (end_count > 0) {
    auto* lines = new QGeometry;
    attribute(*lines, *buffer_of(*lines, ends.bytes()), {"vertexPosition", 3, 0}, 3, end_count);
    part.line_colours = buffer_of(*lines, zero_floats(3, end_count));
    attribute(*lines, *part.line_colours, {"vertexLine", 3, 0}, 3, end_count);
    part.lines = entity_of(*lines, QGeometryRenderer::Lines, materials_.edges(), *entity_);
  }
  parts_.push_back(std::move(part));
}

void SolidBody::move(const SceneMotion& motion) {
  transform_->setMatrix(matrix_of(motion));
}

QGeometryRenderer* SolidBody::coarse_faces() const {
  for (const Part& part : parts_)
    if (part.coarse && !part.soft) return part.renderer;
  return nullptr;
}

void SolidGhosts::clear() {
  for (QEntity* entity : entities_) delete entity;
  entities_.clear();
  shown_.clear();
}

void SolidGhosts::show(const std::vector<SpaceGhost>& ghosts,
                       const std::vector<std::unique_ptr<SolidBody>>& bodies) {
  if (ghosts == shown_) return;
  clear();
  shown_ = ghosts;
  for (const SpaceGhost& ghost : ghosts) {
    QGeometryRenderer* faces = bodies[ghost.body]->coarse_faces();
    if (faces == nullptr) continue;
    auto* entity = new QEntity(&parent_);
    auto* transform = new Qt3DCore::QTransform(entity);
    transform->setMatrix(matrix_of(ghost.motion));
    entity->addComponent(transform);
    entity->addComponent(faces);
    entity->addComponent(&material_);
    entities_.push_back(entity);
  }
}

void SolidBody::paint(const Palette& colours, const std::string& selected) {
  for (Part& part : parts_) {
    Floats faces;
    Floats lines;
    for (const Span& span : part.spans) {
      const SolidColours solid =
          solid_colours(colours, span.role, shows_selected(span.part, selected));
      for (int i = 0; i < span.vertices; ++i) {
        faces.add(solid.face);
        faces.add(solid.line);
      }
      for (int i = 0; i < span.line_ends; ++i) lines.add(solid.line);
    }
    const QByteArray bytes = faces.bytes();
    if (bytes == part.face_colours->data()) continue;
    part.face_colours->setData(bytes);
    if (part.line_colours != nullptr) part.line_colours->setData(lines.bytes());
  }
}

}  // namespace tackbench::ui
