// What somebody has typed or drawn is lost by no way out of the document: saving, leaving, another
// file, a file that changes on disk, a crash. Real events; dialogs are answered by their buttons.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QApplication>
#include <QMessageBox>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <csignal>

#include "core/project-file/project_file.h"
#include "core/project/field_path.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/fields/entry_line.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/station_sheet.h"
#include "ui/sheet/backdrop_panel.h"
#include "ui/sheet/sheet_card.h"
#include "ui/windows/notice_bar.h"
#include "ui/windows/recovered_dialog.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

constexpr int kPatienceMs = 10000;

class NothingLost : public BenchTest {
 protected:
  void SetUp() override {
    open();
    file_ = folder_.filePath("mine.tack");
    ASSERT_TRUE(session().save(file_.toStdString()).empty());
    ASSERT_TRUE(window_->open_file(file_));
    settle();
  }

  std::string member(const std::string& path) {
    const Result<std::string> text = field_text(session().project(), path);
    return text ? *text : "?";
  }
  static std::string member_of(const QString& file, const std::string& path) {
    const Result<UnfinishedProject> read = read_unfinished(file.toStdString());
    if (!read) return "no such file";
    const Result<std::string> text = field_text(read->project, path);
    return text ? *text : "?";
  }
  // Written by another program.
  void write(const QString& file, const std::string& path, const std::string& text) {
    const Result<Project> other = with_field(session().project(), path, text);
    ASSERT_TRUE(other.ok());
    ASSERT_TRUE(save_project(*other, file.toStdString()).ok());
  }

  EntryLine& line(Station station, const std::string& path) {
    window_->side().show_station(station);
    QApplication::processEvents();
    for (const auto& [place, field] : window_->side().station_sheet().fields())
      if (place == path) return *field->lines().front();
    throw std::runtime_error("no field " + path);
  }
  // Keys without the one that takes what is typed.
  EntryLine& type(const QString& text, const std::string& path = "steering_box.ratio",
                  Station station = Station::steering_box) {
    EntryLine& found = line(station, path);
    found.setFocus();
    found.selectAll();
    QTest::keyClicks(&found, text);
    return found;
  }

  // Presses that button of the next dialog; says whether one came.
  void answer(const QString& words) {
    asked_ = false;
    QTimer::singleShot(0, window_.get(), [this, words] {
      QWidget* dialog = QApplication::activeModalWidget();
      if (dialog == nullptr) return;
      asked_ = true;
      for (auto* button : dialog->findChildren<QPushButton*>()) {
        if (button->text().remove('&') == words) return QTest::mouseClick(button, Qt::LeftButton);
      }
      ADD_FAILURE() << "no button " << words.toStdString();
      static_cast<QDialog*>(dialog)->reject();
    });
  }
  void answer_notice(const QString& words) {
    for (auto* button : window_->notice().findChildren<QPushButton*>()) {
      if (button->text() == words && button->isVisible())
        return QTest::mouseClick(button, Qt::LeftButton);
    }
    ADD_FAILURE() << "the notice has no " << words.toStdString();
  }
  bool noticed() {
    return QTest::qWaitFor([this] { return !window_->notice().words().isEmpty(); }, kPatienceMs);
  }

  QString file_;
  bool asked_ = false;
};

// --- typed, and not yet in the project

TEST_F(NothingLost, SavingTakesWhatIsTyped) {
  type("17");
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "17");
  EXPECT_EQ(member("steering_box.ratio"), "17");
  EXPECT_FALSE(session().unsaved());
}

TEST_F(NothingLost, LeavingAsksAboutWhatIsTyped) {
  type("17");
  answer("Cancel");
  window_->close();
  EXPECT_TRUE(asked_);
  EXPECT_TRUE(window_->isVisible());
  EXPECT_EQ(member("steering_box.ratio"), "17");

  answer("Save");
  EXPECT_TRUE(window_->may_leave());
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "17");

  type("16");
  answer("Discard");
  EXPECT_TRUE(window_->may_leave());
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "17");

  ASSERT_TRUE(session().save(file_.toStdString()).empty());
  answer("Cancel");
  EXPECT_TRUE(window_->may_leave());
  QApplication::processEvents();
  EXPECT_FALSE(asked_);
}

