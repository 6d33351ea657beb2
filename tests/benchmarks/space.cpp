// The view in space while the hand wheel turns: the tender at 1280x720. By OpenGL where the display
// has it (under Xvfb that is the processor's), each frame asked for, painted and read back before
// the next; and as a line drawing.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QThread>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "ui/session/session.h"
#include "ui/space/opengl_probe.h"
#include "ui/space/solid_canvas.h"
#include "ui/space/space_view.h"

namespace tackbench::ui {
namespace {

// Idle until something happens: the painting threads need the processor.
void wait() {
  QApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

struct Bench {
  explicit Bench(SpaceDrawing drawing) : view(session, motion, nullptr, drawing) {
    const std::string file = std::string(TACKBENCH_SOURCE_FOLDER) +
                             "/sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack";
    for (const Problem& problem : session.open(file)) {
      std::puts(one_line(problem).c_str());
      std::abort();
    }
    view.show();
    // So that the picture itself has that size, without the buttons about it.
    QApplication::processEvents();
    view.resize(QSize(1280, 720) + view.size() - view.picture().size());
    session.wait_until_fresh();
    QApplication::processEvents();
  }

  void turn_to(int step) {
    Controls controls = session.controls();
    controls.hand_wheel = 4.0 * std::sin(0.1 * step);
    session.set_controls(controls);
    while (!session.posed_fresh()) wait();
  }

  Session session;
  ShownMotion motion{session};
  SpaceView view;
};

void report(benchmark::State& state, std::vector<double> seconds) {
  if (seconds.empty()) return;
  std::sort(seconds.begin(), seconds.end());
  state.counters["frames_a_second"] = 1.0 / seconds[seconds.size() / 2];
  state.counters["slowest_ms"] = 1e3 * seconds.back();
}

void by_opengl(benchmark::State& state) {
  if (!why_no_opengl().isEmpty())
    return state.SkipWithError(("no OpenGL: " + why_no_opengl().toStdString()).c_str());
  Bench bench(SpaceDrawing::best);
  // The first pictures wait for shaders and buffers.
  for (int i = 0; i < 60; ++i) {
    QApplication::processEvents();
    QThread::msleep(20);
  }
  std::vector<double> seconds;
  int step = 0;
  for (auto _ : state) {
    QElapsedTimer timer;
    timer.start();
    bench.turn_to(++step);
    bool painted = false;
    bench.view.solids()->take_picture([&](const QImage& image) { painted = !image.isNull(); });
    while (!painted && timer.elapsed() < 5000) wait();
    if (!painted) return state.SkipWithError("no picture came");
    seconds.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e9);
  }
  report(state, std::move(seconds));
}
BENCHMARK(by_opengl)->Unit(benchmark::kMillisecond)->Iterations(120);

void in_lines(benchmark::State& state) {
  Bench bench(SpaceDrawing::lines);
  std::vector<double> seconds;
  int step = 0;
  for (auto _ : state) {
    QElapsedTimer timer;
    timer.start();
    bench.turn_to(++step);
    bench.view.picture().repaint();
    seconds.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e9);
  }
  report(state, std::move(seconds));
}
BENCHMARK(in_lines)->Unit(benchmark::kMillisecond)->Iterations(120);

}  // namespace
}  // namespace tackbench::ui

int main(int argc, char** argv) {
  tackbench::ui::choose_renderer();
  if (qEnvironmentVariableIsEmpty("DISPLAY") && qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY"))
    qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
}
