#pragma once
// Many files into one folder, all of them or none.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/report/packet.h"

namespace hs::cli {

// The list of what was written last, in the folder itself, so that writing again leaves no file of
// before among the new ones.
inline constexpr std::string_view kListName = "files.txt";

// Writes every file, and the list, into `folder`, which is made where it is missing. Without
// `force` a file that is there already is a problem, and nothing is written. With it, files of the
// last list that are not written again are taken away; no other file is touched. A fault on the way
// leaves the folder as it was, unless it comes while finished files are given their names.
std::vector<Problem> write_folder(std::string_view folder,
                                  const std::vector<report::PacketFile>& files, bool force);

}  // namespace hs::cli
