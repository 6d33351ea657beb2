// Gathers every fault of a file; what is too much for one reading is only counted.
#pragma once

#include <fmt/format.h>

#include <string>

#include "core/project-file/project_file.h"

namespace tackbench {

class FaultList {
 public:
  void add(Problem problem) {
    if (problems_.size() < kMostListedFaults) {
      problems_.push_back(std::move(problem));
    } else {
      ++left_out_;
    }
  }

  bool empty() const { return problems_.empty(); }
  const Problems& listed() const { return problems_; }

  // All of them, each with the file's name.
  Problems taken(const std::string& file) && {
    if (left_out_ > 0) {
      problems_.push_back({"", "", fmt::format("and {} more", left_out_), "mend these first"});
    }
    for (Problem& problem : problems_) problem.file = file;
    return std::move(problems_);
  }

 private:
  Problems problems_;
  std::size_t left_out_ = 0;
};

}  // namespace tackbench
