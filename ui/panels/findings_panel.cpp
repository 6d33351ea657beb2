#include "ui/panels/findings_panel.h"

#include <QHBoxLayout>
#include <QScrollBar>
#include <QStyle>
#include <algorithm>

#include "ui/look/station_title.h"
#include "ui/look/style.h"
#include "ui/panels/scrolled_column.h"
#include "ui/panels/station_words.h"

namespace tackbench::ui {

namespace {

// A wait shorter than this shows nothing but faded findings.
constexpr int kLongWaitMs = 300;

}  // namespace

FindingsPanel::FindingsPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session) {
  dress(*this);
  setAttribute(Qt::WA_StyledBackground);
  set_look(*this, "card");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 8, 2, 6);
  column->setSpacing(6);
  make_head(*column);
  scroll_ = scrolled_column(this, tr("List of findings"));
  auto* body = new QWidget(scroll_);
  set_look(*body, "plain");
  list_ = new QVBoxLayout(body);
  list_->setContentsMargins(0, 0, 2, 0);
  list_->setSpacing(4);
  none_ = new QLabel(body);
  none_->setWordWrap(true);
  none_->setContentsMargins(8, 4, 8, 4);
  list_->addWidget(none_);
  list_->addStretch(1);
  scroll_->setWidget(body);
  column->addWidget(scroll_, 1);

  long_wait_.setSingleShot(true);
  long_wait_.setInterval(kLongWaitMs);
  connect(&long_wait_, &QTimer::timeout, this, &FindingsPanel::show_progress);
  calm_ = new CalmRefresh(session_, *this, [this] { refresh(); });
  connect(&session_, &Session::judged_changed, calm_, &CalmRefresh::want);
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened) open_.clear();
    if (change.others) refresh();  // the unit perhaps
  });
  refresh();
}

void FindingsPanel::make_head(QVBoxLayout& column) {
  auto* row = new QHBoxLayout;
  row->setContentsMargins(6, 0, 6, 0);
  auto* title = new QLabel(tr("Findings"), this);
  set_look(*title, "title");
  row->addWidget(title, 1);
  filter_ = new CalmCombo(this);
  filter_->set_name(tr("Findings of which station"));
  filter_->addItem(tr("All stations"), -1);
  for (const Station station : kStations)
    filter_->addItem(station_title(station), static_cast<int>(station));
  filter_->setMinimumContentsLength(11);
  connect(filter_, &QComboBox::activated, this, [this](int index) {
    const int which = filter_->itemData(index).toInt();
    show_station(which < 0 ? std::nullopt : std::optional(static_cast<Station>(which)));
  });
  row->addWidget(filter_);
  column.addLayout(row);

  headline_ = new QLabel(this);
  set_look(*headline_, "soft");
  headline_->setWordWrap(true);
  headline_->setContentsMargins(6, 0, 6, 0);
  column.addWidget(headline_);

  auto* work = new QHBoxLayout;
  work->setContentsMargins(6, 0, 6, 0);
  progress_ = new QLabel(this);
  set_look(*progress_, "soft");
  progress_->setWordWrap(true);
  work->addWidget(progress_, 1);
  stop_ = new QPushButton(this);
  stop_->setObjectName(QStringLiteral("stop"));
  connect(stop_, &QPushButton::clicked, this, [this] {
    if (session_.checks_stopped()) {
      session_.run_checks_again();
    } else {
      session_.stop_checks();
    }
  });
  work->addWidget(stop_);
  column.addLayout(work);
}

void FindingsPanel::show_station(std::optional<Station> station) {
  station_ = station;
  filter_->setCurrentIndex(filter_->findData(station ? static_cast<int>(*station) : -1));
  refresh();
}

void FindingsPanel::refresh() {
  const Shown wanted{&session_.judged(), looks_stale(), station_, session_.shown_unit()};
  if (shown_ != wanted) fill_cards();
  shown_ = wanted;
  if (!session_.judged_fresh() && !session_.checks_stopped() &&
      session_.cannot_work_out().empty()) {
    // Only a wait that is felt is spoken of.
    if (stop_->isHidden() && !long_wait_.isActive()) long_wait_.start();
    if (!stop_->isHidden()) show_progress();
  } else {
    long_wait_.stop();
    show_progress();
  }
}

bool FindingsPanel::looks_stale() const {
  return !session_.judged_fresh() || calm_->in_drag();
}

