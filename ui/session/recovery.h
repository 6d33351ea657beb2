// Recovery after a crash: a copy of what is not saved, kept beside the program's own data, offered
// at the next start and never taken silently.
#pragma once

#include <QDateTime>
#include <QElapsedTimer>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

#include "ui/session/session.h"

namespace tackbench::ui {

// A copy that a program left behind.
struct LeftBehind {
  std::filesystem::path copy;
  std::filesystem::path file;  // what it is a copy of; empty when it was never saved
  QString name;                // of the project
  QDateTime kept;              // when
};

// Where the copies lie unless a test says otherwise.
std::filesystem::path recovery_folder();

// Copies whose program is gone, newest first.
std::vector<LeftBehind> left_behind(const std::filesystem::path& folder);
void discard(const LeftBehind& copy);

// Keeps the copy of one session up to date: a moment after the last edit, in steady work every few
// seconds, until the project is saved. Ending properly takes the copy away.
class Recovery : public QObject {
  Q_OBJECT

 public:
  Recovery(Session& session, std::filesystem::path folder, QObject* parent = nullptr);
  ~Recovery() override;

  // Writes it now. False when what is not saved could not be written.
  bool keep_now();
  // Takes the copy away.
  void forget();
  const std::filesystem::path& copy() const { return copy_; }

 Q_SIGNALS:
  // The copy could not be written; said once until it works again.
  void failed(const QString& why);

 private:
  void keep_soon();

  Session& session_;
  std::filesystem::path folder_;
  std::filesystem::path copy_;
  std::unique_ptr<QLockFile> lock_;
  QTimer soon_;
  QElapsedTimer waiting_;  // since the first edit that is not in the copy
  bool said_failed_ = false;
};

}  // namespace tackbench::ui
