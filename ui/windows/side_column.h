// One column at the side: findings or a station's sheet or graphs or the cut list. It folds away.
#pragma once

#include <QWidget>
#include <vector>

#include "core/project/station.h"
#include "ui/session/session.h"

class QAbstractButton;
class QStackedWidget;

namespace tackbench::ui {

class CutListPanel;
class FindingsPanel;
class GraphsPanel;
class StationSheet;

enum class SidePage { findings, station, graphs, cut_list };

class SideColumn : public QWidget {
  Q_OBJECT

 public:
  explicit SideColumn(Session& session, QWidget* parent = nullptr);

  void show_page(SidePage page);
  SidePage page() const;
  void show_station(Station station);
  void show_record(const std::string& root);
  void begin(const std::string& path);  // as StationSheet::begin
  FindingsPanel& findings() const { return *findings_; }
  StationSheet& station_sheet() const { return *station_; }
  GraphsPanel& graphs() const { return *graphs_; }
  CutListPanel& cut_list() const { return *cut_list_; }

 Q_SIGNALS:
  void page_changed();

 private:
  FindingsPanel* findings_;
  StationSheet* station_;
  GraphsPanel* graphs_;
  CutListPanel* cut_list_;
  QStackedWidget* pages_;
  std::vector<QAbstractButton*> choices_;
};

}  // namespace tackbench::ui
