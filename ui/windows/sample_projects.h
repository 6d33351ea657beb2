// The samples that are built into the program.
#pragma once

#include <QString>
#include <vector>

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench::ui {

struct SampleProject {
  const char* name;  // as its folder is called
  QString words;     // one line about it
};

std::vector<SampleProject> sample_projects();
Result<Project> sample_project(const QString& name);

}  // namespace tackbench::ui
