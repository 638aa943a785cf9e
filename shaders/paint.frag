#version 300 es
precision highp float;
in vec2 plan_mm;
in float strength;
flat in vec4 colour;
flat in float pattern;
uniform vec4 hatch_ink;
uniform vec4 dot_ink;
out vec4 shown;
void main() {
  float soft = strength * strength * (3.0 - 2.0 * strength);
  vec4 paint = vec4(colour.rgb, colour.a * soft);
  if (pattern == 1.0) {
    // Lines across, 26 mm from each other, as sharp as a pixel allows; from farther away every
    // second or fourth of them, or they would run into one faint tint.
    float across = (plan_mm.x + plan_mm.y) / 36.8;
    float blur = max(fwidth(across), 0.001);
    float fewer = exp2(max(0.0, ceil(log2(14.0 * blur))));
    across /= fewer;
    blur /= fewer;
    float off = abs(fract(across) - 0.5);
    float ink = smoothstep(0.5 - 0.14 - blur, 0.5 - 0.14 + blur, off);
    ink = mix(ink, 0.28, smoothstep(0.35, 0.8, blur));
    // What is looked through keeps its own colour and is thicker along the lines.
    if (colour.a < 1.0) paint.a += 0.35 * ink; else paint.rgb = mix(paint.rgb, hatch_ink.rgb, ink * hatch_ink.a);
  } else if (pattern == 2.0) {
    vec2 cell = plan_mm / 30.0;
    cell.x += 0.5 * mod(floor(cell.y), 2.0);
    float blur = max(fwidth(cell.y), 0.001);
    float away = length(fract(cell) - 0.5);
    float ink = 1.0 - smoothstep(0.23 - blur, 0.23 + blur, away);
    ink = mix(ink, 0.16, smoothstep(0.35, 0.8, blur));
    if (colour.a < 1.0) paint.a += 0.5 * ink; else paint.rgb = mix(paint.rgb, dot_ink.rgb, ink * dot_ink.a);
  }
  shown = vec4(paint.rgb * paint.a, paint.a);
}
