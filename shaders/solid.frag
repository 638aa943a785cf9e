#version 300 es
precision highp float;
in vec3 place_mm;
in vec3 facing;
flat in vec4 colour;
uniform vec3 eye_mm;
uniform vec3 sky_light;
uniform vec3 ground_light;
uniform vec3 sun_light;
uniform vec3 sun_way;
uniform vec4 fire;        // its colour; how much of the oven's own light it is
uniform float hearth_mm;  // height of the oven's floor
uniform float opacity;  // 1: solid
out vec4 shown;
void main() {
  vec3 n = normalize(facing);
  vec3 to_eye = normalize(eye_mm - place_mm);
  float turned = abs(dot(n, to_eye));
  vec3 light = mix(ground_light, sky_light, 0.5 + 0.5 * n.z) + sun_light * max(dot(n, sun_way), 0.0);
  // Less sky reaches what is near the ground.
  light *= mix(0.80, 1.0, smoothstep(0.0, 420.0, place_mm.z + 250.0 * max(n.z, 0.0)));
  // Round forms darken towards their outline, which sets them off from what is behind.
  light *= 1.0 - 0.30 * pow(1.0 - turned, 3.0);
  vec3 lit = colour.rgb * light;
  // The fire is at the back: what faces the cook glows most, and what is high least.
  float glow = 0.50 - 0.34 * n.y + 0.14 * n.z;
  glow *= mix(1.0, 0.55, smoothstep(0.0, 420.0, place_mm.z - hearth_mm));
  vec3 ember = mix(fire.rgb * vec3(0.50, 0.28, 0.16), fire.rgb, clamp(glow * 1.7, 0.0, 1.0));
  lit = mix(lit, ember * mix(vec3(1.0), colour.rgb, 0.5), colour.a * fire.a);
  float alpha = mix(opacity + (1.0 - opacity) * 0.45 * pow(1.0 - turned, 2.0), 1.0, step(1.0, opacity));
  shown = vec4(lit * alpha, alpha);
}
