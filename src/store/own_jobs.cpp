#include "store/own_jobs.h"

#include "store/draft_file.h"
#include "store/folder_lock.h"
#include "store/job_text.h"
#include "store/json_tree.h"
#include "store/node.h"
#include "store/save.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t longest_name = 60;

fs::path whole_path(const fs::path& path) {
    std::error_code trouble;
    const fs::path whole = fs::weakly_canonical(path, trouble);
    return trouble ? path : whole;
}

bool inside(const fs::path& path, const fs::path& folder) {
    if (path.empty() || folder.empty()) return false;
    const fs::path inner = whole_path(path), outer = whole_path(folder);
    const auto [left, unused] = std::mismatch(outer.begin(), outer.end(), inner.begin(), inner.end());
    return left == outer.end();
}

/// The first of name, name-2, name-3 that no file has: a shipped one's name would take its place on the shelf.
fs::path free_path(const fs::path& folder, const JobFolders& folders, const std::string& name, int first) {
    for (int number = first;; ++number) {
        const std::string file = name + (number == 1 ? "" : "-" + std::to_string(number)) + ".json";
        if (!is_taken(folder / file) && !(number > 1 && is_taken(folders.shipped / file))) return folder / file;
    }
}

/// Where a save goes, and what has to be said of it.
struct Target {
    fs::path path;
    std::string said;
};

/// Whether the file is the one that we know.
bool is_as_known(const JobInHand& hand) {
    const auto there = guarded([&] { return bytes_of(hand.path); });
    return there.ok() && there.value() == hand.bytes;
}

std::string kept_beside(const fs::path& path, const fs::path& beside) {
    return path.filename().string() + " was changed meanwhile by another window or program; both are kept, yours is now " + beside.filename().string() + ".";
}

/// Who holds the folder's lock may ask.
Target target_for(const JobFolders& folders, const JobInHand& hand, const Draft& draft) {
    if (hand.path.empty()) {
        const std::string name = file_name_for(draft.name);
        return {free_path(folders.own, folders, name, is_taken(folders.shipped / (name + ".json")) ? 2 : 1), ""};
    }
    const std::string name = hand.path.stem().string();
    if (inside(hand.path, folders.shipped)) {
        const fs::path copy = free_path(folders.own, folders, name, 1);
        return {copy, "The shipped job stays as it is; your copy is " + copy.filename().string() + "."};
    }
    if (!is_taken(hand.path) || is_as_known(hand)) return {hand.path, ""};
    const fs::path beside = free_path(hand.path.parent_path(), folders, name, 2);
    return {beside, kept_beside(hand.path, beside)};
}

/// Whether the file says this already, in whatever layout.
bool says_already(const JobInHand& hand, const std::string& bytes, const Draft& draft, const Library& library) {
    if (hand.path.empty() || !is_as_known(hand)) return false;
    if (hand.bytes == bytes) return true;
    const auto known = read_draft_text(hand.bytes, hand.path.string(), library);
    return known.ok() && known.value() == draft;
}

/// The folder that the save goes to, made where it is not there yet.
Result<fs::path, NotKept> folder_for(const JobFolders& folders, const JobInHand& hand) {
    const bool elsewhere = !hand.path.empty() && !inside(hand.path, folders.shipped);
    const fs::path folder = elsewhere ? hand.path.parent_path() : folders.own;
    std::error_code trouble;
    fs::create_directories(folder, trouble);
    if (trouble) return NotKept{"The job is not kept: the folder " + folder.string() + " can't be made (" + trouble.message() + ")."};
    return folder;
}

}  // namespace

std::string file_name_for(const std::string& job_name) {
    std::string name;
    for (const char c : job_name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (c >= 'A' && c <= 'Z') name += static_cast<char>(c - 'A' + 'a');
        else if (letter) name += c;
        else if (!name.empty() && name.back() != '-') name += '-';
        if (name.size() == longest_name) break;
    }
    if (!name.empty() && name.back() == '-') name.pop_back();
    return name.empty() ? "job" : name;
}

Result<OpenedJob, Refusal> open_to_enter(const fs::path& path, const Library& library) {
    const fs::path whole = whole_path(path);
    auto bytes = guarded([&] { return bytes_of(whole); });
    if (!bytes.ok()) return bytes.trouble();
    auto draft = read_draft_text(bytes.value(), whole.string(), library);
    if (!draft.ok()) return draft.trouble();
    return OpenedJob{{whole, std::move(bytes).value()}, std::move(draft).value()};
}

Result<KeptJob, NotKept> keep_job(Disk& disk, const JobFolders& folders, const JobInHand& hand, const Draft& draft, const Library& library) {
    const std::string bytes = text_of(draft);
    const auto back = read_draft_text(bytes, "The job", library);
    if (!back.ok()) return NotKept{back.trouble().sentence()};
    if (says_already(hand, bytes, draft, library)) return KeptJob{hand, ""};
    const auto folder = folder_for(folders, hand);
    if (!folder.ok()) return folder.trouble();
    const auto lock = FolderLock::taken(folder.value());
    if (!lock) return NotKept{"The job is not kept: another window is saving in " + folder.value().string() + " and does not get done."};
    const Target target = target_for(folders, hand, draft);
    if (const auto saved = save_whole(disk, target.path, bytes); !saved.ok()) return NotKept{sentence(saved.trouble())};
    return KeptJob{{target.path, bytes}, target.said};
}

}  // namespace tubewright
