#pragma once
// Fits: cuts that leave too little of a length to keep. With many short cuts there are too many patterns to list, but few of them
// come out so close.

#include "stock/plan_search.h"

namespace tubewright {

/// So many of each kind, in fields with a bit to spare each, so that all are compared and subtracted at once.
struct Counts {
    std::uint64_t low = 0, high = 0;
    bool operator==(const Counts&) const = default;
    Counts operator-(const Counts& other) const { return {low - other.low, high - other.high}; }
    Counts operator+(const Counts& other) const { return {low + other.low, high + other.high}; }
};

/// Where one kind is in `Counts`.
struct CountField {
    int shift;
    bool in_high;
    std::uint64_t mask;
    std::uint64_t of(const Counts& counts) const { return ((in_high ? counts.high : counts.low) >> shift) & mask; }
    Counts times(std::uint64_t count) const { return in_high ? Counts{0, count << shift} : Counts{count << shift, 0}; }
};

/// Lengths of one kind that can be opened: as long as each other, stick or offcut. Sticks on the rack go before those for sale.
struct Openable {
    std::int64_t room;
    bool stick, for_sale;
    int on_rack;
    std::size_t rack_room, sale_room;  ///< in the search's `rooms`
};

struct Fit {
    Counts pieces;
    std::int64_t need, waste;
    std::size_t of;  ///< in `openables`
};

class FitList {
public:
    explicit FitList(const PlanSearch& search);
    /// All that waste no more than that, those that waste least first; false where there are too many.
    bool list(std::int64_t most_waste);
    std::int64_t steps_to_list() const;
    bool enough(const Counts& there, const Counts& taken) const {
        return (((there.low | spare.low) - taken.low) & spare.low) == spare.low && (((there.high | spare.high) - taken.high) & spare.high) == spare.high;
    }
    int count(std::size_t kind, const Counts& counts) const { return static_cast<int>(fields[kind].of(counts)); }

    const PlanSearch& search;
    bool fields_suffice = false;     ///< else nothing else is known
    std::vector<CountField> fields;  ///< of each kind
    Counts all, spare;               ///< all cuts; the bits to spare
    std::int64_t need = 0;           ///< of all cuts
    std::int64_t least_kept;         ///< the least rest of a length of which something is kept
    std::vector<Openable> openables;
    std::vector<Fit> fits;

private:
    struct Half { std::int64_t need; Counts pieces; };
    void lay_out_fields();
    void gather_openables();
    std::vector<Half> half(std::size_t first_kind) const;
    std::vector<Half> halves_[2];
};

}  // namespace tubewright
