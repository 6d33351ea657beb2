#include "ui/space/line_drawing.h"

#include <algorithm>
#include <cmath>

#include "core/scene/pick.h"
#include "ui/look/style.h"
#include "ui/space/space_colours.h"

namespace tackbench::ui {

namespace {

constexpr double kNearest = 20.0;    // mm before the eye; what is nearer is left out
constexpr double kLineSlack = 7.0;   // mm that an edge may lie behind its own faces' pixels
constexpr double kSampleStep = 2.0;  // pixels along an edge
constexpr double kInside = 60.0;     // mm of solid about a point that is still seen
constexpr double kGhostCover = 0.12;
constexpr double kGroundStep = 500.0;

bool is_soft(const ScenePiece& piece) {
  return piece.role == SceneRole::soft;
}

template <class Then>
void each_piece(const SpaceShown& shown, bool soft, const Then& then) {
  for (std::size_t i = 0; i < shown.scene->bodies.size() && i < shown.motions.size(); ++i)
    for (const ScenePiece& piece : shown.scene->bodies[i].pieces)
      if (is_soft(piece) == soft) then(piece, shown.motions[i]);
}

template <class Then>
void each_ghost(const SpaceShown& shown, const Then& then) {
  for (const SpaceGhost& ghost : shown.ghosts)
    for (const ScenePiece& piece : shown.scene->bodies[ghost.body].pieces)
      if (!is_soft(piece)) then(piece.coarse, ghost.motion);
}

}  // namespace

std::vector<std::pair<Vec3, Vec3>> ground_lines(const Scene& scene) {
  std::vector<std::pair<Vec3, Vec3>> lines;
  if (scene.bounds.empty()) return lines;
  const auto below = [](double at) { return kGroundStep * (std::floor(at / kGroundStep) - 1.0); };
  const auto above = [](double at) { return kGroundStep * (std::ceil(at / kGroundStep) + 1.0); };
  const double x0 = below(scene.bounds.least.x());
  const double x1 = above(scene.bounds.greatest.x());
  const double y0 = below(scene.bounds.least.y());
  const double y1 = above(scene.bounds.greatest.y());
  const double z = scene.ground_z;
  // In pieces of one step, so that what lies behind the eye drops out piece by piece.
  for (double x = x0; x <= x1 + 1.0; x += kGroundStep)
    for (double y = y0; y < y1 - 1.0; y += kGroundStep)
      lines.emplace_back(Vec3(x, y, z), Vec3(x, y + kGroundStep, z));
  for (double y = y0; y <= y1 + 1.0; y += kGroundStep)
    for (double x = x0; x < x1 - 1.0; x += kGroundStep)
      lines.emplace_back(Vec3(x, y, z), Vec3(x + kGroundStep, y, z));
  return lines;
}

LineDrawing::Corner LineDrawing::corner_of(const Vec3& chassis_mm) const {
  Corner corner;
  corner.in_eye_mm = eye_axes_ * (chassis_mm - camera_.eye_mm());
  const double depth = -corner.in_eye_mm.z();
  corner.before_eye = depth > kNearest;
  if (!corner.before_eye) return corner;
  corner.at.near = 1.0 / depth;
  const double scale = pixels_a_unit_ / depth;
  corner.at.x = 0.5 * size_.width + scale * corner.in_eye_mm.x();
  corner.at.y = 0.5 * size_.height - scale * corner.in_eye_mm.y();
  return corner;
}

void LineDrawing::place_corners(const Mesh& mesh, const SceneMotion& motion) {
  const Mat3 turn = eye_axes_ * motion.turn;
  corners_.clear();
  corners_.reserve(mesh.vertices.size());
  for (std::size_t i = 0; i < mesh.vertices.size(); ++i) {
    corners_.push_back(corner_of((motion * Point<Chassis>{mesh.vertices[i]}).mm));
    corners_.back().at.light = light_on(turn * mesh.normals[i]);
  }
}

void LineDrawing::fill_faces(const Mesh& mesh, const QColor& colour, double cover) {
  for (const auto& [a, b, c] : mesh.triangles) {
    const Corner& first = corners_[a];
    const Corner& second = corners_[b];
    const Corner& third = corners_[c];
    if (!first.before_eye || !second.before_eye || !third.before_eye) continue;
    const PictureTriangle triangle{first.at, second.at, third.at};
    // Anticlockwise from outside, and the picture's y runs down.
    const double area = (second.at.x - first.at.x) * (third.at.y - first.at.y) -
                        (third.at.x - first.at.x) * (second.at.y - first.at.y);
    if (area >= 0.0) continue;
    if (cover >= 1.0)
      picture_.fill(triangle, colour);
    else
      picture_.lay_over(triangle, colour, cover);
  }
}

// The part of a straight line that is seen, in pieces.
void LineDrawing::add_seen(const Vec3& from_mm, const Vec3& to_mm, std::vector<QLineF>& lines) {
  const Corner from = corner_of(from_mm);
  const Corner to = corner_of(to_mm);
  if (!from.before_eye || !to.before_eye) return;
  const double length = std::hypot(to.at.x - from.at.x, to.at.y - from.at.y);
  const int steps = static_cast<int>(std::clamp(std::ceil(length / kSampleStep), 1.0, 2000.0));
  const auto place = [&](double part) {
    return QPointF(from.at.x + part * (to.at.x - from.at.x),
                   from.at.y + part * (to.at.y - from.at.y));
  };
  int start = -1;
  for (int i = 0; i <= steps; ++i) {
    bool seen = i < steps;
    if (seen) {
      const double part = (i + 0.5) / steps;
      const QPointF at = place(part);
      const double near = from.at.near + part * (to.at.near - from.at.near);
      seen = picture_.sees(at.x(), at.y(), near, kLineSlack);
    }
    if (seen && start < 0) start = i;
    if (!seen && start >= 0) {
      lines.emplace_back(place(static_cast<double>(start) / steps) / ratio_,
                         place(static_cast<double>(i) / steps) / ratio_);
      start = -1;
    }
  }
}

void LineDrawing::add_edges(const Mesh& mesh, const SceneMotion& motion, Stroke& stroke) {
  const Vec3 eye = (motion.inverse() * Point<Chassis>{camera_.eye_mm()}).mm;
  for (const MeshEdge& edge : mesh.edges) {
    const Vec3& a = mesh.vertices[edge.ends[0]];
    const Vec3 to_eye = eye - a;
    const bool one = edge.facing[0].dot(to_eye) > 0.0;
    const bool other = edge.facing[1].dot(to_eye) > 0.0;
    if (!(edge.sharp ? one || other : one != other)) continue;
    add_seen((motion * Point<Chassis>{a}).mm,
             (motion * Point<Chassis>{mesh.vertices[edge.ends[1]]}).mm, stroke.lines);
  }
}

LineDrawing::Stroke& LineDrawing::stroke_of(const QColor& colour, double width) {
  for (Stroke& stroke : strokes_)
    if (stroke.colour == colour && stroke.width == width) return stroke;
  return strokes_.emplace_back(Stroke{colour, width, {}});
}

// Straight below every solid: what touches the ground is seen to.
void LineDrawing::stain_ground(const SpaceShown& shown, const Palette& colours) {
  const QColor colour = shadow_colour(colours);
  for (std::size_t i = 0; i < shown.scene->bodies.size() && i < shown.motions.size(); ++i) {
    for (const ScenePiece& piece : shown.scene->bodies[i].pieces) {
      if (is_soft(piece)) continue;
      const Mesh& mesh = piece.coarse;
      corners_.clear();
      for (const Vec3& vertex : mesh.vertices) {
        Vec3 down = (shown.motions[i] * Point<Chassis>{vertex}).mm;
        down.z() = shown.scene->ground_z;
        corners_.push_back(corner_of(down));
      }
      for (const auto& [a, b, c] : mesh.triangles)
        if (corners_[a].before_eye && corners_[b].before_eye && corners_[c].before_eye)
          picture_.stain({corners_[a].at, corners_[b].at, corners_[c].at}, colour);
    }
  }
}

void LineDrawing::draw_ground(QPainter& painter, const SpaceShown& shown, const Palette& colours) {
  painter.setPen(QPen(ground_line_colour(colours), 0.8));
  std::vector<QLineF> lines;
  for (const auto& [from, to] : ground_lines(*shown.scene)) add_seen(from, to, lines);
  painter.drawLines(lines.data(), static_cast<int>(lines.size()));
}

void LineDrawing::draw_points(QPainter& painter, const SpaceShown& shown, const Palette& colours) {
  for (const SpacePoint& point : shown.points) {
    const Corner corner = corner_of(point.posed_mm);
    if (!corner.before_eye) continue;
    const QPointF at = QPointF(corner.at.x, corner.at.y) / ratio_;
    const bool chosen = point.grip.path == shown.selected;
    const bool hovered = point.grip.path == shown.hovered;
    if (!chosen && !hovered && !picture_.sees(corner.at.x, corner.at.y, corner.at.near, kInside)) {
      painter.setPen(Qt::NoPen);
      painter.setBrush(tint(colours.moves, colours.card, 0.45));
      painter.drawEllipse(at, 1.6, 1.6);
      continue;
    }
    painter.setPen(QPen(colours.moves, chosen ? 2.2 : 1.2));
    painter.setBrush(chosen || hovered ? colours.moves : colours.card);
    painter.drawEllipse(at, chosen || hovered ? 5.0 : 2.4, chosen || hovered ? 5.0 : 2.4);
    if (!chosen) continue;
    painter.setPen(QPen(colours.ink, 1.4));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at, 8.0, 8.0);
  }
}

