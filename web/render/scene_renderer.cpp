#include "web/render/scene_renderer.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include "shader_line_frag.h"
#include "shader_line_vert.h"
#include "shader_paint_frag.h"
#include "shader_paint_vert.h"
#include "shader_solid_frag.h"
#include "shader_solid_vert.h"

namespace hs::web::render {
namespace {

using scene::Frame;
using scene::Line;
using scene::Mesh;
using scene::Part;
using scene::Vertex;

constexpr GLsizei kSamples = 4;
constexpr GLsizei kMaterials = static_cast<GLsizei>(scene::kMaterialCount);

const void* offset(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

std::array<float, 16> floats(const scene::Matrix& matrix) {
  std::array<float, 16> out{};
  std::transform(matrix.begin(), matrix.end(), out.begin(),
                 [](double number) { return static_cast<float>(number); });
  return out;
}

template <typename T>
void fill(GLenum target, const std::vector<T>& data) {
  glBufferData(target, static_cast<GLsizeiptr>(data.size() * sizeof(T)), data.data(),
               GL_STATIC_DRAW);
}

}  // namespace

bool SceneRenderer::make() {
  namespace text = hearthsight::embedded;
  const bool good =
      solid_.program.make(text::shader_solid_vert(), text::shader_solid_frag(), error_) &&
      paint_.program.make(text::shader_paint_vert(), text::shader_paint_frag(), error_) &&
      line_.program.make(text::shader_line_vert(), text::shader_line_frag(), error_);
  if (!good) return false;
  for (Look* look : {&solid_, &paint_, &line_}) {
    look->view_projection = look->program.place("view_projection");
    look->eye = look->program.place("eye_mm");
    look->palette = look->program.place("palette");
  }
  sky_ = solid_.program.place("sky_light");
  ground_ = solid_.program.place("ground_light");
  sun_ = solid_.program.place("sun_light");
  sun_way_ = solid_.program.place("sun_way");
  fire_ = solid_.program.place("fire");
  hearth_ = solid_.program.place("hearth_mm");
  opacity_ = solid_.program.place("opacity");
  patterns_ = paint_.program.place("patterns");
  hatch_ = paint_.program.place("hatch_ink");
  dot_ = paint_.program.place("dot_ink");
  half_size_ = line_.program.place("half_size_px");
  scale_ = line_.program.place("scale");
  for (Buffers& b : parts_) {
    glGenVertexArrays(1, &b.array);
    glGenVertexArrays(1, &b.line_array);
    glGenBuffers(1, &b.vertices);
    glGenBuffers(1, &b.indices);
    glGenBuffers(1, &b.lines);
    glBindVertexArray(b.array);
    glBindBuffer(GL_ARRAY_BUFFER, b.vertices);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, b.indices);
    glEnableVertexAttribArray(0);
    glEnableVertexAttribArray(1);
    glEnableVertexAttribArray(2);
    glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, sizeof(Vertex), offset(offsetof(Vertex, x)));
    glVertexAttribPointer(1, 3, GL_BYTE, GL_TRUE, sizeof(Vertex), offset(offsetof(Vertex, nx)));
    glVertexAttribIPointer(2, 1, GL_UNSIGNED_BYTE, sizeof(Vertex),
                           offset(offsetof(Vertex, material)));
    glBindVertexArray(b.line_array);
    glBindBuffer(GL_ARRAY_BUFFER, b.lines);
    constexpr std::size_t kPlaces[] = {offsetof(Line, from), offsetof(Line, to),
                                       offsetof(Line, width_px)};
    constexpr GLint kSizes[] = {3, 3, 2};
    for (GLuint i = 0; i < 3; ++i) {
      glEnableVertexAttribArray(i);
      glVertexAttribPointer(i, kSizes[i], GL_FLOAT, GL_FALSE, sizeof(Line), offset(kPlaces[i]));
      glVertexAttribDivisor(i, 1);
    }
  }
  glBindVertexArray(0);
  glGenFramebuffers(1, &smooth_);
  glGenFramebuffers(1, &flat_);
  glGenRenderbuffers(1, &smooth_colour_);
  glGenRenderbuffers(1, &smooth_depth_);
  glGenRenderbuffers(1, &flat_colour_);
  return true;
}

