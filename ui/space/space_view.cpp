#include "ui/space/space_view.h"

#include <QAccessible>
#include <QCheckBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/project/field_path.h"
#include "core/scene/moving_bodies.h"
#include "core/scene/pick.h"
#include "ui/look/short_label.h"
#include "ui/look/style.h"
#include "ui/look/type.h"
#include "ui/motion/pose_words.h"
#include "ui/space/drawn_canvas.h"
#include "ui/space/opengl_probe.h"
#include "ui/space/solid_canvas.h"

namespace tackbench::ui {

namespace {

constexpr int kRest = 180;  // ms without a movement

// "seen from ahead, left and above"; what lies less than 20 degrees off is left out.
QString seen_from_words(const Camera& camera) {
  constexpr double kNamed = 0.34;
  const Vec3 to_eye = camera.backward();
  QStringList ways;
  if (std::abs(to_eye.x()) > kNamed)
    ways << (to_eye.x() > 0.0 ? SpaceView::tr("ahead") : SpaceView::tr("behind"));
  if (std::abs(to_eye.y()) > kNamed)
    ways << (to_eye.y() > 0.0 ? SpaceView::tr("the left") : SpaceView::tr("the right"));
  if (std::abs(to_eye.z()) > kNamed)
    ways << (to_eye.z() > 0.0 ? SpaceView::tr("above") : SpaceView::tr("below"));
  return SpaceView::tr("seen from %1").arg(ways.join(", "));
}

}  // namespace

SpaceView::SpaceView(Session& session, ShownMotion& motion, QWidget* parent, SpaceDrawing drawing)
    : QWidget(parent), session_(session), motion_(motion) {
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("View in space"));
  why_lines_ = drawing == SpaceDrawing::lines ? tr("it is switched off") : why_no_opengl();
  if (why_lines_.isEmpty())
    canvas_ = solids_ = new SolidCanvas(this);
  else
    canvas_ = new DrawnCanvas(this);
  make_layout();
  at_rest_.setSingleShot(true);
  at_rest_.setInterval(kRest);
  connect(&at_rest_, &QTimer::timeout, this, [this] {
    if (pose_waits_) take_pose();
    shown_.coarse = false;
    describe();
    show_now();
  });
  connect(&session_, &Session::posed_changed, this, &SpaceView::follow_pose);
  connect(&session_, &Session::selection_changed, this, &SpaceView::follow_selection);
  connect(&session_, &Session::undo_changed, this, [this] {
    if (pose_waits_ && !session_.dragging()) take_pose();
  });
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened) fitted_ = true;
  });
  connect(&motion_.wander, &WanderPlay::possible_changed, this,
          [this] { play_->setVisible(motion_.wander.possible()); });
  connect(&motion_.wander, &WanderPlay::playing_changed, this, [this](bool on) {
    play_->setText(on ? tr("stop") : tr("wander"));
    play_->setChecked(on);
  });
  connect(&motion_.wander, &WanderPlay::moved, this, &SpaceView::take_pose);
  connect(&motion_.swept, &SweptPlaces::changed, this, [this] {
    swept_->setChecked(motion_.swept.shown());
    make_ghosts();
    show_now();
  });
  canvas_->touched().installEventFilter(this);
  canvas_->widget().installEventFilter(this);
  play_->setVisible(motion_.wander.possible());
  swept_->setChecked(motion_.swept.shown());
  shown_.camera.look(StandardView::front_left_above);
  take_pose();
  say_selected();
}

SpaceView::~SpaceView() = default;

QAbstractButton* SpaceView::add_button(QBoxLayout& row, const QString& words, const QString& help,
                                       std::function<void()> then) {
  auto* button = new QPushButton(words, this);
  set_look(*button, "link");
  button->setAccessibleName(help);
  button->setToolTip(help);
  button->setCursor(Qt::PointingHandCursor);
  connect(button, &QPushButton::clicked, this, std::move(then));
  row.addWidget(button);
  return button;
}

QAbstractButton* SpaceView::add_head_button(const QString& words, const QString& help,
                                            std::function<void()> then) {
  return add_button(*head_, words, help, std::move(then));
}

