#include "store/checksum.h"

#include <array>
#include <bit>
#include <cstdint>

namespace tubewright {
namespace {

using Block = std::array<std::uint32_t, 16>;
using Sum = std::array<std::uint32_t, 8>;

// FIPS 180-4, section 4.2.2: the first 32 bits of the fractions of the cube roots of the first 64 primes.
constexpr std::array<std::uint32_t, 64> constants{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74,
    0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d,
    0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e,
    0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5,
    0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};
// Section 5.3.3: the same of the square roots of the first 8.
constexpr Sum beginning{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};

Block block_at(const unsigned char* bytes) {
    Block block{};
    for (std::size_t i = 0; i < 64; ++i) block[i / 4] = block[i / 4] << 8 | bytes[i];
    return block;
}

/// Section 6.2.2. The message schedule is kept for the last 16 words only.
void take_in(Sum& sum, Block w) {
    auto [a, b, c, d, e, f, g, h] = sum;
    for (std::size_t t = 0; t < 64; ++t) {
        if (t >= 16) {
            const std::uint32_t x = w[(t - 15) % 16], y = w[(t - 2) % 16];
            w[t % 16] += (std::rotr(x, 7) ^ std::rotr(x, 18) ^ (x >> 3)) + w[(t - 7) % 16] + (std::rotr(y, 17) ^ std::rotr(y, 19) ^ (y >> 10));
        }
        const std::uint32_t one = h + (std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25)) + ((e & f) ^ (~e & g)) + constants[t] + w[t % 16];
        const std::uint32_t two = (std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
        h = g, g = f, f = e, e = d + one, d = c, c = b, b = a, a = one + two;
    }
    const Sum now{a, b, c, d, e, f, g, h};
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += now[i];
}

}  // namespace

std::string sha256(std::string_view bytes) {
    const auto* at = reinterpret_cast<const unsigned char*>(bytes.data());
    Sum sum = beginning;
    std::size_t done = 0;
    for (; bytes.size() - done >= 64; done += 64) take_in(sum, block_at(at + done));
    // Section 5.1.1: a one, zeros, and the length in bits.
    std::string rest(bytes.substr(done));
    rest += '\x80';
    rest.resize(rest.size() <= 56 ? 56 : 120, '\0');
    for (int shift = 56; shift >= 0; shift -= 8) rest += static_cast<char>(std::uint64_t{bytes.size()} * 8 >> shift & 0xFF);
    const auto* end = reinterpret_cast<const unsigned char*>(rest.data());
    for (std::size_t i = 0; i < rest.size(); i += 64) take_in(sum, block_at(end + i));
    std::string text;
    for (const std::uint32_t word : sum)
        for (int shift = 28; shift >= 0; shift -= 4) text += "0123456789abcdef"[word >> shift & 0xF];
    return text;
}

}  // namespace tubewright
