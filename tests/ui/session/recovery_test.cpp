// What is not saved outlives the program that held it.
#include "ui/session/recovery.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <csignal>
#include <fstream>

#include "core/project-file/project_file.h"
#include "core/project/field_items.h"
#include "core/project/field_path.h"

namespace tackbench::ui {
namespace {

std::filesystem::path sample_file() {
  return std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/tender-sorted/tender-sorted.tack";
}

TEST(RecoveryTest, KeepsNothingOfWhatIsSaved) {
  QTemporaryDir folder;
  Session session;
  ASSERT_TRUE(session.open(sample_file()).empty());
  Recovery recovery(session, folder.path().toStdString());
  recovery.keep_now();
  EXPECT_FALSE(std::filesystem::exists(recovery.copy()));
  EXPECT_TRUE(left_behind(folder.path().toStdString()).empty());
}

TEST(RecoveryTest, AProgramThatRunsLeavesNothingBehind) {
  QTemporaryDir folder;
  Session session;
  ASSERT_TRUE(session.open(sample_file()).empty());
  Recovery recovery(session, folder.path().toStdString());
  ASSERT_TRUE(session.set_field("steering_box.ratio", "18").empty());
  recovery.keep_now();
  EXPECT_TRUE(std::filesystem::exists(recovery.copy()));
  EXPECT_TRUE(left_behind(folder.path().toStdString()).empty());
}

TEST(RecoveryTest, SavingAndEndingTakeTheCopyAway) {
  QTemporaryDir folder;
  std::filesystem::path copy;
  {
    Session session;
    ASSERT_TRUE(session.open(sample_file()).empty());
    Recovery recovery(session, folder.path().toStdString());
    ASSERT_TRUE(session.set_field("steering_box.ratio", "18").empty());
    recovery.keep_now();
    copy = recovery.copy();
    ASSERT_TRUE(std::filesystem::exists(copy));
    ASSERT_TRUE(session.save(folder.filePath("saved.tack").toStdString()).empty());
    EXPECT_FALSE(std::filesystem::exists(copy));
    ASSERT_TRUE(session.set_field("steering_box.ratio", "17").empty());
    recovery.keep_now();
    ASSERT_TRUE(std::filesystem::exists(copy));
  }
  EXPECT_FALSE(std::filesystem::exists(copy));
}

TEST(RecoveryTest, AKilledProgramLeavesItsCopy) {
  QTemporaryDir folder;
  const std::filesystem::path kept = folder.path().toStdString();
  const Result<Project> project = read_project(sample_file());
  ASSERT_TRUE(project.ok());
  const pid_t child = fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    // No threads of Qt's or ours live on in the child: it makes its own session.
    auto* session = new Session;
    session->take(*project, sample_file());
    auto* recovery = new Recovery(*session, kept);
    const Problems problems = session->set_field("steering_box.ratio", "18");
    recovery->keep_now();
    kill(getpid(), SIGKILL);
    _exit(problems.empty() ? 0 : 1);
  }
  int status = 0;
  ASSERT_EQ(waitpid(child, &status, 0), child);
  ASSERT_TRUE(WIFSIGNALED(status));
  const std::vector<LeftBehind> found = left_behind(kept);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].file, sample_file());
  EXPECT_EQ(found[0].name, "The tender sorted");
  const Result<Project> recovered = read_project(found[0].copy);
  ASSERT_TRUE(recovered.ok());
  EXPECT_EQ(recovered->steering_box->ratio, 18.0);
  discard(found[0]);
  EXPECT_TRUE(left_behind(kept).empty());
}

TEST(RecoveryTest, WhatDoesNotFitYetIsKeptToo) {
  QTemporaryDir folder;
  Session session;
  const Result<Project> begun = with_group_added(Project{}, "steering_box");
  ASSERT_TRUE(begun.ok());
  session.take(*begun, {}, true);
  Recovery recovery(session, folder.path().toStdString());
  recovery.keep_now();
  const Result<UnfinishedProject> kept = read_unfinished(recovery.copy());
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(project_text(kept->project), project_text(*begun));
}

