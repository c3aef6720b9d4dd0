#pragma once
// A scene's surfaces in the graphics driver's memory.

#include <vector>

#include "scene/scene.h"

namespace tubewright {

class SurfaceBuffers {
public:
    SurfaceBuffers() = default;
    SurfaceBuffers(const SurfaceBuffers&) = delete;
    SurfaceBuffers& operator=(const SurfaceBuffers&) = delete;
    ~SurfaceBuffers();

    void fill(const std::vector<Mesh>& meshes);
    std::size_t count() const { return parts_.size(); }
    Ink ink(std::size_t part) const { return parts_[part].ink; }
    void draw(std::size_t part) const;

private:
    struct Part {
        Ink ink;
        int count;
        std::size_t first;
    };
    std::vector<Part> parts_;
    unsigned array_ = 0, vertices_ = 0, indices_ = 0;
};

}  // namespace tubewright
