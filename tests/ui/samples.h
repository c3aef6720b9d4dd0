#pragma once
// Screens made by hand, one or more of every kind, with short words and with the longest we allow.

#include <string>
#include <vector>

#include "present/views.h"
#include "ui/picture.h"

namespace tubewright {

struct Sample {
    std::string name;
    ScreenView view;
};

std::vector<Sample> samples();
ScreenView sample(const std::string& name);

/// A picture nobody drew, with every anchor in it, so that the labels stand on the screen.
PictureHandle sample_picture();

/// Parts of them, for tests that put together their own.
ButtonView button(const std::string& id, const std::string& label, const Action& press = Next{}, Weight weight = Weight::plain);
FooterView bench_footer(const std::string& main_label);
RibbonView sample_ribbon();

}  // namespace tubewright
