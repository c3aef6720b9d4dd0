// The line round a body.
uniform vec3 ink;  // red, green, blue, 0 to 1
out vec4 colour;

void main() { colour = vec4(ink, 1.0); }