void SpaceView::make_layout() {
  auto* views = new QHBoxLayout;
  head_ = views;
  views->setContentsMargins(4, 1, 4, 1);
  views->setSpacing(1);
  add_button(*views, tr("left"), tr("Seen from the left"), [this] { look(StandardView::left); });
  add_button(*views, tr("front"), tr("Seen from the front"), [this] { look(StandardView::front); });
  add_button(*views, tr("above"), tr("Seen from above"), [this] { look(StandardView::plan); });
  add_button(*views, tr("corner"), tr("Seen from ahead, left and above"),
             [this] { look(StandardView::front_left_above); });
  views->addStretch(1);
  add_button(*views, tr("fit"), tr("Show all of the truck"), [this] { fit(); });
  words_ = new ShortLabel({}, this);
  set_look(*words_, "soft");
  words_->setMinimumWidth(60);
  words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  play_ = new QPushButton(tr("wander"), this);
  play_->setObjectName("wander");
  set_look(*play_, "link");
  play_->setCheckable(true);
  play_->setAccessibleName(tr("Play how the shaft line is free to wander"));
  play_->setToolTip(
      tr("The shafts between the column and the box are not all held: see how they "
         "can move"));
  connect(play_, &QPushButton::clicked, this, [this](bool on) { motion_.wander.play(on); });
  swept_ = new QCheckBox(tr("swept"), this);
  set_look(*swept_, "link");
  swept_->setAccessibleName(tr("Swept places, here and on the sheet"));
  swept_->setToolTip(tr(
      "Swept places: tyres, links and pedals at full lock and at the ends of the axle's travel"));
  connect(swept_, &QCheckBox::toggled, this, [this](bool on) { motion_.swept.show(on); });
  auto* foot = new QHBoxLayout;
  foot->setContentsMargins(10, 2, 22, 3);
  foot->setSpacing(6);
  foot->addWidget(words_, 1);
  foot->addWidget(play_);
  foot->addWidget(swept_);
  follow_ = add_button(*foot, tr("follow"), tr("Keep what is chosen in the middle"),
                       [this] { follow_selection(); });
  follow_->setCheckable(true);
  connect(follow_, &QAbstractButton::toggled, this,
          [this](bool on) { follow_->setText(on ? tr("following") : tr("follow")); });

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addLayout(views);
  column->addWidget(&canvas_->widget(), 1);
  if (!why_lines_.isEmpty()) {
    auto* why = new QLabel(tr("Drawn in lines without OpenGL: %1").arg(why_lines_), this);
    why->setObjectName("why lines");
    set_look(*why, "soft");
    why->setContentsMargins(10, 2, 10, 0);
    why->setWordWrap(true);
    column->addWidget(why);
  }
  column->addLayout(foot);
}

PictureSize SpaceView::picture_size() const {
  const QSize size = canvas_->widget().size().expandedTo({1, 1});
  return {static_cast<double>(size.width()), static_cast<double>(size.height())};
}

void SpaceView::look(StandardView view) {
  shown_.camera.look(view);
  fit();
  describe();
}

void SpaceView::fit() {
  fitted_ = true;
  fit_camera();
  show_now();
}

void SpaceView::fit_camera() {
  std::vector<Vec3> places;
  for (std::size_t i = 0; i < shown_.motions.size(); ++i)
    for (const ScenePiece& piece : shown_.scene->bodies[i].pieces)
      for (const Vec3& vertex : piece.coarse.vertices)
        places.push_back((shown_.motions[i] * Point<Chassis>{vertex}).mm);
  shown_.camera.fit(places, picture_size());
}

void SpaceView::set_following(bool on) {
  follow_->setChecked(on);
  follow_selection();
}

bool SpaceView::following() const {
  return follow_->isChecked();
}

void SpaceView::set_camera(const Camera& camera) {
  shown_.camera = camera;
  fitted_ = false;
  show_now();
}

std::optional<QPointF> SpaceView::place_of(const Vec3& chassis_mm) const {
  const auto seen = shown_.camera.seen(chassis_mm, picture_size());
  if (!seen) return std::nullopt;
  return QPointF(seen->at.x, seen->at.y);
}

const SpacePoint* SpaceView::point_at_path(const std::string& path) const {
  for (const SpacePoint& point : shown_.points)
    if (point.grip.path == path) return &point;
  return nullptr;
}

std::optional<QPointF> SpaceView::point_place(const std::string& path) const {
  const SpacePoint* point = point_at_path(path);
  return point == nullptr ? std::nullopt : place_of(point->posed_mm);
}

// The sheet's own drag comes first: here the truck holds still until the hand rests or lets go.
void SpaceView::follow_pose() {
  if (!isVisible() || (session_.dragging() && !drag_)) {
    pose_waits_ = true;
    if (isVisible()) at_rest_.start();
    return;
  }
  in_motion();
  take_pose();
}

