#include "ui/space/depth_picture.h"

#include <algorithm>
#include <cmath>

namespace tackbench::ui {

namespace {

QRgb lit(const QColor& colour, double light) {
  const auto part = [&](int channel) {
    return static_cast<int>(std::clamp(channel * light, 0.0, 255.0));
  };
  return qRgb(part(colour.red()), part(colour.green()), part(colour.blue()));
}

QRgb mixed(QRgb over, QRgb under, double cover) {
  const auto part = [&](int a, int b) {
    return static_cast<int>(std::lround(a * cover + b * (1.0 - cover)));
  };
  return qRgb(part(qRed(over), qRed(under)), part(qGreen(over), qGreen(under)),
              part(qBlue(over), qBlue(under)));
}

}  // namespace

void DepthPicture::begin(const QSize& size, const QColor& ground) {
  const QSize at_least = size.expandedTo({1, 1});
  if (image_.size() != at_least) image_ = QImage(at_least, QImage::Format_RGB32);
  image_.fill(ground);
  near_.assign(static_cast<std::size_t>(image_.width()) * static_cast<std::size_t>(image_.height()),
               0.0F);
}

// Calls put(pixel of the picture, index, near, light) at every pixel whose middle lies inside.
template <class Put>
void DepthPicture::scan(const PictureTriangle& triangle, const Put& put) {
  const PictureCorner& a = triangle[0];
  const PictureCorner& b = triangle[1];
  const PictureCorner& c = triangle[2];
  const double area = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
  if (!(std::abs(area) > 1e-9)) return;
  const double top = std::min({a.y, b.y, c.y});
  const double bottom = std::max({a.y, b.y, c.y});
  const int first_row = static_cast<int>(std::max(0.0, std::ceil(top - 0.5)));
  const int last_row =
      static_cast<int>(std::min<double>(image_.height() - 1, std::floor(bottom - 0.5)));
  for (int row = first_row; row <= last_row; ++row) {
    const double y = row + 0.5;
    double left = 1e30;
    double right = -1e30;
    for (std::size_t i = 0; i < 3; ++i) {
      const PictureCorner& from = triangle[i];
      const PictureCorner& to = triangle[(i + 1) % 3];
      if ((from.y <= y) == (to.y <= y)) continue;
      const double x = from.x + (to.x - from.x) * (y - from.y) / (to.y - from.y);
      left = std::min(left, x);
      right = std::max(right, x);
    }
    const int first = static_cast<int>(std::max(0.0, std::ceil(left - 0.5)));
    const int last =
        static_cast<int>(std::min<double>(image_.width() - 1, std::floor(right - 0.5)));
    if (first > last) continue;
    auto* line = reinterpret_cast<QRgb*>(image_.scanLine(row));
    const std::size_t start =
        static_cast<std::size_t>(row) * static_cast<std::size_t>(image_.width());
    // Shares of b and c change evenly along the row.
    const auto share_b = [&](double x) {
      return ((x - a.x) * (c.y - a.y) - (c.x - a.x) * (y - a.y)) / area;
    };
    const auto share_c = [&](double x) {
      return ((b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)) / area;
    };
    for (int column = first; column <= last; ++column) {
      const double of_b = share_b(column + 0.5);
      const double of_c = share_c(column + 0.5);
      put(line[column], start + static_cast<std::size_t>(column),
          a.near + of_b * (b.near - a.near) + of_c * (c.near - a.near),
          a.light + of_b * (b.light - a.light) + of_c * (c.light - a.light));
    }
  }
}

void DepthPicture::fill(const PictureTriangle& triangle, const QColor& colour) {
  scan(triangle, [&](QRgb& pixel, std::size_t index, double near, double light) {
    const auto here = static_cast<float>(near);
    if (here <= near_[index]) return;
    near_[index] = here;
    pixel = lit(colour, light);
  });
}

void DepthPicture::lay_over(const PictureTriangle& triangle, const QColor& colour, double cover) {
  scan(triangle, [&](QRgb& pixel, std::size_t index, double near, double light) {
    if (static_cast<float>(near) > near_[index]) pixel = mixed(lit(colour, light), pixel, cover);
  });
}

void DepthPicture::stain(const PictureTriangle& triangle, const QColor& colour) {
  scan(triangle, [&](QRgb& pixel, std::size_t, double, double) { pixel = colour.rgb(); });
}

bool DepthPicture::sees(double x, double y, double near, double slack) const {
  const int column = static_cast<int>(std::floor(x - 0.5));
  const int row = static_cast<int>(std::floor(y - 0.5));
  const double farthest = 1.0 / near - slack;
  for (int i = row; i <= row + 1; ++i) {
    for (int k = column; k <= column + 1; ++k) {
      if (i < 0 || k < 0 || i >= image_.height() || k >= image_.width()) continue;
      const float there =
          near_[static_cast<std::size_t>(i) * static_cast<std::size_t>(image_.width()) +
                static_cast<std::size_t>(k)];
      if (there <= 0.0F || 1.0 / static_cast<double>(there) >= farthest) return true;
    }
  }
  return false;
}

int DepthPicture::covered() const {
  return static_cast<int>(
      std::count_if(near_.begin(), near_.end(), [](float near) { return near > 0.0F; }));
}

}  // namespace tackbench::ui
