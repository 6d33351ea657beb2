// Files as they come and go: dropped, opened again, changed or gone on disk, no room or no right to
// save.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QAbstractButton>
#include <QApplication>
#include <QDir>
#include <QDragEnterEvent>
#include <QFile>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>
#include <csignal>

#include "core/project-file/project_file.h"
#include "tests/ui/windows/open_bench.h"
#include "ui/windows/notice_bar.h"
#include "ui/windows/preferences.h"

namespace tackbench::ui {
namespace {

// While it lives, files cannot grow beyond so many bytes, as on a disk that is full.
class FullDisk {
 public:
  explicit FullDisk(rlim_t bytes) : before_handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit full{bytes, before_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &full);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;
  ~FullDisk() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, before_handler_);
  }

 private:
  rlimit before_{};
  void (*before_handler_)(int);
};

// While it lives, nobody in particular: for root every file may be read and written.
class UsualRights {
 public:
  UsualRights() {
    constexpr uid_t kNobody = 65534;
    if (geteuid() == 0) was_root_ = seteuid(kNobody) == 0;
  }
  UsualRights(const UsualRights&) = delete;
  UsualRights& operator=(const UsualRights&) = delete;
  ~UsualRights() {
    if (was_root_) {
      EXPECT_EQ(seteuid(0), 0);
    }
  }

 private:
  bool was_root_ = false;
};

class FilesTest : public BenchTest {
 protected:
  void SetUp() override { open(); }

  QString said() const { return window_->notice().words(); }
  bool says(const char* words) const { return said().contains(words); }
  // A sample's file in the test's own folder.
  QString copy_of(const QString& sample) const {
    const QString file = folder_.filePath(sample + ".tack");
    QFile::copy(QString("%1/sample-projects/%2/%2.tack").arg(TACKBENCH_SOURCE_FOLDER, sample),
                file);
    return file;
  }
  QString open_copy(const QString& sample) {
    const QString file = copy_of(sample);
    EXPECT_TRUE(window_->open_file(file)) << said().toStdString();
    return file;
  }
  void edit() { ASSERT_TRUE(session().set_field("steering_box.ratio", "18").empty()); }
  // Presses the question's button as soon as it is asked.
  void answer(QMessageBox::StandardButton with) {
    QTimer::singleShot(0, window_.get(), [this, with] {
      auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
      asked_ = box != nullptr;
      if (box != nullptr) box->button(with)->click();
    });
  }
  // Accepted or not.
  bool drop(const QStringList& files) {
    QMimeData data;
    QList<QUrl> urls;
    for (const QString& file : files) urls << QUrl::fromLocalFile(file);
    data.setUrls(urls);
    QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, {});
    enter.ignore();
    QApplication::sendEvent(window_.get(), &enter);
    if (!enter.isAccepted()) return false;
    QDropEvent dropped(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(window_.get(), &dropped);
    return true;
  }

  bool asked_ = false;
};

TEST_F(FilesTest, ADroppedFileOpensAndTheOthersBesideIt) {
  QSignalSpy others(window_.get(), &BenchWindow::another_window_wanted);
  const QString wagon = copy_of("timber-wagon");
  const QString tender = copy_of("tender-sorted");
  EXPECT_TRUE(drop({wagon, tender}));
  EXPECT_EQ(session().project().name, "The timber wagon");
  ASSERT_EQ(others.count(), 1);
  EXPECT_EQ(others[0][0].toString(), tender);
}

TEST_F(FilesTest, WhatIsNoProjectIsNotTaken) {
  EXPECT_FALSE(drop({folder_.filePath("photograph.png")}));
  EXPECT_EQ(session().project().name, "The tender as first tacked");
}

TEST_F(FilesTest, ADropAsksBeforeItTakesTheEditsAway) {
  edit();
  answer(QMessageBox::Cancel);
  EXPECT_TRUE(drop({copy_of("timber-wagon")}));
  EXPECT_TRUE(asked_);
  EXPECT_EQ(session().project().name, "The tender as first tacked");
  EXPECT_EQ(session().project().steering_box->ratio, 18.0);
}

