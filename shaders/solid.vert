#version 300 es
// What is solid: lit by a soft sky from above, the ground's light from below and a low sun.
layout(location = 0) in vec3 at_mm;
layout(location = 1) in vec3 normal;
layout(location = 2) in uint material;
uniform mat4 view_projection;
uniform vec4 palette[45];  // colour; how much it glows by itself
out vec3 place_mm;
out vec3 facing;
flat out vec4 colour;
void main() {
  place_mm = at_mm;
  facing = normal;
  colour = palette[material];
  gl_Position = view_projection * vec4(at_mm, 1.0);
}
