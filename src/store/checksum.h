#pragma once
// A checksum that tells whether bytes came back as they were.

#include <string>
#include <string_view>

namespace tubewright {

/// SHA-256 of the bytes (FIPS 180-4), 64 lower case hexadecimal digits.
std::string sha256(std::string_view bytes);

}  // namespace tubewright
