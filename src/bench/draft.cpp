#include "bench/draft.h"

namespace tubewright {

std::optional<Lack> lack_of(const Draft& job, const DraftLine& line) {
    if (!line.tube && !job.tube) return NoTube{};
    if (!line.bender && !job.bender) return NoBender{};
    for (const End end : {End::A, End::B})
        if (line.end(end).fitting.empty()) return NoFitting{end};
    if (const auto route = route_from(line.route); !route.ok()) return NoRoute{route.trouble()};
    return std::nullopt;
}

bool is_unfinished(const Draft& job, const DraftLine& line) { return line.unfinished || lack_of(job, line); }

}  // namespace tubewright
