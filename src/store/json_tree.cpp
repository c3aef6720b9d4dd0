#include "store/json_tree.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <nlohmann/json.hpp>
#include <vector>

#include "store/refusal.h"

namespace tubewright {
namespace {

using nlohmann::json;

constexpr std::uintmax_t largest_file = 4u << 20;
constexpr std::size_t deepest = 32;
const char* const json_text = "JSON text in UTF-8";

/// RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF.
std::size_t letter_length(const unsigned char* at, std::size_t left) {
    const auto follows = [&](std::size_t i, unsigned least = 0x80, unsigned most = 0xBF) { return i < left && at[i] >= least && at[i] <= most; };
    const unsigned first = at[0];
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF)
        return follows(1, first == 0xE0 ? 0xA0 : 0x80, first == 0xED ? 0x9F : 0xBF) && follows(2) ? 3 : 0;
    if (first >= 0xF0 && first <= 0xF4)
        return follows(1, first == 0xF0 ? 0x90 : 0x80, first == 0xF4 ? 0x8F : 0xBF) && follows(2) && follows(3) ? 4 : 0;
    return 0;
}

bool is_text(const std::string& bytes) {
    const auto* at = reinterpret_cast<const unsigned char*>(bytes.data());
    for (std::size_t i = 0; i < bytes.size();) {
        const std::size_t length = letter_length(at + i, bytes.size() - i);
        if (length == 0 || at[i] == 0) return false;
        i += length;
    }
    return true;
}

/// Builds the tree and keeps what the library's own builder lets pass: keys given twice, and depth.
class TreeBuilder : public json::json_sax_t {
public:
    TreeBuilder(const std::string& text, const std::string& file) : text_(text), file_(file) {}
    json take() { return std::move(root_); }

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(json::object()); }
    bool start_array(std::size_t) override { return open(json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override {
        keys_.back() = name;
        if (open_.back()->contains(name)) throw Refusal{file_, place(), "is given twice", "each key once"};
        return true;
    }

    bool parse_error(std::size_t position, const std::string& last, const nlohmann::detail::exception& why) override {
        const std::size_t end = std::min(position, text_.size());
        const auto line = 1 + std::count(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(end), '\n');
        const std::string where = "line " + std::to_string(line);
        if (why.id == 406) throw Refusal{file_, where, "holds a number that no machine can hold, " + in_short(last), "finite numbers"};
        if (position > text_.size()) throw Refusal{file_, where, "ends in the middle", json_text};
        std::size_t from = position > 0 ? position - 1 : 0, to = std::min(from + 12, text_.size());
        while (to < text_.size() && (static_cast<unsigned char>(text_[to]) & 0xC0) == 0x80) ++to;  // whole letters
        while (from > 0 && (static_cast<unsigned char>(text_[from]) & 0xC0) == 0x80) --from;
        throw Refusal{file_, where, "can't be read from \"" + in_short(text_.substr(from, to - from)) + "\" on", json_text};
    }

private:
    json* put(json value, int) {
        if (open_.empty()) return &(root_ = std::move(value));
        if (open_.back()->is_object()) return &((*open_.back())[keys_.back()] = std::move(value));
        open_.back()->push_back(std::move(value));
        return &open_.back()->back();
    }
    bool put(json value) { put(std::move(value), 0); return true; }

    bool open(json value) {
        if (open_.size() == deepest)
            throw Refusal{file_, place(), "is nested too deeply", "at most " + std::to_string(deepest) + " levels"};
        open_.push_back(put(std::move(value), 0));
        keys_.emplace_back();
        return true;
    }
    bool close() {
        open_.pop_back();
        keys_.pop_back();
        return true;
    }

    std::string place() const {
        std::string text;
        for (std::size_t i = 0; i < open_.size(); ++i) {
            if (open_[i]->is_array()) text += "[" + std::to_string(open_[i]->empty() ? 0 : open_[i]->size() - 1) + "]";
            else text += (text.empty() ? "" : ".") + in_short(keys_[i]);
        }
        return in_short(text);
    }

    const std::string& text_;
    const std::string& file_;
    json root_;
    std::vector<json*> open_;         // objects and lists not yet closed; they stay where they are until then
    std::vector<std::string> keys_;   // the key in hand of each
};

}  // namespace

std::string bytes_of(const std::filesystem::path& path) {
    namespace fs = std::filesystem;
    const std::string file = path.string();
    std::error_code trouble;
    const fs::file_status status = fs::status(path, trouble);
    if (status.type() == fs::file_type::not_found) throw Refusal{file, "", "is not there", "a file that exists"};
    if (status.type() == fs::file_type::none) throw Refusal{file, "", "can't be looked at (" + trouble.message() + ")", "a file that you may read"};
    if (status.type() == fs::file_type::directory) throw Refusal{file, "", "is a folder", "a file"};
    if (status.type() != fs::file_type::regular) throw Refusal{file, "", "is not a plain file", "a plain file"};
    errno = 0;
    std::ifstream in(path, std::ios::binary);
    if (!in) throw Refusal{file, "", std::string("can't be opened (") + std::strerror(errno) + ")", "a file that you may read"};
    const std::uintmax_t size = fs::file_size(path, trouble);
    if (trouble) throw Refusal{file, "", "can't be looked at (" + trouble.message() + ")", "a file that you may read"};
    std::string bytes(static_cast<std::size_t>(std::min(size, largest_file + 1)), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (in.bad()) throw Refusal{file, "", "can't be read to its end", "a file on a sound disk"};
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    return bytes;
}

void check_text(const std::string& text, const std::string& file, const std::string& allowed) {
    if (text.size() > largest_file) throw Refusal{file, "", "is larger than 4 MB", "files up to 4 MB"};
    if (text.find_first_not_of(" \t\r\n") == std::string::npos) throw Refusal{file, "", "is empty", allowed};
    if (!is_text(text)) throw Refusal{file, "", "is not text", allowed};
}

nlohmann::json tree_from(const std::string& text, const std::string& file) {
    check_text(text, file, json_text);
    TreeBuilder builder(text, file);
    json::sax_parse(text, &builder);
    return builder.take();
}

}  // namespace tubewright
