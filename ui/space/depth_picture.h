// A picture with a depth for each pixel: triangles are filled nearest first, lines ask what is
// seen.
#pragma once

#include <QColor>
#include <QImage>
#include <array>
#include <vector>

namespace tackbench::ui {

// A corner on the picture. `near` is one over the distance from the eye along the line of sight,
// 1/mm, which goes straight across a flat face; `light` 0 to 1.
struct PictureCorner {
  double x = 0.0;
  double y = 0.0;
  double near = 0.0;
  double light = 1.0;
};
using PictureTriangle = std::array<PictureCorner, 3>;

class DepthPicture {
 public:
  void begin(const QSize& size, const QColor& ground);

  // Hides what is behind it.
  void fill(const PictureTriangle& triangle, const QColor& colour);
  // Lies over what is behind it, `cover` 0 to 1; hides nothing.
  void lay_over(const PictureTriangle& triangle, const QColor& colour, double cover);
  // On the ground: depth is neither asked nor left.
  void stain(const PictureTriangle& triangle, const QColor& colour);

  // Whether something at that place is seen: nothing nearer by more than `slack` mm there or at
  // one of the pixels beside it.
  bool sees(double x, double y, double near, double slack) const;

  QImage& image() { return image_; }
  // Pixels at which the eye meets a filled triangle.
  int covered() const;

 private:
  template <class Put>
  void scan(const PictureTriangle& triangle, const Put& put);

  QImage image_;
  std::vector<float> near_;
};

}  // namespace tackbench::ui
