#pragma once
// Writing a whole file so that no save can lose the last one: write beside, flush, rename over.

#include <filesystem>
#include <string>
#include <variant>

#include "base/result.h"

namespace tubewright {

/// The few things that are asked of a disk. A false answer leaves things as they were, but for the
/// file beside.
class Disk {
public:
    virtual ~Disk() = default;
    virtual bool write_and_flush(const std::filesystem::path& path, const std::string& bytes) = 0;
    virtual bool rename_over(const std::filesystem::path& from, const std::filesystem::path& to) = 0;  ///< flushes the folder too
    virtual bool remove(const std::filesystem::path& path) = 0;  ///< fine where it is not there; flushes the folder too
};

class RealDisk : public Disk {
public:
    bool write_and_flush(const std::filesystem::path& path, const std::string& bytes) override;
    bool rename_over(const std::filesystem::path& from, const std::filesystem::path& to) override;
    bool remove(const std::filesystem::path& path) override;
};

struct Saved { bool operator==(const Saved&) const = default; };
struct CouldNotWrite { std::string file; };
struct CouldNotReplace { std::string file; };
using DiskTrouble = std::variant<CouldNotWrite, CouldNotReplace>;

/// After this, `path` holds either all of `bytes` or exactly what it held before.
Result<Saved, DiskTrouble> save_whole(Disk& disk, const std::filesystem::path& path, const std::string& bytes);

/// Something has that name already, be it a link that leads nowhere.
bool is_taken(const std::filesystem::path& path);

std::string sentence(const DiskTrouble& trouble);

}  // namespace tubewright
