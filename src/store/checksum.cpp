#include "store/checksum.h"

#include <sha2.h>

#include <array>

namespace tubewright {

std::string sha256(std::string_view bytes) {
    std::array<char, SHA256_DIGEST_STRING_LENGTH> digits{};
    SHA256Data(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size(), digits.data());
    return digits.data();
}

}  // namespace tubewright
