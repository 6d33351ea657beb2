// What a drawing sheet carries besides the drawing: titles, the projection symbol, words of its
// own.
#pragma once

#include <QFont>
#include <QPainter>
#include <QRectF>

#include "core/project/sheet_settings.h"
#include "ui/look/palette.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"

namespace tackbench::ui {

// ISO 3098 lettering where the face is installed, else the window's own; `pixels` high.
QFont lettering(double pixels, const QFont& otherwise);

// Where the title of a view stands, beneath it.
QRectF title_place(const SheetScene& scene, const SheetTransform& transform, SheetView view,
                   const QFont& font, const QRectF& paper);
void paint_title(QPainter& painter, const Palette& colours, const QRectF& place, SheetView view,
                 bool hovered);

// First or third angle (ISO 128-3): a truncated cone and its end; its middle at `at`.
void paint_projection_symbol(QPainter& painter, const Palette& colours, const QPointF& at,
                             Projection projection);

}  // namespace tackbench::ui
