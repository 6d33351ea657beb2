#include "ui/desk/motion_desk.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "core/basics/wording.h"
#include "core/mechanism/solve.h"
#include "ui/desk/desk_words.h"
#include "ui/desk/hand_wheel_dial.h"
#include "ui/desk/lever.h"
#include "ui/fields/calm_combo.h"
#include "ui/look/palette.h"
#include "ui/look/short_label.h"
#include "ui/look/style.h"
#include "ui/motion/pose_words.h"

namespace tackbench::ui {

namespace {

constexpr int kFrameMilliseconds = 33;
constexpr double kPedalStep = 0.05;
constexpr int kRoomForAll = 1480;
constexpr int kFoldedWords = 24;  // letters

QString text_of(const std::string& text) {
  return QString::fromStdString(text);
}

QString in_degrees(double rad) {
  return text_of(shown_bare(rad, Unit::degree)) + QChar(0xb0);
}

QString percent_words(double share) {
  return MotionDesk::tr("%1 %").arg(std::lround(share * 100.0));
}

// All levers, to be scrolled sideways where the window is too narrow for them.
class LeverShelf : public QScrollArea {
 public:
  LeverShelf(QWidget* levers, QWidget* parent) : QScrollArea(parent) {
    setWidget(levers);
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  }
  QSize sizeHint() const override { return with_bar(widget()->sizeHint()); }
  QSize minimumSizeHint() const override { return with_bar(widget()->minimumSizeHint()); }

 protected:
  bool event(QEvent* event) override {
    if (event->type() == QEvent::LayoutRequest) updateGeometry();
    return QScrollArea::event(event);
  }
  void resizeEvent(QResizeEvent* event) override {
    QScrollArea::resizeEvent(event);
    updateGeometry();
  }

 private:
  QSize with_bar(QSize size) const {
    const bool narrow = width() < widget()->minimumSizeHint().width();
    size.setHeight(widget()->sizeHint().height() +
                   (narrow ? horizontalScrollBar()->sizeHint().height() : 0));
    return size;
  }
};

}  // namespace

MotionDesk::MotionDesk(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setAccessibleName(tr("Motion desk"));
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(14, 6, 14, 6);
  body_ = new QWidget(this);
  auto* row = new QHBoxLayout(body_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(4);
  build_wheel(*row);
  row->addStretch(1);
  build_axle(*row);
  row->addStretch(1);
  pedal_box_ = new QWidget(body_);
  pedal_row_ = new QHBoxLayout(pedal_box_);
  pedal_row_->setContentsMargins(0, 0, 0, 0);
  row->addWidget(pedal_box_);
  row->addStretch(1);
  build_more(*row);
  row->addStretch(1);
  build_play(*row);
  set_look(*body_, "plain");
  shelf_ = new LeverShelf(body_, this);
  whole->addWidget(shelf_);
  build_folded_row();
  whole->addWidget(row_);
  row_->hide();

  timer_.setInterval(kFrameMilliseconds);
  connect(&timer_, &QTimer::timeout, this, &MotionDesk::step_on);
  connect(&session_, &Session::controls_changed, this, [this] {
    if (!stepping_) stop();
    show_controls();
  });
  connect(&session_, &Session::posed_changed, this, [this] {
    read_truck();
    show_pose();
  });
  connect(&session_, &Session::judged_changed, this, &MotionDesk::read_truck);
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened) stop();
  });
  read_truck();
  show_pose();
  for (QWidget* control : findChildren<QWidget*>())
    if (const QString meaning = desk_meaning(control->objectName()); !meaning.isEmpty())
      control->setToolTip(meaning);
}

QPushButton* MotionDesk::button(const QString& words, const char* name,
                                void (MotionDesk::*action)()) {
  auto* made = new QPushButton(words, this);
  made->setObjectName(QLatin1String(name));
  made->setAccessibleName(words);
  connect(made, &QPushButton::clicked, this, action);
  return made;
}