bool SceneRenderer::size(int width, int height) {
  if (width == width_ && height == height_) return true;
  width_ = width;
  height_ = height;
  drawn_ = false;
  glBindRenderbuffer(GL_RENDERBUFFER, smooth_colour_);
  glRenderbufferStorageMultisample(GL_RENDERBUFFER, kSamples, GL_RGBA8, width, height);
  glBindRenderbuffer(GL_RENDERBUFFER, smooth_depth_);
  glRenderbufferStorageMultisample(GL_RENDERBUFFER, kSamples, GL_DEPTH_COMPONENT24, width, height);
  glBindRenderbuffer(GL_RENDERBUFFER, flat_colour_);
  glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA8, width, height);
  glBindFramebuffer(GL_FRAMEBUFFER, flat_);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, flat_colour_);
  glBindFramebuffer(GL_FRAMEBUFFER, smooth_);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, smooth_colour_);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, smooth_depth_);
  if (glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE) return true;
  error_ = "The graphics driver gives the scene no surface to draw on.";
  return false;
}

void SceneRenderer::upload(Buffers& b, const Part& part) {
  ++uploads_;
  std::vector<Vertex> vertices;
  std::vector<std::uint32_t> indices;
  const auto add = [&](const Mesh& mesh, Range& range) {
    const auto base = static_cast<std::uint32_t>(vertices.size());
    range.offset = indices.size() * sizeof(std::uint32_t);
    range.count = static_cast<GLsizei>(mesh.indices.size());
    vertices.insert(vertices.end(), mesh.vertices.begin(), mesh.vertices.end());
    for (const std::uint32_t index : mesh.indices) indices.push_back(index + base);
  };
  add(part.ground, b.ground);
  add(part.solid, b.solid);
  add(part.paint, b.paint);
  add(part.veil, b.veil);
  add(part.ghost, b.ghost);
  glBindVertexArray(b.array);
  glBindBuffer(GL_ARRAY_BUFFER, b.vertices);
  fill(GL_ARRAY_BUFFER, vertices);
  fill(GL_ELEMENT_ARRAY_BUFFER, indices);
  glBindVertexArray(0);
  glBindBuffer(GL_ARRAY_BUFFER, b.lines);
  fill(GL_ARRAY_BUFFER, part.lines);
  b.line_count = static_cast<GLsizei>(part.lines.size());
}

void SceneRenderer::set_up(const Look& look, const Frame& frame,
                           const scene::Palette& palette) const {
  look.program.use();
  const std::array<float, 16> matrix = floats(frame.lens.view_projection);
  glUniformMatrix4fv(look.view_projection, 1, GL_FALSE, matrix.data());
  if (look.eye >= 0) {
    const scene::Vec& eye = frame.lens.at;
    glUniform3f(look.eye, static_cast<float>(eye.x), static_cast<float>(eye.y),
                static_cast<float>(eye.z));
  }
  glUniform4fv(look.palette, kMaterials, palette[0].data());
}

void SceneRenderer::triangles(const Buffers& b, const Range& range) const {
  if (range.count == 0) return;
  glBindVertexArray(b.array);
  glDrawElements(GL_TRIANGLES, range.count, GL_UNSIGNED_INT, offset(range.offset));
}

