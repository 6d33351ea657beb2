// The findings as a job card: worst first, of all stations or of one. Choosing one sets the
// controls to its worst moment and shows how it came.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>
#include <QWidget>
#include <optional>
#include <vector>

#include "core/project/station.h"
#include "ui/fields/calm_combo.h"
#include "ui/panels/finding_card.h"
#include "ui/session/calm_refresh.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class FindingsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit FindingsPanel(Session& session, QWidget* parent = nullptr);

  // Those of one station only, or all.
  void show_station(std::optional<Station> station);
  // The cards shown, in order.
  std::vector<FindingCard*> shown_cards() const;
  FindingCard* card(const std::string& name) const;
  QString headline() const { return headline_->text(); }
  // What is said of stale findings; empty while they are fresh.
  QString progress_words() const { return progress_->isHidden() ? QString() : progress_->text(); }
  QPushButton& stop_button() const { return *stop_; }
  CalmCombo& station_filter() const { return *filter_; }

  // The shaft line can be shown wandering, or is: its finding offers it.
  void offer_wander(bool possible, bool playing);

  // Opens it, sets the controls to where it is worst and tells finding_chosen.
  void choose(const QString& name);

 Q_SIGNALS:
  void finding_chosen(const QString& name);
  void wander_wanted(bool on);

 private:
  void make_head(QVBoxLayout& column);
  void refresh();
  bool looks_stale() const;
  void fill_cards();
  void show_progress();
  void offer_motion(FindingCard& card) const;

  Session& session_;
  std::optional<Station> station_;
  std::string open_;  // the finding that is chosen
  std::vector<FindingCard*> cards_;
  bool wander_possible_ = false;
  bool wander_playing_ = false;
  struct Shown {
    const JudgedTruck* truck = nullptr;
    bool stale = false;
    std::optional<Station> station;
    ShownUnit unit = ShownUnit::millimetre;
    bool operator==(const Shown&) const = default;
  };
  std::optional<Shown> shown_;  // what the cards hold
  QLabel* headline_ = nullptr;
  QLabel* progress_ = nullptr;
  QPushButton* stop_ = nullptr;
  CalmCombo* filter_ = nullptr;
  QScrollArea* scroll_ = nullptr;
  QVBoxLayout* list_ = nullptr;
  QLabel* none_ = nullptr;
  QTimer long_wait_;
  CalmRefresh* calm_ = nullptr;
};

}  // namespace tackbench::ui
