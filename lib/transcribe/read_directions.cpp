#include "transcribe/read_directions.hpp"

#include "transcribe/clause_reader.hpp"

#include <algorithm>
#include <initializer_list>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t most_steps = 60;

enum class Act { none, apart, sponge, mix, knead, rise, chill, stand, rest, divide, shape, boil, heat, bake };

using Tokens = std::vector<LineToken>;

bool holds(const Tokens& tokens, std::initializer_list<std::string_view> stems) {
    return std::any_of(tokens.begin(), tokens.end(), [&](const LineToken& token) {
        return token.is_word() && std::any_of(stems.begin(), stems.end(), [&](std::string_view stem) {
                   return token.folded.starts_with(stem);
               });
    });
}

bool holds_word(const Tokens& tokens, std::initializer_list<std::string_view> words) {
    return std::any_of(tokens.begin(), tokens.end(), [&](const LineToken& token) {
        return token.is_word() && std::find(words.begin(), words.end(), token.folded) != words.end();
    });
}

// `word`, and one of `others` in the three behind it: "form into loaves", but not "to form a dough".
bool holds_pair(const Tokens& tokens, std::string_view word, std::initializer_list<std::string_view> others) {
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const std::size_t end = std::min(at + 4, tokens.size());
        const auto begin = tokens.begin() + static_cast<std::ptrdiff_t>(at);
        if (tokens[at].is(word) &&
            holds({begin + 1, tokens.begin() + static_cast<std::ptrdiff_t>(end)}, others)) {
            return true;
        }
    }
    return false;
}

bool is_shaping(const Tokens& tokens) {
    return holds(tokens, {"shape", "shaping", "braid", "plait"}) ||
           holds_word(tokens, {"mold", "mould", "molded", "moulded"}) ||
           holds_pair(tokens, "form", {"into", "loa", "ball", "roll", "bun", "round", "log"}) ||
           holds_word(tokens, {"roll"});
}

bool is_dividing(const Tokens& tokens) {
    return holds(tokens, {"divide", "portion"}) || holds_pair(tokens, "cut", {"into"}) ||
           holds_pair(tokens, "split", {"into"}) || holds_pair(tokens, "scale", {"at", "into"});
}

bool is_baking(const Tokens& tokens) {
    const bool is_thing =
        holds_pair(tokens, "baking",
                   {"sheet", "pan", "dish", "tray", "stone", "paper", "time", "powder", "soda", "tin"});
    return holds_word(tokens, {"bake", "bakes", "baked"}) || (holds_word(tokens, {"baking"}) && !is_thing);
}

// What a clause says to do; one that says how long something lasts may say none.
Act act_of(const Tokens& tokens) {
    if (holds(tokens, {"preheat"}) || holds_pair(tokens, "heat", {"oven"}) ||
        (holds_word(tokens, {"reduce", "lower", "turn"}) && holds_word(tokens, {"heat", "oven"}))) {
        return Act::heat;
    }
    if (is_baking(tokens) && !holds_word(tokens, {"before"})) {
        return Act::bake;
    }
    if (holds(tokens, {"refrigerat", "fridge", "chill", "icebox", "retard"})) {
        return Act::chill;
    }
    const bool is_rising = holds(tokens, {"rise", "rising", "doubl", "prove", "proving", "proof", "ferment",
                                          "raise", "puffy", "bulk"}) ||
                           holds_word(tokens, {"light"});
    const bool is_waiting = holds_word(tokens, {"leave", "stand", "stands", "set", "sit", "let"}) &&
                            !holds_pair(tokens, "stand", {"mixer"});
    const bool has_no_dough = !holds(tokens, {"dough"}) && (is_rising || is_waiting);
    if (has_no_dough && holds(tokens, {"yeast", "frothy", "foamy", "bubbly", "starter", "preferment",
                                       "poolish", "biga", "levain"})) {
        return Act::apart;
    }
    if (has_no_dough && holds(tokens, {"sponge"})) {
        return Act::sponge;
    }
    if (is_rising) {
        return Act::rise;
    }
    if (holds(tokens, {"boil", "simmer", "poach"}) && holds(tokens, {"each", "side", "bath", "bagel"})) {
        return Act::boil;
    }
    if (is_dividing(tokens)) {
        return Act::divide;
    }
    if (is_shaping(tokens)) {
        return Act::shape;
    }
    return holds(tokens, {"knead"}) && !holds(tokens, {"kneaded"}) ? Act::knead
           : holds_word(tokens, {"rest", "resting", "rests"})      ? Act::rest
           : is_waiting                                            ? Act::stand
           : holds_word(tokens, {"mix", "beat"})                   ? Act::mix
                                                                   : Act::none;
}

