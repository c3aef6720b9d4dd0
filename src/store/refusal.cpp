#include "store/refusal.h"

namespace tubewright {
namespace {

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }
bool continues_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

std::string on_one_line(std::string text) {
    for (char& c : text)
        if (is_control(c)) c = '?';
    return text;
}

}  // namespace

std::string in_short(const std::string& text) {
    constexpr std::size_t longest = 60;
    if (text.size() <= longest) return on_one_line(text);
    std::size_t cut = longest;
    while (cut > 0 && continues_letter(text[cut])) --cut;
    return on_one_line(text.substr(0, cut)) + "...";
}

std::string Refusal::sentence() const {
    return on_one_line(file + (place.empty() ? "" : ", " + place) + " " + what + "; allowed: " + allowed + ".");
}

}  // namespace tubewright
