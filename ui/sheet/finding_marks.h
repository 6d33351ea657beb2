// Findings on the sheet: a thin ring where one is past, and for the one that was asked for a heavy
// ring in every view and its words, as the checks say now.
#pragma once

#include <QPainter>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/findings/finding.h"
#include "ui/look/palette.h"
#include "ui/session/truck_state.h"
#include "ui/sheet/grip_layer.h"
#include "ui/sheet/sheet_scene.h"
#include "ui/sheet/sheet_transform.h"
#include "ui/sheet/tag_layout.h"

namespace tackbench::ui {

class FindingMarks {
 public:
  // The finding asked for, by name; empty for none. Shown from the next follow() on.
  void choose(std::string name) { name_ = std::move(name); }
  const std::string& chosen() const { return name_; }

  // Words, verdicts and places as they are in these findings of this project.
  void follow(const Project& project, const std::vector<Finding>& findings);
  // What the chosen finding says; empty while no finding has that name.
  const QString& words() const { return words_; }
  // Grips that the chosen finding is about, the one in its middle first.
  const std::vector<std::string>& places() const { return places_; }

  // Thin rings stand in the view `thin_in` alone.
  void paint(QPainter& painter, const GripLayer& grips, const SheetScene& scene,
             const SheetTransform& transform, const Palette& colours, SheetView thin_in) const;
  // The words of the chosen one; none while no finding has that name.
  std::optional<Tag> tag(const GripLayer& grips, const SheetScene& scene,
                         const SheetTransform& transform, const Palette& colours) const;

 private:
  std::string name_;
  std::optional<Verdict> verdict_;  // of the chosen one, as it is now
  QString words_;
  std::vector<std::string> places_;
  std::vector<std::string> past_;  // middle places of the others that are past, each once
};

}  // namespace tackbench::ui
