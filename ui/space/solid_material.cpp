#include "ui/space/solid_material.h"

#include <QColor>
#include <QSizeF>
#include <QVector2D>
#include <QVector3D>
#include <Qt3DRender/QBlendEquation>
#include <Qt3DRender/QBlendEquationArguments>
#include <Qt3DRender/QCullFace>
#include <Qt3DRender/QDepthTest>
#include <Qt3DRender/QEffect>
#include <Qt3DRender/QFilterKey>
#include <Qt3DRender/QGraphicsApiFilter>
#include <Qt3DRender/QNoDepthMask>
#include <Qt3DRender/QPointSize>
#include <Qt3DRender/QRenderPass>
#include <Qt3DRender/QShaderProgram>
#include <Qt3DRender/QTechnique>
#include <vector>

#include "ui/space/space_colours.h"

namespace tackbench::ui {

namespace {

using namespace Qt3DRender;

constexpr const char* kFaces = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
in vec3 vertexFace;
out vec3 colour;
uniform mat4 mvp;
uniform mat3 modelViewNormal;
uniform vec3 light;
uniform float leastLight;
void main() {
  float towards = 0.5 + 0.5 * dot(normalize(modelViewNormal * vertexNormal), light);
  colour = vertexFace * (leastLight + (1.0 - leastLight) * towards);
  gl_Position = mvp * vec4(vertexPosition, 1.0);
}
)";

// Faces that let through what is behind them; `facing` is 1 where one looks at the eye, 0 at its
// rim.
constexpr const char* kSoftFaces = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
in vec3 vertexFace;
in vec3 vertexLine;
out vec3 colour;
out vec3 rim;
out float facing;
uniform mat4 mvp;
uniform mat4 modelView;
uniform mat3 modelViewNormal;
uniform vec3 light;
uniform float leastLight;
void main() {
  vec3 normal = normalize(modelViewNormal * vertexNormal);
  vec3 place = (modelView * vec4(vertexPosition, 1.0)).xyz;
  facing = abs(dot(normal, normalize(place)));
  colour = vertexFace * (leastLight + (1.0 - leastLight) * (0.5 + 0.5 * dot(normal, light)));
  rim = vertexLine;
  gl_Position = mvp * vec4(vertexPosition, 1.0);
}
)";

constexpr const char* kGhostFaces = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
out float facing;
uniform mat4 mvp;
uniform mat4 modelView;
uniform mat3 modelViewNormal;
void main() {
  vec3 normal = normalize(modelViewNormal * vertexNormal);
  facing = abs(dot(normal, normalize((modelView * vec4(vertexPosition, 1.0)).xyz)));
  gl_Position = mvp * vec4(vertexPosition, 1.0);
}
)";

// Back faces pushed out by a pixel: what stands out beyond the front is the outline.
constexpr const char* kOutline = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
in vec3 vertexLine;
out vec3 colour;
uniform mat4 mvp;
uniform mat3 modelViewNormal;
uniform vec2 pixel;
uniform float ratio;
void main() {
  vec2 out_ = (modelViewNormal * vertexNormal).xy;
  float far_ = length(out_);
  vec4 at = mvp * vec4(vertexPosition, 1.0);
  if (far_ > 1e-4) at.xy += out_ / far_ * pixel * 1.2 * ratio * at.w;
  colour = vertexLine;
  gl_Position = at;
}
)";

// Straight down onto the ground.
constexpr const char* kShadow = R"(#version 150 core
in vec3 vertexPosition;
out vec3 colour;
uniform mat4 modelMatrix;
uniform mat4 viewMatrix;
uniform mat4 projectionMatrix;
uniform float groundZ;
uniform vec3 shadow;
void main() {
  vec4 place = modelMatrix * vec4(vertexPosition, 1.0);
  colour = shadow;
  gl_Position = projectionMatrix * viewMatrix * vec4(place.xy, groundZ, 1.0);
}
)";

// Drawn a little before its place, so that the faces it bounds do not hide it.
constexpr const char* kEdges = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexLine;
out vec3 colour;
uniform mat4 modelView;
uniform mat4 projectionMatrix;
void main() {
  vec4 at = modelView * vec4(vertexPosition, 1.0);
  at.xyz *= 1.0 - 6.0 / max(-at.z, 12.0);
  colour = vertexLine;
  gl_Position = projectionMatrix * at;
}
)";

