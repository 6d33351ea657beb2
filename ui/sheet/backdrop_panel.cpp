#include "ui/sheet/backdrop_panel.h"

#include <QFileDialog>
#include <QFormLayout>
#include <QImageReader>
#include <QKeyEvent>
#include <QSignalBlocker>
#include <algorithm>
#include <cmath>

#include "core/basics/entered_number.h"
#include "core/drawing/truck_view.h"
#include "core/project-file/file_references.h"

namespace tackbench::ui {

namespace {

constexpr double kFirstWidth = 2000.0;  // mm

QString words_of(const Problem& problem) {
  return QString::fromStdString(problem.found + "; " + problem.wanted);
}

}  // namespace

Result<Backdrop> new_backdrop(const std::filesystem::path& file,
                              const std::filesystem::path& project_file, SheetView view,
                              QSize pixels) {
  if (project_file.empty())
    return Problem{"", "", "the project has no folder yet", "save it, then add photographs"};
  const auto relative = file.lexically_relative(project_file.parent_path());
  if (relative.empty() || *relative.begin() == "..")
    return Problem{"", "", "the photograph does not lie in the project's folder",
                   "put a copy beside the project"};
  if (pixels.width() < 2 || pixels.height() < 2)
    return Problem{"", "", relative.string() + " is no picture that can be read",
                   "give a JPEG or PNG file"};
  Result<std::string> sum = sha256_of_file(file);
  if (!sum) return sum.problems();
  Backdrop made;
  made.name = file.stem().string();
  std::erase_if(made.name, [](char c) { return c == '[' || c == ']'; });
  made.view = view;
  made.file.path = relative.generic_string();
  made.file.sha256 = *sum;
  made.first_pixel = Vec3(0.0, pixels.height() / 2.0, 0.0);
  made.second_pixel = Vec3(pixels.width(), pixels.height() / 2.0, 0.0);
  made.known_distance = kFirstWidth;
  made.first_point = movement_of(view, {-kFirstWidth / 2.0, 0.0});
  return made;
}

BackdropPanel::BackdropPanel(Session& session, QWidget* parent)
    : QFrame(parent),
      session_(session),
      which_(new QComboBox(this)),
      add_(new QPushButton(tr("Add a photograph"), this)),
      fade_(new QSlider(Qt::Horizontal, this)),
      distance_(new QLineEdit(this)),
      points_(new QPushButton(tr("Two points"), this)),
      level_(new QPushButton(tr("Level line"), this)),
      remove_(new QPushButton(tr("Remove"), this)),
      lock_(new QCheckBox(tr("Locked"), this)),
      reason_(new QLabel(this)) {
  setFrameShape(QFrame::Box);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  setAccessibleName(tr("Photographs behind the views"));
  fade_->setRange(0, 100);
  which_->setAccessibleName(tr("Photograph"));
  add_->setAccessibleName(tr("Add a photograph behind this view"));
  fade_->setAccessibleName(tr("How strongly the photograph shows"));
  distance_->setAccessibleName(tr("Known distance between the two points"));
  points_->setAccessibleName(tr("Place by two points of known distance"));
  level_->setAccessibleName(tr("Place by a level line"));
  remove_->setAccessibleName(tr("Remove the photograph from the sheet"));
  lock_->setAccessibleName(tr("Locked in its place"));
  reason_->setAccessibleName(tr("Why it cannot be done"));
  reason_->setWordWrap(true);
  reason_->setForegroundRole(QPalette::BrightText);
  reason_->hide();
  auto* form = new QFormLayout(this);
  form->setContentsMargins(12, 10, 12, 10);
  form->addRow(tr("Photograph"), which_);
  form->addRow(QString(), add_);
  form->addRow(tr("Strength"), fade_);
  form->addRow(tr("Known distance"), distance_);
  form->addRow(tr("Place by"), points_);
  form->addRow(QString(), level_);
  form->addRow(QString(), lock_);
  form->addRow(QString(), remove_);
  form->addRow(reason_);

  connect(&session_, &Session::project_changed, this, &BackdropPanel::fill);
  connect(which_, &QComboBox::currentIndexChanged, this, [this] { enable(backdrop()); });
  connect(add_, &QPushButton::clicked, this, &BackdropPanel::ask_for_file);
  connect(remove_, &QPushButton::clicked, this, &BackdropPanel::remove);
  connect(distance_, &QLineEdit::editingFinished, this, &BackdropPanel::set_distance);
  connect(points_, &QPushButton::clicked, this, [this] {
    if (const auto index = chosen()) Q_EMIT points_wanted(*index);
  });
  connect(level_, &QPushButton::clicked, this, [this] {
    if (const auto index = chosen()) Q_EMIT level_wanted(*index);
  });
  connect(lock_, &QCheckBox::toggled, this, [this](bool on) {
    if (!backdrop() || backdrop()->locked == on) return;
    Backdrop after = *backdrop();
    after.locked = on;
    replace(on ? tr("Lock the photograph") : tr("Unlock the photograph"), *chosen(), after);
  });
  // One undo step for the slider's whole way.
  connect(fade_, &QSlider::sliderPressed, this,
          [this] { session_.begin_drag(tr("Fade the photograph")); });
  connect(fade_, &QSlider::sliderReleased, &session_, &Session::end_drag);
  connect(fade_, &QSlider::valueChanged, this, &BackdropPanel::set_fade);
  fill();
  hide();
}

std::optional<std::size_t> BackdropPanel::chosen() const {
  const auto& sheet = session_.project().sheet;
  const int row = which_->currentIndex();
  if (!sheet || row < 0 || static_cast<std::size_t>(row) >= sheet->backdrops.size())
    return std::nullopt;
  return static_cast<std::size_t>(row);
}

const Backdrop* BackdropPanel::backdrop() const {
  const auto index = chosen();
  return index ? &session_.project().sheet->backdrops[*index] : nullptr;
}

void BackdropPanel::fill() {
  const QSignalBlocker quiet(which_);
  const int row = which_->currentIndex();
  which_->clear();
  if (const auto& sheet = session_.project().sheet)
    for (const Backdrop& one : sheet->backdrops) which_->addItem(QString::fromStdString(one.name));
  which_->setCurrentIndex(std::min(std::max(row, 0), which_->count() - 1));
  enable(backdrop());
}

void BackdropPanel::enable(const Backdrop* shown) {
  const bool open = shown && !shown->locked;
  which_->setEnabled(shown != nullptr);
  fade_->setEnabled(open);
  lock_->setEnabled(shown != nullptr);
  for (QWidget* control : {static_cast<QWidget*>(distance_), static_cast<QWidget*>(points_),
                           static_cast<QWidget*>(level_), static_cast<QWidget*>(remove_)})
    control->setEnabled(open);
  const QSignalBlocker quiet_fade(fade_);
  const QSignalBlocker quiet_lock(lock_);
  if (!fade_->isSliderDown())
    fade_->setValue(shown ? static_cast<int>(std::lround(shown->fade * 100.0)) : 0);
  lock_->setChecked(shown && shown->locked);
  distance_->setText(
      shown ? QString::fromStdString(shown_length(shown->known_distance, session_.shown_unit()))
            : QString());
}

void BackdropPanel::say(const QString& why) {
  reason_->setText(why);
  reason_->setVisible(!why.isEmpty());
  adjustSize();
}

void BackdropPanel::ask_for_file() {
  const QString file =
      QFileDialog::getOpenFileName(this, tr("Photograph behind the view"),
                                   QString::fromStdString(session_.file().parent_path().string()),
                                   tr("Pictures (*.png *.jpg *.jpeg *.bmp *.webp)"));
  if (!file.isEmpty()) add(file.toStdString());
}

void BackdropPanel::add(const std::filesystem::path& file) {
  const QSize pixels = QImageReader(QString::fromStdString(file.string())).size();
  Result<Backdrop> made = new_backdrop(file, session_.file(), view_, pixels);
  if (!made) return say(words_of(made.problems().front()));
  say({});
  Project after = session_.project();
  SheetSettings settings = after.sheet ? *after.sheet : SheetSettings{};
  const std::string base = made->name;
  const auto taken = [&] {
    return std::any_of(settings.backdrops.begin(), settings.backdrops.end(),
                       [&](const Backdrop& other) { return other.name == made.value().name; });
  };
  for (int n = 2; taken(); ++n) made.value().name = base + " (" + std::to_string(n) + ')';
  settings.backdrops.push_back(*made);
  const auto row = static_cast<int>(settings.backdrops.size()) - 1;
  after.sheet = std::make_shared<const SheetSettings>(std::move(settings));
  session_.edit(tr("Add a photograph"), std::move(after));
  which_->setCurrentIndex(row);
}

Project BackdropPanel::with_backdrop(std::size_t index, const Backdrop& backdrop) const {
  Project after = session_.project();
  if (!after.sheet || index >= after.sheet->backdrops.size()) return after;
  SheetSettings settings = *after.sheet;
  settings.backdrops[index] = backdrop;
  after.sheet = std::make_shared<const SheetSettings>(std::move(settings));
  return after;
}

void BackdropPanel::replace(const QString& step, std::size_t index, const Backdrop& backdrop) {
  session_.edit(step, with_backdrop(index, backdrop));
}

void BackdropPanel::set_fade(int percent) {
  if (!backdrop()) return;
  Backdrop after = *backdrop();
  after.fade = percent / 100.0;
  if (session_.dragging()) {
    session_.drag_to(with_backdrop(*chosen(), after));
  } else {
    replace(tr("Fade the photograph"), *chosen(), after);
  }
}

void BackdropPanel::set_distance() {
  if (!backdrop()) return;
  const ShownUnit unit = session_.shown_unit();
  if (distance_->text().toStdString() == shown_length(backdrop()->known_distance, unit)) return;
  const Result<double> entered =
      entered_number(distance_->text().toStdString(), Unit::millimetre, unit);
  if (!entered) return say(words_of(entered.problems().front()));
  if (!(*entered >= 1.0))
    return say(tr("two points at one place give no scale; give their distance"));
  say({});
  Backdrop after = *backdrop();
  after.known_distance = *entered;
  replace(tr("Set the photograph's known distance"), *chosen(), after);
}

void BackdropPanel::remove() {
  const auto index = chosen();
  if (!index) return;
  Project after = session_.project();
  SheetSettings settings = *after.sheet;
  settings.backdrops.erase(settings.backdrops.begin() + static_cast<std::ptrdiff_t>(*index));
  after.sheet = std::make_shared<const SheetSettings>(std::move(settings));
  session_.edit(tr("Remove the photograph"), std::move(after));
}

void BackdropPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    hide();
    Q_EMIT closed();
  }
  // Nothing typed here is meant for the sheet beneath.
  event->accept();
}

}  // namespace tackbench::ui