void SceneRenderer::paint_all(const Frame& frame) {
  glBindFramebuffer(GL_FRAMEBUFFER, smooth_);
  glViewport(0, 0, width_, height_);
  glDisable(GL_SCISSOR_TEST);
  glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
  glDepthMask(GL_TRUE);
  glClearColor(frame.backdrop[0], frame.backdrop[1], frame.backdrop[2], 1);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  glEnable(GL_BLEND);
  glBlendEquation(GL_FUNC_ADD);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glEnable(GL_DEPTH_TEST);
  glDepthFunc(GL_LEQUAL);
  glCullFace(GL_BACK);
  glFrontFace(GL_CCW);
  glDisable(GL_CULL_FACE);

  set_up(paint_, frame, frame.paints);
  glUniform1fv(patterns_, kMaterials, frame.patterns.data());
  glUniform4fv(hatch_, 1, frame.hatch_ink.data());
  glUniform4fv(dot_, 1, frame.dot_ink.data());
  if (frame.only_paint) {
    triangles(parts_[static_cast<std::size_t>(scene::PartName::Sight)],
              parts_[static_cast<std::size_t>(scene::PartName::Sight)].paint);
    return;
  }
  glDepthMask(GL_FALSE);
  for (const Buffers& b : parts_) triangles(b, b.ground);

  glDepthMask(GL_TRUE);
  glEnable(GL_CULL_FACE);
  set_up(solid_, frame, frame.solids);
  glUniform3fv(sky_, 1, frame.light.sky.data());
  glUniform3fv(ground_, 1, frame.light.ground.data());
  glUniform3fv(sun_, 1, frame.light.sun.data());
  // From over the cook's left shoulder.
  glUniform3f(sun_way_, -0.45F, -0.55F, 0.70F);
  glUniform4fv(fire_, 1, frame.light.fire.data());
  glUniform1f(hearth_, frame.hearth_mm);
  glUniform1f(opacity_, 1);
  for (const Buffers& b : parts_) triangles(b, b.solid);
  if (frame.ghost >= 1) {
    for (const Buffers& b : parts_) triangles(b, b.ghost);
  }

  // Paint lies on what is there, and is covered by nothing that is not.
  glDisable(GL_CULL_FACE);
  paint_.program.use();
  for (const Buffers& b : parts_) triangles(b, b.paint);

  glDepthMask(GL_FALSE);
  set_up(line_, frame, frame.paints);
  glUniform2f(half_size_, 0.5F * static_cast<float>(width_), 0.5F * static_cast<float>(height_));
  glUniform1f(scale_, frame.scale);
  for (const Buffers& b : parts_) {
    if (b.line_count == 0) continue;
    glBindVertexArray(b.line_array);
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, b.line_count);
  }

  paint_.program.use();
  for (const Buffers& b : parts_) triangles(b, b.veil);
  if (frame.ghost < 1) {
    glEnable(GL_CULL_FACE);
    solid_.program.use();
    glUniform1f(opacity_, frame.ghost);
    for (const Buffers& b : parts_) triangles(b, b.ghost);
    glDisable(GL_CULL_FACE);
  }
}

void SceneRenderer::draw(const Frame& frame) {
  if (failed_) return;
  if (!made_) {
    made_ = make();
    failed_ = !made_;
    if (failed_) return;
  }
  bool changed = !drawn_ || frame.number != number_;
  if (!size(std::max(1, frame.width), std::max(1, frame.height))) {
    failed_ = true;
    return;
  }
  changed = changed || !drawn_;
  if (changed) {
    for (std::size_t i = 0; i < parts_.size(); ++i) {
      Buffers& b = parts_[i];
      if (b.filled && b.digest == frame.digests[i]) continue;
      upload(b, *frame.parts[i]);
      b.filled = true;
      b.digest = frame.digests[i];
    }
    paint_all(frame);
    glBindVertexArray(0);
    glDisable(GL_DEPTH_TEST);
    glDepthMask(GL_TRUE);
    glBindFramebuffer(GL_READ_FRAMEBUFFER, smooth_);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, flat_);
    glBlitFramebuffer(0, 0, width_, height_, 0, 0, width_, height_, GL_COLOR_BUFFER_BIT,
                      GL_NEAREST);
    drawn_ = true;
    number_ = frame.number;
  }
  glDisable(GL_SCISSOR_TEST);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, flat_);
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, 0);
  glBlitFramebuffer(0, 0, width_, height_, frame.left, frame.bottom, frame.left + width_,
                    frame.bottom + height_, GL_COLOR_BUFFER_BIT, GL_NEAREST);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

void SceneRenderer::lose() {
  const int uploads = uploads_;
  *this = SceneRenderer();
  uploads_ = uploads;
}

}  // namespace hs::web::render
