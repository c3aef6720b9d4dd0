#include "stock/fit_list.h"

#include <bit>

namespace tubewright {

namespace {

constexpr int field_bits = 64;
constexpr std::size_t most_in_half = 50'000, most_fits = 60'000;

}  // namespace

FitList::FitList(const PlanSearch& of) : search(of), least_kept(of.saw() + std::max<std::int64_t>(1, of.keep())) {
    lay_out_fields();
    if (!fields_suffice) return;
    gather_openables();
    for (const std::size_t first_kind : {0, 1}) halves_[first_kind] = half(first_kind);
}

void FitList::lay_out_fields() {
    int at = 0;
    bool in_high = false;
    for (const CutKind& kind : search.kinds) {
        const int bits = static_cast<int>(std::bit_width(kind.places.size()));
        if (at + bits + 1 > field_bits) {
            if (in_high) return;
            in_high = true;
            at = 0;
        }
        fields.push_back({at, in_high, (std::uint64_t{1} << bits) - 1});
        all = all + fields.back().times(kind.places.size());
        spare = spare + fields.back().times(std::uint64_t{1} << bits);
        need += kind.need * static_cast<std::int64_t>(kind.places.size());
        at += bits + 1;
    }
    fields_suffice = true;
}

void FitList::gather_openables() {
    for (std::size_t i = 0; i < search.rooms.size(); ++i) {
        const RoomKind& room = search.rooms[i];
        const bool stick = room.from != RoomKind::From::offcut;
        auto there = std::find_if(openables.begin(), openables.end(), [&](const Openable& other) { return other.room == room.room && other.stick == stick; });
        if (there == openables.end()) there = openables.insert(there, {room.room, stick, false, 0, 0, 0});
        if (room.from == RoomKind::From::bought) {
            there->for_sale = true;
            there->sale_room = i;
        } else {
            there->on_rack = room.count;
            there->rack_room = i;
        }
    }
}

/// All that can be taken together of every second kind, the shortest first.
std::vector<FitList::Half> FitList::half(std::size_t first_kind) const {
    std::int64_t longest = 0;
    for (const Openable& openable : openables) longest = std::max(longest, openable.room);
    std::vector<Half> sums{{0, {}}};
    for (std::size_t kind = first_kind; kind < fields.size(); kind += 2) {
        const std::size_t before = sums.size();
        for (std::uint64_t count = 1; count <= search.kinds[kind].places.size(); ++count)
            for (std::size_t i = 0; i < before && sums.size() <= most_in_half; ++i) {
                const std::int64_t sum = sums[i].need + search.kinds[kind].need * static_cast<std::int64_t>(count);
                if (sum <= longest) sums.push_back({sum, sums[i].pieces + fields[kind].times(count)});
            }
    }
    std::sort(sums.begin(), sums.end(), [](const Half& a, const Half& b) { return a.need < b.need; });
    return sums;
}

bool FitList::list(std::int64_t most_waste) {
    fits.clear();
    const auto& [one_half, other_half] = halves_;
    if (!fields_suffice || one_half.size() > most_in_half || other_half.size() > most_in_half) return false;
    const std::int64_t most_rest = std::min(search.saw() + most_waste, least_kept - 1);
    for (std::size_t of = 0; of < openables.size(); ++of)
        for (const Half& one : one_half) {
            const std::int64_t room = openables[of].room - one.need;
            if (room < 0) break;
            auto other = std::lower_bound(other_half.begin(), other_half.end(), room - most_rest, [](const Half& half, std::int64_t least) { return half.need < least; });
            for (; other != other_half.end() && other->need <= room; ++other) {
                if (one.need + other->need == 0) continue;
                if (fits.size() == most_fits) return false;
                fits.push_back({one.pieces + other->pieces, one.need + other->need, std::max<std::int64_t>(0, room - other->need - search.saw()), of});
            }
        }
    std::stable_sort(fits.begin(), fits.end(), [](const Fit& a, const Fit& b) { return a.waste != b.waste ? a.waste < b.waste : a.need > b.need; });
    return true;
}

std::int64_t FitList::steps_to_list() const { return static_cast<std::int64_t>(openables.size() * halves_[0].size() + fits.size()) / 4; }

}  // namespace tubewright
