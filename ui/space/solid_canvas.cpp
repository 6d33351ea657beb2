#include "ui/space/solid_canvas.h"

#include <QEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <QWindow>
#include <Qt3DCore/QAspectEngine>
#include <Qt3DCore/QEntity>
#include <Qt3DRender/QCamera>
#include <Qt3DRender/QCameraSelector>
#include <Qt3DRender/QClearBuffers>
#include <Qt3DRender/QNoDraw>
#include <Qt3DRender/QRenderAspect>
#include <Qt3DRender/QRenderCapture>
#include <Qt3DRender/QRenderSettings>
#include <Qt3DRender/QRenderSurfaceSelector>
#include <Qt3DRender/QSortPolicy>
#include <Qt3DRender/QViewport>
#include <algorithm>

#include "ui/look/palette.h"
#include "ui/space/opengl_probe.h"
#include "ui/space/solid_body.h"
#include "ui/space/solid_material.h"
#include "ui/space/space_colours.h"

namespace tackbench::ui {

namespace {

// Left to itself, Qt 3D looks for changes 60 times a second for ever. Here it is asked after each
// change, for as many frames as buffers and shaders may take to come in.
constexpr int kFrameMs = 16;
constexpr int kFrames = 40;

constexpr double kBeyond = 4000.0;  // mm of ground past the truck that stays in sight

QSurfaceFormat surface_format() {
  QSurfaceFormat format;
  format.setRenderableType(QSurfaceFormat::OpenGL);
  format.setVersion(3, 2);
  format.setProfile(QSurfaceFormat::CoreProfile);
  format.setDepthBufferSize(24);
  // Four samples a pixel take the processor three times as long: then it is the movement that
  // counts.
  format.setSamples(opengl_by_processor() ? 0 : 4);
  return format;
}

QVector3D vector_of(const Vec3& v) {
  return {static_cast<float>(v.x()), static_cast<float>(v.y()), static_cast<float>(v.z())};
}

}  // namespace

SolidCanvas::SolidCanvas(QWidget* parent)
    : QWidget(parent), window_(new QWindow), engine_(new Qt3DCore::QAspectEngine) {
  window_->setSurfaceType(QSurface::OpenGLSurface);
  // Qt 3D makes its context by the default: without a depth of its own nothing would hide anything.
  QSurfaceFormat::setDefaultFormat(surface_format());
  window_->setFormat(surface_format());
  // Keys stay with the widgets: a window inside has no part in their shortcuts.
  window_->setFlag(Qt::WindowDoesNotAcceptFocus);
  inside_ = QWidget::createWindowContainer(window_, this);
  inside_->setFocusPolicy(Qt::NoFocus);
  setMouseTracking(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(inside_);
  window_->installEventFilter(this);

  root_ = new Qt3DCore::QEntity;
  truck_ = new Qt3DCore::QEntity(root_);
  materials_ = std::make_unique<SolidMaterials>(root_);
  make_frame_graph();
  ghosts_ = std::make_unique<SolidGhosts>(materials_->ghost(), *truck_);
  ground_ = std::make_unique<VertexList>(VertexList::Kind::lines, materials_->ground(), *root_);
  points_ = std::make_unique<VertexList>(VertexList::Kind::points, materials_->points(), *root_);
  line_ = std::make_unique<VertexList>(VertexList::Kind::lines, materials_->lines(), *root_);
  engine_->setRunMode(Qt3DCore::QAspectEngine::Manual);
  engine_->registerAspect(new Qt3DRender::QRenderAspect);
  frames_.setInterval(kFrameMs);
  connect(&frames_, &QTimer::timeout, this, [this] {
    if (--frames_left_ <= 0) frames_.stop();
    engine_->processFrame();
  });
}

SolidCanvas::~SolidCanvas() {
  frames_.stop();
  window_->removeEventFilter(this);
  ghosts_->clear();
  bodies_.clear();
  // The engine lets go of the window before the container takes it away.
  if (running_)
    engine_->setRootEntity({});
  else
    delete root_;
  engine_.reset();
}

void SolidCanvas::ask_frames() {
  frames_left_ = kFrames;
  if (running_ && !frames_.isActive()) frames_.start();
}

QObject& SolidCanvas::touched() {
  return *window_;
}

void SolidCanvas::make_frame_graph() {
  settings_ = new Qt3DRender::QRenderSettings(root_);
  settings_->setRenderPolicy(Qt3DRender::QRenderSettings::OnDemand);
  auto* surface = new Qt3DRender::QRenderSurfaceSelector;
  surface->setSurface(window_);
  auto* viewport = new Qt3DRender::QViewport(surface);
  auto* eye = new Qt3DRender::QCameraSelector(viewport);
  camera_ = new Qt3DRender::QCamera(root_);
  eye->setCamera(camera_);
  clear_ = new Qt3DRender::QClearBuffers(eye);
  clear_->setBuffers(Qt3DRender::QClearBuffers::ColorDepthBuffer);
  new Qt3DRender::QNoDraw(clear_);
  for (const SpacePass pass :
       {SpacePass::shadow, SpacePass::ground, SpacePass::outline, SpacePass::solid})
    pass_filter(pass, eye);
  auto* sorted = new Qt3DRender::QSortPolicy(eye);
  sorted->setSortTypes(
      QList<Qt3DRender::QSortPolicy::SortType>{Qt3DRender::QSortPolicy::BackToFront});
  pass_filter(SpacePass::soft, sorted);
  // About the last pass alone: a picture is taken when its first branch is through.
  capture_ = new Qt3DRender::QRenderCapture(eye);
  pass_filter(SpacePass::marks, capture_);
  settings_->setActiveFrameGraph(surface);
  root_->addComponent(settings_);
}

// Bodies that the change left as they were keep their buffers.
void SolidCanvas::build(const SpaceShown& shown) {
  ghosts_->clear();
  const std::vector<SceneBody>& wanted = shown.scene->bodies;
  std::vector<std::unique_ptr<SolidBody>> made;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (i < bodies_.size() && alike(built_for_->bodies[i], wanted[i]))
      made.push_back(std::move(bodies_[i]));
    else
      made.push_back(std::make_unique<SolidBody>(wanted[i], *materials_, *truck_));
  }
  bodies_ = std::move(made);
  built_for_ = shown.scene;
  detail_stale_ = true;
  colours_stale_ = true;
}

void SolidCanvas::aim(const SpaceShown& shown) {
  const Camera& from = shown.camera;
  const Bounds& bounds = shown.scene->bounds;
  double reach = kBeyond;
  if (!bounds.empty())
    reach +=
        0.5 * (bounds.greatest - bounds.least).norm() + (bounds.middle() - from.target_mm).norm();
  const double nearest = std::max(20.0, from.distance - reach);
  const double aspect = static_cast<double>(std::max(1, width())) / std::max(1, height());
  camera_->lens()->setPerspectiveProjection(static_cast<float>(from.field_of_view * 180.0 / kPi),
                                            static_cast<float>(aspect), static_cast<float>(nearest),
                                            static_cast<float>(from.distance + reach));
  camera_->setPosition(vector_of(from.eye_mm()));
  camera_->setViewCenter(vector_of(from.target_mm));
  camera_->setUpVector(vector_of(from.up()));
}

void SolidCanvas::mark(const SpaceShown& shown) {
  const Palette& colours = ui::palette();
  std::vector<VertexList::Vertex> points;
  for (const SpacePoint& point : shown.points) {
    const bool chosen = point.grip.path == shown.selected;
    const bool strong = chosen || point.grip.path == shown.hovered;
    points.push_back({point.posed_mm, strong ? colours.moves : colours.card,
                      chosen ? colours.ink : colours.moves,
                      chosen   ? 13.0
                      : strong ? 10.0
                               : 4.8});
  }
  points_->set(points);
  std::vector<VertexList::Vertex> ends;
  if (shown.held_line)
    for (const double way : {-1500.0, 1500.0})
      ends.push_back({shown.held_line->through_mm + way * shown.held_line->along, colours.moves,
                      colours.moves, 0.0});
  line_->set(ends);
}

void SolidCanvas::lie_beneath(bool on) {
  if (on == beneath_) return;
  beneath_ = on;
  if (on) frames_.stop();  // nothing of them would be seen
  inside_->setVisible(!on);
  if (shown_ != nullptr) show(*shown_);
}

void SolidCanvas::paintEvent(QPaintEvent*) {
  if (!beneath_ || shown_ == nullptr) return;
  QPainter painter(this);
  drawing_.paint(painter, size(), devicePixelRatioF(), *shown_, ui::palette());
}

void SolidCanvas::show(const SpaceShown& shown) {
  shown_ = &shown;
  if (beneath_) {
    update();
    return;
  }
  const Palette& colours = ui::palette();
  if (built_for_ != shown.scene) build(shown);
  if (detail_stale_ || shown.coarse != coarse_) {
    for (std::size_t i = 0; i < bodies_.size(); ++i)
      bodies_[i]->set_detail(shown.scene->bodies[i], shown.coarse);
    coarse_ = shown.coarse;
    detail_stale_ = false;
    colours_stale_ = true;
  }
  for (std::size_t i = 0; i < bodies_.size() && i < shown.motions.size(); ++i)
    bodies_[i]->move(shown.motions[i]);
  ghosts_->show(shown.ghosts, bodies_);
  const bool over_ground = shown.camera.eye_mm().z() > shown.scene->ground_z;
  materials_->set_picture(QSizeF(size()) * devicePixelRatioF(), devicePixelRatioF());
  materials_->set_ground(shown.scene->ground_z, over_ground, shadow_colour(colours));
  if (colours_stale_ || selected_ != shown.selected) {
    for (auto& body : bodies_) body->paint(colours, shown.selected);
    selected_ = shown.selected;
    colours_stale_ = false;
    clear_->setClearColor(colours.card);
    materials_->set_ghosts(ghost_colour(colours));
  }
  std::vector<VertexList::Vertex> ground;
  if (over_ground) {
    const QColor colour = ground_line_colour(colours);
    for (const auto& [from, to] : ground_lines(*shown.scene)) {
      ground.push_back({from, colour, colour, 0.0});
      ground.push_back({to, colour, colour, 0.0});
    }
  }
  ground_->set(ground);
  mark(shown);
  aim(shown);
  ask_frames();
}

void SolidCanvas::take_picture(const std::function<void(const QImage&)>& then) {
  Qt3DRender::QRenderCaptureReply* reply = capture_->requestCapture();
  ask_frames();
  connect(reply, &Qt3DRender::QRenderCaptureReply::completed, this, [reply, then] {
    then(reply->image());
    reply->deleteLater();
  });
}

bool SolidCanvas::eventFilter(QObject* watched, QEvent* event) {
  if (watched == window_ && event->type() == QEvent::Expose && window_->isExposed()) {
    if (!running_) {
      running_ = true;
      engine_->setRootEntity(Qt3DCore::QEntityPtr(root_));
    }
    // Uncovered again: painted again, though nothing has changed. Only a value that differs when
    // the next frame begins asks for that frame, and the stencil is cleared by nobody.
    clear_->setClearStencilValue(1 - clear_->clearStencilValue());
    ask_frames();
  }
  return QWidget::eventFilter(watched, event);
}

void SolidCanvas::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) {
    colours_stale_ = true;
    if (shown_ != nullptr) show(*shown_);
  }
  QWidget::changeEvent(event);
}

}  // namespace tackbench::ui
