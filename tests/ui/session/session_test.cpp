// The one door for edits: undo, drags, saving, fresh and late results.
#include "ui/session/session.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTemporaryDir>
#include <fstream>
#include <random>

#include "core/findings/findings_json.h"
#include "core/mechanism/solve.h"
#include "core/project-file/project_file.h"
#include "core/project/field_path.h"

namespace tackbench::ui {
namespace {

std::filesystem::path sample_file(const std::string& name = "tender-as-first-tacked") {
  return std::string(TACKBENCH_SOURCE_FOLDER) + "/sample-projects/" + name + '/' + name + ".tack";
}

class SessionTest : public testing::Test {
 protected:
  void SetUp() override {
    const Problems problems = session_.open(sample_file());
    ASSERT_TRUE(problems.empty()) << one_line(problems.front());
    session_.wait_until_fresh();
  }

  std::string text() const { return project_text(session_.project()); }

  void drag(const std::string& path, const Vec3& step, int moves = 5) {
    const auto grip = grip_at(session_.project(), path);
    ASSERT_TRUE(grip) << path;
    session_.begin_drag(QString::fromStdString("Move " + grip->words));
    for (int i = 1; i <= moves; ++i) {
      Result<Project> moved =
          with_grip_at(session_.project(), *grip, grip->at_mm + step * i / moves);
      ASSERT_TRUE(moved.ok());
      session_.drag_to(std::move(moved).value());
    }
    session_.end_drag();
  }

  Session session_;
};

TEST_F(SessionTest, OpensSolvedAndJudged) {
  EXPECT_TRUE(session_.posed_fresh());
  EXPECT_TRUE(session_.judged_fresh());
  EXPECT_EQ(session_.posed().pose.outcome, Outcome::solved);
  EXPECT_FALSE(session_.judged().findings.empty());
  EXPECT_FALSE(session_.unsaved());
  EXPECT_FALSE(session_.can_undo());
}

// Edits may follow each other faster than the truck is posed.
TEST_F(SessionTest, WhatWasBeforeIsTheStateBeforeTheLastEdit) {
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "17").empty());
  ASSERT_FALSE(session_.posed_fresh());
  const Project middle = session_.project();
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "18").empty());
  session_.wait_until_fresh();
  ASSERT_NE(session_.posed_before(), nullptr);
  EXPECT_EQ(session_.posed_before()->mechanism->project.steering_box->ratio, 17.0);
  EXPECT_EQ(project_text(session_.posed_before()->mechanism->project), project_text(middle));
}

TEST_F(SessionTest, ADragIsOneStep) {
  const std::string before = text();
  drag("steering_box", Vec3(-40, 0, 0));
  EXPECT_TRUE(session_.unsaved());
  EXPECT_EQ(session_.undo_name(), "Move steering box");
  const std::string after = text();
  EXPECT_NE(before, after);
  session_.undo();
  EXPECT_EQ(text(), before);
  EXPECT_FALSE(session_.unsaved());
  EXPECT_FALSE(session_.can_undo());
  session_.redo();
  EXPECT_EQ(text(), after);
}

TEST_F(SessionTest, ADragThatReturnsMakesNoStep) {
  drag("steering_box", Vec3::Zero());
  EXPECT_FALSE(session_.can_undo());
  EXPECT_FALSE(session_.unsaved());
}

TEST_F(SessionTest, ACancelledDragLeavesNothing) {
  const std::string before = text();
  const auto grip = grip_at(session_.project(), "steering_box");
  session_.begin_drag("Move steering box");
  session_.drag_to(*with_grip_at(session_.project(), *grip, grip->at_mm + Vec3(10, 0, 0)));
  EXPECT_NE(text(), before);
  session_.cancel_drag();
  EXPECT_EQ(text(), before);
  EXPECT_FALSE(session_.can_undo());
  EXPECT_FALSE(session_.unsaved());
}

TEST_F(SessionTest, AWrongValueKeepsTheOldOneAndSaysWhy) {
  const std::string before = text();
  const Problems problems = session_.set_field("drag_link.tube.wall_mm", "-3");
  ASSERT_FALSE(problems.empty());
  EXPECT_NE(one_line(problems.front()).find("drag_link.tube.wall_mm"), std::string::npos);
  EXPECT_EQ(text(), before);
  EXPECT_FALSE(session_.can_undo());
}

