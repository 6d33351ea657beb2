// The drawn shaft from hand to road across the top of the window, with the stations' tags in the
// order in which motion flows, and those around it.
#pragma once

#include <QWidget>
#include <vector>

#include "core/project/station.h"
#include "ui/panels/station_tag.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class ShaftStrip : public QWidget {
  Q_OBJECT

 public:
  explicit ShaftStrip(Session& session, QWidget* parent = nullptr);

  // The tag that is chosen; none to begin with.
  void show_chosen(std::optional<Station> station);
  std::optional<Station> chosen() const;
  // To marks and one number each.
  void set_folded(bool folded);
  bool folded() const { return folded_; }
  void fold_by_hand(bool folded);
  StationTag& tag(Station station) const;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  void station_chosen(tackbench::Station station);
  void member_chosen(const QString& path);  // what has no tag: "cab", "shapes.rails"
  void folded_by_hand(bool folded);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();
  void place_tags();
  void go(int step);  // to the tag before or after the one with the keyboard
  void paint_shaft(QPainter& painter);

  Session& session_;
  std::vector<StationTag*> tags_;
  std::vector<QAbstractButton*> others_;  // cab, rails
  QAbstractButton* fold_ = nullptr;
  bool folded_ = false;
  double left_ = 0.0;  // of the drawn shaft
  double right_ = 0.0;
};

}  // namespace tackbench::ui
