// The scene as solids by OpenGL through Qt 3D. Only where why_no_opengl() is empty.
#pragma once

#include <QImage>
#include <QTimer>
#include <QWidget>
#include <functional>
#include <memory>
#include <vector>

#include "ui/space/line_drawing.h"
#include "ui/space/space_canvas.h"

class QWindow;

// Named by Qt.
// NOLINTBEGIN(readability-identifier-naming)
namespace Qt3DCore {
class QAspectEngine;
class QEntity;
}  // namespace Qt3DCore
namespace Qt3DRender {
class QCamera;
class QClearBuffers;
class QRenderCapture;
class QRenderSettings;
}  // namespace Qt3DRender
// NOLINTEND(readability-identifier-naming)

namespace tackbench::ui {

class SolidBody;
class SolidGhosts;
class SolidMaterials;
class VertexList;

class SolidCanvas : public QWidget, public SpaceCanvas {
  Q_OBJECT

 public:
  explicit SolidCanvas(QWidget* parent = nullptr);
  ~SolidCanvas() override;

  QWidget& widget() override { return *this; }
  QObject& touched() override;
  using QWidget::show;
  void show(const SpaceShown& shown) override;
  // A window inside covers whatever the widgets paint: beneath something it gives way to the line
  // drawing.
  void lie_beneath(bool on) override;
  // Gives the next picture painted to `then`.
  void take_picture(const std::function<void(const QImage&)>& then);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void changeEvent(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void make_frame_graph();
  void build(const SpaceShown& shown);
  void aim(const SpaceShown& shown);
  void mark(const SpaceShown& shown);
  void ask_frames();

  QWindow* window_;
  QWidget* inside_ = nullptr;  // holds the window
  LineDrawing drawing_;
  bool beneath_ = false;
  std::unique_ptr<Qt3DCore::QAspectEngine> engine_;
  Qt3DCore::QEntity* root_ = nullptr;  // the engine owns it once it runs
  Qt3DCore::QEntity* truck_ = nullptr;
  Qt3DRender::QRenderSettings* settings_ = nullptr;
  Qt3DRender::QCamera* camera_ = nullptr;
  Qt3DRender::QClearBuffers* clear_ = nullptr;
  Qt3DRender::QRenderCapture* capture_ = nullptr;
  std::unique_ptr<SolidMaterials> materials_;
  std::vector<std::unique_ptr<SolidBody>> bodies_;
  std::unique_ptr<SolidGhosts> ghosts_;
  std::unique_ptr<VertexList> ground_;
  std::unique_ptr<VertexList> points_;
  std::unique_ptr<VertexList> line_;
  std::shared_ptr<const Scene> built_for_;
  std::string selected_;
  bool coarse_ = false;
  bool detail_stale_ = true;
  bool colours_stale_ = true;
  bool running_ = false;
  QTimer frames_;
  int frames_left_ = 0;
  const SpaceShown* shown_ = nullptr;
};

}  // namespace tackbench::ui
