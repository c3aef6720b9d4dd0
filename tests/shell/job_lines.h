#pragma once
// The shipped trailer job, and what lies in a job's file as the program reads it.

#include <filesystem>
#include <stdexcept>
#include <string>

#include "store/job_file.h"

namespace tubewright {

inline const std::string shipped_trailer = TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json";

inline Library shipped_library() {
    const auto read = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "");
    if (!read.ok()) throw std::runtime_error(read.trouble().sentence());
    return read.value();
}

inline Line line_in(const std::filesystem::path& path, const std::string& name) {
    const auto job = read_job(path, shipped_library());
    if (!job.ok()) throw std::runtime_error(job.trouble().sentence());
    for (const Line& line : job.value().lines)
        if (line.name == name) return line;
    throw std::runtime_error("no line called " + name);
}

}  // namespace tubewright
