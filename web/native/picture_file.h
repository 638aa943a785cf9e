#pragma once
// The picture of the current context as a file: binary PPM (Netpbm's P6), which every image program
// reads and needs no library to write.

#include <string>

namespace hs::web::native {

// Reads what was drawn last, before it is shown. False: the file could not be written, and there is
// none.
bool write_picture(const std::string& file, int width, int height);

}  // namespace hs::web::native
