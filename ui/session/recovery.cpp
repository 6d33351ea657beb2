#include "ui/session/recovery.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>
#include <algorithm>
#include <utility>

#include "core/project-file/project_file.h"

namespace tackbench::ui {

namespace {

constexpr qint64 kSoonMs = 1500;    // after the last edit: a short drag is written once
constexpr qint64 kLatestMs = 5000;  // after the first one, however steadily others follow

QString text_of(const std::filesystem::path& path) {
  return QString::fromStdString(path.string());
}

std::filesystem::path beside(const std::filesystem::path& copy, const char* ending) {
  std::filesystem::path made = copy;
  return made.replace_extension(ending);
}

bool write_about(const std::filesystem::path& copy, const Session& session) {
  QSaveFile about(text_of(beside(copy, ".json")));
  if (!about.open(QIODevice::WriteOnly)) return false;
  const QJsonObject object{
      {"file", text_of(session.file())},
      {"name", QString::fromStdString(session.project().name)},
      {"kept", QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs)},
  };
  about.write(QJsonDocument(object).toJson());
  return about.commit();
}

std::optional<LeftBehind> read_about(const QFileInfo& about_file) {
  QFile about(about_file.filePath());
  if (!about.open(QIODevice::ReadOnly)) return std::nullopt;
  const QJsonObject object = QJsonDocument::fromJson(about.readAll()).object();
  LeftBehind copy;
  copy.copy = beside(about_file.filePath().toStdString(), ".tack");
  copy.file = object.value("file").toString().toStdString();
  copy.name = object.value("name").toString();
  copy.kept = QDateTime::fromString(object.value("kept").toString(), Qt::ISODateWithMs);
  std::error_code ignored;
  if (!std::filesystem::exists(copy.copy, ignored) || !copy.kept.isValid()) return std::nullopt;
  return copy;
}

}  // namespace

std::filesystem::path recovery_folder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation);
  return std::filesystem::path(data.toStdString()) / "recovery";
}

std::vector<LeftBehind> left_behind(const std::filesystem::path& folder) {
  std::vector<LeftBehind> found;
  const QDir dir(text_of(folder));
  for (const QFileInfo& about : dir.entryInfoList({"*.json"}, QDir::Files)) {
    const std::filesystem::path about_path = about.filePath().toStdString();
    QLockFile lock(text_of(beside(about_path, ".lock")));
    lock.setStaleLockTime(0);
    // A program that still runs holds its lock; one that died left a lock that gives way.
    if (!lock.tryLock(0)) continue;
    if (auto copy = read_about(about)) found.push_back(std::move(*copy));
  }
  std::sort(found.begin(), found.end(),
            [](const LeftBehind& a, const LeftBehind& b) { return a.kept > b.kept; });
  return found;
}

void discard(const LeftBehind& copy) {
  std::error_code ignored;
  std::filesystem::remove(copy.copy, ignored);
  std::filesystem::remove(beside(copy.copy, ".json"), ignored);
}

Recovery::Recovery(Session& session, std::filesystem::path folder, QObject* parent)
    : QObject(parent), session_(session), folder_(std::move(folder)) {
  const QString name = QUuid::createUuid().toString(QUuid::WithoutBraces);
  copy_ = folder_ / (name.toStdString() + ".tack");
  soon_.setSingleShot(true);
  connect(&soon_, &QTimer::timeout, this, &Recovery::keep_now);
  connect(&session_, &Session::project_changed, this, &Recovery::keep_soon);
  connect(&session_, &Session::file_changed, this, [this] {
    if (session_.unsaved()) {
      keep_soon();
    } else {
      forget();
    }
  });
}

void Recovery::keep_soon() {
  if (!soon_.isActive()) waiting_.start();
  const qint64 left = std::max<qint64>(0, kLatestMs - waiting_.elapsed());
  soon_.start(static_cast<int>(std::min(kSoonMs, left)));
}

Recovery::~Recovery() {
  forget();
}

bool Recovery::keep_now() {
  soon_.stop();
  if (!session_.unsaved()) return true;
  QDir().mkpath(text_of(folder_));
  if (!lock_) {
    lock_ = std::make_unique<QLockFile>(text_of(beside(copy_, ".lock")));
    lock_->setStaleLockTime(0);
    lock_->tryLock(0);
  }
  const Result<Done> saved = save_project(session_.project(), copy_);
  const bool written = saved.ok() && write_about(copy_, session_);
  if (!written && !said_failed_) {
    Q_EMIT failed(saved.ok() ? tr("The recovery copy could not be described on disk.")
                             : QString::fromStdString(one_line(saved.problems().front())));
  }
  said_failed_ = !written;
  return written;
}

void Recovery::forget() {
  soon_.stop();
  std::error_code ignored;
  std::filesystem::remove(copy_, ignored);
  std::filesystem::remove(beside(copy_, ".json"), ignored);
  lock_.reset();  // takes its file away
}

}  // namespace tackbench::ui