TEST_F(SessionTest, UndoSurvivesSaving) {
  QTemporaryDir folder;
  const std::filesystem::path file = folder.filePath("mine.tack").toStdString();
  const std::string before = text();
  ASSERT_TRUE(session_.set_field("drag_link.tube.wall_mm", "6").empty());
  ASSERT_TRUE(session_.save(file).empty());
  EXPECT_FALSE(session_.unsaved());
  EXPECT_TRUE(session_.can_undo());
  session_.undo();
  EXPECT_TRUE(session_.unsaved());
  EXPECT_EQ(text(), before);
  session_.redo();
  EXPECT_FALSE(session_.unsaved());
  const Result<Project> read = read_project(file);
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(project_text(*read), text());
}

TEST_F(SessionTest, SaysWhichStationsChanged) {
  std::vector<Change> changes;
  QObject::connect(&session_, &Session::project_changed,
                   [&](const Change& change) { changes.push_back(change); });
  ASSERT_TRUE(session_.set_field("drag_link.tube.wall_mm", "6").empty());
  ASSERT_EQ(changes.size(), 1U);
  EXPECT_EQ(changes[0].stations, std::vector<Station>{Station::drag_link});
  EXPECT_FALSE(changes[0].others);
  session_.undo();
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[1].kind, ChangeKind::undone);
}

TEST_F(SessionTest, WhatIsNotFreshDoesNotLookFresh) {
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "18").empty());
  EXPECT_FALSE(session_.posed_fresh());
  EXPECT_FALSE(session_.judged_fresh());
  session_.wait_until_fresh();
  EXPECT_TRUE(session_.posed_fresh());
  EXPECT_TRUE(session_.judged_fresh());
}

TEST_F(SessionTest, ControlsPoseTheTruckAndJudgeNothing) {
  const Revision judged = session_.judged().revision;
  Controls controls;
  controls.hand_wheel = 2.0;
  session_.set_controls(controls);
  EXPECT_TRUE(session_.judged_fresh());
  session_.wait_until_fresh();
  EXPECT_EQ(session_.judged().revision, judged);
  EXPECT_GT(session_.posed().pose.steering.left.steer, 0.05);
  EXPECT_FALSE(session_.can_undo());
}

TEST_F(SessionTest, AProjectThatDoesNotCompileKeepsTheLastTruckAndSaysWhy) {
  const auto before = session_.posed().mechanism;
  // Two joints at one place cannot be a shaft line.
  const std::string first = *field_text(session_.project(), "shaft_line.joints[1].centre_mm");
  ASSERT_TRUE(session_.set_field("shaft_line.joints[2].centre_mm", first).empty());
  session_.wait_until_fresh();
  EXPECT_TRUE(session_.posed_fresh());
  EXPECT_FALSE(session_.posed().problems.empty());
  EXPECT_EQ(session_.posed().mechanism, before);
  EXPECT_FALSE(session_.judged_fresh());
  session_.undo();
  session_.wait_until_fresh();
  EXPECT_TRUE(session_.posed().problems.empty());
  EXPECT_TRUE(session_.judged_fresh());
}

TEST_F(SessionTest, ChecksCanBeStoppedAndRunAgain) {
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "18").empty());
  session_.stop_checks();
  session_.wait_until_fresh();
  EXPECT_FALSE(session_.judged_fresh());
  session_.run_checks_again();
  session_.wait_until_fresh();
  EXPECT_TRUE(session_.judged_fresh());
}

TEST_F(SessionTest, RemembersHowThingsStoodBeforeTheDrag) {
  const double length = session_.posed().mechanism->steering->drag_link_drawn;
  drag("steering_box", Vec3(-40, 0, 0));
  session_.wait_until_fresh();
  ASSERT_NE(session_.posed_before(), nullptr);
  EXPECT_DOUBLE_EQ(session_.posed_before()->mechanism->steering->drag_link_drawn, length);
  EXPECT_GT(session_.posed().mechanism->steering->drag_link_drawn, length + 35.0);
}

