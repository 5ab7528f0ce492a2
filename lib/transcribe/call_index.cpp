#include "transcribe/call_index.hpp"

#include "source/unicode.hpp"
#include "transcribe/word_set.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <string_view>
#include <tuple>
#include <utility>

namespace leavenwright {
namespace {

// Nouns that other lines may share. The last of a name: "butter, melted".
std::string head_of(const IngredientLine& line) {
    static const WordSet nouns("butter|sugar|milk|water|cream|juice|oil|salt|lard|flour");
    const std::string name = fold_name(line.name.empty() ? line.key : line.name);
    std::string head;
    for (std::size_t begin = 0; begin < name.size();) {
        const std::size_t end = std::min(name.find_first_of(" ,(", begin), name.size());
        std::string word = name.substr(begin, end - begin);
        word.resize(word.size() - (word.size() > 3 && word.ends_with('s') ? 1U : 0U));
        if (nouns.has(word)) {
            head = std::move(word);
        }
        begin = end + 1;
    }
    return head;
}

// All words in one row, sorted, with where they stand.
class SortedWords {
public:
    explicit SortedWords(std::span<const std::span<const DirectionWord>> sentences) : sentences_(sentences) {
        for (std::size_t sentence = 0; sentence < sentences.size(); ++sentence) {
            for (std::size_t word = 0; word < sentences[sentence].size(); ++word) {
                words_.push_back({sentences[sentence][word].text, {sentence, word}});
            }
        }
        std::sort(words_.begin(), words_.end(), [](const Entry& left, const Entry& right) {
            return std::tie(left.text, left.place.sentence, left.place.word) <
                   std::tie(right.text, right.place.sentence, right.place.word);
        });
    }

    // Places of words that begin with `stem`.
    template <class Visit>
    void for_each(std::string_view stem, const Visit& visit) const {
        auto entry =
            std::lower_bound(words_.begin(), words_.end(), stem,
                             [](const Entry& one, std::string_view text) { return one.text < text; });
        for (; entry != words_.end() && entry->text.starts_with(stem); ++entry) {
            visit(entry->text, entry->place);
        }
    }

    void add_called(const std::string& call, std::vector<CallIndex::Place>& places) const {
        const std::vector<std::string> calls{call};
        const std::string_view last = std::string_view(call).substr(call.rfind(' ') + 1);
        for_each(last, [&](std::string_view, CallIndex::Place place) {
            if (is_called(sentences_[place.sentence], place.word, calls)) {
                places.push_back(place);
            }
        });
    }

    // "sugar" itself; no "cream the butter".
    void add_head(const std::string& head, std::vector<CallIndex::Place>& places) const {
        for_each(head, [&](std::string_view text, CallIndex::Place place) {
            const auto sentence = sentences_[place.sentence];
            const bool is_verb =
                head == "cream" && (place.word == 0 || (place.word + 1 < sentence.size() &&
                                                        sentence[place.word + 1].text == "the"));
            if (!is_verb && (text == head || (head == "flour" && text == "flours"))) {
                places.push_back(place);
            }
        });
    }

private:
    struct Entry {
        std::string_view text;
        CallIndex::Place place;
    };

    std::span<const std::span<const DirectionWord>> sentences_;
    std::vector<Entry> words_;
};

using Spot = std::pair<std::size_t, std::size_t>; // a sentence and a word of it

Spot spot(CallIndex::Place place) {
    return {place.sentence, place.word};
}

} // namespace

CallIndex::CallIndex(std::span<const IngredientLine> lines, std::span<const DirectionWord> words)
    : sentences_(sentences_of(words)), named_(sentences_.size()) {
    std::map<std::string, std::size_t> count_of_head;
    for (const IngredientLine& line : lines) {
        heads_.push_back(head_of(line));
        ++count_of_head[heads_.back()];
    }
    std::map<std::pair<std::vector<std::string>, std::string>, std::size_t> group_of;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        LineCall call{.words = calls_of(lines[at]), .head = heads_[at]};
        if (!call.words.empty() && count_of_head[call.head] > 1) {
            call.head.clear(); // "juice" is the orange juice where no other line is a juice
        }
        const auto [entry, is_new] = group_of.try_emplace({call.words, call.head}, calls_.size());
        group_.push_back(entry->second);
        if (is_new) {
            calls_.push_back(std::move(call));
        }
    }
    const SortedWords sorted(sentences_);
    places_.resize(calls_.size());
    for (std::size_t group = 0; group < calls_.size(); ++group) {
        for (const std::string& word : calls_[group].words) {
            sorted.add_called(word, places_[group]);
        }
    }
    std::map<std::string, std::vector<Spot>> own; // of lines with a noun, by words of their own
    std::vector<bool> is_seen(calls_.size());
    for (std::size_t at = 0; at < lines.size(); ++at) {
        if (!heads_[at].empty() && !is_seen[group_[at]]) {
            is_seen[group_[at]] = true;
            std::transform(places_[group_[at]].begin(), places_[group_[at]].end(),
                           std::back_inserter(own[heads_[at]]), spot);
        }
    }
    for (auto& [head, spots] : own) {
        std::sort(spots.begin(), spots.end());
    }
    for (std::size_t group = 0; group < calls_.size(); ++group) {
        const std::string& head = calls_[group].head;
        std::vector<Place> heads;
        if (!head.empty()) {
            sorted.add_head(head, heads);
        }
        const std::vector<Spot>& others = own[head];
        for (const Place& place : heads) { // not the "icing sugar" of another line
            const auto is_own = [&](std::size_t word) {
                return std::binary_search(others.begin(), others.end(), Spot(place.sentence, word));
            };
            if (!is_own(place.word) && !(place.word > 0 && is_own(place.word - 1))) {
                places_[group].push_back(place);
            }
        }
        std::sort(places_[group].begin(), places_[group].end(),
                  [](const Place& left, const Place& right) { return spot(left) < spot(right); });
        for (const Place& place : places_[group]) {
            if (named_[place.sentence].empty() || named_[place.sentence].back() != group) {
                named_[place.sentence].push_back(group);
            }
        }
    }
}

} // namespace leavenwright
