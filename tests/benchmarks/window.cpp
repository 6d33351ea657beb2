// The whole window with the tender: from nothing to all findings shown, while a point is dragged,
// from the last move of a drag to all findings shown, at rest, and through a long run of work. On a
// display the view in space shows by OpenGL meanwhile.
#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <fstream>
#include <random>
#include <vector>

#include "core/project/station.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/opengl_probe.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

struct OpenWindow {
  OpenWindow() : window(recovery.path().toStdString()) {
    window.setAttribute(Qt::WA_DeleteOnClose, false);
    window.resize(1440, 900);
    window.open_sample("tender-as-first-tacked");
    window.show();
    wait_until_judged();
  }
  void wait_until_judged() {
    while (!window.session().judged_fresh()) QApplication::processEvents();
    QApplication::processEvents();
  }

  QTemporaryDir recovery;
  BenchWindow window;
};

double percentile(std::vector<double>& values, std::size_t percent) {
  std::sort(values.begin(), values.end());
  return values[std::min(values.size() - 1, values.size() * percent / 100)];
}

void opened(benchmark::State& state) {
  std::vector<double> times;
  for (auto _ : state) {
    QElapsedTimer timer;
    timer.start();
    const OpenWindow open;
    times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
  }
  state.counters["median_ms"] = percentile(times, 50);
}
BENCHMARK(opened)->Unit(benchmark::kMillisecond)->Iterations(5);

void settled(benchmark::State& state) {
  OpenWindow open;
  SheetCard& sheet = open.window.sheet();
  const auto at = sheet.grip_place("steering_box", SheetView::side);
  if (!at) return state.SkipWithError("no such point");
  std::vector<double> times;
  int i = 0;
  for (auto _ : state) {
    const QPoint from = at->toPoint();
    QTest::mousePress(&sheet, Qt::LeftButton, {}, from);
    for (int step = 1; step <= 4; ++step)
      QTest::mouseMove(&sheet, from + QPoint(step + i % 5, step));
    ++i;
    QTest::mouseRelease(&sheet, Qt::LeftButton, {}, from + QPoint(4 + i % 5, 4));
    QElapsedTimer timer;
    timer.start();
    open.wait_until_judged();
    times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    open.window.session().undo();
    open.wait_until_judged();
  }
  state.counters["median_ms"] = percentile(times, 50);
}
BENCHMARK(settled)->Unit(benchmark::kMillisecond)->Iterations(20);

// Notes when a widget has painted itself.
class PaintWatch : public QObject {
 public:
  explicit PaintWatch(QWidget& widget) { widget.installEventFilter(this); }
  bool eventFilter(QObject* /*watched*/, QEvent* event) override {
    painted = painted || event->type() == QEvent::Paint;
    return false;
  }
  bool painted = false;
};

// From a pointer's move to the sheet painted with the new numbers, in the whole window, with that
// page in its side column. A hand gives some 60 places a second; checks and panels follow between.
void dragged_beside(benchmark::State& state, SidePage page) {
  OpenWindow open;
  Session& session = open.window.session();
  SheetCard& sheet = open.window.sheet();
  open.window.side().show_page(page);
  if (QGuiApplication::platformName() == "xcb") {
    if (!why_no_opengl().isEmpty()) return state.SkipWithError("no OpenGL");
    QTest::qWait(2000);  // shaders and fine meshes come late
  }
  session.select("drag_link.knuckle_ball_mm");
  open.wait_until_judged();
  const auto at = sheet.grip_place("drag_link.knuckle_ball_mm", SheetView::side);
  if (!at) return state.SkipWithError("no such point");
  const QPoint from = at->toPoint();
  PaintWatch watch(sheet);
  QTest::mousePress(&sheet, Qt::LeftButton, {}, from);
  std::vector<double> times;
  int i = 0;
  for (auto _ : state) {
    ++i;
    QElapsedTimer timer;
    timer.start();
    QTest::mouseMove(&sheet, from + QPoint(6 + i % 23, i % 7));
    watch.painted = false;
    while (!session.posed_fresh() || !watch.painted) {
      if (!session.posed_fresh()) watch.painted = false;
      QApplication::processEvents();
    }
    times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    while (timer.elapsed() < 16) QApplication::processEvents();
  }
  session.cancel_drag();
  state.counters["median_ms"] = percentile(times, 50);
  state.counters["p95_ms"] = percentile(times, 95);
}
BENCHMARK_CAPTURE(dragged_beside, findings, SidePage::findings)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(150);
BENCHMARK_CAPTURE(dragged_beside, station, SidePage::station)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(150);
BENCHMARK_CAPTURE(dragged_beside, graphs, SidePage::graphs)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(150);
BENCHMARK_CAPTURE(dragged_beside, cut_list, SidePage::cut_list)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(150);

double processor_seconds() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
  };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

// Nobody touches the window for two seconds.
void idle(benchmark::State& state) {
  const OpenWindow open;
  QTest::qWait(1500);  // what comes late, the recovery copy among it
  for (auto _ : state) {
    const double before = processor_seconds();
    QTest::qWait(2000);
    state.counters["percent"] = 100.0 * (processor_seconds() - before) / 2.0;
  }
}
BENCHMARK(idle)->Unit(benchmark::kMillisecond)->Iterations(1);

double resident_mb() {
  std::ifstream file("/proc/self/statm");
  double pages = 0.0;
  file >> pages >> pages;
  return pages * 4096.0 / 1e6;
}

// Edits, undos, turns of the wheel and sheets opened, over and over: what is kept for undoing is
// given back, and nothing else grows.
void worked(benchmark::State& state) {
  OpenWindow open;
  Session& session = open.window.session();
  SideColumn& side = open.window.side();
  std::mt19937 random(7);
  const auto between = [&](double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
  };
  const auto round = [&] {
    for (int i = 0; i < 150; ++i) {
      switch (std::uniform_int_distribution<int>(0, 5)(random)) {
        case 0:
        case 1:
          session.set_field("steering_box.ratio", std::to_string(between(14.0, 24.0)));
          break;
        case 2:
          if (session.can_undo()) session.undo();
          break;
        case 3: {
          Controls controls;
          controls.hand_wheel = between(-8.0, 8.0);
          session.set_controls(controls);
          break;
        }
        case 4:
          side.show_station(kStations[std::uniform_int_distribution<std::size_t>(
              0, kStations.size() - 1)(random)]);
          break;
        default:
          side.show_page(static_cast<SidePage>(std::uniform_int_distribution<int>(0, 3)(random)));
          break;
      }
      QApplication::processEvents();
      // Outside QApplication::exec() nobody else deletes what was to be deleted later.
      QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
      if (i % 15 == 0) open.wait_until_judged();
    }
    while (session.can_undo()) session.undo();
    open.wait_until_judged();
  };
  // The first rounds fill what is kept once: fonts, glyphs, the heap's own pages.
  for (int i = 0; i < 3; ++i) round();
  const double before = resident_mb();
  for (auto _ : state) round();
  state.counters["growth_mb"] = resident_mb() - before;
}
BENCHMARK(worked)->Unit(benchmark::kMillisecond)->Iterations(10)->Repetitions(1);

}  // namespace
}  // namespace tackbench::ui

int main(int argc, char** argv) {
  tackbench::ui::choose_renderer();
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  const QApplication application(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
}
