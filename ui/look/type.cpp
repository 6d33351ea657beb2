#include "ui/look/type.h"

#include <QApplication>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

constexpr double kPointsPerPixel = 72.0 / 96.0;

// First of some usual faces with even figures that is installed; empty when none is.
QString even_family() {
  const QStringList families = QFontDatabase::families();
  for (const char* family : {"DejaVu Sans", "Noto Sans", "Liberation Sans", "Cantarell"}) {
    QString name = QString::fromLatin1(family);
    if (families.contains(name) && has_tabular_figures(QFont(name))) return name;
  }
  return {};
}

}  // namespace

double pixels(TypeSize size) {
  switch (size) {
    case TypeSize::small:
      return 11.5;
    case TypeSize::normal:
      return 13.0;
    case TypeSize::heading:
      return 15.0;
    case TypeSize::title:
      return 17.0;
  }
  return 13.0;
}

QFont type_font(TypeSize size, bool strong) {
  QFont font = QApplication::font();
  font.setPointSizeF(pixels(size) * kPointsPerPixel);
  font.setWeight(strong ? QFont::DemiBold : QFont::Normal);
  return font;
}

QFont figure_font(TypeSize size, bool strong) {
  QFont font = type_font(size, strong);
  static const QString even = even_family();
  if (!has_tabular_figures(font) && !even.isEmpty()) font.setFamily(even);
  return font;
}

bool has_tabular_figures(const QFont& font) {
  const QFontMetricsF metrics(font);
  const double zero = metrics.horizontalAdvance(QLatin1Char('0'));
  constexpr double kAlike = 0.01;  // pixel
  const QString figures = QStringLiteral("123456789");
  return std::all_of(figures.begin(), figures.end(), [&](QChar figure) {
    return std::abs(metrics.horizontalAdvance(figure) - zero) < kAlike;
  });
}

QString shortened(const QString& text, const QFont& font, int width) {
  return QFontMetricsF(font).elidedText(text, Qt::ElideMiddle, width);
}

}  // namespace tackbench::ui
