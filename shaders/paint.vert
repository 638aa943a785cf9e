#version 300 es
// What is painted on something: unlit, thinner towards soft edges, hatched or dotted where a
// colour alone would have to tell it.
layout(location = 0) in vec3 at_mm;
layout(location = 1) in vec3 solid;  // its first number
layout(location = 2) in uint material;
uniform mat4 view_projection;
uniform vec4 palette[45];
uniform float patterns[45];  // 0 plain, 1 hatched, 2 dotted
out vec2 plan_mm;
out float strength;
flat out vec4 colour;
flat out float pattern;
void main() {
  plan_mm = at_mm.xy;
  strength = solid.x;
  colour = palette[material];
  pattern = patterns[material];
  gl_Position = view_projection * vec4(at_mm, 1.0);
}
