// Graphs of the truck, one at a time, with a cursor tied to the controls.
#pragma once

#include <QStringList>
#include <QWidget>
#include <cstdint>
#include <vector>

#include "core/runner/runner.h"
#include "ui/graphs/plot.h"
#include "ui/session/calm_refresh.h"
#include "ui/session/session.h"

class QLabel;
class QPushButton;

namespace tackbench::ui {

class CalmCombo;

class GraphsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit GraphsPanel(Session& session, QWidget* parent = nullptr);
  ~GraphsPanel() override;

  void choose(const GraphChoice& choice);
  const GraphChoice& chosen() const { return choice_; }
  const std::vector<Curve>& curves() const { return curves_; }
  QString csv() const;

  // Blocks until the curves are of the truck as it is (tests).
  void wait_until_fresh();

  void copy_picture();
  void copy_csv() const;

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void list_choices();
  void work_out();  // curves anew, away from the window's thread; nothing while hidden
  void arrived(std::uint64_t asked, std::vector<Curve> curves, std::vector<Curve> before);
  void show_stale();
  void show_controls();
  void set_by_hand(double place);
  ControlReach reach() const;
  PlotPicture picture(bool stale) const;

  Session& session_;
  GraphChoice choice_;
  std::vector<GraphChoice> choices_;
  QStringList titles_;  // of the choices
  std::vector<Curve> curves_;
  std::vector<Curve> before_;
  std::uint64_t asked_ = 0;  // counts what was asked for; earlier answers are dropped
  bool behind_ = true;       // asked for nothing since the truck changed
  bool stale_ = false;       // the curves shown are not of the truck as it is: faded
  CalmCombo* choose_ = nullptr;
  Plot* plot_ = nullptr;
  CalmRefresh* calm_ = nullptr;
  QLabel* readout_ = nullptr;
  QPushButton* copy_picture_ = nullptr;
  QPushButton* copy_csv_ = nullptr;
  Runner runner_;  // last: its jobs post to this object
};

}  // namespace tackbench::ui
