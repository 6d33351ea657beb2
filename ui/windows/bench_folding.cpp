// What folds in a small window, so that the drawing keeps its room.
#include <QAction>
#include <QHBoxLayout>
#include <QToolButton>
#include <algorithm>

#include "ui/desk/motion_desk.h"
#include "ui/panels/shaft_strip.h"
#include "ui/sheet/bare_sheet.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/loose_card.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/preferences.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {

namespace {

constexpr int kNarrowWindow = 1000;
constexpr int kLowWindow = 800;  // here the motion desk folds in a wide window too
constexpr double kLeastDrawing = 0.5;

}  // namespace

void BenchWindow::follow_folding() {
  side_handle_->setObjectName("side handle");
  side_handle_->setAutoRaise(true);
  side_handle_->setFixedWidth(14);
  side_handle_->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
  connect(side_handle_, &QToolButton::clicked, this, [this] { fold_side(side_->isVisible()); });
  desk_folding_.roomy = Preferences::desk_folded(true);
  desk_folding_.tight = Preferences::desk_folded(false);
  space_folding_.roomy = Preferences::space_folded(true);
  space_folding_.tight = Preferences::space_folded(false);
  connect(desk_, &MotionDesk::folded_by_hand, this, [this](bool fold) {
    desk_folding_.by_hand(fold);
    Preferences::set_desk_folded(desk_folding_.room, fold);
    give_room();
  });
  connect(shaft_, &ShaftStrip::folded_by_hand, this, [this](bool fold) {
    shaft_folding_.by_hand(fold);
    give_room();
  });
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind != ChangeKind::dragged) give_room();
  });
  give_room();
}

void BenchWindow::fold_side(bool fold) {
  side_folding_.by_hand(fold);
  give_room();
}

void BenchWindow::give_room() {
  const bool narrow = width() < kNarrowWindow;
  shaft_folding_.room = !narrow;
  shaft_->set_folded(shaft_folding_.folded());
  desk_folding_.room = !narrow && height() >= kLowWindow;
  desk_->set_folded(desk_folding_.folded());
  layout()->activate();  // the drawing's height now follows from both
  side_folding_.room = !narrow || drawing_share() >= kLeastDrawing;
  const bool folded = side_folding_.folded();
  side_->setVisible(!folded);
  side_handle_->setArrowType(folded ? Qt::LeftArrow : Qt::RightArrow);
  side_handle_->setAccessibleName(folded ? tr("Unfold the side column")
                                         : tr("Fold the side column"));
  side_handle_->setToolTip(side_handle_->accessibleName());
  // The view in space would lie on what is drawn, or has nothing to show.
  const auto things = bare_things(session_.project());
  const bool anything =
      std::any_of(things.begin(), things.end(), [](const BareThing& thing) { return thing.begun; });
  space_folding_.room = anything && 2 * space_->minimumSizeHint().height() <= sheet_->height();
  giving_room_ = true;
  action("view in space")->setChecked(!space_folding_.folded());
  giving_room_ = false;
}

double BenchWindow::drawing_share() const {
  int wide = sheet_->width();
  if (side_->isHidden()) wide -= side_->width() + 3;
  return 1.0 * wide * sheet_->height() / (1.0 * width() * height());
}

}  // namespace tackbench::ui
