// Where light is kept off.
out vec4 colour;

void main() { colour = vec4(1.0); }
