// Whether a file is still as it was read or written. Its folder is watched too, so that a file that
// goes for a moment, or is written anew and renamed into place, is not lost sight of.
#pragma once

#include <QByteArray>
#include <QFileSystemWatcher>
#include <QObject>
#include <filesystem>
#include <optional>

namespace tackbench::ui {

class FileWatch : public QObject {
  Q_OBJECT

 public:
  explicit FileWatch(QObject* parent = nullptr);

  // The file as it is now counts as known. An empty path: nothing is watched.
  void follow(const std::filesystem::path& file);
  // What was there at the last signal counts as known.
  void accept();
  // Looks at the disk: the file is not the known one, or is gone.
  bool differs() const;
  bool is_there() const;

 Q_SIGNALS:
  // The file is another one than at the last signal, perhaps the known one again.
  void changed();

 private:
  void look();
  void watch();

  std::filesystem::path file_;
  QFileSystemWatcher watcher_;
  std::optional<QByteArray> known_;  // digest; empty when there is no such file
  std::optional<QByteArray> seen_;   // at the last signal
};

}  // namespace tackbench::ui
