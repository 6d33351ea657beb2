#include "ui/windows/sample_projects.h"

#include <QCoreApplication>
#include <string_view>

#include "core/project-file/project_file.h"

namespace tackbench {

std::string_view window_sample_bare_start();
std::string_view window_sample_tender_as_first_tacked();
std::string_view window_sample_tender_sorted();
std::string_view window_sample_timber_wagon();

namespace ui {

std::vector<SampleProject> sample_projects() {
  const auto words = [](const char* text) {
    return QCoreApplication::translate("SampleProjects", text);
  };
  return {
      {"tender-as-first-tacked",
       words(QT_TRANSLATE_NOOP(
           "SampleProjects", "A boatyard's tender, tacked together: find what is wrong with it"))},
      {"tender-sorted", words(QT_TRANSLATE_NOOP("SampleProjects",
                                                "The same tender when nothing is past its limit"))},
      {"timber-wagon",
       words(QT_TRANSLATE_NOOP("SampleProjects",
                               "Right-hand drive, cross-steer through a relay, box the wrong way "
                               "round"))},
  };
}

Result<Project> sample_project(const QString& name) {
  std::string_view text = window_sample_bare_start();
  if (name == "tender-as-first-tacked") text = window_sample_tender_as_first_tacked();
  if (name == "tender-sorted") text = window_sample_tender_sorted();
  if (name == "timber-wagon") text = window_sample_timber_wagon();
  return read_project_text(text, name.toStdString());
}

}  // namespace ui
}  // namespace tackbench
