#include "ui/windows/bench_window.h"

#include <QAction>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QMimeData>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/desk/motion_desk.h"
#include "ui/look/style.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/shaft_strip.h"
#include "ui/panels/station_sheet.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/first_page.h"
#include "ui/windows/notice_bar.h"
#include "ui/windows/preferences.h"
#include "ui/windows/sample_projects.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {

namespace {

QStringList dropped_files(const QMimeData& dropped) {
  QStringList files;
  for (const QUrl& url : dropped.urls())
    if (const QString file = url.toLocalFile(); file.endsWith(".tack")) files << file;
  return files;
}
}  // namespace

BenchWindow::BenchWindow(std::filesystem::path recovery_folder, QWidget* parent)
    : QWidget(parent),
      recovery_(session_, std::move(recovery_folder)),
      menus_(new QMenuBar(this)),
      name_(new QLabel(this)),
      state_(new QLabel(this)),
      undo_(new QPushButton(this)),
      unit_(new QPushButton(this)),
      shaft_(new ShaftStrip(session_, this)),
      notice_(new NoticeBar(this)),
      sheet_(new SheetCard(session_, motion_, this)),
      space_(new LooseCard(session_, motion_, sheet_)),
      side_handle_(new QToolButton(this)),
      side_(new SideColumn(session_, this)),
      desk_(new MotionDesk(session_, this)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setAcceptDrops(true);
  setMinimumSize(840, 470);
  resize(1440, 900);
  if (const QByteArray place = Preferences::window_place(); !place.isEmpty())
    restoreGeometry(place);
  if (const auto place = Preferences::space_place()) space_->set_place(*place);
  make_menus();
  make_layout();
  follow_session();
  follow_folding();
  dress(*this);
  show_title();
  show_undo();
  show_unit();
  sheet_->setFocus();
}

BenchWindow::~BenchWindow() {
  // All of them refer to the session, which is a member and goes before QWidget takes its children
  // away. Nothing is told any more: half of those who listen are gone.
  const QSignalBlocker quiet(&session_);
  qDeleteAll(findChildren<QWidget*>(Qt::FindDirectChildrenOnly));
}

void BenchWindow::make_layout() {
  set_look(*name_, "heading");
  set_look(*state_, "soft");
  undo_->setAccessibleName(tr("Undo"));
  unit_->setAccessibleName(tr("Unit of length"));
  unit_->setToolTip(tr("Switch between millimetres, decimal inches and fractions of an inch"));
  menus_->setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);

  auto* top = new QHBoxLayout;
  top->setContentsMargins(16, 6, 16, 0);
  top->setSpacing(10);
  top->addWidget(name_);
  top->addWidget(state_);
  top->addSpacing(16);
  top->addWidget(menus_);
  top->addStretch(1);
  top->addWidget(undo_);
  top->addWidget(unit_);

  auto* middle = new QHBoxLayout;
  middle->setContentsMargins(16, 0, 16, 0);
  middle->setSpacing(3);
  middle->addWidget(sheet_, 1);
  middle->addWidget(side_handle_);
  middle->addWidget(side_);

  auto* foot = new QHBoxLayout;
  foot->setContentsMargins(16, 0, 16, 10);
  foot->addWidget(desk_);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  column->addLayout(top);
  column->addWidget(shaft_);
  column->addWidget(notice_);
  column->addLayout(middle, 1);
  column->addLayout(foot);
}

void BenchWindow::follow_session() {
  connect(&session_, &Session::undo_changed, this, &BenchWindow::show_undo);
  connect(&session_, &Session::file_changed, this, &BenchWindow::show_title);
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened) {
      // What it says is of the document before.
      notice_->close_notice();
      watch_.follow(session_.file());
    }
    if (change.others || change.kind == ChangeKind::opened) {
      show_title();
      show_unit();
    }
  });
  connect(&recovery_, &Recovery::failed, this, [this](const QString& why) {
    notice_->say(tr("What is not saved could not be kept for after a crash. %1").arg(why));
  });
  connect(&watch_, &FileWatch::changed, this, &BenchWindow::file_changed_on_disk);
  connect(shaft_, &ShaftStrip::station_chosen, this, [this](Station station) {
    fold_side(false);
    side_->show_station(station);
  });
  connect(shaft_, &ShaftStrip::member_chosen, this, &BenchWindow::show_member);
  connect(sheet_, &SheetCard::begin_wanted, this, [this](const QString& path) {
    fold_side(false);
    side_->begin(path.toStdString());
  });
  // The framed tag is the one whose sheet is open.
  const auto frame_tag = [this] {
    const bool open = side_->page() == SidePage::station;
    shaft_->show_chosen(open ? station_of(side_->station_sheet().root()) : std::nullopt);
  };
  connect(&side_->station_sheet(), &StationSheet::record_changed, this, frame_tag);
  connect(side_, &SideColumn::page_changed, this, frame_tag);
  connect(&side_->findings(), &FindingsPanel::finding_chosen, this, &BenchWindow::show_finding);
  connect(&side_->findings(), &FindingsPanel::wander_wanted, &motion_.wander, &WanderPlay::play);
  const auto offer_wander = [this] {
    side_->findings().offer_wander(motion_.wander.possible(), motion_.wander.playing());
  };
  connect(&motion_.wander, &WanderPlay::possible_changed, this, offer_wander);
  connect(&motion_.wander, &WanderPlay::playing_changed, this, offer_wander);
  connect(side_, &SideColumn::page_changed, this, [this] {
    if (side_->page() != SidePage::findings) sheet_->clear_finding();
  });
  connect(unit_, &QPushButton::clicked, this, [this] {
    switch (session_.shown_unit()) {
      case ShownUnit::millimetre:
        return set_shown_unit(ShownUnit::inch_decimal);
      case ShownUnit::inch_decimal:
        return set_shown_unit(ShownUnit::inch_fraction);
      case ShownUnit::inch_fraction:
        return set_shown_unit(ShownUnit::millimetre);
    }
  });
  connect(space_, &LooseCard::placed_by_hand, this, &Preferences::set_space_place);
  connect(undo_, &QPushButton::clicked, &session_, &Session::undo);
}

