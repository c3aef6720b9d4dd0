// The log of bends on the screen: what is left out, another delivery of tube, files.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

template <class Change>
void change_record(Doing& doing, std::int64_t id, Change change) {
    Work next = doing.state.work;
    for (LoggedBend& logged : next.bends)
        if (logged.check.record.id == id) change(logged.check.record);
    change_work(doing, std::move(next));
}

bool on_screen(const State& state, Screen screen) { return state.looks.screen == screen && sheet_in_hand(state); }

/// The same bend measured the same: in the log already, whatever was decided of it.
bool is_same_bend(const LoggedBend& one, const LoggedBend& other) {
    LoggedBend alike = one;
    alike.check.record.id = other.check.record.id;
    alike.check.record.standing = other.check.record.standing;
    alike.check.record.left_out = other.check.record.left_out;
    return alike == other;
}

std::string counted_bends(std::size_t count) { return std::to_string(count) + (count == 1 ? " bend" : " bends"); }

}  // namespace

void pick_record(Doing& doing, std::int64_t id) {
    if (!on_screen(doing.state, Screen::bends)) return;
    const std::vector<LoggedBend> bends = bends_in_hand(doing.state);
    if (std::none_of(bends.begin(), bends.end(), [&](const LoggedBend& logged) { return logged.check.record.id == id; })) return;
    show_beside(doing.state, Screen::bend);
    doing.state.looks.record = id;
}

void leave_record_out(Doing& doing, std::int64_t id) {
    if (!on_screen(doing.state, Screen::bend) || doing.state.looks.record != id) return;
    change_record(doing, id, [](Record& record) { record.left_out = !record.left_out; });
}

void record_is_right(Doing& doing, std::int64_t id) {
    if (!on_screen(doing.state, Screen::bend) || doing.state.looks.record != id) return;
    change_record(doing, id, [](Record& record) {
        if (record.standing == RecordStanding::asked) record.standing = RecordStanding::confirmed;
    });
}

void new_tube(Doing& doing) {
    State& state = doing.state;
    if (!on_screen(state, Screen::bends_more)) return;
    const Tube& tube = sheet_in_hand(state)->line.tube;
    const auto taken = [&](const std::string& lot) {
        if (lot_in_use(state.work, tube) == lot) return true;
        return std::any_of(state.work.bends.begin(), state.work.bends.end(), [&](const LoggedBend& logged) { return logged.check.lot == lot && tube_key(logged.check.with.tube) == tube_key(tube); });
    };
    std::string lot = state.day;
    for (int number = 2; taken(lot); ++number) lot = state.day + " " + std::to_string(number);
    Work next = state.work;
    next.lots[tube_key(tube)] = lot;
    change_work(doing, std::move(next));
    leave_beside(state);
}

void forget_bends(Doing& doing) {
    if (!on_screen(doing.state, Screen::bends_more)) return;
    const std::vector<LoggedBend> bends = bends_in_hand(doing.state);
    Work next = doing.state.work;
    std::erase_if(next.bends, [&](const LoggedBend& logged) { return std::find(bends.begin(), bends.end(), logged) != bends.end(); });
    change_work(doing, std::move(next));
    leave_beside(doing.state);
}

void write_bends(Doing& doing) {
    if (!on_screen(doing.state, Screen::bends_more) || doing.state.work.bends.empty()) return;
    doing.requests.push_back(WriteBendsFile{doing.state.work.bends});
}

void bring_bends(Doing& doing, const std::string& file) {
    const std::vector<std::string>& files = doing.state.bend_files;
    if (!on_screen(doing.state, Screen::bend_files) || std::find(files.begin(), files.end(), file) == files.end()) return;
    doing.requests.push_back(ReadBends{file});
}

void bend_files_are(Doing& doing, const BendFilesAre& told) {
    doing.state.bend_folder = told.folder;
    doing.state.bend_files = told.files;
}

void bends_read(Doing& doing, const BendsRead& read) {
    State& state = doing.state;
    Work next = state.work;
    std::size_t added = 0;
    for (LoggedBend logged : read.bends) {
        const LoggedBend* own = is_of_a_piece(logged) ? record_of_piece(next, logged.of.piece) : nullptr;
        if (is_of_a_piece(logged) && !(own && is_same_bend(*own, logged))) logged.of = {};  // another book's piece: here its number means another
        if (std::any_of(next.bends.begin(), next.bends.end(), [&](const LoggedBend& known) { return is_same_bend(known, logged); })) continue;
        logged.check.record.id = next.next_id++;
        next.bends.push_back(std::move(logged));
        ++added;
    }
    const std::size_t known = read.bends.size() - added;
    change_work(doing, std::move(next));
    state.looks.notice = counted_bends(added) + " brought in from " + read.file + (known > 0 ? "; " + std::to_string(known) + (known == 1 ? " was" : " were") + " in the log already." : ".");
}

}  // namespace tubewright
