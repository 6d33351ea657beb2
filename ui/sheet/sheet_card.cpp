#include "ui/sheet/sheet_card.h"

#include <QAccessible>
#include <QEvent>
#include <QKeyEvent>
#include <algorithm>

#include "core/findings/finding_words.h"
#include "core/mechanism/solve.h"
#include "ui/sheet/live_numbers.h"
#include "ui/sheet/rulers.h"

namespace tackbench::ui {

namespace {

constexpr double kBorder = 8.0;          // of the card about the paper, pixels
constexpr double kTitlesBeneath = 58.0;  // titles, scale bar and projection symbol
constexpr double kZoomStep = 1.25;

QString capitalised_words(const std::string& words) {
  QString text = QString::fromStdString(words);
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

}  // namespace

SheetCard::SheetCard(Session& session, ShownMotion& motion, QWidget* parent)
    : QWidget(parent),
      session_(session),
      motion_(motion),
      photographs_(new BackdropPanel(session, this)),
      entry_(new ExactEntry(session, this)),
      bare_(new BareSheet(session, this)) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_AcceptTouchEvents);
  grabGesture(Qt::PinchGesture);  // else a second finger is not told of
  setAccessibleName(tr("Drawing sheet"));
  connect(&session_, &Session::project_changed, this, &SheetCard::follow_project);
  connect(&session_, &Session::posed_changed, this, &SheetCard::follow_pose);
  connect(&session_, &Session::selection_changed, this, &SheetCard::follow_selection);
  connect(&session_, &Session::judged_changed, this, &SheetCard::follow_findings);
  connect(&motion_.swept, &SweptPlaces::changed, this, [this] {
    make_ghosts();
    update();
  });
  connect(&motion_.wander, &WanderPlay::moved, this, QOverload<>::of(&QWidget::update));
  connect(&session_, &Session::controls_changed, this, QOverload<>::of(&QWidget::update));
  connect(&backdrops_, &BackdropLayer::arrived, this, [this] {
    ground_layer_stale_ = true;
    update();
  });
  bare_->lower();
  connect(bare_, &BareSheet::begin_wanted, this, &SheetCard::begin_wanted);
  connect(entry_, &ExactEntry::closed, this, [this] { setFocus(); });
  connect(photographs_, &BackdropPanel::closed, this, [this] {
    placing_.stop();
    setFocus();
    update();
    Q_EMIT photographs_changed(false);
  });
  connect(photographs_, &BackdropPanel::points_wanted, this, [this](std::size_t index) {
    placing_.begin_points(index);
    describe(placing_.asks());
    update();
  });
  connect(photographs_, &BackdropPanel::level_wanted, this, [this](std::size_t index) {
    placing_.begin_level(index);
    describe(placing_.asks());
    update();
  });
  fitted_ = true;
  follow_pose();
  describe_selected();
}

SheetCard::~SheetCard() = default;

Projection SheetCard::projection() const {
  const auto& settings = session_.project().sheet;
  return settings ? settings->projection : Projection::first_angle;
}

QRectF SheetCard::paper() const {
  return QRectF(rect()).adjusted(kBorder, kBorder, -kBorder, -kBorder);
}

void SheetCard::view_moved() {
  ground_layer_stale_ = true;
  entry_->close_entry();
  update();
}

void SheetCard::fit() {
  const SheetTransform before = transform_;
  const ViewBox all = scene_.all_boxes();
  const double margin = Rulers::kWidth + 14.0;
  transform_.fit(all.least, all.greatest,
                 paper().adjusted(margin + 16.0, margin, -margin, -kTitlesBeneath));
  fitted_ = true;
  if (!(transform_ == before)) view_moved();
}

void SheetCard::zoom_in() {
  zoom_by(paper().center(), kZoomStep);
}

void SheetCard::zoom_out() {
  zoom_by(paper().center(), 1.0 / kZoomStep);
}

void SheetCard::zoom_by(const QPointF& at, double factor) {
  transform_.zoom_about(at, factor);
  fitted_ = false;
  view_moved();
}

void SheetCard::fill_with(std::optional<SheetView> view) {
  if (view == scene_.filling()) return;
  if (!scene_.filling()) before_filling_ = transform_;
  scene_.fill_with(view);
  if (view) {
    focused_ = *view;
    fit();
  } else {
    transform_ = before_filling_;
    fitted_ = false;
    view_moved();
  }
  Q_EMIT filling_changed();
}

