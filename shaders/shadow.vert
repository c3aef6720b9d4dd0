// A body flattened onto the bench top along the light, seen straight from above.
in vec3 place;               // mm in the operator's frame
uniform vec3 light_way;      // unit, towards the lamp
uniform float bench_top_z;   // mm
uniform vec2 patch_middle;   // mm: the square of bench top that is kept
uniform float patch_half;    // mm

void main() {
    vec2 fallen = place.xy - light_way.xy / light_way.z * (place.z - bench_top_z);
    gl_Position = vec4((fallen - patch_middle) / patch_half, 0.0, 1.0);
}
