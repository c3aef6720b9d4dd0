#include "store/json_raw.h"

#include <nlohmann/json.hpp>

namespace tubewright {

/// Goes once through the text. That it is sound JSON, and not deep, has been looked at before.
class RawScanner {
public:
    RawScanner(const std::string& text, RawText& found) : text_(text), found_(found) {
        if (text_.rfind("\xEF\xBB\xBF", 0) == 0) at_ = 3;
        value("");
    }

private:
    char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }

    void space() {
        while (here() == ' ' || here() == '\t' || here() == '\r' || here() == '\n') ++at_;
    }

    bool takes(char c) {
        space();
        if (here() != c) return false;
        ++at_;
        return true;
    }

    std::string quoted() {
        space();
        const std::size_t from = at_++;
        while (at_ < text_.size() && text_[at_] != '"') at_ += text_[at_] == '\\' ? 2 : 1;
        ++at_;
        return text_.substr(from, at_ - from);
    }

    std::string whole_value() {
        space();
        const std::size_t from = at_;
        int depth = 0;
        do {
            const char c = here();
            if (c == '"') {
                quoted();
                continue;
            }
            if ((c == ',' || c == '}' || c == ']') && depth == 0) break;
            depth += (c == '{' || c == '[') - (c == '}' || c == ']');
            ++at_;
            if ((c == '}' || c == ']') && depth == 0) break;
        } while (at_ < text_.size());
        std::size_t to = at_;
        while (to > from && std::string(" \t\r\n").find(text_[to - 1]) != std::string::npos) --to;
        return text_.substr(from, to - from);
    }

    void member(const std::string& place) {
        const std::string raw = quoted(), key = nlohmann::json::parse(raw).get<std::string>();
        takes(':');
        space();
        const std::string inside = place + (place.empty() ? "" : ".") + key;
        if (key.rfind("x-", 0) == 0) found_.kept_[place].push_back({raw, whole_value()});
        else if (key == "bender" && here() == '{') found_.cards_[inside] = whole_value();
        else value(inside);
    }

    void value(const std::string& place) {
        if (takes('{')) {
            if (takes('}')) return;
            do member(place);
            while (takes(','));
            takes('}');
        } else if (takes('[')) {
            if (takes(']')) return;
            std::size_t i = 0;
            do value(place + "[" + std::to_string(i++) + "]");
            while (takes(','));
            takes(']');
        } else {
            whole_value();
        }
    }

    const std::string& text_;
    RawText& found_;
    std::size_t at_ = 0;
};

RawText::RawText(const std::string& text) { RawScanner(text, *this); }

KeptKeys RawText::kept(const std::string& place) const {
    const auto found = kept_.find(place);
    return found == kept_.end() ? KeptKeys{} : found->second;
}

std::string RawText::card(const std::string& place) const {
    const auto found = cards_.find(place);
    return found == cards_.end() ? std::string() : found->second;
}

}  // namespace tubewright