void MotionDesk::build_wheel(QBoxLayout& row) {
  dial_ = new HandWheelDial(body_);
  dial_->setObjectName("hand_wheel");
  dial_->setAccessibleName(tr("Hand wheel"));
  connect(dial_, &HandWheelDial::turned, this, &MotionDesk::turn_hand_wheel);
  row.addWidget(dial_, 0, Qt::AlignVCenter);

  auto* column = new QVBoxLayout;
  column->setSpacing(3);
  turns_ = new QLabel(body_);
  set_look(*turns_, "heading");
  degrees_ = new QLabel(body_);
  degrees_->setObjectName("degrees");
  set_look(*degrees_, "soft");
  numbers_ = new QLabel(body_);
  numbers_->setObjectName("numbers");
  // As wide as the longest of its usual words, so that nothing shifts while the wheel turns.
  numbers_->setMinimumWidth(240);
  numbers_->setWordWrap(true);
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(4);
  buttons->addWidget(button(tr("full left"), "full_left", &MotionDesk::full_left));
  buttons->addWidget(button(tr("straight"), "straight", &MotionDesk::straight));
  buttons->addWidget(button(tr("full right"), "full_right", &MotionDesk::full_right));
  column->addStretch(1);
  for (QLabel* label : {turns_, degrees_, numbers_}) column->addWidget(label);
  column->addLayout(buttons);
  column->addStretch(1);
  row.addLayout(column);
}

void MotionDesk::build_axle(QBoxLayout& row) {
  axle_ = new QWidget(body_);
  auto* levers = new QHBoxLayout(axle_);
  levers->setContentsMargins(0, 0, 0, 0);
  levers->setSpacing(4);
  const auto rise = [this](double mm) {
    QString length = text_of(shown_length(mm, session_.shown_unit()));
    if (mm > 0.0) length.insert(length.startsWith('~') ? 1 : 0, '+');
    return length;
  };
  bump_left_ = new Lever(tr("Bump left"), rise, axle_);
  bump_left_->setObjectName("bump_left");
  bump_right_ = new Lever(tr("Bump right"), rise, axle_);
  bump_right_->setObjectName("bump_right");
  linked_ = new QToolButton(axle_);
  linked_->setCheckable(true);
  linked_->setObjectName("linked");
  linked_->setText(tr("both"));
  linked_->setAccessibleName(tr("Both wheels together"));
  connect(bump_left_, &Lever::moved, this,
          [this](double bump, bool shift) { move_bump(Side::left, bump, shift); });
  connect(bump_right_, &Lever::moved, this,
          [this](double bump, bool shift) { move_bump(Side::right, bump, shift); });
  // Between the levers and in their order: up, ride height, down.
  auto* between = new QVBoxLayout;
  between->setSpacing(3);
  between->addStretch(1);
  between->addWidget(button(tr("full bump"), "full_bump", &MotionDesk::full_bump));
  between->addWidget(button(tr("ride height"), "ride_height", &MotionDesk::ride_height));
  between->addWidget(button(tr("full droop"), "full_droop", &MotionDesk::full_droop));
  between->addStretch(1);
  levers->addWidget(bump_left_);
  levers->addWidget(linked_, 0, Qt::AlignVCenter);
  levers->addWidget(bump_right_);
  levers->addSpacing(4);
  levers->addLayout(between);
  row.addWidget(axle_);
}

void MotionDesk::build_more(QBoxLayout& row) {
  more_ = new QToolButton(body_);
  more_->setObjectName("more");
  more_->setCheckable(true);
  more_->setAccessibleName(tr("Brake wind-up and cab shake in the pedals' place"));
  more_levers_ = new QWidget(body_);
  auto* levers = new QHBoxLayout(more_levers_);
  levers->setContentsMargins(0, 0, 0, 0);
  levers->setSpacing(4);
  wind_up_ = new Lever(
      tr("Wind-up"), [](double rad) { return in_degrees(rad); }, more_levers_);
  wind_up_->setObjectName("wind_up");
  wind_up_->setAccessibleName(tr("Brake wind-up"));
  connect(wind_up_, &Lever::moved, this, [this](double angle, bool) {
    Controls controls = session_.controls();
    controls.axle_pose.reset();
    controls.wind_up = angle;
    set_by_hand(controls);
  });
  levers->addWidget(wind_up_);
  const QString names[] = {tr("Cab along"), tr("Cab across"), tr("Cab up")};
  for (int i = 0; i < 3; ++i) {
    auto* lever = new Lever(
        names[i], [this](double mm) { return text_of(shown_length(mm, session_.shown_unit())); },
        more_levers_);
    lever->setObjectName("shake_" + QString::number(i));
    connect(lever, &Lever::moved, this, [this, i](double shift, bool) {
      Controls controls = session_.controls();
      controls.cab_shake[i] = shift;
      set_by_hand(controls);
    });
    shake_.push_back(lever);
    levers->addWidget(lever);
  }
  row.addWidget(more_levers_);
  row.addWidget(more_, 0, Qt::AlignVCenter);
  connect(more_, &QToolButton::toggled, this, &MotionDesk::show_levers);
}