void LineDrawing::fill_solids(const SpaceShown& shown, const Palette& colours) {
  for (const bool soft : {false, true}) {
    each_piece(shown, soft, [&](const ScenePiece& piece, const SceneMotion& motion) {
      const SolidColours solid =
          solid_colours(colours, piece.role, shows_selected(piece.part, shown.selected));
      place_corners(shown.coarse ? piece.coarse : piece.fine, motion);
      fill_faces(shown.coarse ? piece.coarse : piece.fine, solid.face, solid.cover);
    });
  }
  each_ghost(shown, [&](const Mesh& mesh, const SceneMotion& motion) {
    place_corners(mesh, motion);
    fill_faces(mesh, ghost_colour(colours), kGhostCover);
  });
}

void LineDrawing::add_all_edges(const SpaceShown& shown, const Palette& colours) {
  each_ghost(shown, [&](const Mesh& mesh, const SceneMotion& motion) {
    add_edges(mesh, motion, stroke_of(tint(ghost_colour(colours), colours.card, 0.6), 0.7));
  });
  for (const bool soft : {true, false}) {
    each_piece(shown, soft, [&](const ScenePiece& piece, const SceneMotion& motion) {
      const bool selected = shows_selected(piece.part, shown.selected);
      const SolidColours solid = solid_colours(colours, piece.role, selected);
      const double usual = soft ? 0.7 : 1.0;
      add_edges(shown.coarse ? piece.coarse : piece.fine, motion,
                stroke_of(solid.line, selected ? 1.8 : usual));
    });
  }
}

