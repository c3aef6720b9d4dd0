#pragma once
// What the fuzz targets share: the shipped library, and the way to stop where a law is broken.

#include <cstdio>
#include <cstdlib>
#include <string>

#include "store/library.h"

namespace tubewright {

inline const Library& shipped_library() {
    static const Library library = [] {
        auto read = read_library(std::string(TUBEWRIGHT_SOURCE_DIR) + "/assets", {});
        if (!read.ok()) {
            std::fprintf(stderr, "%s\n", read.trouble().sentence().c_str());
            std::abort();
        }
        return std::move(read).value();
    }();
    return library;
}

/// Not an assert: it holds in every build.
inline void hold(bool law, const char* what) {
    if (law) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

/// A refusal is one line about this file.
inline void hold_sentence(const Refusal& refusal, const std::string& file) {
    const std::string sentence = refusal.sentence();
    hold(sentence.rfind(file, 0) == 0 && sentence.find('\n') == std::string::npos && sentence.size() < 2000, "a refusal is one short line that begins with the file");
}

}  // namespace tubewright
