#include "paper/heads.h"

#include "present/paper_words.h"

namespace tubewright {

PrintBlock stop_block(const Lettering& lettering, double width_mm) {
    PrintBlock block{12};
    constexpr Letters large{22, true};
    const bool narrow = lettering.width_mm(paper_says::stop(), {16, true}) > width_mm - 6;
    const std::string words = narrow ? paper_says::stop_alone() : paper_says::stop();
    block.drawn = {Filled{box_of({0, 0}, width_mm, block.height_mm), Tint::red}, Lettered{{3, 8.6}, words, lettering.fitted(words, width_mm - 6, large, 8), Tint::white}};
    return block;
}

PrintBlock title_block(const Lettering& lettering, const std::string& title, bool stopped, double width_mm) {
    constexpr Letters letters{22, true};
    PrintBlock block = paragraph(lettering, title, width_mm, lettering.fitted(title, width_mm, letters, 14));
    append(block, gap(1));
    block.drawn.push_back(Stroked{{{0, block.height_mm}, {width_mm, block.height_mm}}, 0.6});
    append(block, gap(3));
    if (stopped) {
        append(block, stop_block(lettering, width_mm));
        append(block, gap(3));
    }
    return block;
}

PrintBlock check_bar_block(const Lettering& lettering, Unit unit, double width_mm) {
    const CheckBar bar = check_bar(unit);
    PrintBlock block{4};
    block.drawn.push_back(Filled{box_of({0, block.height_mm}, bar.length.mm, 4), Tint::black});
    const PrintBlock told = paragraph(lettering, bar.told, width_mm, body);
    append(block, told, 5);
    append(block, gap(1.5));
    return block;
}

}  // namespace tubewright
