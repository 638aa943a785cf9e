#version 300 es
precision mediump float;
flat in vec4 colour;
out vec4 shown;
void main() { shown = vec4(colour.rgb * colour.a, colour.a); }
