// tackbench [FILE...]: a window for each.
#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QLocale>
#include <QStandardPaths>
#include <QTimer>
#include <QTranslator>

#include "ui/look/desktop_light.h"
#include "ui/look/palette.h"
#include "ui/session/recovery.h"
#include "ui/space/opengl_probe.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/first_page.h"
#include "ui/windows/preferences.h"

namespace {

using tackbench::ui::BenchWindow;
using tackbench::ui::FirstPage;
using tackbench::ui::Preferences;

// A file that cannot be opened leaves a bare start, and the window says why.
BenchWindow* open_window(const QString& file, const QString& sample = "bare-start") {
  auto* window = new BenchWindow(tackbench::ui::recovery_folder());
  QObject::connect(window, &BenchWindow::another_window_wanted,
                   [](const QString& other) { open_window(other); });
  window->open_sample(sample);
  // What it says of a file that cannot be opened would go with the document before.
  if (!file.isEmpty()) window->open_file(file);
  window->show();
  return window;
}

void show_first_page(BenchWindow* window) {
  FirstPage page(window);
  page.exec();
  Preferences::set_first_page_seen(true);
  switch (page.way()) {
    case FirstPage::Way::tour:
      window->begin_tour();
      break;
    case FirstPage::Way::new_project:
      window->action("new")->trigger();
      break;
    case FirstPage::Way::open_file:
      window->action("open")->trigger();
      break;
    case FirstPage::Way::close:
      break;
  }
}

// The desktop's language, where a data folder holds tackbench/translations/tackbench_<language>.qm.
void use_language(QTranslator& words) {
  const QString folder =
      QStandardPaths::locate(QStandardPaths::GenericDataLocation, "tackbench/translations",
                             QStandardPaths::LocateDirectory);
  if (!folder.isEmpty() && words.load(QLocale(), "tackbench", "_", folder))
    QCoreApplication::installTranslator(&words);
}

}  // namespace

int main(int argc, char** argv) {
  tackbench::ui::choose_renderer();
  QApplication application(argc, argv);
  QApplication::setApplicationName("tackbench");
  QApplication::setOrganizationName("tackbench");
  QApplication::setApplicationDisplayName("Tackbench");
  QApplication::setApplicationVersion(TACKBENCH_VERSION);
  QApplication::setStyle("Fusion");
  QApplication::setDesktopFileName("tackbench");
  QApplication::setWindowIcon(QIcon(":/tackbench/tackbench.svg"));

  QTranslator words;
  use_language(words);

  QCommandLineParser arguments;
  arguments.setApplicationDescription(
      QCoreApplication::translate("main", "Tackbench: drag the points, see the truck move."));
  arguments.addHelpOption();
  arguments.addVersionOption();
  arguments.addPositionalArgument(
      "file", QCoreApplication::translate("main", "*.tack files, a window for each"), "[FILE...]");
  arguments.process(application);

  tackbench::ui::DesktopLight light;
  tackbench::ui::use_theme(Preferences::theme());
  const QStringList files = arguments.positionalArguments();
  BenchWindow* window =
      files.isEmpty() ? open_window({}, "tender-as-first-tacked") : open_window(files.front());
  for (int i = 1; i < files.size(); ++i) open_window(files[i]);
  QTimer::singleShot(0, window, [window, ask = files.isEmpty()] {
    window->offer_recovered();
    if (ask && !Preferences::first_page_seen()) show_first_page(window);
  });
  return QApplication::exec();
}