TEST_F(NothingLost, WhatCannotBeTakenIsSaidAndStaysInItsField) {
  const EntryLine& typed = type("about so");
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(typed.text(), "about so");
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "20");
  EXPECT_TRUE(window_->notice().words().contains("about so"))
      << window_->notice().words().toStdString();
  answer("Cancel");
  EXPECT_FALSE(window_->may_leave());
  EXPECT_TRUE(asked_);
}

TEST_F(NothingLost, WhatIsTypedGoesIntoNoOtherDocument) {
  const QString other = folder_.filePath("other.tack");
  write(other, "steering_box.ratio", "22");
  EntryLine& typed = type("17");
  ASSERT_TRUE(window_->open_file(other));
  settle();
  EXPECT_EQ(typed.text(), "22");
  window_->sheet().setFocus();
  settle();
  EXPECT_EQ(member("steering_box.ratio"), "22");
  EXPECT_FALSE(session().unsaved());
  EXPECT_FALSE(session().can_undo());
}

// The document that comes has no box: the line with the text is taken away while it is told of.
TEST_F(NothingLost, WhatIsTypedGoesIntoNoOtherDocumentWithOtherMembers) {
  type("17");
  window_->open_sample("bare-start");
  settle();
  EXPECT_FALSE(session().can_undo());
  EXPECT_EQ(session().project().steering_box, nullptr);
}

TEST_F(NothingLost, UndoFromTheMenuTakesWhatIsTypedFirst) {
  type("17");
  ASSERT_TRUE(session().set_field("drag_link.quantity", "3").empty());
  window_->action("undo")->trigger();
  EXPECT_EQ(member("steering_box.ratio"), "20");
  window_->action("redo")->trigger();
  EXPECT_EQ(member("steering_box.ratio"), "17");
}

// The line is made anew beneath the typing hand; nothing is set before its key comes.
TEST_F(NothingLost, WhatIsTypedOutlivesNewFields) {
  type("801", "drag_link.given_length_mm", Station::drag_link);
  const std::string before = member("drag_link.given_length_mm");
  ASSERT_TRUE(session().set_field("drag_link.tube", "none").empty());
  settle();
  EXPECT_EQ(member("drag_link.given_length_mm"), before);
  auto* now = qobject_cast<EntryLine*>(QApplication::focusWidget());
  ASSERT_NE(now, nullptr);
  EXPECT_EQ(now->text(), "801");
  QTest::keyClick(now, Qt::Key_Return);
  EXPECT_EQ(member("drag_link.given_length_mm"), "801");
  session().undo();
  session().undo();
  EXPECT_FALSE(session().can_undo());
  EXPECT_TRUE(session().can_redo());
}

