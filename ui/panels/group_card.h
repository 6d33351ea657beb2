// A group of members on a station's sheet: a heading that folds it, its entries, its groups within.
// What is folded is not made until it is opened.
#pragma once

#include <QVBoxLayout>
#include <QWidget>
#include <functional>
#include <vector>

#include "ui/fields/entry_field.h"
#include "ui/fields/field_tree.h"
#include "ui/panels/fold_button.h"

namespace tackbench::ui {

// What a sheet does for the cards on it.
struct SheetWork {
  Session& session;
  std::function<bool(const std::string& path)> is_open;
  std::function<void(const std::string& path, bool open)> remember_open;
  std::function<void(EntryField& field)> made;      // an entry came to be
  std::function<void(EntryField& field)> entered;   // and got the keyboard
  std::function<void(const FieldGroup& list)> add;  // an item, a group
  std::function<void(const FieldGroup& group)> take_away;
};

class GroupCard : public QWidget {
  Q_OBJECT

 public:
  // `depth` 0 is a card of its own; deeper ones stand within it behind a line.
  GroupCard(const SheetWork& work, FieldGroup group, int depth, QWidget* parent = nullptr);

  const FieldGroup& group() const { return group_; }
  void open(bool open);
  // Opens what leads to the member; false when it is not in here.
  bool open_towards(const std::string& path);
  // Marks the headings of groups with a fault in them.
  void show_faults(const std::function<bool(const std::string& path)>& is_faulty);

 private:
  void make_heading();
  void make_body();
  void fill(QVBoxLayout& column);
  void add_take_away(EntryField& field, const FieldEntry& entry, std::size_t index);

  const SheetWork& work_;
  FieldGroup group_;
  int depth_;
  FoldButton* heading_ = nullptr;
  QWidget* body_ = nullptr;
  std::vector<GroupCard*> inner_;
};

}  // namespace tackbench::ui
