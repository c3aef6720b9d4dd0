#pragma once
// A backup as bytes: one SQLite file that holds the person's files whole, each with its checksum.

#include <string>
#include <vector>

#include "base/result.h"

namespace tubewright {

struct KeptFile {
    std::string name;           ///< under the user's folder: is_persons_file(name)
    std::string bytes;
    bool is_sound_book = false; ///< a shop book that was whole when it was kept; false of every other file
    bool operator==(const KeptFile&) const = default;
};

struct Backup {
    std::string day;                  ///< on which it was made, such as 2026-11-29
    std::vector<KeptFile> files;      ///< by name, none twice
    std::vector<std::string> absent;  ///< files that were not there and are not to be there again, by name
    bool operator==(const Backup&) const = default;
};

/// Format 1. Throws DatabaseTrouble where memory runs out.
std::string backup_bytes(const Backup& backup);

/// Why bytes are no backup that can be gone back to; goes on after its name: "is damaged (...)".
struct BackupTrouble { std::string why; };
/// All of it, each checksum compared and each sound book looked through; or nothing.
Result<Backup, BackupTrouble> backup_from(const std::string& bytes);

}  // namespace tubewright
