#include "engine/base/version.h"

namespace hs {

std::string_view version() { return HEARTHSIGHT_VERSION; }

}  // namespace hs
