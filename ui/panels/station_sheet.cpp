#include "ui/panels/station_sheet.h"

#include <QHBoxLayout>
#include <QPointer>
#include <QScrollBar>
#include <algorithm>
#include <utility>

#include "core/project/field_items.h"
#include "core/project/field_path.h"
#include "core/project/starting_guesses.h"
#include "core/project/starting_truck.h"
#include "core/project/value_checks.h"
#include "ui/fields/checked_edit.h"
#include "ui/fields/entry_text.h"
#include "ui/look/style.h"
#include "ui/panels/scrolled_column.h"
#include "ui/panels/station_words.h"

namespace tackbench::ui {

namespace {

constexpr int kWhileDraggingMs = 60;

QString first_letter_large(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

bool lies_in(const std::string& path, const std::string& root) {
  return path.starts_with(root) &&
         (path.size() == root.size() || path[root.size()] == '.' || path[root.size()] == '[');
}

QLabel* wrapped_label(const char* look, QWidget* parent) {
  auto* label = new QLabel(parent);
  set_look(*label, look);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::NoTextInteraction);
  return label;
}

}  // namespace

StationSheet::StationSheet(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      work_{session,
            [this](const std::string& path) { return open_.contains(path); },
            [this](const std::string& path, bool open) {
              if (open) {
                open_.insert(path);
              } else {
                open_.erase(path);
              }
              show_faults();
            },
            [this](EntryField& field) { fields_[field.entry().path] = &field; },
            [this](EntryField& field) {
              explain(field.entry());
              session_.select(field.entry().path);
            },
            [this](const FieldGroup& group) { add(group); },
            [this](const FieldGroup& group) { take_away(group); }} {
  dress(*this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 8, 4, 8);
  column->setSpacing(6);
  make_head(*column);
  scroll_ = scrolled_column(this, tr("Members of the station"));
  column->addWidget(scroll_, 1);
  make_foot(*column);

  // A drag changes the project with every move of the pointer: the sheet may not hold it back.
  while_dragging_.setSingleShot(true);
  while_dragging_.setInterval(kWhileDraggingMs);
  connect(&while_dragging_, &QTimer::timeout, this, &StationSheet::refresh);
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened) {
      // What is being typed was meant for the document before.
      for (const auto& [path, field] : fields_)
        for (EntryLine* line : field->lines()) line->give_up();
    }
    if (change.kind != ChangeKind::dragged) {
      refresh();
    } else if (!while_dragging_.isActive()) {
      while_dragging_.start();
    }
  });
  connect(&session_, &Session::posed_changed, this, [this] {
    if (!session_.dragging()) show_faults();
  });
  connect(&session_, &Session::judged_changed, this, &StationSheet::show_verdict);
  connect(&session_, &Session::selection_changed, this, &StationSheet::follow_selection);
  switch_to(station_name(Station::column));
}

void StationSheet::make_head(QVBoxLayout& column) {
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  mark_ = new VerdictMark(this, 18);
  row->addWidget(mark_);
  title_ = new QLabel(this);
  set_look(*title_, "title");
  row->addWidget(title_, 1);
  leave_out_ = new QPushButton(tr("Leave out"), this);
  set_look(*leave_out_, "link");
  connect(leave_out_, &QPushButton::clicked, this, [this] {
    FieldGroup station;
    station.kind = GroupKind::optional;
    station.path = root_;
    station.words = title_->text().toLower();
    take_away(station);
  });
  row->addWidget(leave_out_);
  column.addLayout(row);
  state_ = wrapped_label("soft", this);
  column.addWidget(state_);
  faults_ = wrapped_label("wrong", this);
  faults_->hide();
  column.addWidget(faults_);
}