void MotionDesk::build_play(QBoxLayout& row) {
  auto* column = new QVBoxLayout;
  column->setSpacing(4);
  auto* fold = new QToolButton(body_);
  fold->setObjectName("fold");
  fold->setArrowType(Qt::DownArrow);
  fold->setAutoRaise(true);
  fold->setAccessibleName(tr("Fold the motion desk"));
  connect(fold, &QToolButton::clicked, this, [this] { fold_by_hand(true); });
  cycle_choice_ = new CalmCombo(body_);
  cycle_choice_->setObjectName("cycle");
  cycle_choice_->setMinimumContentsLength(13);
  cycle_choice_->set_name(tr("Motion to play"));
  cycle_choice_->addItem(tr("Lock to lock"));
  cycle_choice_->addItem(tr("Bump and droop"));
  cycle_choice_->addItem(tr("Both"));
  play_ = new QPushButton(tr("Play"), body_);
  play_->setObjectName("play");
  connect(play_, &QPushButton::clicked, this, &MotionDesk::play_or_stop);
  folded_play_ = new QPushButton(tr("Play"), this);
  folded_play_->setObjectName("folded_play");
  connect(folded_play_, &QPushButton::clicked, this, &MotionDesk::play_or_stop);
  column->addStretch(1);
  column->addWidget(cycle_choice_);
  column->addWidget(play_);
  column->addStretch(1);
  row.addLayout(column);
  row.addWidget(fold, 0, Qt::AlignTop);
}

void MotionDesk::build_folded_row() {
  row_ = new QWidget(this);
  auto* row = new QHBoxLayout(row_);
  row->setContentsMargins(0, 0, 0, 0);
  folded_words_ = new ShortLabel(QString(), row_);
  folded_words_->setObjectName("folded_words");
  row->addWidget(folded_words_, 1);
  row->addWidget(button(tr("full left"), "folded_full_left", &MotionDesk::full_left));
  row->addWidget(button(tr("straight"), "folded_straight", &MotionDesk::straight));
  row->addWidget(button(tr("full right"), "folded_full_right", &MotionDesk::full_right));
  row->addSpacing(8);
  folded_axle_ = new QWidget(row_);
  auto* axle = new QHBoxLayout(folded_axle_);
  axle->setContentsMargins(0, 0, 0, 0);
  axle->addWidget(button(tr("full bump"), "folded_full_bump", &MotionDesk::full_bump));
  axle->addWidget(button(tr("ride height"), "folded_ride_height", &MotionDesk::ride_height));
  axle->addWidget(button(tr("full droop"), "folded_full_droop", &MotionDesk::full_droop));
  axle->addSpacing(8);
  row->addWidget(folded_axle_);
  row->addWidget(folded_play_);
  auto* unfold = new QToolButton(row_);
  unfold->setObjectName("unfold");
  unfold->setArrowType(Qt::UpArrow);
  unfold->setAutoRaise(true);
  unfold->setAccessibleName(tr("Unfold the motion desk"));
  connect(unfold, &QToolButton::clicked, this, [this] { fold_by_hand(false); });
  row->addWidget(unfold);
}

void MotionDesk::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(tackbench::ui::palette().hair);
  painter.setBrush(tackbench::ui::palette().card);
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4.0, 4.0);
}

void MotionDesk::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  show_levers();
  show_folded_buttons();
}

void MotionDesk::set_folded(bool folded) {
  if (folded == folded_) return;
  folded_ = folded;
  shelf_->setVisible(!folded);
  row_->setVisible(folded);
  show_folded_buttons();
  updateGeometry();
}