void BenchWindow::show_title() {
  const QString name = QString::fromStdString(session_.project().name);
  name_->setText(name.isEmpty() ? tr("No name yet") : name);
  QString state;
  if (session_.file().empty()) {
    state = tr("never saved");
  } else {
    const QFileInfo file(QString::fromStdString(session_.file().string()));
    state = session_.unsaved()
                ? tr("%1, not saved").arg(file.fileName())
                : tr("saved %1")
                      .arg(QLocale().toString(file.lastModified().time(), QLocale::ShortFormat));
  }
  state_->setText(state);
  setWindowTitle(tr("%1[*] - Tackbench").arg(name_->text()));
  setWindowModified(session_.unsaved());
}

void BenchWindow::show_member(const QString& path) {
  const std::string member = path.toStdString();
  const auto station = station_of(member);
  fold_side(false);
  side_->show_record(station ? station_name(*station) : member);
  side_->station_sheet().bring_into_sight(member);
}

void BenchWindow::show_finding(const QString& name) {
  const Finding* finding = finding_named(session_.judged().findings, name.toStdString());
  if (finding != nullptr) sheet_->show_finding(*finding);
}

// F6: one key goes round shaft, sheet, view in space, side column, desk.
void BenchWindow::go_round() {
  const std::array<QWidget*, 5> places{shaft_, sheet_, &space_->view(), side_, desk_};
  std::size_t now = places.size() - 1;
  for (std::size_t i = 0; i < places.size(); ++i) {
    QWidget* focus = focusWidget();
    if (focus != nullptr && (places[i] == focus || places[i]->isAncestorOf(focus))) now = i;
  }
  for (std::size_t step = 1; step <= places.size(); ++step) {
    QWidget* place = places[(now + step) % places.size()];
    if (!place->isVisible()) continue;
    QWidget* first = place;
    for (QWidget* next = place; first->focusPolicy() == Qt::NoFocus || !first->isVisible();) {
      next = next->nextInFocusChain();
      if (next == place || !place->isAncestorOf(next)) break;
      first = next;
    }
    first->setFocus(Qt::TabFocusReason);
    return;
  }
}

void BenchWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_F6) {
    go_round();
    return;
  }
  QWidget::keyPressEvent(event);
}

void BenchWindow::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  show_undo();
  give_room();
}

void BenchWindow::closeEvent(QCloseEvent* event) {
  if (!may_leave()) {
    event->ignore();
    return;
  }
  Preferences::set_window_place(saveGeometry());
  recovery_.forget();
  event->accept();
}

void BenchWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!dropped_files(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

// The first one here, the others beside it.
void BenchWindow::dropEvent(QDropEvent* event) {
  const QStringList files = dropped_files(*event->mimeData());
  for (int i = 1; i < files.size(); ++i) Q_EMIT another_window_wanted(files[i]);
  if (!files.isEmpty() && may_leave()) open_file(files.front());
}

void BenchWindow::begin_tour() {
  if (tour_ != nullptr) tour_->deleteLater();
  fold_side(false);
  tour_ = new Tour(
      {
          {shaft_, tr("Motion flows along this shaft, from the hand to the road. Each tag is a "
                      "station with its numbers and its worst verdict. Choose one to see all that "
                      "is known of it.")},
          {side_, tr("Findings, worst first. Choose the first one: the controls go to its worst "
                     "moment, the sheet shows the place, and it says how the number came.")},
          {desk_,
           tr("The truck's own controls: turn the hand wheel to its locks, lift a road wheel, "
              "press a pedal, or play the whole motion. You can take hold of the same "
              "parts on the drawing.")},
          {sheet_, tr("What is blue moves. Take a ball, a joint or the steering box and drag it: "
                      "lengths and angles follow while you drag. Double-click for an exact place, "
                      "arrows for a millimetre.")},
          {undo_, tr("Every change is one step, and this takes it back. Nothing is ever lost by "
                     "trying.")},
          {side_, tr("When nothing is past its limit, the cut list is what a supplier works from. "
                     "Tackbench computes geometry; the certifying engineer decides.")},
      },
      this);
  space_->stay_beneath(*tour_);
}

QAction* BenchWindow::action(const QString& name) const {
  return findChild<QAction*>(name);
}

}  // namespace tackbench::ui
