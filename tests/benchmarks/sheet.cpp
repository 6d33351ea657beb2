// From a pointer's move to the sheet painted with the new numbers: the tender at 1280x720, without
// a display. `moved_and_painted` is what a hand feels; the others are its parts.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QMouseEvent>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "core/mechanism/solve.h"
#include "ui/session/session.h"
#include "ui/sheet/sheet_card.h"

namespace tackbench::ui {
namespace {

constexpr QSize kSize(1280, 720);

struct Bench : QObject {
  Bench() : card(session, motion) {
    card.installEventFilter(this);
    const std::string file = std::string(TACKBENCH_SOURCE_FOLDER) +
                             "/sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack";
    for (const Problem& problem : session.open(file)) {
      std::puts(one_line(problem).c_str());
      std::abort();
    }
    card.resize(kSize);
    card.show();
    session.wait_until_fresh();
    QApplication::processEvents();
  }

  void send(QEvent::Type type, const QPointF& at, Qt::MouseButton button) {
    QMouseEvent event(type, at, card.mapToGlobal(at), button, Qt::LeftButton, {});
    QApplication::sendEvent(&card, &event);
  }
  // Until the fresh pose has been painted by the widget's own paint event.
  void wait_for_paint() {
    painted = false;
    while (!session.posed_fresh() || !painted) {
      if (!session.posed_fresh()) painted = false;
      QApplication::processEvents();
    }
  }
  bool eventFilter(QObject*, QEvent* event) override {
    painted = painted || event->type() == QEvent::Paint;
    paints += event->type() == QEvent::Paint ? 1 : 0;
    return false;
  }

  Session session;
  ShownMotion motion{session};
  SheetCard card;
  bool painted = false;
  int paints = 0;
  QImage picture{kSize, QImage::Format_ARGB32_Premultiplied};
};

void moved_and_painted(benchmark::State& state) {
  Bench bench;
  const auto at = bench.card.grip_place("drag_link.knuckle_ball_mm", SheetView::side);
  if (!at) return state.SkipWithError("no such point");
  bench.session.select("drag_link.knuckle_ball_mm");
  bench.send(QEvent::MouseButtonPress, *at, Qt::LeftButton);
  std::vector<double> times;
  int i = 0;
  for (auto _ : state) {
    ++i;
    QElapsedTimer timer;
    timer.start();
    bench.send(QEvent::MouseMove, *at + QPointF(6.0 + i % 23, i % 7), Qt::NoButton);
    bench.wait_for_paint();
    times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
  }
  std::sort(times.begin(), times.end());
  state.counters["paints"] = static_cast<double>(bench.paints) / static_cast<double>(times.size());
  state.counters["median_ms"] = times[times.size() / 2];
  state.counters["p95_ms"] = times[times.size() * 95 / 100];
  bench.session.cancel_drag();
}
BENCHMARK(moved_and_painted)->Unit(benchmark::kMillisecond);

void painted(benchmark::State& state) {
  Bench bench;
  for (auto _ : state) bench.card.render(&bench.picture);
}
BENCHMARK(painted)->Unit(benchmark::kMillisecond);

void three_views(benchmark::State& state) {
  Bench bench;
  const PosedTruck& truck = bench.session.posed();
  for (auto _ : state)
    for (const SheetView view : kSheetViews)
      benchmark::DoNotOptimize(truck_view(*truck.mechanism, truck.pose, view));
}
BENCHMARK(three_views)->Unit(benchmark::kMillisecond);

void compiled_and_posed(benchmark::State& state) {
  Bench bench;
  for (auto _ : state) {
    const Result<Mechanism> mechanism = compile(bench.session.project());
    benchmark::DoNotOptimize(solved_pose(*mechanism, bench.session.controls()));
  }
}
BENCHMARK(compiled_and_posed)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace tackbench::ui

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QApplication application(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
}