void SpaceView::in_motion() {
  shown_.coarse = true;
  at_rest_.start();
}

void SpaceView::take_pose() {
  pose_waits_ = false;
  const PosedTruck& truck = session_.posed();
  const bool anew = built_for_ != truck.mechanism;
  if (anew) {
    built_for_ = truck.mechanism;
    shown_.scene = std::make_shared<const Scene>(make_scene(*truck.mechanism));
    ++built_;
  }
  const Pose pose = motion_.wander.pose();
  if (motion_.wander.playing() && !motion_.wander.still()) in_motion();
  pose_scene(*shown_.scene, *truck.mechanism, pose, shown_.motions);
  shown_.points = space_points(*truck.mechanism, pose);
  make_ghosts();
  // Under a hand that drags the eye stays where it is.
  if (anew && fitted_ && !session_.dragging()) fit_camera();
  if (drag_) say_selected();
  show_now();
}

void SpaceView::show_now() {
  canvas_->show(shown_);
}

// Swept places of another truck than the one shown are left out until the hand rests.
void SpaceView::make_ghosts() {
  shown_.ghosts.clear();
  const PosedTruck& truck = session_.posed();
  if (built_for_ != truck.mechanism) return;
  std::vector<SceneMotion> motions;
  const auto add = [&](const Pose& pose, bool (*wanted)(const Rider&)) {
    pose_scene(*shown_.scene, *truck.mechanism, pose, motions);
    for (std::size_t i = 0; i < motions.size(); ++i)
      if (wanted(shown_.scene->bodies[i].rider)) shown_.ghosts.push_back({i, motions[i]});
  };
  if (motion_.swept.mechanism() == truck.mechanism)
    for (const Pose& pose : motion_.swept.poses()) add(pose, sweeps);
  if (motion_.wander.still())
    for (const WanderPlay::LedOff& led : motion_.wander.led_off()) add(led.pose, is_of_shaft_line);
}

void SpaceView::follow_selection() {
  shown_.selected = session_.selected();
  say_selected();
  if (follow_->isChecked() && hand_ == Hand::idle && !shown_.selected.empty()) {
    const SpacePoint* point = point_at_path(shown_.selected);
    const Bounds bounds = bounds_of_part(*shown_.scene, shown_.motions, shown_.selected);
    if (point != nullptr)
      shown_.camera.target_mm = point->posed_mm;
    else if (!bounds.empty())
      shown_.camera.target_mm = bounds.middle();
    fitted_ = false;
  }
  show_now();
}

QString SpaceView::words_of(const SpacePoint& point) const {
  const auto length = [&](double mm) {
    return QString::fromStdString(shown_bare(mm, Unit::millimetre, session_.shown_unit()));
  };
  // The name last: it is what may be shortened.
  return tr("X %1  Y %2  Z %3  %4")
      .arg(length(point.grip.at_mm.x()), length(point.grip.at_mm.y()), length(point.grip.at_mm.z()),
           QString::fromStdString(point.grip.words));
}

void SpaceView::say(const QString& words) {
  words_->show_text(words);
}

void SpaceView::say_selected() {
  const SpacePoint* point = point_at_path(session_.selected());
  say(point == nullptr ? tr("Drag: round. Wheel: nearer.") : words_of(*point));
  if (hasFocus()) describe();
}

// What is chosen, how the truck stands and from where it is seen: the picture for who cannot see
// it. Told when the hand rests, not at every step.
void SpaceView::describe() {
  QStringList words;
  if (const SpacePoint* point = point_at_path(session_.selected()))
    words << words_of(*point);
  else if (const auto part = field_words(session_.project(), session_.selected());
           part && !session_.selected().empty())
    words << tr("chosen: %1").arg(QString::fromStdString(*part));
  else
    words << tr("No point chosen: n and p go from point to point");
  words +=
      control_words(*session_.posed().mechanism, session_.posed().controls, session_.shown_unit());
  words << seen_from_words(shown_.camera);
  const QString all = words.join("; ");
  if (accessibleDescription() == all) return;
  setAccessibleDescription(all);
  QAccessibleEvent event(this, QAccessible::DescriptionChanged);
  QAccessible::updateAccessibility(&event);
}

void SpaceView::focusInEvent(QFocusEvent* event) {
  describe();
  QWidget::focusInEvent(event);
}

void SpaceView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) show_now();
  QWidget::changeEvent(event);
}

void SpaceView::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (pose_waits_) take_pose();
}

}  // namespace tackbench::ui
