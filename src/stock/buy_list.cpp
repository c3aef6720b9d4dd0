#include "stock/buy_list.h"

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

Result<BuyList, BuyTrouble> parts_for(const std::vector<LineNeeds>& lines) {
    BuyList list;
    struct Seen { Joint joint; int ends; };
    std::map<std::string, Seen> joints;
    for (const LineNeeds& line : lines) {
        bool carries_joint = false;
        for (const EndNeeds* end : {&line.a, &line.b}) {
            if (!end->nut.empty()) ++list[{BuyKind::nut, end->nut, {line.tube.outside, {}, {}}}];
            if (!end->sleeve.empty()) ++list[{BuyKind::sleeve, end->sleeve, {line.tube.outside, {}, {}}}];
            const Joint& joint = end->joint;
            if (joint.kind == Joint::Kind::port) continue;
            carries_joint = true;
            Seen& seen = joints.try_emplace(joint.name, Seen{joint, 0}).first->second;
            if (seen.joint.part != joint.part || seen.joint.kind != joint.kind) return BuyTrouble{TwoPartsForOne{joint.name, seen.joint.part, joint.part}};
            seen.joint.there |= joint.there;
            const int holds = joint.kind == Joint::Kind::tee ? 3 : 2;
            if (++seen.ends > holds) return BuyTrouble{TooManyEnds{joint.name, seen.ends, holds}};
        }
        const int clips = clips_for(line.finished, support_spacing(line.supports, line.tube.outside, carries_joint));
        if (clips > 0) list[{BuyKind::clip, {}, {line.tube.outside, {}, {}}}] += clips;
    }
    for (const auto& [name, seen] : joints)
        if (!seen.joint.there) ++list[{seen.joint.kind == Joint::Kind::tee ? BuyKind::tee : BuyKind::union_piece, seen.joint.part, {}}];
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
