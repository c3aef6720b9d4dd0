#include "shell/pdf_file.h"

#include <fstream>
#include <iterator>

#include "store/save.h"

namespace tubewright {
namespace {

std::string font_in(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

bool begins_as_pdf(const std::filesystem::path& path) {
    std::error_code ignored;
    std::string start(5, ' ');
    // A pipe would keep us waiting.
    if (std::filesystem::is_regular_file(path, ignored)) std::ifstream(path, std::ios::binary).read(start.data(), static_cast<std::streamsize>(start.size()));
    return start == "%PDF-";
}

}  // namespace

std::optional<Lettering> read_letters(const std::filesystem::path& assets) {
    const std::filesystem::path fonts = assets / "fonts";
    auto letters = Lettering::of({font_in(fonts / "B612-Regular.otf"), font_in(fonts / "B612-Bold.otf"), font_in(fonts / "DejaVuSans.ttf"), font_in(fonts / "DejaVuSans-Bold.ttf")});
    if (!letters.ok()) return std::nullopt;
    return std::move(letters).value();
}

std::optional<Refusal> bar_to_pdf(const std::filesystem::path& path, const std::string& said) {
    std::error_code ignored;
    const auto refused = [&](const std::string& what) { return Refusal{said, "", what, "the name of a PDF file in a folder that is there"}; };
    if (path.empty() || std::filesystem::is_directory(path, ignored)) return refused("is no file name");
    if (!path.parent_path().empty() && !std::filesystem::is_directory(path.parent_path(), ignored)) return refused("lies in no folder that is there");
    if (is_taken(path) && !begins_as_pdf(path)) return refused("is a file that is no PDF, and is not written over");
    return std::nullopt;
}

std::optional<std::string> write_pdf(const std::filesystem::path& path, const std::string& bytes) {
    if (bytes.empty()) return "The PDF could not be made.";
    RealDisk disk;
    if (const auto saved = save_whole(disk, path, bytes); !saved.ok()) return sentence(saved.trouble());
    return std::nullopt;
}

}  // namespace tubewright
