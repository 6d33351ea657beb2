#include "ui/look/palette.h"

#include <QApplication>
#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

Theme& theme_in_use() {
  static Theme theme = Theme::as_desktop;
  return theme;
}

bool& night_in_use() {
  static bool night = false;
  return night;
}

std::optional<bool>& desktop_wish() {
  static std::optional<bool> night;
  return night;
}

// Linear part of one channel, WCAG 2.1 "relative luminance".
double linear(float of_channel) {
  const auto channel = static_cast<double>(of_channel);
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour) {
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

}  // namespace

const QColor& Palette::verdict(Verdict verdict) const {
  switch (verdict) {
    case Verdict::within:
      return within;
    case Verdict::close:
      return close;
    case Verdict::past:
      return past;
    case Verdict::not_judged:
      return soft;
  }
  return soft;
}

const Palette& day_palette() {
  static const Palette day{0xF6F3EA, 0xE3DDCD, 0xFCFAF4, 0x20282C, 0x525F64,
                           0xB9B3A2, 0x1F4E8C, 0x246B45, 0x7D5100, 0xA3162A};
  return day;
}

const Palette& night_palette() {
  static const Palette night{0x1B2326, 0x12181A, 0x222C30, 0xECE7DA, 0xA3AFB1,
                             0x4A585C, 0x8FBCFF, 0x7CCB9B, 0xE8B75A, 0xFF8A8F};
  return night;
}

const Palette& palette() {
  return night_in_use() ? night_palette() : day_palette();
}

bool is_night() {
  return night_in_use();
}

void use_theme(Theme theme) {
  // The desktop's own palette, before ours covered it.
  static const bool desktop_is_dark =
      QApplication::palette().color(QPalette::Window).lightness() < 128;
  theme_in_use() = theme;
  night_in_use() = theme == Theme::night ||
                   (theme == Theme::as_desktop && desktop_wish().value_or(desktop_is_dark));
  QApplication::setPalette(widget_palette(palette()));
}

void set_desktop_night(std::optional<bool> night) {
  if (night == desktop_wish()) return;
  desktop_wish() = night;
  if (theme_in_use() == Theme::as_desktop) use_theme(Theme::as_desktop);
}

Theme used_theme() {
  return theme_in_use();
}

QPalette widget_palette(const Palette& from) {
  QPalette made;
  made.setColor(QPalette::Window, from.desk);
  made.setColor(QPalette::WindowText, from.ink);
  made.setColor(QPalette::Base, from.card);
  made.setColor(QPalette::AlternateBase, from.paper);
  made.setColor(QPalette::Text, from.ink);
  made.setColor(QPalette::PlaceholderText, from.soft);
  made.setColor(QPalette::Button, from.card);
  made.setColor(QPalette::ButtonText, from.ink);
  made.setColor(QPalette::BrightText, from.past);
  made.setColor(QPalette::ToolTipBase, from.card);
  made.setColor(QPalette::ToolTipText, from.ink);
  made.setColor(QPalette::Highlight, from.moves);
  made.setColor(QPalette::HighlightedText, from.card);
  made.setColor(QPalette::Link, from.moves);
  made.setColor(QPalette::Light, from.card);
  made.setColor(QPalette::Midlight, from.paper);
  made.setColor(QPalette::Mid, from.hair);
  made.setColor(QPalette::Dark, from.hair);
  made.setColor(QPalette::Shadow, from.soft);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    made.setColor(QPalette::Disabled, role, from.soft);
  return made;
}

double contrast(const QColor& a, const QColor& b) {
  const double first = luminance(a) + 0.05;
  const double second = luminance(b) + 0.05;
  return std::max(first, second) / std::min(first, second);
}

}  // namespace tackbench::ui
