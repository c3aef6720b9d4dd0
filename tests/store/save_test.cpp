#include "store/save.h"

#include <map>

#include "desk.h"

namespace tubewright {
namespace {

/// A disk in memory whose plug is pulled after some steps; a cut write leaves half the bytes.
class PlugDisk : public Disk {
public:
    std::map<std::string, std::string> files;
    int steps_left = 0;

    bool write_and_flush(const std::filesystem::path& path, const std::string& bytes) override {
        const bool whole = steps_left-- > 0;
        files[path.string()] = whole ? bytes : bytes.substr(0, bytes.size() / 2);
        return whole;
    }
    bool rename_over(const std::filesystem::path& from, const std::filesystem::path& to) override {
        if (steps_left-- <= 0) return false;
        files[to.string()] = files[from.string()];
        files.erase(from.string());
        return true;
    }
    bool remove(const std::filesystem::path& path) override {
        if (steps_left-- <= 0) return false;
        files.erase(path.string());
        return true;
    }
};

}  // namespace

TEST_CASE("a save cut short at any step leaves the old file or the new one, whole") {
    bool finished = false;
    int plug = 0;
    for (; !finished; ++plug) {
        INFO("plug pulled before step " << plug);
        PlugDisk disk;
        disk.files["rail.json"] = "the old one";
        disk.steps_left = plug;
        finished = save_whole(disk, "rail.json", "new").ok();
        CHECK(disk.files["rail.json"] == (finished ? "new" : "the old one"));
    }
    CHECK(plug == 3);  // before the write, before the rename, and not at all
}

TEST_CASE("a real save puts the bytes there and leaves nothing beside") {
    const OwnFolder own;
    RealDisk disk;
    const auto path = own.write("job.json", "old");
    const std::string bytes(100000, 'x');
    REQUIRE(save_whole(disk, path, bytes).ok());
    CHECK(bytes_in(path) == bytes);
    CHECK_FALSE(std::filesystem::exists(path.string() + ".new"));
}

TEST_CASE("a save into a folder that is not there says so and changes nothing") {
    const OwnFolder own;
    RealDisk disk;
    const auto saved = save_whole(disk, own.path() / "nowhere" / "job.json", "new");
    REQUIRE_FALSE(saved.ok());
    CHECK(sentence(saved.trouble()) == "No room or no permission to write job.json; what was there is untouched.");
    CHECK(std::filesystem::is_empty(own.path()));
}

TEST_CASE("a save over a folder leaves the folder and nothing beside") {
    const OwnFolder own;
    RealDisk disk;
    own.write("job.json/inside", "kept");
    const auto saved = save_whole(disk, own.path() / "job.json", "new");
    REQUIRE_FALSE(saved.ok());
    CHECK(sentence(saved.trouble()) == "job.json was written beside, but could not be put in its place.");
    CHECK(bytes_in(own.path() / "job.json/inside") == "kept");
    CHECK_FALSE(std::filesystem::exists(own.path() / "job.json.new"));
}

}  // namespace tubewright
