// A square of bench top, made from the number of its corner.
uniform mat4 clip_from_operator;
uniform float bench_top_z;   // mm in the operator's frame
uniform vec2 patch_middle;   // mm
uniform float patch_half;    // mm
out vec2 on_top;             // mm from the middle

void main() {
    vec2 corner = vec2(float(gl_VertexID % 2), float(gl_VertexID / 2)) * 2.0 - 1.0;
    on_top = corner * patch_half * 3.0;
    gl_Position = clip_from_operator * vec4(patch_middle + on_top, bench_top_z, 1.0);
}
