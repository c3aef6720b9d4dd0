#pragma once
// The program's own letters and the shipped jobs, for tests of paper.

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "bench/ordered.h"
#include "paper/lettering.h"
#include "store/job_file.h"
#include "store/library.h"

namespace tubewright {

inline Lettering own_letters() {
    const auto bytes = [](const std::string& name) {
        std::ifstream in(TUBEWRIGHT_SOURCE_DIR "/assets/fonts/" + name, std::ios::binary);
        return std::string(std::istreambuf_iterator<char>(in), {});
    };
    auto lettering = Lettering::of({bytes("B612-Regular.otf"), bytes("B612-Bold.otf"), bytes("DejaVuSans.ttf"), bytes("DejaVuSans-Bold.ttf")});
    if (!lettering.ok()) throw std::runtime_error("no fonts");
    return std::move(lettering).value();
}

inline const Library& shipped_library() {
    static const Library library = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "/nobody").value();
    return library;
}

inline Job shipped_job(const std::string& name) { return read_job(TUBEWRIGHT_SOURCE_DIR "/jobs/" + name, shipped_library()).value(); }

}  // namespace tubewright
