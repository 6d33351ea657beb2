#include "ui/graphs/graphs_panel.h"

#include <QApplication>
#include <QClipboard>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/fields/calm_combo.h"
#include "ui/graphs/curves_csv.h"

namespace tackbench::ui {

GraphsPanel::GraphsPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setAccessibleName(tr("Graphs"));
  auto* layout = new QVBoxLayout(this);
  choose_ = new CalmCombo(this);
  choose_->setObjectName("graph");
  choose_->set_name(tr("Graph to show"));
  plot_ = new Plot(this);
  readout_ = new QLabel(this);
  readout_->setObjectName("readout");
  readout_->setWordWrap(true);
  readout_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  copy_picture_ = new QPushButton(tr("Copy picture"), this);
  copy_picture_->setObjectName("copy_picture");
  copy_csv_ = new QPushButton(tr("Copy as CSV"), this);
  copy_csv_->setObjectName("copy_csv");
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(copy_picture_);
  buttons->addWidget(copy_csv_);
  buttons->addStretch(1);
  layout->addWidget(choose_);
  layout->addWidget(plot_, 1);
  layout->addWidget(readout_);
  layout->addLayout(buttons);

  connect(choose_, &QComboBox::activated, this,
          [this](int index) { choose(choices_[static_cast<std::size_t>(index)]); });
  connect(plot_, &Plot::cursor_moved, this, &GraphsPanel::set_by_hand);
  connect(copy_picture_, &QPushButton::clicked, this, &GraphsPanel::copy_picture);
  connect(copy_csv_, &QPushButton::clicked, this, &GraphsPanel::copy_csv);
  connect(&session_, &Session::controls_changed, this, &GraphsPanel::show_controls);
  connect(&session_, &Session::project_changed, this, &GraphsPanel::show_stale);
  calm_ = new CalmRefresh(session_, *this, [this] { work_out(); });
  connect(&session_, &Session::posed_changed, this, [this] {
    if (behind_) calm_->want();
  });
  connect(&session_, &Session::judged_changed, this, [this] {
    if (session_.judged_fresh()) calm_->want();  // the locks may end elsewhere now
  });
  list_choices();
}

GraphsPanel::~GraphsPanel() {
  // No job may post to an object that is half gone.
  runner_.stop();
  runner_.wait_until_idle();
}

void GraphsPanel::choose(const GraphChoice& choice) {
  choice_ = choice;
  curves_.clear();  // of another graph
  before_.clear();
  work_out();
}

ControlReach GraphsPanel::reach() const {
  const auto& locks = session_.judged().results.locks;
  return control_reach(*session_.posed().mechanism, locks ? &*locks : nullptr);
}

void GraphsPanel::list_choices() {
  const Mechanism& mechanism = *session_.posed().mechanism;
  choices_ = graph_choices(mechanism);
  if (std::find(choices_.begin(), choices_.end(), choice_) == choices_.end()) choice_ = {};
  QStringList titles;
  for (const GraphChoice& each : choices_) titles += graph_words(each, mechanism).title;
  const QSignalBlocker quiet(choose_);
  if (titles != titles_) {  // else an open list stays open
    choose_->clear();
    choose_->addItems(titles);
    titles_ = titles;
  }
  const auto at = std::find(choices_.begin(), choices_.end(), choice_);
  choose_->setCurrentIndex(static_cast<int>(at - choices_.begin()));
}

PlotPicture GraphsPanel::picture(bool stale) const {
  PlotPicture made;
  made.words = graph_words(choice_, *session_.posed().mechanism);
  made.lengths = session_.shown_unit();
  made.curves = curves_;
  made.before = before_;
  made.stale = stale;
  return made;
}