void StationSheet::make_foot(QVBoxLayout& column) {
  foot_ = new QWidget(this);
  foot_->setAttribute(Qt::WA_StyledBackground);
  set_look(*foot_, "card");
  auto* row = new QHBoxLayout(foot_);
  row->setContentsMargins(6, 6, 6, 6);
  row->setSpacing(8);
  sketch_ = new MeaningSketch(foot_);
  row->addWidget(sketch_, 0, Qt::AlignTop);
  auto* words = new QVBoxLayout;
  words->setSpacing(2);
  meaning_ = new QLabel(foot_);
  meaning_->setWordWrap(true);
  words->addWidget(meaning_);
  meaning_note_ = wrapped_label("soft", foot_);
  words->addWidget(meaning_note_);
  words->addStretch(1);
  row->addLayout(words, 1);
  foot_->hide();
  column.addWidget(foot_);
}

void StationSheet::show_station(Station station) {
  show_record(station_name(station));
}

// A record that is asked for is shown, whatever was selected in another one before.
void StationSheet::show_record(const std::string& root) {
  switch_to(root);
  if (!session_.selected().empty() && !lies_in(session_.selected(), root)) session_.select({});
}

void StationSheet::switch_to(const std::string& root) {
  if (root_ == root) return;
  root_ = root;
  structure_.clear();
  foot_->hide();
  scroll_->verticalScrollBar()->setValue(0);
  refresh();
  Q_EMIT record_changed();
}

void StationSheet::begin(const std::string& path) {
  const auto station = station_of(path);
  show_record(station ? station_name(*station) : path);
  const auto add_group = [this](const std::string& what) {
    const Result<std::string> words = field_words(session_.project(), what);
    FieldGroup group;
    group.kind = GroupKind::optional;
    group.path = what;
    group.words = words ? QString::fromStdString(*words) : title_->text().toLower();
    add(group);
  };
  if (!field_group(session_.project(), root_).present) add_group(root_);
  // A group within the station, as the rails among the shapes.
  if (path != root_ && with_group_added(session_.project(), path)) add_group(path);
  bring_into_sight(path);
}

void StationSheet::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (out_of_date_) refresh();
}

void StationSheet::refresh() {
  out_of_date_ = !isVisible() && !structure_.empty();
  if (out_of_date_) return;
  FieldGroup group = field_group(session_.project(), root_);
  std::string structure = structure_of(group);
  if (structure != structure_) {
    structure_ = std::move(structure);
    rebuild(std::move(group));
  }
  show_values();
  show_verdict();
  show_faults();
  mark_selected();
}

// What is being typed goes on in the line that takes the old one's place.
void StationSheet::rebuild(FieldGroup group) {
  struct Typed {
    std::string path;
    std::size_t which = 0;
    QString text;
    int cursor = 0;
    bool focus = false;
  };
  std::vector<Typed> typed;
  for (const auto& [path, field] : fields_) {
    for (std::size_t i = 0; i < field->lines().size(); ++i) {
      EntryLine& line = *field->lines()[i];
      if (!line.isModified()) continue;
      typed.push_back({path, i, line.text(), line.cursorPosition(), line.hasFocus()});
      line.setModified(false);
    }
  }
  make_body(std::move(group));
  for (const Typed& each : typed) {
    const auto found = fields_.find(each.path);
    if (found == fields_.end() || each.which >= found->second->lines().size()) continue;
    EntryLine& line = *found->second->lines()[each.which];
    line.type_again(each.text, each.cursor);
    if (each.focus) line.setFocus(Qt::OtherFocusReason);
  }
}

