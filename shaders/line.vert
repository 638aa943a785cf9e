#version 300 es
// A straight line of a width in pixels: one instance each, four corners from their number.
layout(location = 0) in vec3 from_mm;
layout(location = 1) in vec3 to_mm;
layout(location = 2) in vec2 width_and_material;
uniform mat4 view_projection;
uniform vec3 eye_mm;
uniform vec4 palette[45];
uniform vec2 half_size_px;  // of the picture
uniform float scale;        // device pixels in one CSS px
flat out vec4 colour;
const float near_mm = 40.0;
void main() {
  // A little towards the eye, so that a line lies on the faces whose edge it is.
  vec4 a = view_projection * vec4(mix(from_mm, eye_mm, 0.0016), 1.0);
  vec4 b = view_projection * vec4(mix(to_mm, eye_mm, 0.0016), 1.0);
  // The part behind the eye is cut off.
  if (a.w < near_mm && b.w > near_mm) a = mix(a, b, (near_mm - a.w) / (b.w - a.w));
  if (b.w < near_mm && a.w > near_mm) b = mix(b, a, (near_mm - b.w) / (a.w - b.w));
  vec2 along = (b.xy / b.w - a.xy / a.w) * half_size_px;
  float far = length(along);
  along = far > 0.0 ? along / far : vec2(1.0, 0.0);
  vec2 side = vec2(-along.y, along.x) * ((gl_VertexID & 1) == 0 ? -1.0 : 1.0);
  bool last = gl_VertexID >= 2;
  vec4 at = last ? b : a;
  float half_width = 0.5 * width_and_material.x * scale;
  // Half a width past each end closes the corners.
  vec2 moved = (side + along * (last ? 0.5 : -0.5)) * half_width;
  at.xy += moved / half_size_px * at.w;
  colour = palette[int(width_and_material.y + 0.5)];
  gl_Position = a.w < near_mm && b.w < near_mm ? vec4(2.0, 2.0, 2.0, 1.0) : at;
}