// Minutes at the least that a time of a step says.
double least_minutes(std::string_view time) {
    const ClauseReader reader(time);
    const auto& tokens = reader.tokens();
    double minutes = 0.0;
    for (std::size_t at = 0; at + 1 < tokens.size(); ++at) { // "1 h 30 min"; of "45 to 60 min" the first
        const LineToken& unit = tokens[at + 1].is("to") ? tokens.back() : tokens[at + 1];
        const double factor = unit.is("h") ? 60.0 : unit.is("d") ? 1440.0 : unit.is("min") ? 1.0 : 0.0;
        minutes += tokens[at].is_number() ? tokens[at].value * factor : 0.0;
        if (tokens[at + 1].is("to")) {
            break;
        }
    }
    return minutes;
}

class DirectionsReader {
public:
    std::vector<DirectionStep> read(std::span<const std::string> paragraphs) {
        for (const std::string& paragraph : paragraphs) {
            std::string_view rest = paragraph;
            while (!rest.empty() && steps_.size() < most_steps) {
                const std::size_t end = end_of_sentence(rest);
                if (end <= longest_sentence) {
                    read_sentence(rest.substr(0, end));
                }
                rest.remove_prefix(std::min(end + 1, rest.size()));
            }
        }
        return std::move(steps_);
    }

private:
    static constexpr std::size_t longest_sentence = 1000; // bytes

    // What of a sentence makes one step: its first act, and the clauses that say how long.
    struct Group {
        Act act = Act::none;
        std::string_view words;
        bool has_time = false;
    };

    // At a full stop before a space or capital, a semicolon, or a line's end; "hrs." and "min." go on before
    // a small letter.
    static std::size_t end_of_sentence(std::string_view text) {
        for (std::size_t at = 0; at < text.size(); ++at) {
            const bool is_stop =
                (text[at] == '.' || text[at] == '!') && (at + 1 == text.size() || text[at + 1] == ' ');
            const bool goes_on =
                is_stop && at + 2 < text.size() && text[at + 2] >= 'a' && text[at + 2] <= 'z';
            if ((is_stop && !goes_on) || text[at] == ';' || text[at] == '\n') {
                return at;
            }
        }
        return text.size();
    }

    // At a comma, a colon, or before "and" and "then", but not inside of "1 hour and 30 minutes".
    static std::size_t end_of_clause(std::string_view text) {
        int depth = 0;
        for (std::size_t at = 0; at < text.size(); ++at) {
            depth += text[at] == '(' ? 1 : text[at] == ')' ? -1 : 0;
            const std::string_view rest = text.substr(at);
            const bool has_number = at + 5 < text.size() && text[at + 5] >= '0' && text[at + 5] <= '9';
            const bool is_word = at > 0 && !rest.starts_with(" and a half") &&
                                 ((rest.starts_with(" and ") && !has_number) || rest.starts_with(" then "));
            const bool is_comma = (text[at] == ',' || text[at] == ':') && rest.substr(1, 1) == " ";
            if (depth <= 0 && (is_word || is_comma)) {
                return at;
            }
        }
        return text.size();
    }

    // Whether what waits in a sentence is no dough yet: yeast in its water, a preferment.
    static bool has_no_dough(std::string_view sentence) {
        const ClauseReader whole(sentence);
        const auto& tokens = whole.tokens();
        const bool is_stage = holds(tokens, {"preferment", "poolish", "biga"});
        const bool is_yeast = holds(tokens, {"yeast"}) && !holds(tokens, {"flour", "knead"});
        return (is_stage || is_yeast) && !holds(tokens, {"dough"});
    }

    void read_sentence(std::string_view sentence) {
        const bool is_apart = has_no_dough(sentence);
        Group group;
        for (std::size_t begin = 0; begin < sentence.size();) {
            const std::size_t length = std::max<std::size_t>(end_of_clause(sentence.substr(begin)), 1);
            const std::string_view clause = sentence.substr(begin, length);
            const ClauseReader reader(clause);
            const Act said = act_of(reader.tokens());
            const bool is_waiting = said == Act::stand || said == Act::rest;
            const Act act = is_apart && is_waiting ? Act::apart : said;
            const bool has_time = !reader.time().empty();
            if (begins_step(group, act, has_time, !reader.oven().empty())) {
                add(group);
                group = Group{.act = act == Act::none ? group.act : act, .words = clause};
            } else {
                const std::size_t from = group.words.empty()
                                             ? begin
                                             : static_cast<std::size_t>(group.words.data() - sentence.data());
                group.words = sentence.substr(from, begin + length - from);
                group.act = is_weaker(group.act, act) ? act : group.act;
            }
            group.has_time = group.has_time || has_time;
            begin += length;
        }
        add(group);
    }

