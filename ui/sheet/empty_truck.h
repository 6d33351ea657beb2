// The sheet of a project in which nothing is measured yet: a faint truck with the seven things to
// measure first.
#pragma once

#include <QPainter>
#include <QRectF>
#include <array>

#include "core/project/project.h"
#include "ui/look/palette.h"

namespace tackbench::ui {

// Which of the seven are in the project, in their order.
std::array<bool, 7> measured_things(const Project& project);

void paint_empty_truck(QPainter& painter, const Palette& colours, const QRectF& room,
                       const Project& project);

}  // namespace tackbench::ui
