#pragma once
// Draws the scene with OpenGL ES 3 (WebGL 2 in a browser), through our own shaders in shaders/.
//
// The picture is drawn into a surface of its own, with depth and smoothed edges, and only when it
// has changed; then it is copied to its place on the screen. All of it can be lost with the context
// and is made again from the meshes.

#include <GLES3/gl3.h>

#include <array>
#include <string>

#include "web/render/program.h"
#include "web/scene/frame.h"

namespace hs::web::render {

class SceneRenderer final : public scene::Surface {
 public:
  ~SceneRenderer() override = default;  // what GL holds goes with its context

  // Call with the context current. Leaves framebuffer 0 bound and a state that the caller sets up
  // again (Dear ImGui: ImDrawCallback_ResetRenderState).
  void draw(const scene::Frame& frame) override;
  // The context is gone: nothing that was made is there any more.
  void lose();
  // What the driver said, empty when all is well.
  const std::string& error() const { return error_; }
  int uploads() const { return uploads_; }  // parts sent to the graphics card, for a test

 private:
  struct Range {
    GLsizei count = 0;
    std::size_t offset = 0;  // in bytes, into the indices
  };
  struct Buffers {
    GLuint array = 0, vertices = 0, indices = 0;
    GLuint line_array = 0, lines = 0;
    GLsizei line_count = 0;
    Range ground, solid, paint, veil, ghost;
    std::uint64_t digest = 0;
    bool filled = false;
  };
  struct Look {
    Program program;
    GLint view_projection = -1, eye = -1, palette = -1;
  };

  bool make();
  bool size(int width, int height);
  void upload(Buffers& buffers, const scene::Part& part);
  void paint_all(const scene::Frame& frame);
  void set_up(const Look& look, const scene::Frame& frame, const scene::Palette& palette) const;
  void triangles(const Buffers& buffers, const Range& range) const;

  bool made_ = false;
  bool failed_ = false;
  std::string error_;
  Look solid_, paint_, line_;
  GLint sky_ = -1, ground_ = -1, sun_ = -1, sun_way_ = -1, fire_ = -1, hearth_ = -1, opacity_ = -1;
  GLint patterns_ = -1, hatch_ = -1, dot_ = -1;
  GLint half_size_ = -1, scale_ = -1;
  std::array<Buffers, scene::kPartCount> parts_{};
  GLuint smooth_ = 0, smooth_colour_ = 0, smooth_depth_ = 0;  // several samples a pixel
  GLuint flat_ = 0, flat_colour_ = 0;                         // the picture as it is shown
  int width_ = 0, height_ = 0;
  bool drawn_ = false;
  std::uint32_t number_ = 0;
  int uploads_ = 0;
};

}  // namespace hs::web::render
