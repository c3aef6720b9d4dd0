#include "gl/surface_buffers.h"

#include <glad/gl.h>

#include <array>
#include <map>

namespace tubewright {
namespace {

struct Point {
    Eigen::Vector3f place, normal, outward;
};

/// The mean normal of all vertices at one place: an outline pushed out along it stays whole at sharp edges.
std::vector<Eigen::Vector3f> outward_of(const Mesh& mesh) {
    std::map<std::array<float, 3>, Eigen::Vector3f> sums;
    const auto key = [](const Vertex& vertex) { return std::array{vertex.at.x(), vertex.at.y(), vertex.at.z()}; };
    for (const Vertex& vertex : mesh.vertices) {
        const auto [entry, fresh] = sums.emplace(key(vertex), vertex.normal);
        if (!fresh) entry->second += vertex.normal;
    }
    std::vector<Eigen::Vector3f> outward;
    for (const Vertex& vertex : mesh.vertices) outward.push_back(sums.at(key(vertex)).normalized());
    return outward;
}

}  // namespace

SurfaceBuffers::~SurfaceBuffers() {
    if (array_) glDeleteVertexArrays(1, &array_);
    if (vertices_) glDeleteBuffers(1, &vertices_);
    if (indices_) glDeleteBuffers(1, &indices_);
}

void SurfaceBuffers::fill(const std::vector<Mesh>& meshes) {
    std::vector<Point> points;
    std::vector<std::uint32_t> indices;
    parts_.clear();
    for (const Mesh& mesh : meshes) {
        const auto base = static_cast<std::uint32_t>(points.size());
        parts_.push_back({mesh.ink, static_cast<int>(mesh.triangles.size()), indices.size()});
        const std::vector<Eigen::Vector3f> outward = outward_of(mesh);
        for (std::size_t i = 0; i < mesh.vertices.size(); ++i) points.push_back({mesh.vertices[i].at, mesh.vertices[i].normal, outward[i]});
        for (const std::uint32_t corner : mesh.triangles) indices.push_back(base + corner);
    }
    if (!array_) {
        glGenVertexArrays(1, &array_);
        glGenBuffers(1, &vertices_);
        glGenBuffers(1, &indices_);
    }
    glBindVertexArray(array_);
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(points.size() * sizeof(Point)), points.data(), GL_STATIC_DRAW);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(indices.size() * sizeof(std::uint32_t)), indices.data(), GL_STATIC_DRAW);
    for (unsigned i = 0; i < 3; ++i) {
        glEnableVertexAttribArray(i);
        glVertexAttribPointer(i, 3, GL_FLOAT, GL_FALSE, sizeof(Point), reinterpret_cast<const void*>(i * sizeof(Eigen::Vector3f)));
    }
    glBindVertexArray(0);
}

void SurfaceBuffers::draw(std::size_t part) const {
    glBindVertexArray(array_);
    glDrawElements(GL_TRIANGLES, parts_[part].count, GL_UNSIGNED_INT, reinterpret_cast<const void*>(parts_[part].first * sizeof(std::uint32_t)));
}

}  // namespace tubewright
