// A body in the light of a workshop: a broad lamp above, a strip of window light behind the
// operator, and the bench throwing some light back from below.
in vec3 seen_place;       // mm in the operator's frame
in vec3 seen_normal;
uniform vec3 eye;         // mm
uniform vec3 light_way;   // unit, towards the lamp
uniform vec3 ink;         // red, green, blue, 0 to 1
uniform float shine;      // share of the surroundings that is mirrored, 0 to 1
out vec4 colour;

// What a mirror in this direction would show, 0 dark to 1 bright.
float surroundings(vec3 way) {
    float sky = mix(0.10, 0.58, smoothstep(-0.45, 0.75, way.z));
    float lamp = smoothstep(0.72, 0.90, dot(way, light_way));
    float strip = smoothstep(0.16, 0.26, way.z) * (1.0 - smoothstep(0.42, 0.54, way.z)) * smoothstep(0.1, 0.6, -way.y);
    return sky + 0.75 * lamp + 0.28 * strip;
}

void main() {
    vec3 n = normalize(seen_normal);
    vec3 to_eye = normalize(eye - seen_place);
    float lit = max(dot(n, light_way), 0.0);
    float above = 0.5 + 0.5 * n.z;
    float diffuse = 0.34 + 0.26 * above + 0.52 * lit;
    vec3 mirrored = reflect(-to_eye, n);
    float bright = surroundings(mirrored);
    float edge = pow(1.0 - max(dot(n, to_eye), 0.0), 3.0);
    vec3 body = ink * diffuse;
    vec3 metal = ink * (0.26 + 0.92 * bright) + vec3(0.20) * smoothstep(0.8, 1.3, bright);
    vec3 result = mix(body, metal, shine * 0.72) + vec3(0.10) * edge * shine;
    // Signs are even in colour, so that blue is the same blue everywhere.
    float sign_like = 1.0 - smoothstep(0.0, 0.02, shine);
    result = mix(result, ink * (0.80 + 0.24 * above), sign_like);
    colour = vec4(clamp(result, 0.0, 1.0), 1.0);
}
