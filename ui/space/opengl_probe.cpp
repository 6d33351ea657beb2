#include "ui/space/opengl_probe.h"

#include <QCoreApplication>
#include <QGuiApplication>
#include <QOffscreenSurface>
#include <QOpenGLContext>
#include <QOpenGLFunctions>
#include <QSurfaceFormat>

namespace tackbench::ui {

namespace {

QString words(const char* text) {
  return QCoreApplication::translate("OpenGlProbe", text);
}

struct Probed {
  QString why_not;
  bool by_processor = false;
};

QString probe(bool& by_processor) {
  if (qEnvironmentVariableIsSet("TACKBENCH_NO_OPENGL"))
    return words(QT_TRANSLATE_NOOP("OpenGlProbe", "it is switched off"));
  const QString platform = QGuiApplication::platformName();
  if (platform == "offscreen" || platform == "minimal" || platform == "vnc")
    return words(QT_TRANSLATE_NOOP("OpenGlProbe", "this display has no OpenGL"));
  QSurfaceFormat format;
  format.setRenderableType(QSurfaceFormat::OpenGL);
  format.setVersion(3, 2);
  format.setProfile(QSurfaceFormat::CoreProfile);
  format.setDepthBufferSize(24);
  QOpenGLContext context;
  context.setFormat(format);
  if (!context.create())
    return words(QT_TRANSLATE_NOOP("OpenGlProbe", "OpenGL does not start here"));
  QOffscreenSurface surface;
  surface.setFormat(context.format());
  surface.create();
  if (!surface.isValid() || !context.makeCurrent(&surface))
    return words(QT_TRANSLATE_NOOP("OpenGlProbe", "OpenGL does not start here"));
  const auto version = context.format().version();
  QOpenGLFunctions functions(&context);
  const bool shaders = functions.hasOpenGLFeature(QOpenGLFunctions::Shaders);
  const QByteArray name(reinterpret_cast<const char*>(functions.glGetString(GL_RENDERER)));
  by_processor = name.contains("llvmpipe") || name.contains("softpipe") || name.contains("swrast");
  context.doneCurrent();
  if (version < qMakePair(3, 2) || !shaders)
    return words(QT_TRANSLATE_NOOP("OpenGlProbe", "OpenGL %1.%2 is too old, 3.2 is wanted"))
        .arg(version.first)
        .arg(version.second);
  return {};
}

const Probed& probed() {
  static const Probed known = [] {
    Probed made;
    made.why_not = probe(made.by_processor);
    return made;
  }();
  return known;
}

}  // namespace

void choose_renderer() {
  if (qEnvironmentVariableIsEmpty("QT3D_RENDERER")) qputenv("QT3D_RENDERER", "opengl");
}

const QString& why_no_opengl() {
  return probed().why_not;
}

bool opengl_by_processor() {
  return probed().by_processor;
}

}  // namespace tackbench::ui
