// A station's tag on the drawn shaft: its word, its live numbers, its worst verdict.
#pragma once

#include <QAbstractButton>

#include "core/project/station.h"
#include "ui/panels/station_numbers.h"
#include "ui/panels/station_words.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class StationTag : public QAbstractButton {
  Q_OBJECT

 public:
  StationTag(Session& session, Station station, QWidget* parent = nullptr);

  Station station() const { return station_; }
  // Numbers and verdict anew.
  void refresh();
  // To a mark and one number.
  void fold(bool folded);
  const StationNumbers& numbers() const { return numbers_; }
  const StationState& state() const { return state_; }
  // What a folded tag says beside its mark, and the pixels that it has for that.
  QString folded_words() const;
  int folded_room() const;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void paint_whole(QPainter& painter);
  void paint_folded(QPainter& painter);
  void paint_line(QPainter& painter, const QRect& place, const QString& words, const QFont& font,
                  const QColor& colour);
  QString first_words() const;

  Session& session_;
  Station station_;
  StationNumbers numbers_;
  StationState state_;
  bool folded_ = false;
};

}  // namespace tackbench::ui
