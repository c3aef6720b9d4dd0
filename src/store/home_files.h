#pragma once
// What lies in the user's own folder: which of its files are the person's, and which book is in use.

#include <filesystem>
#include <string>
#include <vector>

namespace tubewright {

/// Which line is at the bench.
inline constexpr const char* bench_note = "at-the-bench.json";

/// shop-book.db is number 1, shop-book-2.db number 2, and so on: a fresh book is begun beside a refused one.
std::filesystem::path book_path(const std::filesystem::path& home, int number);
/// The youngest book there is; number 1 where there is none yet.
int youngest_book(const std::filesystem::path& home);
/// It is one of those books, by its name alone.
bool is_book(const std::string& name);

/// A file of the person's, by its name under the folder, such as shop-book.db or jobs/rail.json: the books and what is left of
/// older ones, the note of the bench, own lists (tubes, fittings, ...), and what lies in jobs, benders, points and bends. Not
/// what is just being written, and nothing that a name could lead to outside of the folder.
bool is_persons_file(const std::string& name);
/// All of them that are there, by name.
std::vector<std::string> persons_files(const std::filesystem::path& home);

}  // namespace tubewright
