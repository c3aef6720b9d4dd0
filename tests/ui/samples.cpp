#include "ui/samples.h"

#include <stdexcept>

namespace tubewright {

std::vector<Sample> simple_samples();
std::vector<Sample> bench_samples();
std::vector<Sample> long_samples();
std::vector<Sample> entry_samples();
std::vector<Sample> card_samples();

ButtonView button(const std::string& id, const std::string& label, const Action& press, Weight weight) {
    ButtonView view;
    view.id = id;
    view.label = label;
    view.press = press;
    view.weight = weight;
    return view;
}

FooterView bench_footer(const std::string& main_label) {
    FooterView footer;
    footer.buttons = {button("back", "Back", Back{}), button("undo", "Undo", Undo{}), button("wrong", "Went wrong", WentWrong{}, Weight::warn),
                      button("next", main_label, Next{}, Weight::main)};
    footer.main_id = "next";
    footer.back_id = "back";
    return footer;
}

RibbonView sample_ribbon() {
    using Standing = RibbonBend::Standing;
    RibbonView ribbon;
    ribbon.bends = {{"1", 0.10, 0.15, Standing::coming},
                    {"2", 0.263, 0.288, Standing::done},
                    {"3", 0.434, 0.482, Standing::done},
                    {"4", 0.605, 0.653, Standing::now},
                    {"5", 0.792, 0.819, Standing::coming}};
    for (int i = 0; i <= 120; ++i)
        ribbon.ticks.push_back({i / 120.0, i % 8 == 0 ? 0 : i % 4 == 0 ? 1 : 2, i % 8 == 0 ? std::to_string(i / 4) : ""});
    ribbon.marks = {{0.6396, "19 3/16 in from A", true}};
    ribbon.waste_a = 0.004;
    ribbon.waste_b = 0.02;
    ribbon.tally = "formed 12 1/2 in, left 17 7/16 in";
    return ribbon;
}

PictureHandle sample_picture() {
    PictureHandle picture;
    picture.anchors = {{Anchor::hook_end, {0.12f, 0.35f}}, {Anchor::lever, {0.85f, 0.8f}}, {Anchor::after_pull, {0.68f, 0.2f}}, {Anchor::form, {0.5f, 0.55f}},
                       {Anchor::mark, {0.52f, 0.7f}}, {Anchor::wrong_way, {0.3f, 0.85f}}, {Anchor::bend, {0.33f, 0.66f}}, {Anchor::lever_end, {0.8f, 0.4f}}, {Anchor::gauge_1, {0.4f, 0.9f}}, {Anchor::gauge_2, {0.45f, 0.5f}}, {Anchor::gauge_3, {0.5f, 0.45f}}, {Anchor::picked, {0.6f, 0.5f}}};
    return picture;
}

std::vector<Sample> samples() {
    std::vector<Sample> all = simple_samples();
    for (const auto& more : {bench_samples(), long_samples(), card_samples(), entry_samples()}) all.insert(all.end(), more.begin(), more.end());
    return all;
}

ScreenView sample(const std::string& name) {
    // The long ones are made from these, so they are looked for last.
    for (const auto make : {simple_samples, bench_samples, long_samples, card_samples, entry_samples})
        for (const Sample& one : make())
            if (one.name == name) return one.view;
    throw std::runtime_error("no sample called " + name);
}

}  // namespace tubewright