void FindingsPanel::fill_cards() {
  const bool stale = looks_stale();
  std::size_t shown = 0;
  int counts[4] = {};
  for (const Finding& finding : session_.judged().findings) {
    if (station_ && finding.station != *station_) continue;
    ++counts[static_cast<std::size_t>(finding.verdict)];
    if (shown == cards_.size()) {
      auto* card = new FindingCard(session_, scroll_->widget());
      connect(card, &FindingCard::chosen, this, [this, card] {
        if (card->is_open()) {
          open_.clear();
          card->open(false);
        } else {
          choose(QString::fromStdString(card->name()));
        }
      });
      connect(card, &FindingCard::motion_wanted, this, &FindingsPanel::wander_wanted);
      list_->insertWidget(static_cast<int>(shown), card);
      cards_.push_back(card);
    }
    FindingCard* card = cards_[shown++];
    card->show_finding(finding, stale);
    offer_motion(*card);
    card->show();
    if (finding.name == open_) card->open(true);
  }
  for (std::size_t i = shown; i < cards_.size(); ++i) {
    cards_[i]->open(false);
    cards_[i]->hide();
  }
  const auto count = [&](Verdict verdict) { return counts[static_cast<std::size_t>(verdict)]; };
  headline_->setText(count_words(count(Verdict::past), count(Verdict::close),
                                 count(Verdict::within), count(Verdict::not_judged)));
  none_->setText(station_ ? tr("Nothing is found about this station yet.")
                          : tr("Nothing is found yet: open a project or begin to measure."));
  // Before anything was worked out, what is at work or in the way is said above.
  none_->setVisible(shown == 0 && !stale);
  headline_->setVisible(shown > 0 || !stale);
}

void FindingsPanel::offer_motion(FindingCard& card) const {
  card.offer_motion(wander_possible_ && card.name() == "shaft.wander", wander_playing_);
}

void FindingsPanel::offer_wander(bool possible, bool playing) {
  wander_possible_ = possible;
  wander_playing_ = playing;
  for (FindingCard* card : cards_) offer_motion(*card);
}

void FindingsPanel::show_progress() {
  const bool stale = !session_.judged_fresh();
  const bool stopped = session_.checks_stopped();
  const bool in_vain = !session_.cannot_work_out().empty();
  const bool from_before = !session_.judged().findings.empty();
  QString words;
  if (in_vain) {
    words = cannot_work_out_words(session_);
    if (from_before) words += QLatin1Char('\n') + tr("These are the findings from before.");
  } else if (stopped) {
    words = from_before ? tr("Stopped. These are the findings from before the last edit.")
                        : tr("Stopped.");
  } else if (stale) {
    words = from_before ? tr("Checks are at work; these are the findings from before.")
                        : tr("Checks are at work.");
  }
  progress_->setText(words);
  progress_->setVisible(stale);
  if (const char* look = in_vain ? "wrong" : "soft"; progress_->property("look") != look) {
    set_look(*progress_, look);
    progress_->style()->unpolish(progress_);
    progress_->style()->polish(progress_);
  }
  stop_->setText(stopped ? tr("Work out") : tr("Stop"));
  stop_->setAccessibleName(stopped ? tr("Work out the findings again") : tr("Stop the checks"));
  stop_->setVisible(stale && !in_vain);
}

std::vector<FindingCard*> FindingsPanel::shown_cards() const {
  std::vector<FindingCard*> shown;
  std::copy_if(cards_.begin(), cards_.end(), std::back_inserter(shown),
               [](const FindingCard* card) { return !card->isHidden(); });
  return shown;
}

FindingCard* FindingsPanel::card(const std::string& name) const {
  for (FindingCard* each : shown_cards())
    if (each->name() == name) return each;
  return nullptr;
}

void FindingsPanel::choose(const QString& name) {
  open_ = name.toStdString();
  if (card(open_) == nullptr && station_) show_station(std::nullopt);
  FindingCard* chosen = card(open_);
  if (chosen == nullptr) return;
  for (FindingCard* each : cards_) each->open(each == chosen);
  if (chosen->finding().worst_at) session_.set_controls(*chosen->finding().worst_at);
  // Its place is known once the layout has settled; its sentence comes into sight before its trace.
  QTimer::singleShot(0, chosen, [this, chosen] {
    const int at = scroll_->verticalScrollBar()->value();
    const bool in_sight =
        chosen->y() >= at && chosen->geometry().bottom() <= at + scroll_->viewport()->height();
    if (!in_sight) scroll_->verticalScrollBar()->setValue(chosen->y() - 4);
  });
  Q_EMIT finding_chosen(name);
}

}  // namespace tackbench::ui
