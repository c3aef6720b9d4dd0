#pragma once
// A vertex and a fragment shader, compiled and linked.

#include <Eigen/Core>
#include <string>

#include "base/result.h"
#include "gl/flavour.h"

namespace tubewright {

/// A shader that the graphics driver refuses, in one sentence.
struct ShaderRefused {
    std::string sentence;
};

class ShaderProgram {
public:
    /// `name` is for the sentence. Inputs: attribute 0 `place`, 1 `normal`, 2 `outward`.
    static Result<ShaderProgram, ShaderRefused> made(GlFlavour flavour, const std::string& name, const std::string& vertex, const std::string& fragment);
    ShaderProgram(ShaderProgram&& other) noexcept;
    ShaderProgram& operator=(ShaderProgram&& other) noexcept;
    ~ShaderProgram();

    void use() const;
    /// Uniforms of the program in use; one that the driver has left out is passed over.
    void set(const char* name, float value) const;
    void set(const char* name, int value) const;
    void set(const char* name, const Eigen::Vector2f& value) const;
    void set(const char* name, const Eigen::Vector3f& value) const;
    void set(const char* name, const Eigen::Matrix4f& value) const;

private:
    explicit ShaderProgram(unsigned id) : id_(id) {}
    unsigned id_ = 0;
};

}  // namespace tubewright
