#include "conversion_request.hpp"

#include "given_command.hpp"
#include "quantity/read_quantity.hpp"

namespace leavenwright {
namespace {

// What an offer ends with itself: how much levain, and how wet.
bool is_offered(const OptionRow& row) {
    return row.group == inoculation_group || row.name == "--levain-hydration";
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
        request_.command = given_command(options_, path, is_offered);
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