// In a narrow row the words come before the ends of the axle's travel.
void MotionDesk::show_folded_buttons() {
  if (!folded_) return;
  const QMargins edge = layout()->contentsMargins();
  int others = folded_axle_->isHidden()
                   ? row_->layout()->minimumSize().width()
                   : row_->layout()->minimumSize().width() - folded_axle_->sizeHint().width();
  others += kFoldedWords * fontMetrics().averageCharWidth();
  const int room = width() - edge.left() - edge.right();
  folded_axle_->setVisible(session_.posed().mechanism->suspension.has_value() &&
                           others + folded_axle_->sizeHint().width() <= room);
}

void MotionDesk::fold_by_hand(bool folded) {
  set_folded(folded);
  Q_EMIT folded_by_hand(folded);
}

void MotionDesk::set_reduced_motion(bool reduced) {
  reduced_motion_ = reduced;
  if (reduced) stop();
  for (QPushButton* each : {play_, folded_play_}) {
    each->setEnabled(!reduced);
    each->setToolTip(reduced ? tr("Less motion is chosen: nothing is played")
                             : desk_meaning(each->objectName()));
  }
}

// --- what hands do

void MotionDesk::set_by_hand(const Controls& controls) {
  session_.set_controls(held_within(reach_, controls));
}

void MotionDesk::turn_hand_wheel(double angle) {
  Controls controls = session_.controls();
  controls.hand_wheel = angle;
  set_by_hand(controls);
}

void MotionDesk::move_bump(Side side, double bump, bool shift) {
  Controls controls = session_.controls();
  controls.axle_pose.reset();
  const bool both = linked_->isChecked() || shift;
  if (both || side == Side::left) controls.bump_left = bump;
  if (both || side == Side::right) controls.bump_right = bump;
  set_by_hand(controls);
}

void MotionDesk::full_left() {
  turn_hand_wheel(reach_.full_left);
}

void MotionDesk::full_right() {
  turn_hand_wheel(reach_.full_right);
}

void MotionDesk::straight() {
  turn_hand_wheel(0.0);
}

void MotionDesk::full_bump() {
  move_bump(Side::left, reach_.full_bump, true);
}

void MotionDesk::full_droop() {
  move_bump(Side::left, reach_.full_droop, true);
}

void MotionDesk::ride_height() {
  move_bump(Side::left, 0.0, true);
}

// --- played

void MotionDesk::play(MotionCycle cycle) {
  if (reduced_motion_) return;
  cycle_ = cycle;
  start_ = session_.controls();
  share_ = 0.0;
  timer_.start();
  play_->setText(tr("Stop"));
  folded_play_->setText(tr("Stop"));
}

void MotionDesk::play_or_stop() {
  if (playing()) return stop();
  play(static_cast<MotionCycle>(cycle_choice_->currentIndex()));
}

void MotionDesk::stop() {
  timer_.stop();
  play_->setText(tr("Play"));
  folded_play_->setText(tr("Play"));
}

void MotionDesk::step_on() {
  share_ += kFrameMilliseconds / 1000.0 / cycle_seconds(cycle_);
  stepping_ = true;
  session_.set_controls(along_cycle(cycle_, start_, reach_, share_));
  stepping_ = false;
  if (share_ >= 1.0) stop();
}

// --- what is shown

void MotionDesk::read_truck() {
  const Mechanism& mechanism = *session_.posed().mechanism;
  const auto& locks = session_.judged().results.locks;
  reach_ = control_reach(mechanism, locks ? &*locks : nullptr);
  dial_->set_ends(reach_.full_right, reach_.full_left);
  const bool inch = session_.shown_unit() != ShownUnit::millimetre;
  const double step = inch ? kMillimetresPerInch / 8.0 : 5.0;
  for (Lever* lever : {bump_left_, bump_right_})
    lever->set_ends(reach_.full_droop, reach_.full_bump, step);
  wind_up_->set_ends(0.0, reach_.wind_up, 0.5 * kRadiansPerDegree);
  for (int i = 0; i < 3; ++i)
    shake_[static_cast<std::size_t>(i)]->set_ends(reach_.least_shake_mm[i], reach_.most_shake_mm[i],
                                                  step / 5.0);
  axle_->setVisible(mechanism.suspension.has_value());
  rebuild_pedals();
  show_levers();
  show_controls();
}

