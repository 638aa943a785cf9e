#include "engine/cli/write_folder.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>

#include "engine/base/text.h"

namespace hs::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kUnfinished = ".hearthsight-unfinished";

struct Closer {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

Problem fault(const fs::path& path, std::string what) {
  return {shortened(path.string(), 80), std::move(what), "a folder that can be written"};
}

std::vector<Problem> write(const fs::path& path, std::string_view bytes) {
  std::error_code wrong;
  fs::create_directories(path.parent_path(), wrong);
  if (wrong) return {fault(path.parent_path(), wrong.message())};
  std::unique_ptr<std::FILE, Closer> file(std::fopen(path.c_str(), "wb"));
  if (!file || std::fwrite(bytes.data(), 1, bytes.size(), file.get()) != bytes.size() ||
      std::fflush(file.get()) != 0) {
    return {fault(path, std::strerror(errno))};
  }
  return {};
}

// A name that this program could have written: nothing that leaves the folder.
bool is_ours(std::string_view name) {
  return !name.empty() && name.size() < 100 && name[0] != '.' && name[0] != '/' &&
         name.find("..") == std::string_view::npos &&
         std::all_of(name.begin(), name.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.' || c == '_' ||
                  c == '-' || c == '/';
         });
}

std::vector<std::string> listed(const fs::path& list) {
  std::vector<std::string> names;
  std::unique_ptr<std::FILE, Closer> file(std::fopen(list.c_str(), "rb"));
  if (!file) return names;
  char line[256];
  while (std::fgets(line, sizeof line, file.get()) != nullptr) {
    const std::string name(trimmed_ends(line));
    if (is_ours(name)) names.push_back(name);
  }
  return names;
}

}  // namespace

std::vector<Problem> write_folder(std::string_view folder,
                                  const std::vector<report::PacketFile>& files, bool force) {
  const fs::path root(folder);
  std::error_code wrong;
  const bool was_there = fs::exists(root, wrong);
  if (was_there && !fs::is_directory(root, wrong)) return {fault(root, "a file")};
  std::string list;
  for (const report::PacketFile& file : files) list += file.name + "\n";
  std::vector<report::PacketFile> all = files;
  all.push_back({std::string(kListName), list});

  std::vector<Problem> problems;
  for (const report::PacketFile& file : all) {
    const fs::path path = root / file.name;
    const fs::file_status there = fs::symlink_status(path, wrong);
    if (!fs::exists(there)) continue;
    if (fs::is_directory(there)) {
      problems.push_back({shortened(path.string(), 80), "a folder of that name", "another folder"});
    } else if (!force) {
      problems.push_back({shortened(path.string(), 80), "a file that is there already",
                          "an empty folder, or --force"});
    }
  }
  if (problems.size() > 3) {
    const std::string more = std::to_string(problems.size() - 3);
    problems.resize(3);
    problems.push_back({"", "", "and " + more + " more files"});
  }
  if (!problems.empty()) return problems;

  // Whole files first, beside where they go; then each gets its name.
  const fs::path unfinished = root / kUnfinished;
  const auto clean = [&] {
    fs::remove_all(unfinished, wrong);
    if (!was_there) fs::remove(root, wrong);
  };
  fs::remove_all(unfinished, wrong);
  for (const report::PacketFile& file : all) {
    problems = write(unfinished / file.name, file.bytes);
    if (problems.empty()) {
      fs::create_directories((root / file.name).parent_path(), wrong);
      if (wrong) problems = {fault((root / file.name).parent_path(), wrong.message())};
    }
    if (problems.empty()) continue;
    clean();
    return problems;
  }
  const std::vector<std::string> before = listed(root / kListName);
  for (const report::PacketFile& file : all) {
    fs::rename(unfinished / file.name, root / file.name, wrong);
    if (wrong) return {fault(root / file.name, wrong.message())};
  }
  for (const std::string& name : before) {
    const bool again = std::any_of(
        all.begin(), all.end(), [&](const report::PacketFile& file) { return file.name == name; });
    if (!again) fs::remove(root / name, wrong);
  }
  fs::remove_all(unfinished, wrong);
  return {};
}

}  // namespace hs::cli
