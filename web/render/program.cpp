#include "web/render/program.h"

#include <array>

namespace hs::web::render {
namespace {

constexpr GLsizei kMostLog = 1024;

GLuint compiled(GLenum kind, std::string_view text, std::string& error) {
  const GLuint shader = glCreateShader(kind);
  const char* data = text.data();
  const GLint size = static_cast<GLint>(text.size());
  glShaderSource(shader, 1, &data, &size);
  glCompileShader(shader);
  GLint good = 0;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &good);
  if (good != 0) return shader;
  std::array<char, kMostLog> log{};
  glGetShaderInfoLog(shader, kMostLog, nullptr, log.data());
  error = std::string("A shader does not compile: ") + log.data();
  glDeleteShader(shader);
  return 0;
}

}  // namespace

bool Program::make(std::string_view vertex, std::string_view fragment, std::string& error) {
  const GLuint first = compiled(GL_VERTEX_SHADER, vertex, error);
  const GLuint second = first != 0 ? compiled(GL_FRAGMENT_SHADER, fragment, error) : 0;
  if (second == 0) return false;
  program_ = glCreateProgram();
  glAttachShader(program_, first);
  glAttachShader(program_, second);
  glLinkProgram(program_);
  glDeleteShader(first);
  glDeleteShader(second);
  GLint good = 0;
  glGetProgramiv(program_, GL_LINK_STATUS, &good);
  if (good != 0) return true;
  std::array<char, kMostLog> log{};
  glGetProgramInfoLog(program_, kMostLog, nullptr, log.data());
  error = std::string("A shader does not link: ") + log.data();
  drop();
  return false;
}

void Program::drop() {
  if (program_ != 0) glDeleteProgram(program_);
  program_ = 0;
}

}  // namespace hs::web::render