void SheetCard::focus_view(SheetView view) {
  if (focused_ == view) return;
  focused_ = view;
  photographs_->set_view(view);
  if (scene_.filling()) fill_with(view);
  describe_selected();
  update();
}

void SheetCard::show_finding(const Finding& finding) {
  findings_.choose(finding.name);
  follow_findings();
  const GripPlace* place =
      findings_.places().empty() ? nullptr : grips_.find(findings_.places().front());
  if (!place) return;
  // Room about the places, in every view shown.
  constexpr double kRoundAbout = 450.0;  // mm
  if (scene_.filling()) {
    const ViewPoint at = scene_.on_sheet(*scene_.filling(), place->posed_mm);
    transform_.fit({at.x - kRoundAbout, at.y - kRoundAbout},
                   {at.x + kRoundAbout, at.y + kRoundAbout}, paper());
    fitted_ = false;
    view_moved();
    return;
  }
  if (!paper().contains(place_in(SheetView::side, place->posed_mm))) fit();
}

void SheetCard::clear_finding() {
  findings_.choose({});
  follow_findings();
}

void SheetCard::set_measuring(bool on) {
  if (measure_.active() == on) return;
  measure_.set_active(on);
  describe(on ? tr("Measuring: choose two points for a distance, a third for an angle")
              : QString());
  update();
  Q_EMIT measuring_changed(on);
}

void SheetCard::keep_measured() {
  auto note = measure_.note(unit());
  if (!note) return;
  Project after = session_.project();
  SheetSettings settings = after.sheet ? *after.sheet : SheetSettings{};
  const std::string base = note->name;
  const auto taken = [&](const std::string& name) {
    return std::any_of(settings.notes.begin(), settings.notes.end(),
                       [&](const SheetNote& other) { return other.name == name; });
  };
  for (int n = 2; taken(note->name); ++n) note->name = base + " (" + std::to_string(n) + ')';
  settings.notes.push_back(*note);
  after.sheet = std::make_shared<const SheetSettings>(std::move(settings));
  session_.edit(tr("Keep a measured note"), std::move(after));
}

void SheetCard::set_grid(bool on) {
  if (on == grid_) return;
  grid_ = on;
  ground_layer_stale_ = true;
  update();
  Q_EMIT grid_changed(on);
}

void SheetCard::set_gaps(bool on) {
  gaps_.set_on(on);
  gaps_.show(session_.posed(), session_.selected());
  describe_selected();
  update();
}

void SheetCard::show_photographs(bool on) {
  if (on == photographs()) return;
  photographs_->set_view(focused_);
  photographs_->setVisible(on);
  placing_.stop();
  if (on) {
    photographs_->adjustSize();
    photographs_->move(
        (paper().topRight() + QPointF(-photographs_->width() - 10.0, 34.0)).toPoint());
    photographs_->raise();
    photographs_->setFocus();
  }
  update();
  Q_EMIT photographs_changed(on);
}

void SheetCard::enter_exactly(const QString& first) {
  const std::string path = session_.selected();
  const auto at = grip_place(path, focused_);
  if (!at) return;
  const int axis = focused_ == SheetView::front ? 1 : 0;
  entry_->open_for(path, *at, paper(), axis, first);
}

QPointF SheetCard::place_in(SheetView view, const Vec3& chassis_mm) const {
  return transform_.to_screen(scene_.on_sheet(view, chassis_mm));
}

std::optional<QPointF> SheetCard::grip_place(const std::string& path, SheetView view) const {
  const GripPlace* place = grips_.find(path);
  if (!place) return std::nullopt;
  return place_in(view, place->posed_mm);
}

void SheetCard::follow_project(const Change& change) {
  // What the hand held is of a project that is gone.
  if (change.kind != ChangeKind::dragged) forget_hand();
  if (change.kind == ChangeKind::opened) {
    hovered_.reset();
    scene_.forget_layout();
    layers_.forget_motion();
    ghosts_.clear();
    scene_.fill_with(std::nullopt);
    measure_.set_active(measure_.active());
    clear_finding();
    entry_->close_entry();
    fitted_ = true;
  }
  if (change.others || change.kind == ChangeKind::opened) ground_layer_stale_ = true;
  if (change.kind != ChangeKind::dragged) update();
}

void SheetCard::follow_pose() {
  const bool moving = session_.dragging();
  scene_.show(session_.posed(), projection(), moving);
  grips_.show(session_.project(), session_.posed());
  measure_.follow(grips_);
  gaps_.show(session_.posed(), session_.selected());
  pose_before();
  bare_->show_why(scene_.closes() ? QString() : scene_.why_not());
  bare_->setVisible(scene_.nothing_drawn());
  if (!moving && fitted_) fit();
  describe_selected();
  update();
}

