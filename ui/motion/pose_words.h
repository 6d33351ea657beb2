// Where the controls stand, in words: read on the desk and spoken by a screen reader.
#pragma once

#include <QStringList>

#include "core/basics/shown_number.h"
#include "core/mechanism/controls.h"
#include "core/mechanism/mechanism.h"

namespace tackbench::ui {

// "0.42 turn left", "straight".
QString hand_wheel_words(double angle);

// "Hand wheel 0.42 turn left", then each of bump and pedals that is not at its rest.
QStringList control_words(const Mechanism& mechanism, const Controls& controls, ShownUnit unit);

}  // namespace tackbench::ui
