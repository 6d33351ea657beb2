// tackbench [FILE]: the window.
#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QTimer>

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

BenchWindow* open_window() {
  auto* window = new BenchWindow(tackbench::ui::recovery_folder());
  QObject::connect(window, &BenchWindow::another_window_wanted, [] {
    BenchWindow* another = open_window();
    another->open_sample("bare-start");
    another->show();
  });
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

}  // namespace

int main(int argc, char** argv) {
  tackbench::ui::choose_renderer();
  QApplication application(argc, argv);
  QApplication::setApplicationName("tackbench");
  QApplication::setOrganizationName("tackbench");
  QApplication::setApplicationDisplayName("Tackbench");
  QApplication::setApplicationVersion(TACKBENCH_VERSION);
  QApplication::setStyle("Fusion");
  QApplication::setWindowIcon(QIcon(":/tackbench/tackbench.svg"));

  QCommandLineParser arguments;
  arguments.setApplicationDescription(
      QCoreApplication::translate("main", "Tackbench: drag the points, see the truck move."));
  arguments.addHelpOption();
  arguments.addVersionOption();
  arguments.addPositionalArgument("file", QCoreApplication::translate("main", "a *.tack file"),
                                  "[FILE]");
  arguments.process(application);

  tackbench::ui::use_theme(Preferences::theme());
  BenchWindow* window = open_window();
  const QStringList files = arguments.positionalArguments();
  if (files.isEmpty() || !window->open_file(files.front()))
    window->open_sample("tender-as-first-tacked");
  window->show();
  QTimer::singleShot(0, window, [window, ask = files.isEmpty()] {
    window->offer_recovered();
    if (ask && !Preferences::first_page_seen()) show_first_page(window);
  });
  return QApplication::exec();
}
