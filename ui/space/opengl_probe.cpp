#include "ui/space/opengl_probe.h"

#include <QCoreApplication>
#include <QGuiApplication>
#include <QOffscreenSurface>
#include <QOpenGLContext>
#include <QOpenGLFunctions>
#include <QSurfaceFormat>
#include <utility>

namespace tackbench::ui {

namespace {

enum class Hindrance { none, switched_off, display, does_not_start, too_old };

// What was found, not yet in words: the language may change.
struct Probed {
  Hindrance hindrance = Hindrance::none;
  std::pair<int, int> version;  // of too_old
  bool by_processor = false;
};

Probed probe() {
  if (qEnvironmentVariableIsSet("TACKBENCH_NO_OPENGL")) return {Hindrance::switched_off, {}, false};
  const QString platform = QGuiApplication::platformName();
  if (platform == "offscreen" || platform == "minimal" || platform == "vnc")
    return {Hindrance::display, {}, false};
  QSurfaceFormat format;
  format.setRenderableType(QSurfaceFormat::OpenGL);
  format.setVersion(3, 2);
  format.setProfile(QSurfaceFormat::CoreProfile);
  format.setDepthBufferSize(24);
  QOpenGLContext context;
  context.setFormat(format);
  if (!context.create()) return {Hindrance::does_not_start, {}, false};
  QOffscreenSurface surface;
  surface.setFormat(context.format());
  surface.create();
  if (!surface.isValid() || !context.makeCurrent(&surface))
    return {Hindrance::does_not_start, {}, false};
  Probed found;
  found.version = context.format().version();
  QOpenGLFunctions functions(&context);
  const bool shaders = functions.hasOpenGLFeature(QOpenGLFunctions::Shaders);
  const QByteArray name(reinterpret_cast<const char*>(functions.glGetString(GL_RENDERER)));
  found.by_processor =
      name.contains("llvmpipe") || name.contains("softpipe") || name.contains("swrast");
  context.doneCurrent();
  if (found.version < std::pair(3, 2) || !shaders) found.hindrance = Hindrance::too_old;
  return found;
}

const Probed& probed() {
  static const Probed known = probe();
  return known;
}

}  // namespace

void choose_renderer() {
  if (qEnvironmentVariableIsEmpty("QT3D_RENDERER")) qputenv("QT3D_RENDERER", "opengl");
}

QString why_no_opengl() {
  const auto words = [](const char* text) {
    return QCoreApplication::translate("OpenGlProbe", text);
  };
  switch (probed().hindrance) {
    case Hindrance::none:
      break;
    case Hindrance::switched_off:
      return words(QT_TRANSLATE_NOOP("OpenGlProbe", "it is switched off"));
    case Hindrance::display:
      return words(QT_TRANSLATE_NOOP("OpenGlProbe", "this display has no OpenGL"));
    case Hindrance::does_not_start:
      return words(QT_TRANSLATE_NOOP("OpenGlProbe", "OpenGL does not start here"));
    case Hindrance::too_old:
      return words(QT_TRANSLATE_NOOP("OpenGlProbe", "OpenGL %1.%2 is too old, 3.2 is wanted"))
          .arg(probed().version.first)
          .arg(probed().version.second);
  }
  return {};
}

bool opengl_by_processor() {
  return probed().by_processor;
}

}  // namespace tackbench::ui