constexpr const char* kPlain = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexLine;
out vec3 colour;
uniform mat4 mvp;
void main() {
  colour = vertexLine;
  gl_Position = mvp * vec4(vertexPosition, 1.0);
}
)";

constexpr const char* kPoints = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexFace;
in vec3 vertexLine;
in float vertexSize;
out vec3 inside;
out vec3 rim;
out float across;
uniform mat4 modelView;
uniform mat4 projectionMatrix;
uniform float ratio;
void main() {
  vec4 at = modelView * vec4(vertexPosition, 1.0);
  at.xyz *= 1.0 - 60.0 / max(-at.z, 120.0);
  inside = vertexFace;
  rim = vertexLine;
  across = vertexSize * ratio;
  gl_PointSize = across;
  gl_Position = projectionMatrix * at;
  if (vertexSize > 8.0) gl_Position.z = -0.99 * gl_Position.w;
}
)";

constexpr const char* kPaint = R"(#version 150 core
in vec3 colour;
out vec4 painted;
void main() { painted = vec4(colour, 1.0); }
)";

// The rim of a round thing in the colour of its lines: an outline that hides nothing.
constexpr const char* kPaintSoft = R"(#version 150 core
in vec3 colour;
in vec3 rim;
in float facing;
out vec4 painted;
void main() {
  float edge = pow(1.0 - clamp(facing, 0.0, 1.0), 3.0);
  painted = vec4(mix(colour, rim, edge), 0.24 + 0.6 * edge);
}
)";

constexpr const char* kPaintGhost = R"(#version 150 core
in float facing;
out vec4 painted;
uniform vec3 ghostColour;
void main() {
  float edge = pow(1.0 - clamp(facing, 0.0, 1.0), 3.0);
  painted = vec4(ghostColour, 0.16 + 0.6 * edge);
}
)";

constexpr const char* kPaintPoint = R"(#version 150 core
in vec3 inside;
in vec3 rim;
in float across;
out vec4 painted;
uniform float ratio;
void main() {
  float away = length(gl_PointCoord - vec2(0.5)) * across;
  if (away > 0.5 * across) discard;
  painted = vec4(away > 0.5 * across - 1.3 * ratio ? rim : inside, 1.0);
}
)";

QFilterKey* key_of(SpacePass pass) {
  auto* key = new QFilterKey;
  key->setName("tackbench pass");
  key->setValue(static_cast<int>(pass));
  return key;
}

struct Pass {
  SpacePass pass;
  const char* vertex;
  const char* paint;
  std::vector<QRenderState*> states;
};

QRenderState* faces_kept(QCullFace::CullingMode hidden) {
  auto* cull = new QCullFace;
  cull->setMode(hidden);
  return cull;
}

QRenderState* depth_asked(bool asked) {
  auto* depth = new QDepthTest;
  depth->setDepthFunction(asked ? QDepthTest::LessOrEqual : QDepthTest::Always);
  return depth;
}

QMaterial* material_of(const std::vector<Pass>& passes, Qt3DCore::QNode* parent) {
  auto* material = new QMaterial(parent);
  auto* effect = new QEffect(material);
  auto* technique = new QTechnique(effect);
  QGraphicsApiFilter* wanted = technique->graphicsApiFilter();
  wanted->setApi(QGraphicsApiFilter::OpenGL);
  wanted->setMajorVersion(3);
  wanted->setMinorVersion(2);
  wanted->setProfile(QGraphicsApiFilter::CoreProfile);
  for (const Pass& each : passes) {
    auto* pass = new QRenderPass(technique);
    auto* program = new QShaderProgram(pass);
    program->setVertexShaderCode(each.vertex);
    program->setFragmentShaderCode(each.paint);
    pass->setShaderProgram(program);
    pass->addFilterKey(key_of(each.pass));
    for (QRenderState* state : each.states) pass->addRenderState(state);
    technique->addRenderPass(pass);
  }
  effect->addTechnique(technique);
  material->setEffect(effect);
  return material;
}

