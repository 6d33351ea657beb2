// The colours of day and night. Ink is fixed, marking blue moves; verdicts have a colour, but never
// only a colour.
#pragma once

#include <QColor>
#include <QPalette>
#include <optional>

#include "core/findings/finding.h"

namespace tackbench::ui {

struct Palette {
  QColor paper;  // the drawing sheet
  QColor desk;   // what lies around it
  QColor card;   // panels and cards
  QColor ink;    // text and fixed outlines
  QColor soft;   // lesser text, people, cab
  QColor hair;   // hair lines, frames
  QColor moves;  // the moving linkage, what is dragged
  QColor within;
  QColor close;
  QColor past;

  const QColor& verdict(Verdict verdict) const;  // not judged: soft
};

enum class Theme { as_desktop, day, night };

const Palette& day_palette();
const Palette& night_palette();
// The one in use.
const Palette& palette();
bool is_night();

// Sets it for the whole program, its widgets' QPalette included; every widget gets a
// QEvent::PaletteChange. `as_desktop` does what the desktop wishes (set_desktop_night); of one that
// wishes nothing it asks the palette whether it is dark.
void use_theme(Theme theme);
Theme used_theme();
void set_desktop_night(std::optional<bool> night);

// For QWidgets of the usual kinds.
QPalette widget_palette(const Palette& palette);

// Contrast of two opaque colours by WCAG 2.1 relative luminance, 1 to 21.
double contrast(const QColor& a, const QColor& b);

}  // namespace tackbench::ui
