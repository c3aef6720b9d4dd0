#include <catch2/catch.hpp>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

TEST_CASE("every screen is whole, on every size, in both themes") {
    for (const TryScreen& screen : try_screens())
        for (const Sample& one : samples())
            for (const Theme theme : {Theme::light, Theme::dark}) {
                INFO(one.name << " on " << screen.name() << (theme == Theme::light ? ", light" : ", dark"));
                ScreenView view = one.view;
                view.theme = theme;
                HeadlessScreen desk(screen, [&] { return view; }, [](const Action&) {});
                desk.picture() = sample_picture();
                desk.frame();
                CHECK(faults_of(desk.ui()) == std::vector<std::string>{});
            }
}