TEST(RecoveryTest, SaysWhenItCannotKeepACopy) {
  Session session;
  ASSERT_TRUE(session.open(sample_file()).empty());
  Recovery recovery(session, "/proc/no-such-place");
  QSignalSpy failed(&recovery, &Recovery::failed);
  ASSERT_TRUE(session.set_field("steering_box.ratio", "18").empty());
  EXPECT_FALSE(recovery.keep_now());
  EXPECT_FALSE(recovery.keep_now());
  EXPECT_EQ(failed.count(), 1);
}

// Edits that follow each other faster than a pause is waited for.
TEST(RecoveryTest, SteadyWorkIsKeptToo) {
  QTemporaryDir folder;
  Session session;
  ASSERT_TRUE(session.open(sample_file()).empty());
  Recovery recovery(session, folder.path().toStdString());
  for (int i = 0; i < 200 && !std::filesystem::exists(recovery.copy()); ++i) {
    ASSERT_TRUE(session.set_field("drag_link.quantity", std::to_string(2 + i % 5)).empty());
    QTest::qWait(100);
  }
  EXPECT_TRUE(std::filesystem::exists(recovery.copy()));
}

TEST(RecoveryTest, ACopyFromTheMiddleOfACancelledDragDoesNotStay) {
  QTemporaryDir folder;
  Session session;
  ASSERT_TRUE(session.open(sample_file()).empty());
  Recovery recovery(session, folder.path().toStdString());
  const auto kept_ratio = [&] {
    const Result<UnfinishedProject> kept = read_unfinished(recovery.copy());
    return kept ? kept->project.steering_box->ratio : std::nullopt;
  };
  const auto drag_ratio = [&](const char* text) {
    const Result<Project> moved = with_field(session.project(), "steering_box.ratio", text);
    ASSERT_TRUE(moved.ok());
    session.begin_drag("Drag");
    session.drag_to(*moved);
    EXPECT_TRUE(recovery.keep_now());
    session.cancel_drag();
  };
  drag_ratio("17");
  EXPECT_FALSE(std::filesystem::exists(recovery.copy()));  // nothing is left to keep

  ASSERT_TRUE(session.set_field("steering_box.ratio", "18").empty());
  drag_ratio("17");
  EXPECT_TRUE(QTest::qWaitFor([&] { return kept_ratio() == 18.0; }, 10000));
}

TEST(RecoveryTest, TheNoteNamesTheFileByItsWholePath) {
  QTemporaryDir folder;
  const QString before = QDir::currentPath();
  ASSERT_TRUE(QDir::setCurrent(folder.path()));
  Session session;
  const Result<Project> project = read_project(sample_file());
  ASSERT_TRUE(project.ok());
  session.take(*project, "my.tack", true);
  auto crashed = std::make_unique<Recovery>(session, folder.filePath("kept").toStdString());
  ASSERT_TRUE(crashed->keep_now());
  ASSERT_TRUE(QDir::setCurrent(before));
  std::ifstream note(std::filesystem::path(crashed->copy()).replace_extension(".json"));
  const std::string text{std::istreambuf_iterator<char>(note), {}};
  EXPECT_NE(text.find(folder.filePath("my.tack").toStdString()), std::string::npos) << text;
}

TEST(RecoveryTest, ForeignFilesInTheFolderAreLeftAlone) {
  QTemporaryDir folder;
  std::ofstream(folder.filePath("notes.json").toStdString()) << "{ not ours";
  EXPECT_TRUE(left_behind(folder.path().toStdString()).empty());
  EXPECT_TRUE(std::filesystem::exists(folder.filePath("notes.json").toStdString()));
}

}  // namespace
}  // namespace tackbench::ui
