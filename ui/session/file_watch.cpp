#include "ui/session/file_watch.h"

#include <QCryptographicHash>
#include <QFile>

namespace tackbench::ui {

namespace {

QString text_of(const std::filesystem::path& path) {
  return QString::fromStdString(path.string());
}

std::optional<QByteArray> digest_of(const std::filesystem::path& path) {
  QFile file(text_of(path));
  if (path.empty() || !file.open(QIODevice::ReadOnly)) return std::nullopt;
  QCryptographicHash hash(QCryptographicHash::Sha256);
  hash.addData(&file);
  return hash.result();
}

}  // namespace

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &FileWatch::look);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &FileWatch::look);
}

void FileWatch::follow(const std::filesystem::path& file) {
  const QStringList before = watcher_.files() + watcher_.directories();
  if (!before.isEmpty()) watcher_.removePaths(before);
  file_ = file;
  watch();
  seen_ = digest_of(file_);
  known_ = seen_;
}

void FileWatch::accept() {
  known_ = seen_;
}

bool FileWatch::differs() const {
  return digest_of(file_) != known_;
}

bool FileWatch::is_there() const {
  return digest_of(file_).has_value();
}

// Written by renaming, the file is a new one each time, which the watcher does not know.
void FileWatch::watch() {
  if (file_.empty()) return;
  const QString folder = text_of(file_.parent_path());
  if (!watcher_.directories().contains(folder)) watcher_.addPath(folder);
  const QString file = text_of(file_);
  if (!watcher_.files().contains(file) && QFile::exists(file)) watcher_.addPath(file);
}

void FileWatch::look() {
  watch();
  std::optional<QByteArray> now = digest_of(file_);
  if (now == seen_) return;
  seen_ = std::move(now);
  Q_EMIT changed();
}

}  // namespace tackbench::ui
