// look FOLDER [NAME]: every sample screen, or those whose name holds NAME, as PNG files.

#include <cstdio>
#include <string>

#include "ui/headless.h"
#include "ui/paint.h"
#include "ui/samples.h"

using namespace tubewright;

int main(int count, char** words) {
    if (count < 2) {
        std::fputs("look FOLDER [NAME]\n", stderr);
        return 2;
    }
    const std::string folder = words[1], wanted = count > 2 ? words[2] : "";
    for (const Sample& one : samples()) {
        if (one.name.find(wanted) == std::string::npos) continue;
        for (std::size_t screen = 0; screen < 2; ++screen)
            for (const Theme theme : {Theme::light, Theme::dark}) {
                ScreenView view = one.view;
                view.theme = theme;
                HeadlessScreen desk(try_screens()[screen], [&] { return view; }, [](const Action&) {});
                desk.picture() = sample_picture();
                desk.frame();
                const std::string path = folder + "/" + one.name + (screen == 0 ? "-1280" : "-1920") + (theme == Theme::light ? "-light" : "-dark") + ".png";
                if (!paint_png(path, *desk.ui().draw_data())) {
                    std::fprintf(stderr, "%s could not be written\n", path.c_str());
                    return 1;
                }
                for (const std::string& fault : faults_of(desk.ui())) std::printf("%s: %s\n", path.c_str(), fault.c_str());
            }
    }
    return 0;
}
