// Graphs of the truck, one at a time, with a cursor tied to the controls.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/graphs/plot.h"
#include "ui/session/session.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace tackbench::ui {

class GraphsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit GraphsPanel(Session& session, QWidget* parent = nullptr);

  void choose(const GraphChoice& choice);
  const GraphChoice& chosen() const { return choice_; }
  const std::vector<Curve>& curves() const { return curves_; }
  QString csv() const;

  void copy_picture();
  void copy_csv();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void list_choices();
  void work_out();  // curves anew; nothing while hidden
  void show_stale();
  void show_controls();
  void set_by_hand(double place);
  ControlReach reach() const;
  PlotPicture picture(bool stale) const;

  Session& session_;
  GraphChoice choice_;
  std::vector<GraphChoice> choices_;
  std::vector<Curve> curves_;
  std::vector<Curve> before_;
  bool behind_ = true;  // the curves are not yet of the truck as it is
  bool stale_ = false;  // shown faded
  QComboBox* choose_ = nullptr;
  Plot* plot_ = nullptr;
  QLabel* readout_ = nullptr;
  QPushButton* copy_picture_ = nullptr;
  QPushButton* copy_csv_ = nullptr;
};

}  // namespace tackbench::ui
