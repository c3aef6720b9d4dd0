// The bench top: a grid that fades out around, and soft shadows.
in vec2 on_top;              // mm from the middle
uniform vec2 patch_middle;   // mm
uniform float patch_half;    // mm: half the square that shadows are known for
uniform float line_apart;    // mm
uniform vec2 top_low, top_high;  // mm: opposite corners, beyond which there is no bench top
uniform vec3 background, top, line;  // red, green, blue, 0 to 1
uniform float shadow_depth;  // how dark, 0 to 1
uniform sampler2D shadows;   // red: 1 in the shadow
out vec4 colour;

float shadow_at(vec2 share) {
    float sum = 0.0;
    for (int i = -2; i <= 2; ++i)
        for (int j = -2; j <= 2; ++j)
            sum += texture(shadows, share + vec2(float(i), float(j)) * 0.0034).r;
    return sum / 25.0;
}

void main() {
    vec2 place = patch_middle + on_top;
    vec2 cell = place / line_apart;
    vec2 off = abs(fract(cell - 0.5) - 0.5) / fwidth(cell);
    float lined = 1.0 - smoothstep(0.5, 1.5, min(off.x, off.y));
    if (any(lessThan(place, top_low)) || any(greaterThan(place, top_high))) discard;
    vec3 result = mix(top, line, lined * 0.8);
    vec2 share = 0.5 + 0.5 * on_top / patch_half;
    if (all(greaterThan(share, vec2(0.02))) && all(lessThan(share, vec2(0.98))))
        result *= 1.0 - shadow_depth * shadow_at(share);
    float away = length(on_top) / patch_half;
    result = mix(result, background, smoothstep(0.75, 2.4, away));
    colour = vec4(result, 1.0);
}
