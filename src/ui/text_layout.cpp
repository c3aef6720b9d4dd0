#include "ui/text_layout.h"

#include <algorithm>
#include <cfloat>
#include <cstdint>

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

void wrap_paragraph(const ImFont& font, float size, const std::string& text, float width, TextLines& out) {
    std::string line;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t space = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, space - at);
        const std::string longer = line.empty() ? word : line + " " + word;
        if (text_width(font, size, longer) <= width) {
            line = longer;
        } else {
            if (!line.empty()) out.lines.push_back({line, text_width(font, size, line)});
            line = broken(font, size, word, width, out);
        }
        at = space + 1;
    }
    out.lines.push_back({line, text_width(font, size, line)});
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
        return out;
    }
    std::size_t at = 0;
    while (true) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        wrap_paragraph(font, size, text.substr(at, end - at), width, out);
        if (end >= text.size()) return out;
        at = end + 1;
    }
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

bool every_glyph(const ImFont& font, const std::string& text) {
    for (std::size_t at = 0; at < text.size();) {
        const Letter letter = letter_at(text, at);
        if (letter.code > 0xffff) return false;
        if (letter.code != '\n' && !font.FindGlyphNoFallback(static_cast<ImWchar>(letter.code))) return false;
        at += letter.bytes;
    }
    return true;
}

}  // namespace tubewright