QVector3D parts(const QColor& colour) {
  return {static_cast<float>(colour.redF()), static_cast<float>(colour.greenF()),
          static_cast<float>(colour.blueF())};
}

std::vector<QRenderState*> blended() {
  auto* factors = new QBlendEquationArguments;
  factors->setSourceRgb(QBlendEquationArguments::SourceAlpha);
  factors->setDestinationRgb(QBlendEquationArguments::OneMinusSourceAlpha);
  auto* sum = new QBlendEquation;
  sum->setBlendFunction(QBlendEquation::Add);
  return {factors, sum, new QNoDepthMask, depth_asked(true), faces_kept(QCullFace::Back)};
}

QRenderState* sized_points() {
  auto* size = new QPointSize;
  size->setSizeMode(QPointSize::Programmable);
  return size;
}

}  // namespace

QRenderPassFilter* pass_filter(SpacePass pass, Qt3DCore::QNode* parent) {
  auto* filter = new QRenderPassFilter(parent);
  filter->addMatch(key_of(pass));
  return filter;
}

SolidMaterials::SolidMaterials(Qt3DCore::QNode* parent)
    : solid_(material_of(
          {{SpacePass::shadow,
            kShadow,
            kPaint,
            {depth_asked(false), new QNoDepthMask, faces_kept(QCullFace::NoCulling)}},
           {SpacePass::solid, kFaces, kPaint, {depth_asked(true), faces_kept(QCullFace::Back)}},
           {SpacePass::outline,
            kOutline,
            kPaint,
            {depth_asked(true), faces_kept(QCullFace::Front)}}},
          parent)),
      soft_(material_of({{SpacePass::soft, kSoftFaces, kPaintSoft, blended()}}, parent)),
      ghost_(material_of({{SpacePass::soft, kGhostFaces, kPaintGhost, blended()}}, parent)),
      edges_(material_of({{SpacePass::solid, kEdges, kPaint, {depth_asked(true)}}}, parent)),
      ground_(material_of(
          {{SpacePass::ground, kPlain, kPaint, {depth_asked(false), new QNoDepthMask}}}, parent)),
      points_(material_of({{SpacePass::marks,
                            kPoints,
                            kPaintPoint,
                            {depth_asked(true), new QNoDepthMask, sized_points()}}},
                          parent)),
      lines_(material_of(
          {{SpacePass::marks, kPlain, kPaint, {depth_asked(false), new QNoDepthMask}}}, parent)),
      pixel_(new QParameter("pixel", QVector2D(0.002F, 0.002F), parent)),
      ratio_(new QParameter("ratio", 1.0F, parent)),
      ground_z_(new QParameter("groundZ", 0.0F, parent)),
      shadow_(new QParameter("shadow", QVector3D(), parent)),
      ghost_colour_(new QParameter("ghostColour", QVector3D(), parent)) {
  const Vec3 to_light = light_direction();
  auto* light =
      new QParameter("light",
                     QVector3D(static_cast<float>(to_light.x()), static_cast<float>(to_light.y()),
                               static_cast<float>(to_light.z())),
                     parent);
  auto* least = new QParameter("leastLight", static_cast<float>(kLeastLight), parent);
  for (QMaterial* material : {solid_, soft_, ghost_, edges_, ground_, points_, lines_})
    for (QParameter* parameter : {pixel_, ratio_, ground_z_, shadow_, ghost_colour_, light, least})
      material->addParameter(parameter);
}

void SolidMaterials::set_picture(const QSizeF& device_pixels, double ratio) {
  pixel_->setValue(QVector2D(static_cast<float>(2.0 / std::max(1.0, device_pixels.width())),
                             static_cast<float>(2.0 / std::max(1.0, device_pixels.height()))));
  ratio_->setValue(static_cast<float>(ratio));
}

void SolidMaterials::set_ghosts(const QColor& colour) {
  ghost_colour_->setValue(parts(colour));
}

void SolidMaterials::set_ground(double z_mm, bool seen, const QColor& shadow) {
  // Seen from below there is no ground: far down nothing of it is in the picture.
  ground_z_->setValue(static_cast<float>(seen ? z_mm : -1e7));
  shadow_->setValue(parts(shadow));
}

}  // namespace tackbench::ui