TEST_F(FilesTest, WhatWasOpenedIsOfferedAgainNewestFirst) {
  const QString wagon = open_copy("timber-wagon");
  const QString tender = open_copy("tender-sorted");
  EXPECT_EQ(Preferences::recent_files(), QStringList({tender, wagon}));
  QMenu* again = nullptr;
  for (QMenu* menu : window_->findChildren<QMenu*>())
    if (menu->title() == "Open again") again = menu;
  ASSERT_NE(again, nullptr);
  Q_EMIT again->aboutToShow();
  ASSERT_EQ(again->actions().size(), 2);
  again->actions()[1]->trigger();
  EXPECT_EQ(session().project().name, "The timber wagon");
  QFile::remove(tender);
  Q_EMIT again->aboutToShow();
  ASSERT_EQ(again->actions().size(), 1);
  EXPECT_EQ(again->actions()[0]->text(), "timber-wagon.tack");
}

TEST_F(FilesTest, APipeIsNotWaitedFor) {
  const QString pipe = folder_.filePath("pipe.tack");
  ASSERT_EQ(mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
  EXPECT_FALSE(window_->open_file(pipe));
  EXPECT_TRUE(says("pipe")) << said().toStdString();
}

TEST_F(FilesTest, AFileWithoutTheRightToReadSaysSo) {
  const QString file = copy_of("timber-wagon");
  ASSERT_EQ(chmod(folder_.path().toLocal8Bit().constData(), 0755), 0);
  QFile::setPermissions(file, {});
  const UsualRights rights;
  EXPECT_FALSE(window_->open_file(file));
  EXPECT_TRUE(says("timber-wagon.tack cannot be opened")) << said().toStdString();
  EXPECT_TRUE(says("Permission denied")) << said().toStdString();
}

TEST_F(FilesTest, AChangeOnDiskMakesWhatIsHereUnsaved) {
  const QString file = open_copy("timber-wagon");
  Project other = session().project();
  other.name = "Changed elsewhere";
  ASSERT_TRUE(save_project(other, file.toStdString()).ok());
  ASSERT_TRUE(QTest::qWaitFor([&] { return says("changed on disk"); }, 5000));
  EXPECT_TRUE(session().unsaved());
  answer(QMessageBox::Cancel);
  EXPECT_FALSE(window_->close());
  EXPECT_TRUE(asked_);
}

TEST_F(FilesTest, AFileThatIsGoneIsNoticedAndSavingPutsItBack) {
  const QString file = open_copy("timber-wagon");
  ASSERT_TRUE(QFile::remove(file));
  ASSERT_TRUE(QTest::qWaitFor([&] { return says("is gone from the disk"); }, 5000));
  EXPECT_TRUE(session().unsaved());
  window_->action("save")->trigger();
  EXPECT_FALSE(session().unsaved());
  EXPECT_TRUE(read_project(file.toStdString()).ok());
}

TEST_F(FilesTest, AFullDiskIsSaidAndNothingIsLost) {
  const QString file = open_copy("timber-wagon");
  const std::string before = project_text(session().project());
  edit();
  {
    const FullDisk disk(512);
    window_->action("save")->trigger();
  }
  EXPECT_TRUE(says("could not be saved")) << said().toStdString();
  EXPECT_TRUE(session().unsaved());
  EXPECT_EQ(session().project().steering_box->ratio, 18.0);
  EXPECT_EQ(project_text(read_project(file.toStdString()).value()), before);
  window_->action("save")->trigger();
  EXPECT_FALSE(session().unsaved());
}

TEST_F(FilesTest, AFolderWithoutTheRightToWriteIsSaidAndNothingIsLost) {
  ASSERT_TRUE(QDir(folder_.path()).mkdir("kept"));
  const QString kept = folder_.filePath("kept");
  const QString file = kept + "/wagon.tack";
  ASSERT_TRUE(QFile::rename(copy_of("timber-wagon"), file));
  ASSERT_TRUE(window_->open_file(file));
  edit();
  ASSERT_EQ(chmod(folder_.path().toLocal8Bit().constData(), 0755), 0);
  ASSERT_EQ(chmod(kept.toLocal8Bit().constData(), 0555), 0);
  {
    const UsualRights rights;
    window_->action("save")->trigger();
  }
  EXPECT_TRUE(says("could not be saved")) << said().toStdString();
  EXPECT_TRUE(session().unsaved());
  EXPECT_EQ(session().project().steering_box->ratio, 18.0);
  chmod(kept.toLocal8Bit().constData(), 0755);
}

}  // namespace
}  // namespace tackbench::ui
