// Marks tell verdicts apart without their colour.
#include "ui/look/verdict_mark.h"

#include <gtest/gtest.h>

#include <QImage>
#include <set>

#include "ui/look/palette.h"
#include "ui/look/type.h"

namespace tackbench::ui {
namespace {

QImage drawn(Verdict verdict, bool stale) {
  QImage image(32, 32, QImage::Format_ARGB32_Premultiplied);
  image.fill(palette().card);
  QPainter painter(&image);
  paint_verdict_mark(painter, QRectF(0, 0, 32, 32), verdict, stale);
  painter.end();
  return image;
}

// Where anything was drawn, whatever its colour.
std::string shape_of(const QImage& image) {
  std::string shape;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x)
      shape += contrast(image.pixelColor(x, y), palette().card) > 1.6 ? '#' : '.';
  return shape;
}

constexpr Verdict kAll[] = {Verdict::within, Verdict::close, Verdict::past, Verdict::not_judged};

TEST(VerdictMarks, HaveAShapeEach) {
  std::set<std::string> shapes;
  for (const Verdict verdict : kAll) shapes.insert(shape_of(drawn(verdict, false)));
  EXPECT_EQ(shapes.size(), 4U);
}

TEST(VerdictMarks, LookOtherwiseWhileStale) {
  for (const Verdict verdict : kAll) {
    EXPECT_NE(shape_of(drawn(verdict, true)), shape_of(drawn(verdict, false)));
    EXPECT_NE(verdict_words(verdict, true), verdict_words(verdict, false));
  }
}

TEST(VerdictMarks, SpeakTheVerdictsWord) {
  for (const Verdict verdict : kAll) {
    VerdictMark mark;
    mark.show_verdict(verdict, false);
    EXPECT_EQ(mark.accessibleName().toStdString(), verdict_word(verdict));
  }
}

TEST(VerdictMarks, DoNotTouchTheEdge) {
  for (const Verdict verdict : kAll) {
    const QImage image = drawn(verdict, false);
    for (int i = 0; i < 32; ++i) {
      EXPECT_EQ(image.pixelColor(i, 0), palette().card);
      EXPECT_EQ(image.pixelColor(31, i), palette().card);
    }
  }
}

TEST(Type, StepsAndFigures) {
  EXPECT_LT(type_font(TypeSize::small).pointSizeF(), type_font(TypeSize::normal).pointSizeF());
  EXPECT_LT(type_font(TypeSize::heading).pointSizeF(), type_font(TypeSize::title).pointSizeF());
  EXPECT_TRUE(has_tabular_figures(figure_font(TypeSize::normal)));
  EXPECT_TRUE(has_tabular_figures(figure_font(TypeSize::normal, true)));
  // 11.5, 13, 15 and 17 pixels at 96 to the inch; a point is 1/72 inch.
  EXPECT_NEAR(type_font(TypeSize::small).pointSizeF() * 96 / 72, 11.5, 0.1);
  EXPECT_NEAR(type_font(TypeSize::title).pointSizeF() * 96 / 72, 17.0, 0.1);
}

}  // namespace
}  // namespace tackbench::ui
