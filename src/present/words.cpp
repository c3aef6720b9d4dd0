#include "present/words.h"

#include <cstdlib>

namespace tubewright {

std::string severity_word(Severity severity) {
    switch (severity) {
        case Severity::stop: return "stop";
        case Severity::caution: return "caution";
        case Severity::note: return "note";
    }
    return "";
}

std::string reason_word(Reason reason) {
    switch (reason) {
        case Reason::wrong_place: return "wrong place";
        case Reason::wrong_way: return "wrong way";
        case Reason::over_bent: return "over-bent";
        case Reason::kinked: return "kinked or flat";
        case Reason::too_short: return "too short";
        case Reason::end_spoiled: return "end spoiled";
        case Reason::damaged: return "damaged";
        case Reason::does_not_fit: return "does not fit";
        case Reason::practice: return "practice";
    }
    return "";
}

std::string service_word(Service service) {
    switch (service) {
        case Service::brake: return "brake";
        case Service::fuel: return "fuel";
        case Service::cooler: return "cooler";
        case Service::hydraulic: return "hydraulic";
        case Service::air: return "air";
        case Service::other: return "other";
    }
    return "";
}

std::string swing_word(Swing swing) {
    switch (swing) {
        case Swing::away: return "away from you";
        case Swing::toward: return "toward you";
        case Swing::up: return "up";
        case Swing::down: return "down";
    }
    return "";
}

std::string hand_word(HookHand hand) { return hand == HookHand::left ? "left" : "right"; }
std::string end_name(End end) { return std::string("end ") + letter(end); }
std::string bend_name(std::size_t bend) { return "bend " + std::to_string(bend + 1); }

std::string capital(std::string sentence) {
    if (!sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z') sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
    return sentence;
}

std::string piece_list(const std::vector<std::string>& pieces) {
    std::string list;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        std::string name = pieces[i];
        if (name.size() > 1 && name[0] >= 'A' && name[0] <= 'Z' && name[1] >= 'a' && name[1] <= 'z') name[0] = static_cast<char>(name[0] - 'A' + 'a');
        list += (i == 0 ? "" : i + 1 == pieces.size() ? " and " : ", ") + name;
    }
    return list;
}

std::string day_word(const std::string& day) {
    const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    if (day.size() != 10 || day[4] != '-' || day[7] != '-') return day;
    const int month = std::atoi(day.substr(5, 2).c_str());
    if (month < 1 || month > 12) return day;
    return std::to_string(std::atoi(day.substr(8, 2).c_str())) + " " + months[month - 1];
}

}  // namespace tubewright
