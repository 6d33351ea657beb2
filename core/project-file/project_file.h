// Opens and saves the document: one JSON file, `*.tack`. Members carry their unit in their name,
// angles in degrees, lengths in millimetres; the table of fields (core/project/fields.h) decides
// what there is. Faults come back all together, each with file, member path (or line:column where
// the text is no JSON), what was found and what is wanted.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/basics/result.h"
#include "core/project/project.h"

namespace tackbench {

inline constexpr int kFormatVersion = 1;

// Refusals before anything is built, so that a hostile file costs neither time nor memory.
inline constexpr std::size_t kMostFileBytes = std::size_t{16} * 1024 * 1024;
inline constexpr int kMostFileDepth = 64;
inline constexpr std::size_t kMostFileValues = 300000;
inline constexpr std::size_t kMostMembersOfOne = 2000;  // of one object, items of one list

// Faults beyond this many are counted, not listed.
inline constexpr std::size_t kMostListedFaults = 100;

// Reads, brings older formats up to date and checks the values across fields.
Result<Project> read_project(const std::filesystem::path& path);
// The same for a text in memory; `file_name` is what messages call it.
Result<Project> read_project_text(std::string_view text, const std::string& file_name = "");

// A project as it may stand on the bench: each value is in range, but they need not fit each other
// yet, as when a box was begun and its ratio is still to be read off.
struct UnfinishedProject {
  Project project;
  Problems unfit;  // value_problems with the file's name
};
Result<UnfinishedProject> read_unfinished(const std::filesystem::path& path);
Result<UnfinishedProject> read_unfinished_text(std::string_view text,
                                               const std::string& file_name = "");

// The file's text. Members stand in the order of the table of fields, then unknown ones in the
// order they were read. Every member is written, also one at its default, so that a later change
// of a default changes no project; only absent optional members and empty lists are left out.
// Reading this text and writing it again gives the same bytes.
std::string project_text(const Project& project);

// Writes beside the file, syncs, renames over it, syncs the folder: interrupted at any moment the
// file is whole, old or new. Keeps the old file's permissions and follows a symbolic link. Refuses
// a project whose text read_unfinished could not open again; then nothing is touched.
Result<Done> save_project(const Project& project, const std::filesystem::path& path);

}  // namespace tackbench
