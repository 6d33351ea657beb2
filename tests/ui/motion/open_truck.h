// A sample truck with what the drawings share of its motion; nothing is painted.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>

#include "ui/motion/shown_motion.h"
#include "ui/session/session.h"

namespace tackbench::ui {

struct OpenTruck {
  explicit OpenTruck(const std::string& sample = "tender-as-first-tacked") {
    EXPECT_TRUE(session
                    .open(std::filesystem::path(TACKBENCH_SOURCE_FOLDER) / "sample-projects" /
                          sample / (sample + ".tack"))
                    .empty());
    session.wait_until_fresh();
  }

  Session session;
  ShownMotion motion{session};
};

}  // namespace tackbench::ui
