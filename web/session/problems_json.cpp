#include "web/session/problems_json.h"

#include "engine/base/json_writer.h"

namespace hs::web {

std::string problems_json(const std::vector<Problem>& problems) {
  std::string out = "[";
  for (const Problem& problem : problems) {
    if (out.size() > 1) out += ",";
    out += "{\"path\":" + json_string(problem.path) + ",\"given\":" + json_string(problem.given) +
           ",\"allowed\":" + json_string(problem.allowed) +
           ",\"message\":" + json_string(sentence(problem)) + "}";
  }
  return out + "]";
}

}  // namespace hs::web
