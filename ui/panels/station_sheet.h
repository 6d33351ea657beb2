// The sheet of one station: every member that the tables of fields give it, in words, with units,
// help and ranges; items of lists and optional groups come and go in one undo step each. The member
// that is selected and the one that has the keyboard are the same.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>
#include <QWidget>
#include <map>
#include <set>
#include <string>

#include "core/project/station.h"
#include "ui/fields/meaning_sketch.h"
#include "ui/look/verdict_mark.h"
#include "ui/panels/group_card.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class StationSheet : public QWidget {
  Q_OBJECT

 public:
  explicit StationSheet(Session& session, QWidget* parent = nullptr);

  void show_station(Station station);
  // Any record of the project by its member: "cab", "measurements", "sheet".
  void show_record(const std::string& root);
  const std::string& root() const { return root_; }
  // Shows the record that the member lies in, begins what is not there yet, and brings the member
  // into sight.
  void begin(const std::string& path);
  // Opens the groups that lead to the member and brings it into sight. Null when it is not here.
  EntryField* bring_into_sight(const std::string& path);
  // Those made so far, by member path.
  const std::map<std::string, EntryField*>& fields() const { return fields_; }

 Q_SIGNALS:
  void record_changed();  // root() is another one

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void make_head(QVBoxLayout& column);
  void make_foot(QVBoxLayout& column);
  // Makes the widgets anew when the members are others, and shows their values.
  void refresh();
  void rebuild(FieldGroup group);
  void make_body(FieldGroup group);
  void fill_absent();
  void show_values();
  void show_verdict();
  void show_faults();
  void follow_selection();
  void mark_selected();
  void switch_to(const std::string& root);
  void explain(const FieldEntry& entry);
  void add(const FieldGroup& group);
  void take_away(const FieldGroup& group);
  void edit_structure(const QString& name, const Result<Project>& after);

  Session& session_;
  SheetWork work_;
  std::string root_;
  std::string structure_;
  std::set<std::string> open_;
  std::map<std::string, EntryField*> fields_;
  std::vector<GroupCard*> cards_;
  EntryField* chosen_ = nullptr;
  bool out_of_date_ = true;
  QTimer while_dragging_;

  QLabel* title_ = nullptr;
  VerdictMark* mark_ = nullptr;
  QLabel* state_ = nullptr;
  QPushButton* leave_out_ = nullptr;
  QLabel* faults_ = nullptr;
  QScrollArea* scroll_ = nullptr;
  QWidget* body_ = nullptr;
  QWidget* foot_ = nullptr;
  MeaningSketch* sketch_ = nullptr;
  QLabel* meaning_ = nullptr;
  QLabel* meaning_note_ = nullptr;
};

}  // namespace tackbench::ui
