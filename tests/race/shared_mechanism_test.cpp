// A Mechanism and a Project are constant once made: any number of threads may use one at the same
// time, and each gets what a thread alone would get. Under the thread sanitizer this finds hidden
// shared state (a cache, a static that is written later).
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

#include "core/fabrication/cut_list_writers.h"
#include "core/fabrication/make_cut_list.h"
#include "core/findings/all_findings.h"
#include "core/findings/findings_json.h"
#include "core/project-file/project_file.h"

namespace tackbench {
namespace {

constexpr int kThreads = 4;

std::string sample_text() {
  std::ifstream file(std::string(TACKBENCH_SOURCE_FOLDER) +
                     "/sample-projects/tender-as-first-tacked/tender-as-first-tacked.tack");
  return {std::istreambuf_iterator<char>(file), {}};
}

// What `work` gives in each of several threads that run at once.
std::vector<std::string> in_threads(const std::function<std::string()>& work) {
  std::vector<std::string> answers(kThreads);
  std::vector<std::thread> threads;
  threads.reserve(kThreads);
  for (std::string& answer : answers) {
    threads.emplace_back([&work, &answer] { answer = work(); });
  }
  for (std::thread& thread : threads) thread.join();
  return answers;
}

void expect_same_in_threads(const std::function<std::string()>& work) {
  const std::vector<std::string> answers =
      in_threads(work);  // first, so that statics are born there
  const std::string alone = work();
  EXPECT_FALSE(alone.empty());
  for (const std::string& answer : answers) EXPECT_EQ(answer, alone);
}

TEST(SharedByThreads, ReadingAndWritingAProject) {
  const std::string text = sample_text();
  expect_same_in_threads([&text] {
    const Result<Project> project = read_project_text(text, "tender.tack");
    return project ? project_text(*project) : one_line(project.problems().front());
  });
}

TEST(SharedByThreads, PosesOfOneMechanism) {
  const Result<Project> project = read_project_text(sample_text());
  ASSERT_TRUE(project);
  const Result<Mechanism> mechanism = compile(*project);
  ASSERT_TRUE(mechanism);
  expect_same_in_threads([&mechanism] {
    Pose pose = blank_pose(*mechanism);
    std::string steers;
    for (int i = -300; i <= 300; ++i) {
      Controls controls;
      controls.hand_wheel = 0.04 * i;
      controls.bump_left = 0.2 * i;
      controls.cab_shake = Vec3(0.01 * i, 0.0, 0.0);
      const Outcome outcome = solve(*mechanism, controls, pose);
      steers += outcome_name(outcome) + std::to_string(pose.steering.left.steer) + "\n";
    }
    return steers;
  });
}

TEST(SharedByThreads, FindingsAndCutListOfOneMechanism) {
  const Result<Project> project = read_project_text(sample_text());
  ASSERT_TRUE(project);
  const Result<Mechanism> mechanism = compile(*project);
  ASSERT_TRUE(mechanism);
  expect_same_in_threads([&mechanism] {
    const CheckResults results = run_checks(*mechanism);
    const std::vector<Finding> findings = all_findings(*mechanism, results);
    return findings_json(findings) + cut_list_text(make_cut_list(*mechanism, results, findings));
  });
}

}  // namespace
}  // namespace tackbench