void StationSheet::make_body(FieldGroup group) {
  const int at = scroll_->verticalScrollBar()->value();
  fields_.clear();
  cards_.clear();
  chosen_ = nullptr;
  title_->setText(first_letter_large(group.words));
  leave_out_->setVisible(group.present);
  leave_out_->setAccessibleName(tr("Leave out: %1").arg(group.words));
  if (body_ != nullptr) {
    // The click that led here may still be at work in one of its buttons. It may not outlive this
    // sheet and the session.
    scroll_->takeWidget();
    body_->setParent(this);
    body_->hide();  // also when the sheet itself is shown only now
    body_->deleteLater();
  }
  body_ = new QWidget;
  set_look(*body_, "plain");
  auto* column = new QVBoxLayout(body_);
  column->setContentsMargins(0, 0, 2, 0);
  column->setSpacing(6);
  if (!group.present) {
    fill_absent();
  } else {
    // The station's own entries make the first card; its groups follow.
    FieldGroup own = group;
    std::erase_if(own.members,
                  [](const auto& member) { return std::holds_alternative<FieldGroup>(member); });
    if (!own.members.empty()) {
      own.kind = GroupKind::record;
      own.words = tr("the %1 itself").arg(group.words);
      open_.insert(own.path);
      cards_.push_back(new GroupCard(work_, std::move(own), 0, body_));
      column->addWidget(cards_.back());
    }
    for (auto& member : group.members) {
      if (auto* inner = std::get_if<FieldGroup>(&member)) {
        cards_.push_back(new GroupCard(work_, std::move(*inner), 0, body_));
        column->addWidget(cards_.back());
      }
    }
  }
  column->addStretch(1);
  scroll_->setWidget(body_);
  body_->show();
  scroll_->verticalScrollBar()->setValue(at);
}

void StationSheet::fill_absent() {
  auto* column = static_cast<QVBoxLayout*>(body_->layout());
  auto* words = new QLabel(absent_words(root_), body_);
  words->setWordWrap(true);
  column->addWidget(words);
  auto* add_it = new QPushButton(tr("Begin the %1").arg(title_->text().toLower()), body_);
  add_it->setAccessibleName(add_it->text());
  add_it->setObjectName(QString::fromStdString("add " + root_));
  connect(add_it, &QPushButton::clicked, this, [this] {
    FieldGroup station;
    station.kind = GroupKind::optional;
    station.path = root_;
    station.words = title_->text().toLower();
    station.present = false;
    add(station);
  });
  column->addWidget(add_it, 0, Qt::AlignLeft);
}

void StationSheet::show_values() {
  const std::vector<std::string> guesses = starting_guesses(session_.project());
  for (const auto& [path, field] : fields_) {
    field->refresh();
    field->show_guess(std::find(guesses.begin(), guesses.end(), path) != guesses.end());
  }
}

void StationSheet::show_verdict() {
  const auto station = station_of(root_);
  mark_->setVisible(station.has_value());
  if (!station) {
    state_->hide();
    return;
  }
  const StationState state = station_state(session_, *station);
  mark_->show_verdict(state.worst, state.stale);
  state_->setText(state.words);
  state_->setVisible(!state.words.isEmpty());
}

void StationSheet::show_faults() {
  std::map<std::string, QString> faults;  // by place
  const auto take = [&](const Problems& problems) {
    for (const Problem& problem : problems) {
      if (!lies_in(problem.place, root_)) continue;
      QString& words = faults[problem.place];
      const QString more = fault_words({problem});
      if (words.contains(more)) continue;
      if (!words.isEmpty()) words += QLatin1Char('\n');
      words += more;
    }
  };
  take(value_problems(session_.project()));
  if (session_.posed_fresh()) take(session_.posed().problems);
  QStringList elsewhere;  // at no entry that is made
  std::map<std::string, QString> at_field;
  for (const auto& [place, words] : faults) {
    std::string path = place;
    // A coordinate's fault stands at its point.
    if (!fields_.contains(path) && path.size() > 2 && path[path.size() - 2] == '.')
      path.resize(path.size() - 2);
    if (fields_.contains(path)) {
      at_field[path] = words;
    } else {
      const Result<std::string> named = field_words(session_.project(), place);
      elsewhere +=
          (named ? first_letter_large(QString::fromStdString(*named)) + QStringLiteral(": ")
                 : QString()) +
          words;
    }
  }
  for (const auto& [path, field] : fields_) {
    const auto found = at_field.find(path);
    field->show_fault(found == at_field.end() ? QString() : found->second);
  }
  const auto is_faulty = [&](const std::string& path) {
    return path != root_ && std::any_of(faults.begin(), faults.end(), [&](const auto& each) {
             return lies_in(each.first, path);
           });
  };
  for (GroupCard* card : cards_) card->show_faults(is_faulty);
  faults_->setText(elsewhere.join(QLatin1Char('\n')));
  faults_->setVisible(!elsewhere.isEmpty());
}

