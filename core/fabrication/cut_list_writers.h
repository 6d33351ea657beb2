// Writers of the cut list. Each is a pure function of the model; write_cut_list puts them in files.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/basics/result.h"
#include "core/fabrication/cut_list.h"

namespace tackbench {

// A workshop note, at most 100 columns wide.
std::string cut_list_text(const CutList& list);

// RFC 4180: CRLF line ends, quotes where needed, a header row
// item,dimension,value,unit,tolerance,quantity,note. Notes and cautions of an item are rows with
// `note` or `caution` as their dimension.
std::string cut_list_csv(const CutList& list);

// Two-space indented JSON; dimension members: name (with unit suffix), words, value, unit,
// tolerance, tolerance_words, note.
std::string cut_list_json(const CutList& list);

// Writes cut-list.txt, cut-list.csv and, when there is a drag link, drag-link.svg into the folder,
// which is made when it is missing. Each file appears whole or not at all. Returns what was
// written; a folder that cannot be made or written to is a Problem.
Result<std::vector<std::filesystem::path>> write_cut_list(const CutList& list,
                                                          const std::filesystem::path& folder);

}  // namespace tackbench