    // "leave to prove": what it waits for says more than that it waits.
    static bool is_weaker(Act held, Act next) {
        const bool is_wait = held == Act::stand || held == Act::rest;
        return held == Act::none ||
               (is_wait && (next == Act::rise || next == Act::chill || next == Act::apart));
    }

    static bool begins_step(const Group& group, Act act, bool has_time, bool has_oven) {
        if (group.act == Act::none) {
            return false;
        }
        if (act == Act::none) { // "bake 10 minutes at 450 F, 20 minutes at 400 F"
            return group.act == Act::bake && group.has_time && has_time && has_oven;
        }
        if (act == group.act) {
            return group.has_time && has_time;
        }
        const bool is_end = act == Act::rise && group.has_time && !has_time; // "rest 1 hour, until doubled"
        return !is_end && !(is_weaker(group.act, act) && !group.has_time);
    }

    void add(const Group& group) {
        if (group.act == Act::none || steps_.size() >= most_steps) {
            return;
        }
        const ClauseReader reader(group.words);
        const std::string oven = reader.oven();
        const std::string time = reader.time();
        const std::string place = reader.temperature(-5.0, 50.0);
        switch (group.act) {
        case Act::apart: // no dough yet, or that of a stage
            return;
        case Act::heat:
            oven_ = oven.empty() ? oven_ : oven;
            return;
        case Act::bake:
            oven_ = oven.empty() ? oven_ : oven;
            if (!time.empty() || !oven.empty()) {
                push(group, "bake", time, oven_);
            }
            return;
        case Act::divide:
            push(group, "divide", {}, {});
            was_divided_ = true;
            was_shaped_ = was_shaped_ || holds_word(reader.tokens(), {"tin", "tins", "pan", "pans"});
            return;
        case Act::shape:
            if (steps_.empty() || steps_.back().verb != "shape") {
                push(group, "shape", {}, {});
            }
            was_shaped_ = true;
            return;
        default:
            break;
        }
        if (!time.empty() && !is_baked()) {
            add_timed(group, time, place);
        }
    }

    void add_timed(const Group& group, const std::string& time, const std::string& place) {
        constexpr double longest_rest = 45.0; // minutes; what waits longer rises
        const bool is_long = least_minutes(time) >= longest_rest;
        const ClauseReader reader(group.words);
        const bool is_warm = holds(reader.tokens(), {"warm", "doubl", "puffy", "risen", "rise"});
        switch (group.act) {
        case Act::sponge:
            push(group, "rest", time, place);
            return;
        case Act::mix:
            push(group, "mix", time, {});
            return;
        case Act::knead:
            push(group, "knead", time, {});
            return;
        case Act::chill:
            push(group, "retard", time, place);
            return;
        case Act::boil:
            push(group, "boil", time, {});
            return;
        case Act::rise: {
            const bool is_last = was_shaped_ || (was_divided_ && holds(reader.tokens(), {"proof", "prov"}));
            push(group, is_last ? "proof" : "bulk", time, place);
            return;
        }
        default:
            break;
        }
        const bool is_rise = is_long || is_warm;
        push(group, !is_rise ? "rest" : was_shaped_ ? "proof" : "bulk", time, place);
    }

    bool is_baked() const { return !steps_.empty() && steps_.back().verb == "bake"; }

    void push(const Group& group, std::string verb, std::string time, std::string temperature) {
        std::string_view words = group.words;
        for (const std::string_view lead : {" ", ",", ":", " ", "and ", "then ", " ", "then "}) {
            words.remove_prefix(words.starts_with(lead) ? lead.size() : 0U);
        }
        words = words.substr(0, words.find_last_not_of(" ,:") + 1);
        steps_.push_back({.verb = std::move(verb),
                          .time = std::move(time),
                          .temperature = std::move(temperature),
                          .words = std::string(words)});
    }

    std::vector<DirectionStep> steps_;
    std::string oven_;
    bool was_shaped_ = false;
    bool was_divided_ = false;
};

} // namespace

std::vector<DirectionStep> read_directions(std::span<const std::string> paragraphs) {
    return DirectionsReader().read(paragraphs);
}

} // namespace leavenwright
