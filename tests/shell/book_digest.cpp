#include "shell/book_digest.h"

#include <sstream>

#include "store/book_rows.h"
#include "store/checksum.h"

namespace tubewright {
namespace {

void write_row(std::ostream& out, const Row& row) {
    for (const Cell& cell : row)
        std::visit([&](const auto& value) {
            if constexpr (std::is_same_v<std::decay_t<decltype(value)>, std::monostate>) out << cell.index() << "-;";
            else out << cell.index() << ":" << value << ";";
        }, cell);
}

}  // namespace

std::string digest_of(const Work& work, const Settings& settings, const std::vector<UndoStep>& past) {
    std::ostringstream out;
    out << std::hexfloat;
    const BookRows rows = rows_of(work, settings, past, {});
    for (std::size_t table = 0; table < book_tables().size(); ++table) {
        out << "\n";
        for (const auto& [key, rest] : rows[table]) {
            write_row(out, key);
            write_row(out, rest);
            out << "\n";
        }
    }
    return sha256(out.str()).substr(0, 16);
}

}  // namespace tubewright
