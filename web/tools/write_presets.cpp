// A step of the build: reads presets as `hearthsight evaluate` would and writes them as links, the
// shortest form that the page can already read. So the page needs no JSON reader for them.
//   write_presets OUT ROOT FILE...

#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

#include "engine/evaluate/check.h"
#include "engine/share/link.h"

int main(int count, char** words) {
  if (count < 4) return 2;
  const std::string root = std::string(words[2]) + "/";
  std::string rows;
  for (int i = 3; i < count; ++i) {
    const std::string file = words[i];
    std::ifstream in(file, std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    const hs::Result<hs::config::Config> config = hs::evaluate::read(text);
    if (!config) {
      std::fprintf(stderr, "%s: %s\n", file.c_str(), hs::sentence(config.error().front()).c_str());
      return 1;
    }
    const std::string name = file.substr(root.size(), file.rfind('.') - root.size());
    rows += "    {\"" + name + "\",\n     \"" + hs::share::to_link(*config) + "\"},\n";
  }
  std::ofstream out(words[1], std::ios::binary);
  out << "#include \"web/session/presets.h\"\n\n#include <array>\n\nnamespace hs {\nnamespace {\n"
         "constexpr auto kPresets = std::to_array<Preset>({\n"
      << rows << "});\n}  // namespace\n\nstd::span<const Preset> presets() { return kPresets; }\n"
      << "}  // namespace hs\n";
  out.close();
  return out ? 0 : 1;
}
