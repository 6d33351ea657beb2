#include "ui/sheet/finding_marks.h"

#include <algorithm>

#include "core/findings/finding_words.h"
#include "ui/sheet/finding_places.h"

namespace tackbench::ui {

void FindingMarks::follow(const Project& project, const std::vector<Finding>& findings) {
  verdict_.reset();
  words_.clear();
  places_.clear();
  past_.clear();
  for (const Finding& finding : findings) {
    if (finding.name == name_) {
      verdict_ = finding.verdict;
      words_ = QString::fromStdString(in_plain_words(project, finding.sentence));
      places_ = finding_places(project, finding);
    } else if (finding.verdict == Verdict::past) {
      const auto places = finding_places(project, finding);
      if (!places.empty() && std::find(past_.begin(), past_.end(), places.front()) == past_.end())
        past_.push_back(places.front());
    }
  }
}

void FindingMarks::paint(QPainter& painter, const GripLayer& grips, const SheetScene& scene,
                         const SheetTransform& transform, const Palette& colours,
                         SheetView thin_in) const {
  const auto ring = [&](const GripPlace& place, SheetView view, double radius) {
    painter.drawEllipse(transform.to_screen(scene.on_sheet(view, place.posed_mm)), radius, radius);
  };
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colours.past, 1.1));
  for (const std::string& path : past_)
    if (const GripPlace* place = grips.find(path)) ring(*place, thin_in, 10.0);
  if (!verdict_) return;
  painter.setPen(QPen(colours.verdict(*verdict_), 2.4));
  for (const std::string& path : places_) {
    const GripPlace* place = grips.find(path);
    if (!place) continue;
    for (const SheetView view : kSheetViews)
      if (scene.is_shown(view)) ring(*place, view, 14.0);
  }
}

std::optional<Tag> FindingMarks::tag(const GripLayer& grips, const SheetScene& scene,
                                     const SheetTransform& transform,
                                     const Palette& colours) const {
  const GripPlace* place = verdict_ && !places_.empty() ? grips.find(places_.front()) : nullptr;
  if (!place) return std::nullopt;
  Tag tag;
  tag.beside = transform.to_screen(
      scene.on_sheet(scene.filling().value_or(SheetView::side), place->posed_mm));
  tag.under = words_;
  tag.edge = colours.verdict(*verdict_);
  return tag;
}

}  // namespace tackbench::ui
