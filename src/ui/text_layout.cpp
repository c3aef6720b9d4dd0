#include "ui/text_layout.h"

#include <algorithm>
#include <cctype>
#include <cfloat>
#include <cstdint>
#include <string_view>

namespace tubewright {
namespace {

struct Letter {
    std::uint32_t code;
    std::size_t bytes;
};

/// The character that starts at `at`. A stray byte counts as one character of its own.
Letter letter_at(const std::string& text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
    const unsigned lead = byte(at);
    const std::size_t bytes = lead < 0x80 ? 1 : lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : lead >= 0xc0 ? 2 : 1;
    if (bytes == 1) return {lead, 1};
    std::uint32_t code = lead & (0xffu >> (bytes + 1));
    for (std::size_t i = 1; i < bytes; ++i) {
        if ((byte(at + i) & 0xc0u) != 0x80u) return {0xfffd, 1};
        code = code << 6 | (byte(at + i) & 0x3fu);
    }
    return {code, bytes};
}

/// Whether the font has a picture of its own for every character.
bool every_glyph(const ImFont& font, const std::string& text) {
    for (std::size_t at = 0; at < text.size();) {
        const Letter letter = letter_at(text, at);
        if (letter.code > 0xffff) return false;
        if (letter.code != '\n' && !font.FindGlyphNoFallback(static_cast<ImWchar>(letter.code))) return false;
        at += letter.bytes;
    }
    return true;
}

/// Puts a word that is too wide on lines of its own; the last piece is returned.
std::string broken(const ImFont& font, float size, std::string word, float width, TextLines& out) {
    while (text_width(font, size, word) > width) {
        std::size_t end = letter_at(word, 0).bytes;
        while (end < word.size()) {
            const std::size_t next = end + letter_at(word, end).bytes;
            if (text_width(font, size, word.substr(0, next)) > width) break;
            end = next;
        }
        if (end >= word.size()) break;
        out.words_whole = false;
        out.lines.push_back({word.substr(0, end), text_width(font, size, word.substr(0, end))});
        word.erase(0, end);
    }
    if (text_width(font, size, word) > width) out.words_whole = false;
    return word;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Whether a break between these two would tear a number from its fraction, its unit or what it counts,
/// a size from its other half, or an end from its letter: "201 3/4 in" read as 201 spoils a tube.
bool belongs_together(std::string_view word, std::string_view next) {
    if (word.empty() || next.empty()) return false;
    if (word == "×" || next == "×") return true;
    while (!next.empty() && std::ispunct(static_cast<unsigned char>(next.back()))) next.remove_suffix(1);
    if (next.size() == 1 && next[0] >= 'A' && next[0] <= 'Z') return true;
    if (next.empty()) return false;
    if (is_digit(next[0]) && (word == "bend" || word == "of")) return true;
    return is_digit(word.back()) && (is_digit(next[0]) || next == "in" || next == "mm");
}

struct Words {
    std::vector<std::string> words;
    std::vector<bool> tied;  ///< to the one before
};

Words words_of(const std::string& text) {
    Words out;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t space = std::min(text.find(' ', at), text.size());
        out.words.push_back(text.substr(at, space - at));
        out.tied.push_back(out.words.size() > 1 && belongs_together(out.words[out.words.size() - 2], out.words.back()));
        at = space + 1;
    }
    return out;
}

/// What may stand on a line by itself: a word, or several that belong together.
std::vector<std::string> pieces_of(const std::string& text) {
    const Words all = words_of(text);
    std::vector<std::string> pieces;
    for (std::size_t i = 0; i < all.words.size(); ++i) {
        if (all.tied[i]) pieces.back() += " " + all.words[i];
        else pieces.push_back(all.words[i]);
    }
    return pieces;
}

class Filling {
public:
    Filling(const ImFont& font, float size, float width, TextLines& out) : font_(font), size_(size), width_(width), space_(text_width(font, size, " ")), out_(out) {}

    void add(const std::string& piece) {
        const float wide = text_width(font_, size_, piece);
        const float longer = line_.empty() ? wide : so_far_ + space_ + wide;
        if (longer <= width_) {
            line_ += (line_.empty() ? "" : " ") + piece;
            so_far_ = longer;
            return;
        }
        if (wide > width_ && piece.find(' ') != std::string::npos) {
            out_.words_whole = false;
            for (const std::string& word : words_of(piece).words) add(word);
            return;
        }
        if (!line_.empty()) flush();
        line_ = wide > width_ ? broken(font_, size_, piece, width_, out_) : piece;
        so_far_ = wide > width_ ? text_width(font_, size_, line_) : wide;
    }
    void flush() {
        out_.lines.push_back({line_, so_far_});
        line_.clear();
        so_far_ = 0;
    }

private:
    const ImFont& font_;
    float size_, width_, space_;
    TextLines& out_;
    std::string line_;
    float so_far_ = 0;
};

void wrap_paragraph(const ImFont& font, float size, const std::string& text, float width, TextLines& out) {
    Filling filling(font, size, width, out);
    for (const std::string& piece : pieces_of(text)) filling.add(piece);
    filling.flush();
}

}  // namespace

float TextLines::widest() const {
    float most = 0;
    for (const TextLine& line : lines) most = std::max(most, line.width);
    return most;
}

float text_width(const ImFont& font, float size, const std::string& text) {
    if (text.empty()) return 0;
    return font.CalcTextSizeA(size, FLT_MAX, 0, text.data(), text.data() + text.size()).x;
}

TextLines lines_of(const ImFont& font, float size, const std::string& text, float width, bool wrap) {
    TextLines out;
    if (!wrap) {
        out.lines.push_back({text, text_width(font, size, text)});
    } else {
        for (std::size_t at = 0, end = 0; end < text.size() || at == 0; at = end + 1) {
            end = std::min(text.find('\n', at), text.size());
            wrap_paragraph(font, size, text.substr(at, end - at), width, out);
            if (end >= text.size()) break;
        }
    }
    for (TextLine& line : out.lines) line.known = every_glyph(font, line.text);
    return out;
}

float halved_width(const ImFont& font, float size, const std::string& text) {
    const std::vector<std::string> pieces = pieces_of(text);
    const float space = text_width(font, size, " ");
    std::vector<float> widths;
    float whole = -space;
    for (const std::string& piece : pieces) {
        widths.push_back(text_width(font, size, piece));
        whole += widths.back() + space;
    }
    float least = whole, first = -space;
    for (const float width : widths) {
        first += width + space;
        least = std::min(least, std::max(first, whole - first - space));
    }
    return std::max(least, 0.0f);
}

std::string shortened(const ImFont& font, float size, const std::string& text, float width) {
    if (text_width(font, size, text) <= width) return text;
    std::string kept;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t next = at + letter_at(text, at).bytes;
        if (text_width(font, size, text.substr(0, next) + "…") > width) break;
        kept = text.substr(0, next);
        at = next;
    }
    return kept + "…";
}

}  // namespace tubewright
