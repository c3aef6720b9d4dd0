#include "shell/window.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <array>
#include <cmath>

#include "shell/desk.h"
#include "shell/input_queue.h"
#include "shell/canvas.h"
#include "shell/today.h"

namespace tubewright {
namespace {

/// What the callbacks leave for the loop.
struct Inbox {
    InputQueue fingers;
    std::vector<KeyPress> keys;
    double pointer_x = 0, pointer_y = 0;  // in the window, as of the event that is being taken
    int frames_wanted = 4;
};

Inbox& inbox_of(GLFWwindow* window) { return *static_cast<Inbox*>(glfwGetWindowUserPointer(window)); }

/// Where the pointer was when it did this. Asked now, the window system would say where it is by now: after
/// a slow frame that is where the next tap went.
FingerEvent at_pointer(GLFWwindow* window, FingerEvent::Kind kind) {
    const Inbox& inbox = inbox_of(window);
    int width = 1, height = 1, across = 1, down = 1;
    glfwGetWindowSize(window, &width, &height);
    glfwGetFramebufferSize(window, &across, &down);
    return {kind, static_cast<float>(inbox.pointer_x * across / std::max(1, width)), static_cast<float>(inbox.pointer_y * down / std::max(1, height))};
}

void take_button(GLFWwindow* window, int button, int action, int) {
    if (button != GLFW_MOUSE_BUTTON_LEFT) return;
    inbox_of(window).fingers.push(at_pointer(window, action == GLFW_PRESS ? FingerEvent::Kind::down : FingerEvent::Kind::up));
    inbox_of(window).frames_wanted = 4;
}

void take_move(GLFWwindow* window, double x, double y) {
    inbox_of(window).pointer_x = x;
    inbox_of(window).pointer_y = y;
    if (glfwGetMouseButton(window, GLFW_MOUSE_BUTTON_LEFT) != GLFW_PRESS) return;
    inbox_of(window).fingers.push(at_pointer(window, FingerEvent::Kind::move));
    inbox_of(window).frames_wanted = std::max(inbox_of(window).frames_wanted, 2);
}

/// A foot switch is a keyboard of one or two keys.
void take_key(GLFWwindow* window, int key, int, int action, int) {
    if (action != GLFW_PRESS) return;
    Inbox& inbox = inbox_of(window);
    if (key == GLFW_KEY_SPACE || key == GLFW_KEY_PAGE_DOWN) inbox.keys.push_back(KeyPress::main);
    else if (key == GLFW_KEY_PAGE_UP) inbox.keys.push_back(KeyPress::back);
    else return;
    inbox.frames_wanted = 4;
}

void want_frames(GLFWwindow* window) { inbox_of(window).frames_wanted = 4; }

void set_callbacks(GLFWwindow* window, Inbox& inbox) {
    glfwSetWindowUserPointer(window, &inbox);
    glfwGetCursorPos(window, &inbox.pointer_x, &inbox.pointer_y);
    glfwSetMouseButtonCallback(window, take_button);
    glfwSetCursorPosCallback(window, take_move);
    glfwSetKeyCallback(window, take_key);
    glfwSetWindowRefreshCallback(window, want_frames);
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { want_frames(w); });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int) { want_frames(w); });
    glfwSetWindowIconifyCallback(window, [](GLFWwindow* w, int) { want_frames(w); });
}

struct Attempt {
    GlFlavour flavour;
    int api, creation, major, minor, profile;
};

/// From the best to what nearly everything has.
constexpr std::array attempts{
    Attempt{GlFlavour::core_33, GLFW_OPENGL_API, GLFW_NATIVE_CONTEXT_API, 3, 3, GLFW_OPENGL_CORE_PROFILE},
    Attempt{GlFlavour::desktop_31, GLFW_OPENGL_API, GLFW_NATIVE_CONTEXT_API, 3, 1, GLFW_OPENGL_ANY_PROFILE},
    Attempt{GlFlavour::es_30, GLFW_OPENGL_ES_API, GLFW_EGL_CONTEXT_API, 3, 0, GLFW_OPENGL_ANY_PROFILE},
};

struct Opened {
    GLFWwindow* window = nullptr;
    GlFlavour flavour = GlFlavour::core_33;
};