void MotionDesk::rebuild_pedals() {
  const Mechanism& mechanism = *session_.posed().mechanism;
  std::vector<std::string> names;
  for (const PedalLinkage& linkage : mechanism.pedals) names.push_back(linkage.pedal.name);
  if (names == pedal_names_) return;
  pedal_names_ = names;
  for (Lever* lever : pedals_) {
    lever->hide();
    pedal_row_->removeWidget(lever);
    lever->deleteLater();
  }
  pedals_.clear();
  for (std::size_t i = 0; i < names.size() && i < kMostPedals; ++i) {
    auto* lever = new Lever(
        text_of(capitalised(names[i])), [](double share) { return percent_words(share); },
        pedal_box_);
    lever->setObjectName("pedal_" + QString::number(i));
    lever->setToolTip(desk_meaning(lever->objectName()));
    lever->set_pressed_down(true);
    lever->set_ends(0.0, 1.0, kPedalStep);
    connect(lever, &Lever::moved, this, [this, i](double share, bool) {
      Controls controls = session_.controls();
      controls.pedals[i] = share;
      set_by_hand(controls);
    });
    pedal_row_->addWidget(lever);
    lever->show();
    pedals_.push_back(lever);
  }
}

// What the truck has, and of that what there is room for.
void MotionDesk::show_levers() {
  wind_up_->setVisible(reach_.wind_up > 0.0);
  bool any = reach_.wind_up > 0.0;
  for (int i = 0; i < 3; ++i) {
    const bool shakes = reach_.most_shake_mm[i] > reach_.least_shake_mm[i];
    shake_[static_cast<std::size_t>(i)]->setVisible(shakes);
    any = any || shakes;
  }
  const bool room_for_all = width() >= kRoomForAll;
  const bool more = any && (more_->isChecked() || pedals_.empty() || room_for_all);
  more_->setVisible(any && !pedals_.empty() && !room_for_all);
  more_->setText(more ? tr("pedals") : tr("more"));
  // What goes, first: shown at once both would widen the window.
  const bool pedals = (!more || room_for_all) && !pedals_.empty();
  if (!pedals) pedal_box_->hide();
  if (!more) more_levers_->hide();
  pedal_box_->setVisible(pedals);
  more_levers_->setVisible(more);
}

void MotionDesk::show_controls() {
  const Controls& controls = session_.controls();
  for (QLabel* label : {degrees_, numbers_}) label->setEnabled(session_.posed_fresh());
  dial_->set_angle(controls.hand_wheel);
  const QString words = hand_wheel_words(controls.hand_wheel);
  const QString degrees = text_of(shown(std::abs(controls.hand_wheel), Unit::degree));
  dial_->setAccessibleDescription(words + ", " + degrees);
  QString ends;
  const bool at_end =
      controls.hand_wheel >= reach_.full_left || controls.hand_wheel <= reach_.full_right;
  if (at_end && controls.hand_wheel != 0.0)
    ends =
        reach_.ends_at_locks && session_.judged_fresh() ? tr(", at the lock") : tr(", at its end");
  turns_->setText(words + ends);
  bump_left_->set_place(controls.bump_left);
  bump_right_->set_place(controls.bump_right);
  wind_up_->set_place(controls.wind_up);
  for (int i = 0; i < 3; ++i) shake_[static_cast<std::size_t>(i)]->set_place(controls.cab_shake[i]);
  for (std::size_t i = 0; i < pedals_.size(); ++i) pedals_[i]->set_place(controls.pedals[i]);

  folded_words_->show_text(
      control_words(*session_.posed().mechanism, controls, session_.shown_unit()).join("   "));
}

void MotionDesk::show_pose() {
  const PosedTruck& truck = session_.posed();
  for (QLabel* label : {degrees_, numbers_}) label->setEnabled(session_.posed_fresh());
  const bool solved = truck.mechanism->steering && truck.pose.outcome == Outcome::solved;
  // A reason takes the room of both lines.
  degrees_->setVisible(solved);
  if (solved) {
    const SteeringPose& steering = truck.pose.steering;
    degrees_->setText(
        tr("%1, arm %2")
            .arg(in_degrees(std::abs(truck.controls.hand_wheel)), in_degrees(steering.arm)));
    numbers_->setText(tr("Wheels: left %1, right %2")
                          .arg(in_degrees(steering.left.steer), in_degrees(steering.right.steer)));
  } else {
    numbers_->setText(truck.mechanism->steering
                          ? text_of(outcome_words(*truck.mechanism, truck.pose))
                          : tr("The steering is not measured yet."));
  }
}

}  // namespace tackbench::ui
