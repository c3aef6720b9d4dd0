// A body in the light.
in vec3 place;   // mm in the operator's frame: x right, y away, z up
in vec3 normal;  // unit, out of the body
uniform mat4 clip_from_operator;
out vec3 seen_place;   // mm
out vec3 seen_normal;

void main() {
    seen_place = place;
    seen_normal = normal;
    gl_Position = clip_from_operator * vec4(place, 1.0);
}
