#pragma once
// One compiled look: a vertex and a fragment shader linked, with the names of what it is told.

#include <GLES3/gl3.h>

#include <string>
#include <string_view>

namespace hs::web::render {

class Program {
 public:
  // False: `error` says what the driver did not like.
  bool make(std::string_view vertex, std::string_view fragment, std::string& error);
  void use() const { glUseProgram(program_); }
  GLint place(const char* name) const { return glGetUniformLocation(program_, name); }
  // Its context is gone, and the program with it.
  void forget() { program_ = 0; }
  void drop();

 private:
  GLuint program_ = 0;
};

}  // namespace hs::web::render
