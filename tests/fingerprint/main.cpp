// Prints the report of each config file named on the command line. Every number in a report is
// rounded to its quantum, so the native program and the WebAssembly one must print the same bytes.

#include <cstdio>
#include <string>

#include "engine/evaluate/check.h"
#include "engine/evaluate/packet.h"
#include "engine/report/report_json.h"

namespace {

bool read_file(const char* path, std::string& text) {
  std::FILE* file = std::fopen(path, "rb");
  if (!file) return false;
  char buffer[4096];
  std::size_t got = 0;
  while ((got = std::fread(buffer, 1, sizeof buffer, file)) > 0) text.append(buffer, got);
  const bool ok = std::ferror(file) == 0;
  std::fclose(file);
  return ok;
}

}  // namespace

int main(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    std::string text;
    if (!read_file(argv[i], text)) {
      std::fprintf(stderr, "%s cannot be read\n", argv[i]);
      return 1;
    }
    const auto config = hs::evaluate::read(text);
    if (!config) {
      for (const hs::Problem& p : config.error()) {
        std::fprintf(stderr, "%s: %s\n", argv[i], hs::sentence(p).c_str());
      }
      return 2;
    }
    const std::string report =
        hs::report::report_json(*config, hs::evaluate::evaluate_packet(*config));
    std::printf("%s\n%s\n", argv[i], report.c_str());
  }
  return 0;
}
