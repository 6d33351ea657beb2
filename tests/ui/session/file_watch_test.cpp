// A file is watched through all that may happen to it.
#include "ui/session/file_watch.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

namespace tackbench::ui {
namespace {

constexpr int kPatienceMs = 10000;

class FileWatchTest : public testing::Test {
 protected:
  void SetUp() override {
    write("one");
    watch_.follow(path_.toStdString());
  }
  void write(const char* text) {
    QFile file(path_);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
    file.write(text);
  }
  // Written beside it and renamed, as careful programs do.
  void put(const char* text) {
    const QString beside = folder_.filePath("beside");
    QFile file(beside);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
    file.close();
    std::filesystem::rename(beside.toStdString(), path_.toStdString());
  }
  bool told() {
    const bool came = changed_.count() > 0 || changed_.wait(kPatienceMs);
    changed_.clear();
    return came;
  }

  QTemporaryDir folder_;
  QString path_ = folder_.filePath("watched.tack");
  FileWatch watch_;
  QSignalSpy changed_{&watch_, &FileWatch::changed};
};

TEST_F(FileWatchTest, TellsEveryChangeOfAFileThatIsReplaced) {
  for (const char* text : {"two", "three", "four"}) {
    put(text);
    EXPECT_TRUE(told()) << text;
    EXPECT_TRUE(watch_.differs()) << text;
  }
  watch_.accept();
  EXPECT_FALSE(watch_.differs());
}

TEST_F(FileWatchTest, FollowsAFileThatWasGone) {
  ASSERT_TRUE(QFile::remove(path_));
  EXPECT_TRUE(told());
  EXPECT_FALSE(watch_.is_there());
  EXPECT_TRUE(watch_.differs());
  write("one");
  EXPECT_TRUE(QTest::qWaitFor([&] { return !watch_.differs(); }, kPatienceMs));
  QTest::qWait(50);
  changed_.clear();
  write("two");
  EXPECT_TRUE(told());
}

TEST_F(FileWatchTest, SaysNothingOfItsNeighbours) {
  QFile neighbour(folder_.filePath("neighbour"));
  ASSERT_TRUE(neighbour.open(QIODevice::WriteOnly));
  neighbour.close();
  put("one");  // another file of the same text
  QTest::qWait(200);
  EXPECT_EQ(changed_.count(), 0);
  put("two");
  EXPECT_TRUE(told());
}

TEST_F(FileWatchTest, ItIsSeenAlsoWhileNobodyHandlesEvents) {
  put("two");
  EXPECT_TRUE(watch_.differs());
}

}  // namespace
}  // namespace tackbench::ui
