#pragma once
// A checksum that tells whether bytes came back as they were.

#include <string>
#include <string_view>

namespace tubewright {

/// SHA-256 of the bytes, 64 lower case hexadecimal digits. National Institute of Standards and Technology, Secure Hash
/// Standard, FIPS 180-4, 2015, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.
std::string sha256(std::string_view bytes);

}  // namespace tubewright
