// What the scene is painted on. Two kinds: by OpenGL, and as a line drawing where there is none.
#pragma once

#include "ui/space/space_shown.h"

class QWidget;

namespace tackbench::ui {

class SpaceCanvas {
 public:
  SpaceCanvas() = default;
  SpaceCanvas(const SpaceCanvas&) = delete;
  SpaceCanvas& operator=(const SpaceCanvas&) = delete;
  virtual ~SpaceCanvas() = default;

  // To put into a layout; its parent owns it.
  virtual QWidget& widget() = 0;
  // Where mouse and wheel events arrive: the widget or a window inside it.
  virtual QObject& touched() = 0;
  // Painted as soon as the event loop comes to it. `shown` must stay where it is.
  virtual void show(const SpaceShown& shown) = 0;
  // Something of the window lies over it, in part or whole, and has to stay in sight.
  virtual void lie_beneath(bool) {}
};

}  // namespace tackbench::ui
