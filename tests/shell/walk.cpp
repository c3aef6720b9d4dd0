#include "shell/walk.h"

#include <cmath>
#include <map>
#include <stdexcept>

#include "present/screen_view.h"
#include "scene/camera.h"
#include "scene/scene.h"
#include "shell/wanted_picture.h"
#include "state/joints.h"
#include "state/rules.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

/// Making one is slow, and they are the same on every screen.
const Scene& scene_for(const State& state, const PictureView& picture) {
    static std::map<std::string, Scene> made;
    const std::string key = line_key(state.job_id, sheet_in_hand(state)->line.name) + "/" + std::to_string(picture.step) + "/" + std::to_string(static_cast<int>(picture.kind));
    const auto found = made.find(key);
    if (found != made.end()) return found->second;
    return made.emplace(key, bench_scene(*sheet_in_hand(state), picture.step, kind_of(picture.kind))).first->second;
}

/// The picture itself is not painted, but what its labels point at lies where it would.
std::map<Anchor, ImVec2> anchors_for(const State& state, const PictureView& picture, const Box& box) {
    const Scene& scene = scene_for(state, picture);
    std::map<Anchor, ImVec2> anchors;
    for (const auto& [anchor, share] : anchors_in(scene, camera_for(scene, static_cast<double>(box.width()) / box.height())))
        anchors[anchor] = {static_cast<float>(share.x), static_cast<float>(share.y)};
    return anchors;
}

State after(State state, const std::vector<Action>& actions) {
    for (const Action& action : actions) state = apply(std::move(state), action).state;
    return state;
}

/// Undo and redo need the nearest step alone, and copies are many.
State light_copy(const State& state) {
    State copy = state;
    for (auto* steps : {&copy.past, &copy.future})
        if (steps->size() > 1) steps->erase(steps->begin(), steps->end() - 1);
    return copy;
}

constexpr int reasons = 9;

}  // namespace

Walk::Walk(const TryScreen& on)
    : shown_(desk.view()),
      screen(on, [this] { return desk.view(); }, [this](const Action& action) { desk.act(action); }),
      onlooker_(on, [this] { return shown_; }, [](const Action&) {}) {
    desk.act(ScreenIs{on.px_per_mm});
}

LineWork Walk::work() const { return work_in_hand(state()); }

std::vector<Seen> Walk::seen() const {
    std::vector<Seen> all;
    for (const Touchable& thing : screen.ui().touchables()) all.push_back({thing.id, thing.enabled});
    return all;
}

std::vector<std::string> Walk::with(const std::string& beginning) const {
    std::vector<std::string> ids;
    for (const Seen& thing : seen())
        if (thing.enabled && thing.id.rfind(beginning, 0) == 0) ids.push_back(thing.id);
    return ids;
}

void Walk::go_on(Operator& person, const std::function<bool(const State&)>& enough) {
    screen.frame();
    for (int touches = 0; touches < 1500; ++touches) {
        if (enough && enough(state())) return;
        const auto touch = person.next_touch(state(), seen());
        if (!touch) return;
        if (screen.find(*touch).held) hold(*touch);
        else tap(*touch);
    }
    throw std::runtime_error("1500 touches and not done; on the screen now: " + desk.view().key);
}

void Walk::tap(const std::string& id) {
    screen.tap(id);
    screen.frame();
    look_over();
}

void Walk::hold(const std::string& id) {
    screen.hold(id, 1.0);
    screen.frame();
    look_over();
}

void Walk::look_at(State state) {
    for (const Unit unit : {Unit::inch, Unit::mm})
        for (const Theme theme : {Theme::light, Theme::dark}) {
            state.settings.unit = unit;
            state.settings.theme = theme;
            shown_ = screen_view(state);
            onlooker_.picture() = {};
            onlooker_.frame();
            const PictureView* picture = picture_in(shown_);
            if (const auto box = onlooker_.ui().picture_rect(); picture && box) {
                onlooker_.picture().anchors = anchors_for(state, *picture, *box);
                onlooker_.frame();
                for (const auto& [anchor, words] : picture->labels) labels += onlooker_.picture().anchors.contains(anchor);
            }
            ++views;
            for (const std::string& fault : faults_of(onlooker_.ui()))
                faults.insert(shown_.key + (unit == Unit::mm ? ", mm" : ", inch") + (theme == Theme::dark ? ", dark: " : ", light: ") + fault);
        }
}

void Walk::look_over() {
    for (const std::string& fault : faults_of(screen.ui())) faults.insert(desk.view().key + ": " + fault);
    look_at(state());
}