// Ten thousand edits, undone one by one, give the start; 500 times in between, results that went
// through the session equal those of a fresh computation.
TEST_F(SessionTest, TenThousandRandomEditsAndBack) {
  const std::string start = text();
  std::mt19937_64 random(20250611);
  std::uniform_real_distribution<double> step(-12.0, 12.0);
  std::size_t compared = 0;
  for (int edit = 0; edit < 10000; ++edit) {
    const std::vector<Grip> list = grips(session_.project());
    const Grip& grip = list[random() % list.size()];
    Result<Project> moved = with_grip_at(
        session_.project(), grip, grip.at_mm + Vec3(step(random), step(random), step(random)));
    if (!moved) continue;
    session_.edit(QString::fromStdString("Move " + grip.words), std::move(moved).value());
    if (edit % 7 == 0) session_.undo();
    if (edit % 20 != 0) continue;
    session_.wait_until_fresh();
    // Led astray so far that nothing can be worked out: back to where it can.
    while (!session_.judged_fresh() && session_.can_undo()) {
      session_.undo();
      session_.wait_until_fresh();
    }
    const Result<Mechanism> mechanism = compile(session_.project());
    ASSERT_TRUE(mechanism.ok());
    Controls turned;
    turned.hand_wheel = step(random) / 6.0;
    turned.bump_left = step(random);
    session_.set_controls(turned);
    session_.wait_until_fresh();
    const Pose pose = solved_pose(*mechanism, turned);
    const Pose& shown = session_.posed().pose;
    ASSERT_EQ(shown.outcome, pose.outcome) << "after " << edit << " edits";
    ASSERT_EQ(shown.steering.arm_ball_mm, pose.steering.arm_ball_mm);
    ASSERT_EQ(shown.steering.drag_link.to_mm, pose.steering.drag_link.to_mm);
    ASSERT_EQ(shown.steering.left.steer, pose.steering.left.steer);
    ASSERT_EQ(shown.axle, pose.axle);
    const std::vector<Finding> cold = all_findings(*mechanism, run_checks(*mechanism));
    const JudgedTruck& warm = session_.judged();
    ASSERT_EQ(findings_json(warm.findings), findings_json(cold)) << "after " << edit << " edits";
    ++compared;
  }
  EXPECT_EQ(compared, 500U);
  while (session_.can_undo()) session_.undo();
  EXPECT_EQ(text(), start);
  EXPECT_FALSE(session_.unsaved());
}

// The link of the length that is given does not reach when the box lies so far back.
TEST_F(SessionTest, CannotBeWorkedOutIsNotAtWork) {
  const std::size_t findings = session_.judged().findings.size();
  EXPECT_TRUE(session_.cannot_work_out().empty());
  ASSERT_TRUE(session_.set_field("steering_box.output_point_mm", "[-870, 479, -10]").empty());
  session_.wait_until_fresh();
  ASSERT_FALSE(session_.cannot_work_out().empty());
  EXPECT_NE(session_.cannot_work_out().front().found.find("792.9"), std::string::npos)
      << session_.cannot_work_out().front().found;
  EXPECT_FALSE(session_.judged_fresh());
  EXPECT_EQ(session_.judged().findings.size(), findings);
  session_.stop_checks();  // there are none to stop
  EXPECT_FALSE(session_.checks_stopped());
  session_.undo();
  EXPECT_TRUE(session_.cannot_work_out().empty());
  session_.wait_until_fresh();
  EXPECT_TRUE(session_.judged_fresh());
}

TEST_F(SessionTest, ADocumentThatCannotBeWorkedOutShowsNothingOfTheOneBefore) {
  const Result<Project> far =
      with_field(session_.project(), "steering_box.output_point_mm", "[-870, 479, -10]");
  ASSERT_TRUE(far.ok());
  session_.take(*far, {});
  EXPECT_TRUE(session_.judged().findings.empty());
  session_.wait_until_fresh();
  EXPECT_FALSE(session_.posed().problems.empty());
  // What of it can be drawn, and nothing else.
  EXPECT_EQ(session_.posed().mechanism->project.steering_box, far->steering_box);
  EXPECT_FALSE(session_.posed().mechanism->steering.has_value());
  EXPECT_TRUE(session_.judged().findings.empty());
  EXPECT_FALSE(session_.cannot_work_out().empty());
}

