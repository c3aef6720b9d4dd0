#include "store/checksum.h"

#include <catch2/catch.hpp>

namespace tubewright {

TEST_CASE("checksums are those of the standard's examples") {
    // NIST, Cryptographic Standards and Guidelines, examples with intermediate values, SHA-256: "abc", the message of 448 bits;
    // the million times "a" and the empty message are of the same collection (test vectors for byte-oriented messages).
    CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") == "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256(std::string(1000000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
    CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("the checksum pads every length right") {
    // Lengths about the end of a block, by coreutils' sha256sum: printf '%0Nd' 0 | sha256sum, for N = 55, 56, 63, 64, 119, 120.
    CHECK(sha256(std::string(55, '0')) == "9f8ef876f51f5313c91cc3f6b8119af09d8bbdd72098fa149b2780eb3591d6be");
    CHECK(sha256(std::string(56, '0')) == "bd03ac1428f0ea86f4b83a731ffc7967bb82866d8545322f888d2f6e857ffc18");
    CHECK(sha256(std::string(63, '0')) == "c7dc2d25e306355c97af916e8d50b27a948506a74c6b2dd1b29e2b63d0a3aa8c");
    CHECK(sha256(std::string(64, '0')) == "60e05bd1b195af2f94112fa7197a5c88289058840ce7c6df9693756bc6250f55");
    CHECK(sha256(std::string(119, '0')) == "c4487f9d6420e35698f9d9b4952e0a9f4735b0ce1729cdc68672ff30f20c6af2");
    CHECK(sha256(std::string(120, '0')) == "09719c55365a950c92a06122b6ce2634e3ce9b6dbcde1827171941658c7eedab");
}

}  // namespace tubewright