EntryField* StationSheet::bring_into_sight(const std::string& path) {
  for (GroupCard* card : cards_) card->open_towards(path);
  // The member itself, or the first one of the record that is meant.
  const auto exact = fields_.find(path);
  EntryField* field = exact == fields_.end() ? nullptr : exact->second;
  if (field == nullptr) {
    for (const auto& [place, each] : fields_) {
      if (lies_in(path, place)) field = each;
    }
  }
  if (field == nullptr) return nullptr;
  // Its place is known once the layout has settled.
  QTimer::singleShot(0, this, [this, there = QPointer<EntryField>(field)] {
    if (there) scroll_->ensureWidgetVisible(there, 0, 40);
  });
  return field;
}

void StationSheet::follow_selection() {
  const std::string& path = session_.selected();
  const auto station = station_of(path);
  if (station && !lies_in(path, root_) && isVisible()) return switch_to(station_name(*station));
  mark_selected();
}

void StationSheet::mark_selected() {
  const std::string& path = session_.selected();
  EntryField* field = nullptr;
  if (lies_in(path, root_) && path != root_) field = bring_into_sight(path);
  if (chosen_ != nullptr && chosen_ != field) chosen_->show_chosen(false);
  chosen_ = field;
  if (field == nullptr) return;
  field->show_chosen(true);
  explain(field->entry());
}

void StationSheet::explain(const FieldEntry& entry) {
  foot_->show();
  sketch_->show_meaning(meaning_of(entry));
  meaning_->setText(first_letter_large(entry.words));
  QStringList lines;
  if (!entry.note.isEmpty()) lines += first_letter_large(entry.note);
  const QString range = range_words(entry, session_.shown_unit());
  if (!range.isEmpty()) lines += range;
  meaning_note_->setText(lines.join(QLatin1Char('\n')));
  meaning_note_->setVisible(!lines.isEmpty());
}

void StationSheet::add(const FieldGroup& group) {
  const bool list = group.kind == GroupKind::list || group.kind == GroupKind::points;
  if (list) {
    open_.insert(group.path);
    open_.insert(group.path + "[" + std::to_string(group.members.size()) + "]");
    edit_structure(tr("Add %1").arg(group.words), with_item_added(session_.project(), group.path));
    return;
  }
  open_.insert(group.path);
  const QString name = tr("Add %1").arg(group.words);
  const auto station = station_of(group.path);
  if (station && group.path == station_name(*station))
    return edit_structure(name, with_station_begun(session_.project(), *station));
  edit_structure(name, with_group_added(session_.project(), group.path));
}

void StationSheet::take_away(const FieldGroup& group) {
  const QString name = tr("Take away %1").arg(group.name.isEmpty() ? group.words : group.name);
  if (group.kind == GroupKind::item) {
    const std::string list = group.path.substr(0, group.path.rfind('['));
    // Those behind it move up: what is open is not the same item any more.
    std::erase_if(open_, [&](const std::string& path) { return path.starts_with(list + "["); });
    return edit_structure(name, with_item_removed(session_.project(), list, group.index));
  }
  edit_structure(group.path == root_ ? tr("Leave out the %1").arg(group.words) : name,
                 with_field(session_.project(), group.path, "none"));
}

void StationSheet::edit_structure(const QString& name, const Result<Project>& after) {
  if (!after) {
    faults_->setText(first_letter_large(fault_words(after.problems())));
    faults_->show();
    return;
  }
  session_.edit(name, *after);
}

}  // namespace tackbench::ui
