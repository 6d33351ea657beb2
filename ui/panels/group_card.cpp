#include "ui/panels/group_card.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <utility>

#include "ui/look/palette.h"
#include "ui/look/style.h"

namespace tackbench::ui {

namespace {

QString first_letter_large(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

// "Joints" for a list of joint.
QString plural(const QString& word) {
  if (word.startsWith(QLatin1String("point of"))) return QStringLiteral("points") + word.mid(5);
  if (word.startsWith(QLatin1String("row of"))) return QStringLiteral("rows") + word.mid(3);
  if (word.startsWith(QLatin1String("outer corner of")))
    return QStringLiteral("outer corners") + word.mid(12);
  if (word.startsWith(QLatin1String("photograph")))
    return QStringLiteral("photographs") + word.mid(10);
  if (word.startsWith(QLatin1String("note on"))) return QStringLiteral("notes") + word.mid(4);
  if (word == QLatin1String("drawn person")) return QStringLiteral("drawn people");
  return word + QLatin1Char('s');
}

QString heading_words(const FieldGroup& group) {
  switch (group.kind) {
    case GroupKind::list:
    case GroupKind::points:
      return first_letter_large(plural(group.words));
    case GroupKind::item:
      if (!group.name.isEmpty()) return group.name;
      return first_letter_large(group.words) + QStringLiteral(" %1").arg(group.index + 1);
    case GroupKind::record:
    case GroupKind::optional:
      return first_letter_large(group.words);
  }
  return {};
}

}  // namespace

GroupCard::GroupCard(const SheetWork& work, FieldGroup group, int depth, QWidget* parent)
    : QWidget(parent), work_(work), group_(std::move(group)), depth_(depth) {
  setAttribute(Qt::WA_StyledBackground);
  set_look(*this, depth == 0 ? "card" : "plain");
  auto* column = new QVBoxLayout(this);
  const int margin = depth == 0 ? 4 : 0;
  column->setContentsMargins(depth == 0 ? margin : 3, margin, margin, margin);
  column->setSpacing(0);
  make_heading();
  if (group_.present && work_.is_open(group_.path)) open(true);
}

void GroupCard::make_heading() {
  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(4);
  heading_ = new FoldButton(heading_words(group_), this);
  heading_->setObjectName(QString::fromStdString("fold " + group_.path));
  row->addWidget(heading_, 1);
  connect(heading_, &FoldButton::toggled, this, [this](bool on) {
    open(on);
    work_.remember_open(group_.path, on);
  });
  const bool list = group_.kind == GroupKind::list || group_.kind == GroupKind::points;
  if (list) {
    heading_->show_lesser(group_.members.empty() ? tr("none")
                                                 : QString::number(group_.members.size()));
  } else if (!group_.present) {
    heading_->show_lesser(tr("not given"));
    heading_->setEnabled(false);
  }
  const auto button = [&](const char* name, const QString& words, const QString& spoken,
                          const auto& work) {
    auto* made = new QPushButton(words, this);
    set_look(*made, "link");
    made->setAccessibleName(spoken);
    made->setToolTip(spoken);
    made->setObjectName(QString::fromStdString(name + group_.path));
    connect(made, &QPushButton::clicked, this, work);
    row->addWidget(made);
  };
  if (list || (group_.kind == GroupKind::optional && !group_.present)) {
    button("add ", tr("Add"), tr("Add %1").arg(group_.words), [this] { work_.add(group_); });
  } else if (group_.kind == GroupKind::item || group_.kind == GroupKind::optional) {
    button("take ", tr("Take away"), tr("Take away %1").arg(heading_words(group_)),
           [this] { work_.take_away(group_); });
  }
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

void GroupCard::make_body() {
  body_ = new QWidget(this);
  set_look(*body_, "plain");
  auto* column = new QVBoxLayout(body_);
  column->setContentsMargins(depth_ == 0 ? 0 : 2, 0, 0, depth_ == 0 ? 4 : 2);
  column->setSpacing(1);
  fill(*column);
  layout()->addWidget(body_);
}

void GroupCard::fill(QVBoxLayout& column) {
  // An item's note is its list's.
  if (!group_.note.isEmpty() && group_.kind != GroupKind::item) {
    auto* note = new QLabel(first_letter_large(group_.note), body_);
    set_look(*note, "soft");
    note->setWordWrap(true);
    note->setContentsMargins(6, 0, 4, 2);
    column.addWidget(note);
  }
  std::size_t point = 0;
  for (const auto& member : group_.members) {
    if (const auto* entry = std::get_if<FieldEntry>(&member)) {
      auto* field = new EntryField(work_.session, *entry, body_);
      connect(field, &EntryField::entered, this, [this, field] { work_.entered(*field); });
      if (group_.kind == GroupKind::points) add_take_away(*field, *entry, point++);
      column.addWidget(field);
      work_.made(*field);
    } else {
      auto* inner = new GroupCard(work_, std::get<FieldGroup>(member), depth_ + 1, body_);
      inner_.push_back(inner);
      column.addWidget(inner);
    }
  }
}

void GroupCard::add_take_away(EntryField& field, const FieldEntry& entry, std::size_t index) {
  FieldGroup point;
  point.kind = GroupKind::item;
  point.path = entry.path;
  point.words = entry.words;
  point.index = index;
  auto* away = new QPushButton(QStringLiteral("\u00d7"), &field);
  set_look(*away, "link");
  away->setFixedWidth(22);
  away->setAccessibleName(tr("Take away %1").arg(entry.words));
  away->setToolTip(away->accessibleName());
  away->setObjectName(QString::fromStdString("take " + entry.path));
  connect(away, &QPushButton::clicked, this, [this, point] { work_.take_away(point); });
  field.add_corner(*away);
}

void GroupCard::open(bool open) {
  if (open && body_ == nullptr) make_body();
  if (body_ != nullptr) body_->setVisible(open);
  const QSignalBlocker still(heading_);
  heading_->setChecked(open);
}

bool GroupCard::open_towards(const std::string& path) {
  const bool in_here = path.starts_with(group_.path) && path.size() > group_.path.size() &&
                       (path[group_.path.size()] == '.' || path[group_.path.size()] == '[');
  if (!group_.present || (!in_here && path != group_.path)) return false;
  open(true);
  work_.remember_open(group_.path, true);
  for (GroupCard* inner : inner_)
    if (inner->open_towards(path)) break;
  return true;
}

void GroupCard::show_faults(const std::function<bool(const std::string& path)>& is_faulty) {
  heading_->show_fault(is_faulty(group_.path));
  for (GroupCard* inner : inner_) inner->show_faults(is_faulty);
}

}  // namespace tackbench::ui
