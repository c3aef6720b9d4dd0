#include "stock/buy_list.h"

#include <algorithm>

namespace tubewright {

namespace {

constexpr ExactLength same_size{50};

}  // namespace

ExactLength support_spacing(SupportRow row, ExactLength outside, bool joints) {
    const SupportSpacing* begin = row == SupportRow::steel ? steel_supports.begin() : aluminium_supports.begin();
    const SupportSpacing* end = row == SupportRow::steel ? steel_supports.end() : aluminium_supports.end();
    ExactLength spacing{begin->spacing.um * outside.um / begin->outside.um};
    for (const SupportSpacing* at = begin; at != end && at->outside <= outside + same_size; ++at) spacing = at->spacing;
    return {joints ? spacing.um * percent_with_joints / 100 : spacing.um};
}

int clips_for(ExactLength length, ExactLength spacing) {
    return length.um <= 0 ? 0 : static_cast<int>((length.um + spacing.um - 1) / spacing.um) - 1;
}

BuyList parts_for(const std::vector<LineNeeds>& lines) {
    BuyList list;
    struct Needed { std::vector<JointEnd> ends; bool missing = false; };
    std::map<std::pair<std::string, Joint>, Needed> joints;
    for (const LineNeeds& line : lines) {
        for (const EndNeeds* end : {&line.a, &line.b}) {
            if (line.missing > 0 && !end->nut.empty()) list[{BuyKind::nut, end->nut, {line.tube.outside, {}, {}}}] += line.missing;
            if (line.missing > 0 && !end->sleeve.empty()) list[{BuyKind::sleeve, end->sleeve, {line.tube.outside, {}, {}}}] += line.missing;
            if (!end->joint) continue;
            Needed& needed = joints[{line.job, *end->joint}];
            needed.ends.insert(needed.ends.end(), static_cast<std::size_t>(line.pieces), {line.tube.outside, end->fitting});
            needed.missing |= line.missing > 0;
        }
        const int clips = clips_for(line.finished, support_spacing(line.supports, line.tube.outside, line.a.joint || line.b.joint));
        if (clips > 0 && line.missing > 0) list[{BuyKind::clip, {}, {line.tube.outside, {}, {}}}] += clips * line.missing;
    }
    for (auto& [which, needed] : joints) {
        if (!needed.missing) continue;
        std::sort(needed.ends.begin(), needed.ends.end());
        const std::size_t held = ends_held(which.second.kind), joints_alike = (needed.ends.size() + held - 1) / held;
        std::vector<JointEnd> of_one;
        for (std::size_t i = 0; i < needed.ends.size(); i += joints_alike) of_one.push_back(needed.ends[i]);
        list[{which.second.kind == JointKind::tee ? BuyKind::tee : BuyKind::union_piece, {}, {}, {}, of_one}] += static_cast<int>(joints_alike);
    }
    return list;
}

BuyList sticks_for(const StockTube& tube, const PlanFound& plan) {
    BuyList list;
    for (const LengthCut& cut : plan.lengths)
        if (const auto* length = std::get_if<ExactLength>(&cut.from)) ++list[{BuyKind::stick, {}, tube, *length}];
    return list;
}

BuyList together(BuyList a, const BuyList& b) {
    for (const auto& [item, count] : b) a[item] += count;
    return a;
}

BuyList without(BuyList list, const BuyList& in_drawer) {
    for (const auto& [item, count] : in_drawer)
        if (const auto at = list.find(item); at != list.end() && (at->second -= count) <= 0) list.erase(at);
    return list;
}

BuyCost cost(const BuyList& list, const std::map<BuyItem, Money>& each) {
    BuyCost sum;
    for (const auto& [item, count] : list) {
        if (const auto price = each.find(item); price != each.end()) sum.known += count * price->second;
        else sum.unpriced.push_back(item);
    }
    return sum;
}

}  // namespace tubewright
