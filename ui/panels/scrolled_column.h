// A column of the side that scrolls up and down only; its bar is always there, so that nothing
// shifts sideways.
#pragma once

#include <QScrollArea>

namespace tackbench::ui {

inline QScrollArea* scrolled_column(QWidget* parent, const QString& name) {
  auto* scroll = new QScrollArea(parent);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setAccessibleName(name);
  return scroll;
}

}  // namespace tackbench::ui
