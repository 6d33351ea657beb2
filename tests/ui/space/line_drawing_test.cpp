// The drawing by the processor: what hides what, how much of the picture a known solid covers.
#include <gtest/gtest.h>

#include <QPainter>
#include <cmath>

#include "core/basics/units.h"
#include "core/scene/mesh_flat.h"
#include "ui/space/line_drawing.h"
#include "ui/space/space_colours.h"

namespace tackbench::ui {
namespace {

SpaceShown shown_of(const std::vector<std::pair<SceneRole, Mesh>>& solids) {
  SpaceShown shown;
  auto scene = std::make_shared<Scene>();
  scene->ground_z = -1e5;  // far below: no shadow in these pictures
  int index = 0;
  for (const auto& [role, mesh] : solids) {
    scene->bodies.push_back(
        {RidesBody{Body::relay, index++}, {ScenePiece{"part", role, mesh, mesh}}});
    scene->bounds.take(bounds_of(mesh).least);
    scene->bounds.take(bounds_of(mesh).greatest);
  }
  shown.motions.resize(scene->bodies.size());
  shown.scene = scene;
  shown.camera.look(StandardView::front);
  shown.camera.distance = 5000.0;
  return shown;
}

QImage painted(LineDrawing& drawing, const SpaceShown& shown, QSize size = {400, 300}) {
  QImage image(size, QImage::Format_RGB32);
  QPainter painter(&image);
  drawing.paint(painter, size, 1.0, shown, day_palette());
  return image;
}

// A sphere of radius r at distance d is seen as a circle of half angle asin(r / d): a disc of
// radius f tan(asin(r / d)) on the picture (perspective, any textbook of projective geometry).
TEST(LineDrawing, ASphereCoversTheDiscThatPerspectiveSays) {
  LineDrawing drawing;
  const SpaceShown shown =
      shown_of({{SceneRole::fixed, sphere(Vec3::Zero(), 600.0, Detail::fine)}});
  painted(drawing, shown);
  const double focal = 150.0 / std::tan(0.5 * shown.camera.field_of_view);
  const double radius = focal * std::tan(std::asin(600.0 / 5000.0));
  const double disc = kPi * radius * radius;
  EXPECT_NEAR(drawing.picture().covered(), disc, 0.03 * disc);
}

// Behind a wall of known colour nothing of the ball is seen; before it all of it is.
TEST(LineDrawing, ThePictureShowsWhatIsNearer) {
  LineDrawing drawing;
  const Mesh wall = box(Vec3(0.0, 0.0, 0.0), Vec3(20.0, 2000.0, 1500.0));
  for (const double x : {-400.0, 400.0}) {
    const SpaceShown with =
        shown_of({{SceneRole::fixed, wall},
                  {SceneRole::moving, sphere(Vec3(x, 0.0, 0.0), 150.0, Detail::fine)}});
    SpaceShown without = shown_of({{SceneRole::fixed, wall}});
    without.camera = with.camera;
    const bool same = painted(drawing, with) == painted(drawing, without);
    EXPECT_EQ(same, x < 0.0) << x;
  }
}

TEST(LineDrawing, ASoftSolidLetsThroughWhatIsBehind) {
  LineDrawing drawing;
  const Mesh ball = sphere(Vec3(-400.0, 0.0, 0.0), 150.0, Detail::fine);
  const Mesh screen = box(Vec3::Zero(), Vec3(10.0, 2000.0, 1500.0));
  const QImage with =
      painted(drawing, shown_of({{SceneRole::moving, ball}, {SceneRole::soft, screen}}));
  SpaceShown alone = shown_of({{SceneRole::soft, screen}});
  EXPECT_NE(with.pixel(200, 150), painted(drawing, alone).pixel(200, 150));
}

// A box seen square on shows four edges: its outline and no line inside.
TEST(LineDrawing, ABoxSquareOnHasNoLineInside) {
  LineDrawing drawing;
  const SpaceShown shown =
      shown_of({{SceneRole::fixed, box(Vec3::Zero(), Vec3(400.0, 900.0, 900.0))}});
  const QImage image = painted(drawing, shown);
  const auto darkness = [&](int x) { return 255 - qGray(image.pixel(x, 150)); };
  int lines = 0;
  int inside_from = 0;
  for (int x = 1; x < image.width(); ++x) {
    const bool dark = darkness(x) > 120;
    if (dark && darkness(x - 1) <= 120) {
      ++lines;
      if (lines == 1) inside_from = x;
    }
  }
  EXPECT_EQ(lines, 2);
  EXPECT_GT(inside_from, 60);
}

TEST(LineDrawing, FacesTurnedToTheLightAreLighter) {
  EXPECT_NEAR(light_on(light_direction()), 1.0, 1e-12);
  EXPECT_NEAR(light_on(-light_direction()), kLeastLight, 1e-12);
  LineDrawing drawing;
  const SpaceShown shown = shown_of({{SceneRole::tyre, sphere(Vec3::Zero(), 900.0, Detail::fine)}});
  const QImage image = painted(drawing, shown);
  const QPoint step(40, -50);  // towards the light: left and up on the picture
  const QPoint middle(200, 150);
  EXPECT_GT(qGray(image.pixel(middle - QPoint(step.x(), -step.y()))),
            qGray(image.pixel(middle + QPoint(step.x(), -step.y()))));
}

}  // namespace
}  // namespace tackbench::ui