void LineDrawing::draw_held_line(QPainter& painter, const HeldLine& held, const Palette& colours) {
  std::vector<QLineF> lines;
  const Corner at = corner_of(held.through_mm);
  for (const double way : {-1.0, 1.0}) {
    const Corner end = corner_of(held.through_mm + way * 1500.0 * held.along);
    if (at.before_eye && end.before_eye)
      lines.emplace_back(QPointF(at.at.x, at.at.y) / ratio_, QPointF(end.at.x, end.at.y) / ratio_);
  }
  painter.setPen(QPen(colours.moves, 1.0, Qt::DashLine));
  painter.drawLines(lines.data(), static_cast<int>(lines.size()));
}

void LineDrawing::paint(QPainter& painter, const QSize& size, double ratio, const SpaceShown& shown,
                        const Palette& colours) {
  const QSize device(qRound(size.width() * ratio), qRound(size.height() * ratio));
  camera_ = shown.camera;
  ratio_ = ratio;
  size_ = {static_cast<double>(std::max(1, device.width())),
           static_cast<double>(std::max(1, device.height()))};
  pixels_a_unit_ = camera_.distance / camera_.mm_a_pixel(size_);
  eye_axes_.row(0) = camera_.right().transpose();
  eye_axes_.row(1) = camera_.up().transpose();
  eye_axes_.row(2) = camera_.backward().transpose();
  picture_.begin(device, colours.card);
  strokes_.clear();

  const bool over_ground = camera_.eye_mm().z() > shown.scene->ground_z;
  if (over_ground) stain_ground(shown, colours);
  fill_solids(shown, colours);
  add_all_edges(shown, colours);

  painter.save();
  painter.drawImage(QRectF(QPointF(), QSizeF(size)), picture_.image());
  painter.setRenderHint(QPainter::Antialiasing);
  if (over_ground) draw_ground(painter, shown, colours);
  for (const Stroke& stroke : strokes_) {
    painter.setPen(QPen(stroke.colour, stroke.width, Qt::SolidLine, Qt::RoundCap));
    painter.drawLines(stroke.lines.data(), static_cast<int>(stroke.lines.size()));
  }
  if (shown.held_line) draw_held_line(painter, *shown.held_line, colours);
  draw_points(painter, shown, colours);
  painter.restore();
}

}  // namespace tackbench::ui