// What changed since a drag is told at one setting of the controls, or it would count their motion.
void SheetCard::pose_before() {
  const Controls& now = session_.posed().controls;
  if (!before_ || before_->controls == now) return;
  before_->controls = now;
  before_->pose = solved_pose(*before_->mechanism, now);
  if (hand_.drag()) make_ghosts();
}

void SheetCard::follow_findings() {
  const QString before = findings_.words();
  findings_.follow(session_.project(), session_.judged().findings);
  if (findings_.words() != before) describe_selected();
  if (!hand_.drag()) update();  // otherwise the next pose paints it
}

void SheetCard::follow_selection() {
  if (!hand_.drag()) before_.reset();
  tag_spot_.reset();
  if (entry_->path() != session_.selected()) entry_->close_entry();
  gaps_.show(session_.posed(), session_.selected());
  describe_selected();
  update();
}

void SheetCard::describe(const QString& words) {
  if (accessibleDescription() == words) return;
  setAccessibleDescription(words);
  QAccessibleEvent event(this, QAccessible::DescriptionChanged);
  QAccessible::updateAccessibility(&event);
}

void SheetCard::describe_selected() {
  const GripPlace* place = grips_.find(session_.selected());
  const QString finding =
      findings_.words().isEmpty() ? QString() : "; " + tr("finding: %1").arg(findings_.words());
  if (!place) {
    const std::string& part = session_.selected();
    const QString chosen =
        part.empty()
            ? tr("No point selected: n and p go from point to point")
            : tr("%1 selected").arg(capitalised_words(member_words(session_.project(), part)));
    describe(tr("%1 view. %2").arg(view_title(focused_), chosen) + finding +
             gaps_.nearest_words(unit()));
    return;
  }
  const auto length = [this](double mm) {
    return QString::fromStdString(shown_bare(mm, Unit::millimetre, unit()));
  };
  const Vec3& at = place->grip.at_mm;
  QString words = tr("%1: X %2, Y %3, Z %4")
                      .arg(capitalised_words(place->grip.words), length(at.x()), length(at.y()),
                           length(at.z()));
  if (before_) {
    const auto changes = changed_numbers(*before_, session_.posed());
    for (std::size_t i = 0; i < std::min<std::size_t>(changes.size(), 3); ++i)
      words += QString("; %1 %2, %3")
                   .arg(changes[i].now.words,
                        shown_on_sheet(changes[i].now.value, changes[i].now.unit, unit()),
                        shown_change(changes[i].change, changes[i].now.unit, unit()));
  }
  if (!hand_.refused().isEmpty()) words += "; " + hand_.refused();
  if (!scene_.closes()) words += "; " + scene_.why_not();
  describe(words + finding + gaps_.nearest_words(unit()));
}

void SheetCard::add_ghost(const Mechanism& mechanism, const Pose& pose) {
  for (const SheetView view : kSheetViews) ghosts_.push_back(ghost_view(mechanism, pose, view));
}

void SheetCard::make_ghosts() {
  ghosts_.clear();
  layers_.forget_pictures();
  if (hand_.drag() && before_) add_ghost(*before_->mechanism, before_->pose);
  for (const Pose& pose : motion_.swept.poses()) add_ghost(*motion_.swept.mechanism(), pose);
}

bool SheetCard::event(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
    ground_layer_stale_ = true;
  if (event->type() == QEvent::ShortcutOverride &&
      wants_shortcut(*static_cast<QKeyEvent*>(event))) {
    event->accept();
    return true;
  }
  if (event->type() == QEvent::ChildAdded)
    static_cast<QChildEvent*>(event)->child()->installEventFilter(this);
  if (gesture(event)) return true;
  return QWidget::event(event);
}

// Tags keep off what lies on the sheet.
bool SheetCard::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::Move:
    case QEvent::Resize:
    case QEvent::Show:
    case QEvent::Hide:
      update();
      break;
    default:
      break;
  }
  return QWidget::eventFilter(watched, event);
}

void SheetCard::changeEvent(QEvent* event) {
  ground_layer_stale_ = true;
  QWidget::changeEvent(event);
}

void SheetCard::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  bare_->setGeometry(paper().toRect());
  if (fitted_) fit();
  view_moved();
}

}  // namespace tackbench::ui