void GraphsPanel::work_out() {
  behind_ = true;
  if (!isVisible()) return;
  list_choices();
  behind_ = !session_.posed_fresh();
  stale_ = true;
  std::shared_ptr<const Mechanism> earlier;
  if (session_.posed_before() != nullptr) earlier = session_.posed_before()->mechanism;
  if (earlier == session_.posed().mechanism) earlier.reset();
  runner_.submit(
      [this, asked = ++asked_, choice = choice_, mechanism = session_.posed().mechanism,
       earlier = std::move(earlier), reach = reach()](const std::stop_token&) {
        std::vector<Curve> curves = graph_curves(choice, *mechanism, reach);
        std::vector<Curve> before;
        if (earlier) before = graph_curves(choice, *earlier, reach);
        QMetaObject::invokeMethod(
            this,
            [this, asked, curves = std::move(curves), before = std::move(before)]() mutable {
              arrived(asked, std::move(curves), std::move(before));
            },
            Qt::QueuedConnection);
      },
      true);
}

void GraphsPanel::arrived(std::uint64_t asked, std::vector<Curve> curves,
                          std::vector<Curve> before) {
  if (asked != asked_) return;
  curves_ = std::move(curves);
  before_ = std::move(before);
  stale_ = behind_ || calm_->in_drag() || !session_.posed().problems.empty();
  plot_->show_picture(picture(stale_));
  copy_csv_->setEnabled(!curves_.empty());
  copy_picture_->setEnabled(!curves_.empty());
  show_controls();
}

void GraphsPanel::wait_until_fresh() {
  session_.wait_until_fresh();
  runner_.wait_until_idle();
  QCoreApplication::sendPostedEvents(this);
}

void GraphsPanel::show_stale() {
  const bool shown = std::exchange(stale_, true);
  behind_ = true;
  if (shown || !isVisible()) return;  // faded already
  plot_->show_picture(picture(true));
  readout_->setEnabled(false);
}

void GraphsPanel::show_controls() {
  if (!isVisible()) return;
  const Mechanism& mechanism = *session_.posed().mechanism;
  const double place = place_of(choice_, mechanism, session_.controls());
  plot_->set_cursor(place);
  plot_->setAccessibleName(graph_words(choice_, mechanism).title);
  choose_->setToolTip(graph_meaning(choice_.kind));
  readout_->setEnabled(!stale_);
  if (curves_.empty()) {
    readout_->setText(stale_ ? QString() : tr("Not measured yet: this graph has nothing to show."));
    plot_->describe(readout_->text());
    return;
  }
  const ShownUnit lengths = session_.shown_unit();
  const GraphWords said = graph_words(choice_, mechanism);
  const auto with_unit = [&](double inside, Unit unit) {
    return unit == Unit::turn ? tr("%1 turns").arg(QString::fromStdString(shown_bare(inside, unit)))
                              : QString::fromStdString(shown(inside, unit, lengths));
  };
  QStringList lines{said.across.words + ": " + with_unit(place, said.across.unit)};
  if (!said.held.isEmpty()) lines += said.held;
  for (const EarlyEnd& end : curves_.front().early_ends)
    lines += tr("Ends at %1. %2")
                 .arg(with_unit(end.x, said.across.unit), QString::fromStdString(end.why));
  readout_->setText(lines.join('\n'));
  std::vector<QString> values;
  for (const Curve& curve : curves_) {
    const auto value = value_at(curve, place);
    const QString words = value ? with_unit(*value, curve.unit) : tr("not reached");
    lines += QString::fromStdString(curve.words) + ": " + words;
    values.push_back(value && curve.unit == Unit::degree
                         ? QString::fromStdString(shown_bare(*value, curve.unit)) + QChar(0xb0)
                         : words);
  }
  plot_->set_values(values);
  plot_->describe(lines.join("; "));
}

void GraphsPanel::set_by_hand(double place) {
  session_.set_controls(
      set_to_place(choice_, *session_.posed().mechanism, reach(), session_.controls(), place));
  show_controls();  // back to where the control could go
}

QString GraphsPanel::csv() const {
  return curves_csv(graph_words(choice_, *session_.posed().mechanism).across, curves_,
                    session_.shown_unit());
}

void GraphsPanel::copy_picture() {
  QApplication::clipboard()->setPixmap(plot_->picture());
}

void GraphsPanel::copy_csv() const {
  QApplication::clipboard()->setText(csv());
}

void GraphsPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  work_out();
}

}  // namespace tackbench::ui
