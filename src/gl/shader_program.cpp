#include "gl/shader_program.h"

#include <glad/gl.h>

#include <utility>
#include <vector>

namespace tubewright {
namespace {

const char* opening(GlFlavour flavour) {
    switch (flavour) {
        case GlFlavour::core_33: return "#version 330 core\n";
        case GlFlavour::desktop_31: return "#version 140\n";
        case GlFlavour::es_30: return "#version 300 es\nprecision highp float;\n";
    }
    return "";
}

/// The first line of what the driver says.
std::string first_line(std::string said) { return said.substr(0, said.find_first_of(std::string("\n\0", 2))); }

struct Compiled {
    unsigned id;
    std::string refused;  ///< empty when it is well
};

Compiled compiled(unsigned kind, GlFlavour flavour, const std::string& text) {
    const unsigned id = glCreateShader(kind);
    const char* parts[] = {opening(flavour), text.c_str()};
    glShaderSource(id, 2, parts, nullptr);
    glCompileShader(id);
    int well = 0;
    glGetShaderiv(id, GL_COMPILE_STATUS, &well);
    if (well) return {id, ""};
    std::string said(1024, '\0');
    glGetShaderInfoLog(id, static_cast<int>(said.size()), nullptr, said.data());
    const std::string line = first_line(said);
    return {id, line.empty() ? "no reason given" : line};
}

}  // namespace

bool load_gl(GlFlavour flavour, GlLookUp look_up) {
    return (flavour == GlFlavour::es_30 ? gladLoadGLES2(look_up) : gladLoadGL(look_up)) != 0;
}

Result<ShaderProgram, ShaderRefused> ShaderProgram::made(GlFlavour flavour, const std::string& name, const std::string& vertex, const std::string& fragment) {
    const Compiled first = compiled(GL_VERTEX_SHADER, flavour, vertex), second = compiled(GL_FRAGMENT_SHADER, flavour, fragment);
    std::string refused = first.refused.empty() ? second.refused : first.refused;
    const unsigned id = glCreateProgram();
    if (refused.empty()) {
        glAttachShader(id, first.id);
        glAttachShader(id, second.id);
        // Not layout(location): GLSL 1.40 has none.
        const char* inputs[] = {"place", "normal", "outward"};
        for (unsigned i = 0; i < 3; ++i) glBindAttribLocation(id, i, inputs[i]);
        glLinkProgram(id);
        int well = 0;
        glGetProgramiv(id, GL_LINK_STATUS, &well);
        if (!well) {
            std::string said(1024, '\0');
            glGetProgramInfoLog(id, static_cast<int>(said.size()), nullptr, said.data());
            refused = "linking: " + first_line(said);
        }
    }
    glDeleteShader(first.id);
    glDeleteShader(second.id);
    if (refused.empty()) return ShaderProgram(id);
    glDeleteProgram(id);
    return ShaderRefused{"The graphics driver refuses the shader \"" + name + "\": " + refused};
}

ShaderProgram::ShaderProgram(ShaderProgram&& other) noexcept : id_(std::exchange(other.id_, 0)) {}

ShaderProgram& ShaderProgram::operator=(ShaderProgram&& other) noexcept {
    std::swap(id_, other.id_);
    return *this;
}

ShaderProgram::~ShaderProgram() {
    if (id_) glDeleteProgram(id_);
}

void ShaderProgram::use() const { glUseProgram(id_); }
void ShaderProgram::set(const char* name, float value) const { glUniform1f(glGetUniformLocation(id_, name), value); }
void ShaderProgram::set(const char* name, int value) const { glUniform1i(glGetUniformLocation(id_, name), value); }
void ShaderProgram::set(const char* name, const Eigen::Vector2f& value) const { glUniform2fv(glGetUniformLocation(id_, name), 1, value.data()); }
void ShaderProgram::set(const char* name, const Eigen::Vector3f& value) const { glUniform3fv(glGetUniformLocation(id_, name), 1, value.data()); }
void ShaderProgram::set(const char* name, const Eigen::Matrix4f& value) const { glUniformMatrix4fv(glGetUniformLocation(id_, name), 1, 0, value.data()); }

}  // namespace tubewright
