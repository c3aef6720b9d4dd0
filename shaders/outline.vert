// The line round a body: its far side, grown outward by some pixels.
in vec3 place;    // mm in the operator's frame
in vec3 outward;  // unit, the mean normal at this place
uniform mat4 clip_from_operator;
uniform vec2 picture_size;   // pixels
uniform float line_pixels;   // how wide the line is

void main() {
    vec4 here = clip_from_operator * vec4(place, 1.0);
    vec2 way = (clip_from_operator * vec4(outward, 0.0)).xy * picture_size;
    float far = length(way);
    vec2 grown = far > 0.0 ? way / far : vec2(0.0);
    gl_Position = here + vec4(grown * 2.0 * line_pixels / picture_size * here.w, 0.0, 0.0);
}