void Walk::look_beside() {
    const State here = light_copy(state());
    const std::size_t looked = looked_beside_++;
    // What looks much the same at each step of the bench is looked at less often.
    if (looked % 15 == 0) look_at_rack(here);
    if (looked % 3 == 0)
        for (const Screen side : {Screen::scrap, Screen::settings, Screen::stance, Screen::stock, Screen::stick_length}) look_at(after(here, {GoTo{side}}));
    look_at_legs(here);
    const State bends = after(here, {GoTo{Screen::bends}});
    look_at(bends);
    look_at(after(bends, {GoTo{Screen::bends_more}}));
    look_at(after(bends, {GoTo{Screen::bends_more}, GoTo{Screen::bend_files}}));
    if (const auto all = bends_in_hand(bends); !all.empty()) {
        const State one = after(bends, {PickRecord{all.front().check.record.id}});
        look_at(one);
        look_at(after(one, {LeaveRecordOut{all.front().check.record.id}}));
    }
    look_at(after(here, {GoTo{Screen::stick_length}, Key{"1"}, Key{"2"}, Key{"3"}, Key{"4"}, Key{"5"}, Key{"1/2"}}));
    const State save = after(here, {LookAtRescue{}});
    if (save.looks.screen == Screen::rescue) {
        look_at(save);
        look_at(after(save, {PickWay{1}}));
        look_at(after(save, {GoTo{Screen::rescue_more}}));
        for (const std::size_t which : {0u, 1u, 2u}) look_at(after(save, {GoTo{Screen::rescue_more}, AskReading{which}, Key{"1"}, Key{"7"}, Key{"1/2"}}));
    }
    const State asked = after(here, {WentWrong{}});
    if (asked.looks.screen == Screen::wrong && looked % 3 == 0) look_at_wrong(asked);
}

void Walk::look_at_legs(const State& here) {
    const State legs = after(here, {GoTo{Screen::legs}});
    if (legs.looks.screen != Screen::legs) return;
    look_at(legs);
    const State far_off = after(legs, {AskLeg{0}, Key{"1"}, Key{"7"}, Key{"1"}, Key{"1/2"}});
    look_at(far_off);
    const State read = after(far_off, {Next{}});
    look_at(read);
    look_at(after(read, {GoTo{Screen::hand}}));
}

void Walk::look_at_rack(const State& here) {
    for (const Screen side : {Screen::rack, Screen::plan, Screen::buy, Screen::shop_rules, Screen::figures, Screen::keep_safe}) look_at(after(here, {GoTo{side}}));
    if (here.job) {
        const EndOfLine end = key_of(here, {0, End::B});
        look_at(after(here, {GoTo{Screen::joints}, AskJoint{end}}));
        look_at(after(here, {GoTo{Screen::joints}, AskJoint{end}, GoesInto{new_joint(here, JointKind::tee)}}));
    }
    if (const auto tubes = tubes_on_rack(*here.work.rack.ledger); !tubes.empty()) {
        const State tube = after(here, {GoTo{Screen::rack}, ShowTube{tubes.front()}});
        look_at(tube);
        look_at(after(tube, {AskRack{RackAsk::kind}}));
        look_at(after(tube, {AskRack{RackAsk::kind}, AnswerRack{"coil"}, Key{"1"}, Key{"2"}, Key{"3"}, Key{"4"}, Key{"1/2"}}));
        for (const RackLength& length : lengths_on_rack(*here.work.rack.ledger, tubes.front())) {
            const State piece = after(tube, {ShowPiece{length.piece}});
            look_at(piece);
            look_at(after(piece, {AskRack{RackAsk::place}}));
            look_at(after(piece, {AskRack{RackAsk::price}, Key{"1"}}));
            break;
        }
    }
}

void Walk::look_at_wrong(const State& asked) {
    look_at(asked);
    for (int reason = 0; reason < reasons; ++reason) {
        const State because = after(asked, {ChooseReason{static_cast<Reason>(reason)}});
        look_at(because);
        const std::vector<KeptOffer> offers = kept_offers(because);
        for (const KeptOffer& offer : offers) look_at(after(because, {ChooseKept{offer.id}}));
        if (reason > 0 || offers.empty()) continue;
        const State written = after(because, {ChooseKept{offers.front().id}, ConfirmScrap{}});
        look_at(written);
        look_at(after(written, {GoTo{Screen::scrap}}));
        look_at(after(written, {GoTo{Screen::stock}}));
    }
}

Work Walk::in_the_book() {
    desk = Desk::made(elsewhere.places(), one_day).value();
    return ShopBook::open(home.path() / "shop-book.db").value().read().work;
}

}  // namespace tubewright
