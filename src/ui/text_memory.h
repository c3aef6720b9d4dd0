#pragma once
// What was measured once is not measured again: a screen says the same words frame after frame.

#include <bit>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

#include "ui/text_layout.h"

namespace tubewright {

/// A text as it was laid out, or one number about it.
struct TextMeasure {
    TextLines lines;
    float size = 0;
    float below = 1.2f;    ///< height of the last line, as a share of its capitals
    bool whole = true;
    float number = 0;
};

class TextMemory {
public:
    /// `what` says which measure, in which type; the numbers are what it depends on besides.
    struct Question {
        unsigned what;
        float a, b, c;
        std::string_view text;
        bool operator==(const Question& other) const {
            // As -0 is 0 and would be kept apart: their bits, as they are kept by.
            return what == other.what && same(a, other.a) && same(b, other.b) && same(c, other.c) && text == other.text;
        }
        static bool same(float one, float two) { return std::bit_cast<std::uint32_t>(one) == std::bit_cast<std::uint32_t>(two); }
    };

    /// The answer stays where it is until forget().
    template <class Measure>
    const TextMeasure& answer(const Question& question, Measure measure) {
        const auto found = known_.find(question);
        if (found != known_.end()) return found->second;
        return known_.emplace(Kept{question, std::string(question.text)}, measure()).first->second;
    }
    void forget() { known_.clear(); }
    /// Texts that change, a count or a clock, would pile up in a long day.
    bool is_full() const { return known_.size() > 4000; }

private:
    struct Kept {
        Question question;
        std::string text;
        Kept(const Question& asked, std::string kept) : question(asked), text(std::move(kept)) { question.text = {}; }
        operator Question() const { return {question.what, question.a, question.b, question.c, text}; }
    };
    struct Hash {
        using is_transparent = void;
        /// Eight letters at a time: a screen asks some hundreds of questions in each frame it draws.
        std::size_t operator()(const Question& q) const {
            std::uint64_t hash = (std::uint64_t{std::bit_cast<std::uint32_t>(q.a)} << 32 | std::bit_cast<std::uint32_t>(q.b)) ^ q.what;
            mix(hash, std::bit_cast<std::uint32_t>(q.c) ^ std::uint64_t{q.text.size()} << 32);
            std::string_view rest = q.text;
            for (std::uint64_t letters = 0; !rest.empty(); letters = 0) {
                const std::size_t taken = rest.size() < sizeof letters ? rest.size() : sizeof letters;
                std::memcpy(&letters, rest.data(), taken);
                mix(hash, letters);
                rest.remove_prefix(taken);
            }
            return hash;
        }
        static void mix(std::uint64_t& hash, std::uint64_t more) {
            hash = (hash ^ more) * 0x9e3779b97f4a7c15u;  // 2^64 over the golden ratio
            hash ^= hash >> 32;
        }
    };
    struct Same {
        using is_transparent = void;
        bool operator()(const Question& a, const Question& b) const { return a == b; }
    };
    std::unordered_map<Kept, TextMeasure, Hash, Same> known_;
};

}  // namespace tubewright