// As the command line finds them: a photograph that is not there, put there, and changed.
TEST_F(SessionTest, FilesThatTheProjectRefersToAreLookedAt) {
  const QTemporaryDir folder;
  const std::filesystem::path path = folder.path().toStdString();
  Project project = session_.project();
  auto sheet = std::make_shared<SheetSettings>(project.sheet ? *project.sheet : SheetSettings{});
  sheet->backdrops.resize(1);
  sheet->backdrops[0].name = "yard";
  sheet->backdrops[0].second_pixel = Vec3(100.0, 0.0, 0.0);
  // SHA-256 of "abc" (FIPS 180-4, its first example).
  sheet->backdrops[0].file = {"yard.jpg",
                              "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"};
  project.sheet = sheet;
  const auto sentence = [&] {
    session_.run_checks_again();
    session_.wait_until_fresh();
    const Finding* found =
        finding_named(session_.judged().findings, "file.sheet.backdrops[0].file");
    return found != nullptr ? found->sentence : std::string();
  };
  const auto write = [&](const char* text) { std::ofstream(path / "yard.jpg") << text; };
  session_.take(std::move(project), {});
  EXPECT_EQ(sentence(), "") << "nothing is known without the project's own folder";
  const Problems unsaved = session_.save(path / "a.tack");
  ASSERT_TRUE(unsaved.empty()) << one_line(unsaved.front());
  EXPECT_NE(sentence().find("not there"), std::string::npos) << sentence();
  write("abc");
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "18").empty());
  EXPECT_EQ(sentence(), "");
  write("abcd");
  ASSERT_TRUE(session_.set_field("steering_box.ratio", "19").empty());
  EXPECT_NE(sentence().find("other content"), std::string::npos) << sentence();
}

// Results on their way when another document comes are of the one before.
TEST_F(SessionTest, LateResultsOfAnotherDocumentAreDropped) {
  const Result<Project> far =
      with_field(session_.project(), "steering_box.output_point_mm", "[-870, 479, -10]");
  ASSERT_TRUE(far.ok());
  for (int i = 0; i < 20; ++i) {
    ASSERT_TRUE(session_.open(sample_file()).empty());
    session_.take(*far, {});
    QCoreApplication::sendPostedEvents(&session_);
    const auto box = session_.posed().mechanism->project.steering_box;
    EXPECT_TRUE(box == nullptr || box == far->steering_box);
    session_.wait_until_fresh();
    EXPECT_EQ(session_.posed().mechanism->project.steering_box, far->steering_box);
  }
}

TEST_F(SessionTest, AFileThatIsAnotherOneIsNotSaved) {
  const QSignalSpy told(&session_, &Session::file_changed);
  session_.set_file_differs(true);
  EXPECT_TRUE(session_.unsaved());
  EXPECT_EQ(told.count(), 1);
  const QTemporaryDir folder;
  ASSERT_TRUE(session_.save(folder.filePath("mine.tack").toStdString()).empty());
  EXPECT_FALSE(session_.unsaved());
}

TEST_F(SessionTest, ACancelledDragTellsThatTheFileIsAsBefore) {
  const auto grip = grip_at(session_.project(), "steering_box");
  ASSERT_TRUE(grip);
  const Result<Project> moved =
      with_grip_at(session_.project(), *grip, grip->at_mm + Vec3(-10, 0, 0));
  ASSERT_TRUE(moved.ok());
  session_.begin_drag("Move");
  session_.drag_to(*moved);
  EXPECT_TRUE(session_.unsaved());
  const QSignalSpy told(&session_, &Session::file_changed);
  session_.cancel_drag();
  EXPECT_FALSE(session_.unsaved());
  EXPECT_EQ(told.count(), 1);
}

}  // namespace
}  // namespace tackbench::ui
