#pragma once
// What was measured once is not measured again: a screen says the same words frame after frame.

#include <functional>
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
        bool operator==(const Question&) const = default;
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
        std::size_t operator()(const Question& q) const {
            std::size_t hash = std::hash<std::string_view>{}(q.text);
            for (const float number : {q.a, q.b, q.c}) hash = hash * 31 + std::hash<float>{}(number);
            return hash * 31 + q.what;
        }
    };
    struct Same {
        using is_transparent = void;
        bool operator()(const Question& a, const Question& b) const { return a == b; }
    };
    std::unordered_map<Kept, TextMeasure, Hash, Same> known_;
};

}  // namespace tubewright