TEST_F(NothingLost, ControlZInAFieldTakesTheProjectsStepBack) {
  EntryLine& typed = type("17");
  QTest::keyClick(&typed, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_NE(typed.text(), "17");  // while typing, the text's own
  EXPECT_EQ(member("steering_box.ratio"), "20");
  typed.selectAll();
  QTest::keyClicks(&typed, "17");
  QTest::keyClick(&typed, Qt::Key_Return);
  ASSERT_EQ(member("steering_box.ratio"), "17");
  QTest::keyClick(&typed, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(member("steering_box.ratio"), "20");
  EXPECT_EQ(typed.text(), "20");
  QTest::keyClick(&typed, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(member("steering_box.ratio"), "17");
}

// --- the file on disk

TEST_F(NothingLost, LoadingTheFileIsAStepThatUndoTakesBack) {
  ASSERT_TRUE(session().set_field("steering_box.ratio", "17").empty());
  write(file_, "steering_box.ratio", "25");
  ASSERT_TRUE(noticed());
  answer_notice("Load the file");
  settle();
  EXPECT_EQ(member("steering_box.ratio"), "25");
  EXPECT_FALSE(session().unsaved());
  session().undo();
  EXPECT_EQ(member("steering_box.ratio"), "17");
  EXPECT_TRUE(session().unsaved());
  session().undo();
  EXPECT_EQ(member("steering_box.ratio"), "20");
}

TEST_F(NothingLost, ANoticeGoesWithItsDocument) {
  write(file_, "steering_box.ratio", "25");
  ASSERT_TRUE(noticed());
  window_->open_sample("bare-start");
  EXPECT_TRUE(window_->notice().words().isEmpty());
}

TEST_F(NothingLost, WhatIsKeptAgainstTheFileIsNotSaved) {
  write(file_, "steering_box.ratio", "25");
  ASSERT_TRUE(noticed());
  answer_notice("Keep mine");
  EXPECT_TRUE(session().unsaved());
  EXPECT_TRUE(window_->isWindowModified());
  // Kept for after a crash like any other work that is not saved.
  const QDir kept(folder_.filePath("recovery"));
  EXPECT_TRUE(QTest::qWaitFor([&] { return !kept.entryList({"*.json"}).isEmpty(); }, kPatienceMs));
  answer("Save");  // the question was answered by keeping: none about writing over it
  EXPECT_TRUE(window_->may_leave());
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "20");
  EXPECT_FALSE(session().unsaved());
}

TEST_F(NothingLost, AFileThatIsGoneLeavesTheProjectUnsavedAndIsWatchedOn) {
  ASSERT_TRUE(QFile::remove(file_));
  ASSERT_TRUE(noticed());
  EXPECT_TRUE(session().unsaved());
  answer("Cancel");
  EXPECT_FALSE(window_->may_leave());
  EXPECT_TRUE(asked_);

  // It comes back as it was: all is well again.
  ASSERT_TRUE(save_project(session().project(), file_.toStdString()).ok());
  EXPECT_TRUE(QTest::qWaitFor([&] { return !session().unsaved(); }, kPatienceMs));
  EXPECT_TRUE(window_->notice().words().isEmpty());

  write(file_, "steering_box.ratio", "25");
  ASSERT_TRUE(noticed());
  EXPECT_TRUE(window_->notice().words().contains("changed on disk"));
}

TEST_F(NothingLost, SavingAsksBeforeItWritesOverAnotherProgramsWork) {
  ASSERT_TRUE(session().set_field("steering_box.ratio", "17").empty());
  write(file_, "steering_box.ratio", "25");  // and nobody had time to see the notice
  answer("Cancel");
  window_->action("save")->trigger();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "25");
  EXPECT_TRUE(session().unsaved());
  answer("Write over it");
  window_->action("save")->trigger();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "17");
  answer("Cancel");
  window_->action("save")->trigger();
  QApplication::processEvents();
  EXPECT_FALSE(asked_);
}

TEST_F(NothingLost, APathFromTheCommandLineHoldsFromAnyFolder) {
  ASSERT_TRUE(QImage(10, 10, QImage::Format_RGB32).save(folder_.filePath("photograph.png")));
  const QString before = QDir::currentPath();
  QDir::setCurrent(folder_.path());
  ASSERT_TRUE(window_->open_file("mine.tack"));
  QDir::setCurrent(before);
  EXPECT_TRUE(session().file().is_absolute());
  EXPECT_TRUE(std::filesystem::equivalent(session().file(), file_.toStdString()));
  EXPECT_TRUE(new_backdrop(session().file().parent_path() / "photograph.png", session().file(),
                           SheetView::side, QSize(10, 10))
                  .ok());
  ASSERT_TRUE(session().set_field("steering_box.ratio", "17").empty());
  window_->action("save")->trigger();
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "17");
}

// --- after a crash

