#include "conversion_request.hpp"

#include "option_table.hpp"
#include "quantity/read_quantity.hpp"

namespace leavenwright {
namespace {

// A word as a shell reads it back.
std::string shell_word(const std::string& word) {
    const bool is_plain =
        !word.empty() &&
        word.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
                               "_-./%+:@=") == std::string::npos;
    if (is_plain) {
        return word;
    }
    std::string quoted_word = "'";
    for (const char byte : word) {
        quoted_word += byte == '\'' ? std::string("'\\''") : std::string(1, byte);
    }
    return quoted_word + "'";
}

// The command as it was given, for one formula, less how much levain and how wet.
std::string command_of(const Options& options, const std::string& path) {
    std::string values;
    std::string flags;
    for (const OptionRow& row : option_table) {
        const bool is_offered = row.group == inoculation_group || row.name == "--levain-hydration";
        if ((row.verb != options.verb && row.verb != "*") || is_offered || !options.has(row.name)) {
            continue;
        }
        if (row.argument.empty()) {
            flags += " " + std::string(row.name);
        }
        for (const std::string& value : options.values(row.name)) {
            values += " " + std::string(row.name) + " " + shell_word(value);
        }
    }
    return "leavenwright " + options.verb + " " + shell_word(path) + values + flags;
}

class RequestReader {
public:
    RequestReader(const Options& options, const Pantry& pantry, Session& session)
        : options_(options), pantry_(pantry), session_(session) {}

    ConversionRequest read(const std::string& path) {
        read_inoculation<PrefermentedFlour>("--prefermented-flour");
        read_inoculation<LevainOnTotalFlour>("--levain-on-total-flour");
        read_inoculation<LevainOnDoughFlour>("--levain-on-dough-flour");
        if (const auto text = session_.option_text("--levain-hydration")) {
            if (const auto hydration = read_percentage(*text, session_.diagnostics)) {
                request_.levain_hydration = Hydration(hydration->value());
            }
            if (!request_.inoculation_place.source) {
                request_.inoculation_place = *text;
            }
        }
        if (const auto text = session_.option_text("--levain-flour")) {
            request_.levain_flour_place = *text;
            request_.levain_flour = read_levain_flour(*text, pantry_, session_.diagnostics, request_.remarks);
        }
        if (const auto text = session_.option_text("--water-from")) {
            request_.water_from_place = *text;
            request_.water_from = read_ingredient_list(*text, pantry_, session_.diagnostics);
        }
        request_.keep = options_.values("--keep");
        for (const std::string& stage : request_.keep) {
            request_.keep_places.push_back(text_from("--keep", stage));
        }
        request_.keep_blend = options_.has("--keep-blend");
        request_.dry_milk = options_.has("--dry-milk");
        request_.command = command_of(options_, path);
        return request_;
    }

private:
    template <class Share>
    void read_inoculation(std::string_view option) {
        const auto text = session_.option_text(option);
        if (!text) {
            return;
        }
        request_.inoculation_place = *text;
        if (const auto share = read_percentage(*text, session_.diagnostics)) {
            request_.inoculation = Share(share->value());
        }
    }

    const Options& options_;
    const Pantry& pantry_;
    Session& session_;
    ConversionRequest request_;
};

} // namespace

ConversionRequest read_conversion_request(const Options& options, const std::string& path,
                                          const Pantry& pantry, Session& session) {
    return RequestReader(options, pantry, session).read(path);
}

} // namespace leavenwright