Opened create(int width, int height) {
    for (const Attempt& attempt : attempts) {
        glfwDefaultWindowHints();
        glfwWindowHint(GLFW_CLIENT_API, attempt.api);
        glfwWindowHint(GLFW_CONTEXT_CREATION_API, attempt.creation);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, attempt.major);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, attempt.minor);
        glfwWindowHint(GLFW_OPENGL_PROFILE, attempt.profile);
        glfwWindowHint(GLFW_MAXIMIZED, GLFW_TRUE);
        GLFWwindow* window = glfwCreateWindow(width, height, "Tubewright", nullptr, nullptr);
        if (!window) continue;
        glfwMakeContextCurrent(window);
        if (load_gl(attempt.flavour, glfwGetProcAddress)) return {window, attempt.flavour};
        glfwDestroyWindow(window);
    }
    return {};
}

/// Pixels in a millimetre as the monitor says of itself. Where that can't be true of a screen at a
/// bench, the screen is taken for a ten-inch tablet; the 50 mm bar in the settings puts it right.
double monitor_px_per_mm(GLFWmonitor* monitor, const GLFWvidmode& mode) {
    int width_mm = 0, height_mm = 0;
    glfwGetMonitorPhysicalSize(monitor, &width_mm, &height_mm);
    const double said = width_mm > 0 ? static_cast<double>(mode.width) / width_mm : 0;
    constexpr double coarsest = 2.5, finest = 16, tablet_mm = 217;
    return said >= coarsest && said <= finest ? said : mode.width / tablet_mm;
}

struct Glfw {
    bool on = false;
    GLFWwindow* window = nullptr;
    ~Glfw() {
        if (window) glfwDestroyWindow(window);
        if (on) glfwTerminate();
    }
};

void wait_for_events(const Inbox& inbox, const Canvas& canvas) {
    if (inbox.frames_wanted > 0 || !inbox.fingers.empty() || !inbox.keys.empty()) glfwPollEvents();
    else if (canvas.wants_frames()) glfwWaitEventsTimeout(1.0 / 60);
    else glfwWaitEventsTimeout(60);  // once a minute the day may have changed
}

void loop(GLFWwindow* window, Inbox& inbox, Desk& desk, Canvas& canvas, double px_per_mm) {
    while (!glfwWindowShouldClose(window)) {
        wait_for_events(inbox, canvas);
        desk.look_at_day();
        desk.hear_orders();
        CanvasSize size{0, 0, px_per_mm};
        glfwGetFramebufferSize(window, &size.width, &size.height);
        if (size.width <= 0 || size.height <= 0) {
            glfwWaitEvents();
            continue;
        }
        if (!inbox.keys.empty()) {
            canvas.press_key(inbox.keys.front());
            inbox.keys.erase(inbox.keys.begin());
        }
        canvas.frame(size, glfwGetTime(), inbox.fingers.next());
        glfwSwapBuffers(window);
        if (inbox.frames_wanted > 0) --inbox.frames_wanted;
    }
}

}  // namespace

Result<int, NoWindow> open_window(const Opening& opening) {
    Glfw glfw;  // ends after the desk, whose search wakes the window till it has stopped
    auto made = Desk::made(opening.places, today);
    if (!made.ok()) return NoWindow{made.trouble().sentence(), false, true};
    Desk desk = std::move(made).value();
    glfw.on = glfwInit();
    GLFWmonitor* monitor = glfw.on ? glfwGetPrimaryMonitor() : nullptr;
    const GLFWvidmode* mode = monitor ? glfwGetVideoMode(monitor) : nullptr;
    if (!mode) return NoWindow{"There is no display here, so the bench can't be shown.", true};
    const double px_per_mm = monitor_px_per_mm(monitor, *mode);
    const Opened opened = create(mode->width, mode->height);
    glfw.window = opened.window;
    if (!opened.window) return NoWindow{"This computer's graphics offer neither OpenGL 3.1 nor OpenGL ES 3.0, so the bench can't be shown.", true};
    glfwSwapInterval(1);
    Inbox inbox;
    set_callbacks(opened.window, inbox);
    desk.look_for_orders_beside(glfwPostEmptyEvent, opening.look_for_order);
    if (opening.job.empty()) desk.take_up_again();
    else desk.open_job(opening.job);
    auto canvas = Canvas::made(desk, opening.places, opened.flavour);
    if (!canvas.ok()) return NoWindow{canvas.trouble().sentence()};
    if (!opening.touch_map.empty()) canvas.value()->write_touch_map(opening.touch_map);
    loop(opened.window, inbox, desk, *canvas.value(), px_per_mm);
    return 0;
}

}  // namespace tubewright