class LeftByACrash : public NothingLost {
 protected:
  void SetUp() override {
    NothingLost::SetUp();
    // Another program's copy, whose lock went with it.
    Session crashed;
    ASSERT_TRUE(crashed.open(file_.toStdString()).empty());
    ASSERT_TRUE(crashed.set_field("steering_box.ratio", "18").empty());
    Recovery writer(crashed, folder_.filePath("written").toStdString());
    ASSERT_TRUE(writer.keep_now());
    const QDir recovery(folder_.filePath("recovery"));
    ASSERT_TRUE(recovery.mkpath("."));
    copy_ = recovery.filePath("left.tack");
    QString about = QString::fromStdString(writer.copy().string());
    ASSERT_TRUE(QFile::copy(about, copy_));
    ASSERT_TRUE(QFile::copy(about.replace(".tack", ".json"), recovery.filePath("left.json")));
  }
  QString copy_;
};

TEST_F(LeftByACrash, IsOpenedAsUnsavedWork) {
  answer("Open what was kept");
  window_->offer_recovered();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member("steering_box.ratio"), "18");
  EXPECT_EQ(session().file(), file_.toStdString());
  EXPECT_TRUE(session().unsaved());
  EXPECT_FALSE(QFile::exists(copy_));
  // By now it is this program's own copy.
  EXPECT_EQ(QDir(folder_.filePath("recovery")).entryList({"*.tack"}).size(), 1);
  EXPECT_EQ(member_of(file_, "steering_box.ratio"), "20");
}

TEST_F(LeftByACrash, IsAskedAboutAgainLater) {
  answer("Ask again later");
  window_->offer_recovered();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member("steering_box.ratio"), "20");
  EXPECT_TRUE(QFile::exists(copy_));
}

TEST_F(LeftByACrash, IsThrownAwayWhenThatIsSaid) {
  answer("Throw it away");
  window_->offer_recovered();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member("steering_box.ratio"), "20");
  EXPECT_FALSE(QFile::exists(copy_));
  window_->offer_recovered();  // nothing left to ask about
}

TEST_F(LeftByACrash, StaysWhereItIsWhileNoOtherCopyCanBeWritten) {
  // As on a full disk: no file may grow.
  rlimit before{};
  ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
  const auto signal_before = std::signal(SIGXFSZ, SIG_IGN);
  QTimer::singleShot(0, window_.get(), [&] {
    rlimit none = before;
    none.rlim_cur = 0;
    setrlimit(RLIMIT_FSIZE, &none);
  });
  answer("Open what was kept");
  window_->offer_recovered();
  setrlimit(RLIMIT_FSIZE, &before);
  (void)std::signal(SIGXFSZ, signal_before);
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member("steering_box.ratio"), "18");
  EXPECT_TRUE(QFile::exists(copy_));
  EXPECT_EQ(member_of(copy_, "steering_box.ratio"), "18");
  EXPECT_FALSE(window_->notice().words().isEmpty());
}

TEST_F(LeftByACrash, DoesNotPushAsideWhatIsNotSaved) {
  ASSERT_TRUE(session().set_field("steering_box.ratio", "17").empty());
  QTimer::singleShot(0, window_.get(), [this] {
    auto* dialog = qobject_cast<RecoveredDialog*>(QApplication::activeModalWidget());
    ASSERT_NE(dialog, nullptr);
    answer("Cancel");
    for (auto* button : dialog->findChildren<QPushButton*>())
      if (button->text() == "Open what was kept") return QTest::mouseClick(button, Qt::LeftButton);
  });
  window_->offer_recovered();
  EXPECT_TRUE(asked_);
  EXPECT_EQ(member("steering_box.ratio"), "17");
  EXPECT_TRUE(QFile::exists(copy_));
}

// --- the window's own end

TEST_F(NothingLost, TheSessionOutlivesWhatRefersToIt) {
  type("17");
  const QPointer<Session> session_there(&session());
  int gone = 0;
  int gone_in_time = 0;
  for (const QWidget* child : window_->findChildren<QWidget*>()) {
    QObject::connect(child, &QObject::destroyed, [&] {
      ++gone;
      if (!session_there.isNull()) ++gone_in_time;
    });
  }
  window_.reset();
  EXPECT_GT(gone, 50);
  EXPECT_EQ(gone_in_time, gone);
}

}  // namespace
}  // namespace tackbench::ui
