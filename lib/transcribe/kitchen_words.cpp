#include "transcribe/kitchen_words.hpp"

#include "quantity/units.hpp"
#include "source/unicode.hpp"
#include "transcribe/word_set.hpp"

#include <array>
#include <utility>

namespace leavenwright {
namespace {

// Sizes of the old measures: US fluid measure where it has one (a gill is a quarter of a pint); the
// rest are common practice, no source, with the spread of what is printed. A pinch, a dash and
// a smidgen as measuring spoons for them are sold, 1/16, 1/8 and 1/32 tsp; nobody measures them.
constexpr double tsp_ml = 4.92892159375;
constexpr double cup_ml = 236.5882365;
constexpr auto measures = std::to_array<KitchenMeasure>({
    {"gill|jill|gills", cup_ml / 2.0, 1.0, 1.21, true, "usgill"},
    {"teacup|tea cup|tea cupful|tea cups|teacups|teacupful|teacupfuls|teacupsful", cup_ml * 0.75, 0.65, 1.1,
     true, ""},
    {"coffee cup|coffee cups|coffee cupful|coffeecup|coffeecups|coffeecupful|coffeecupfuls", cup_ml, 0.8,
     1.25, true, ""},
    {"breakfast cup|breakfastcup|breakfastcupful|breakfastcupfuls", 284.130625, 0.8, 1.1, true, "brcup"},
    {"tumbler|tumblers|tumblerful|tumblerfuls", cup_ml, 0.9, 1.25, true, ""},
    {"glass|glasses|glassful", cup_ml, 0.75, 1.25, true, ""},
    {"wineglass|wine glass|wine glasses|wine glassful|wine glassfuls|wineglasses|wineglassful|wineglassfuls",
     cup_ml / 4.0, 0.9, 1.6, true, ""},
    {"dessertspoon|dessertspoons|dessertspoonful|dessertspoonfuls|dessertspoonsful|dsp|dstspn|dessertsp|"
     "dessert spoonful|"
     "dessert spoon",
     10.0, 0.9, 1.1, true, "brdessertspoon"},
    {"saltspoon|saltspoons|saltspoonful|saltspoonfuls|salt spoon|salt spoonful", tsp_ml / 4.0, 0.7, 1.3, true,
     ""},
    {"coffee spoon|coffeespoon|coffeespoons|coffeespoonful", tsp_ml / 2.0, 0.7, 1.3, true, ""},
    {"spoon|spoons|spoonful|spoonfuls|spoonsful", tsp_ml * 3.0, 1.0 / 3.0, 1.4, true, ""},
    {"pinch|pinches|prise|pincee|pizzico|pizca", tsp_ml / 16.0, 0.5, 2.0, false, ""},
    {"dash|dashes", tsp_ml / 8.0, 0.5, 2.0, false, ""},
    {"smidgen|smidgeon|smidge", tsp_ml / 32.0, 0.5, 2.0, false, ""},
    {"handful|handfuls", cup_ml / 3.0, 0.5, 1.8, true, ""},
    {"drop|drops", 0.05, 0.6, 1.6, false, ""},
    {"bowl|bowlful", cup_ml * 2.0, 0.5, 1.5, true, ""},
    {"ladle|ladleful", cup_ml / 2.0, 0.5, 1.5, true, ""},
    {"splash|splashes|drizzle|glug", tsp_ml, 0.5, 3.0, true, ""},
});

// Spellings that are read in recipes only: in a formula file each would be a slip.
struct RecipeSpelling {
    std::string_view words;
    std::string_view unit;
};
constexpr auto recipe_spellings = std::to_array<RecipeSpelling>({
    {"c|cs|cu|cupsful|cupfuls", "cup"},
    {"tb|tbl|tbls|tblspn|tblspns|tblsp|tblsps|tbspn|tbspns|tbspoon|tbspoons|tbsps|tablesp|tablespoonsful|"
     "tablespoonfuls|tablespoons|table "
     "spoon|table spoons|table spoonful|table spoonfuls|table spoonsful|tablespoonful|great spoon|great "
     "spoonful|great spoonfuls",
     "tbsp"},
    {"ts|tsps|tspn|tspns|tspoon|tspoons|teasp|teaspoonsful|teaspoonfuls|tea spoon|tea spoons|tea "
     "spoonful|tea "
     "spoonfuls|teaspoonful",
     "tsp"},
    {"grams|grammes|grm|gms|gm|gramm|grammi|gramos", "g"},
    {"kgs|kilos|kilogramm|chilo", "kg"},
    {"ozs|onz", "oz"},
    {"lbs|pounds|pd", "lb"},
    {"qts|qrt|qrts", "quart"},
    {"ga|gals|gall|galls", "gallon"},
    {"pts|pints", "pint"},
    {"ltr|lt|ltrs|litres|liters|litro|litri|litros", "l"},
    {"mls|mil", "ml"},
    {"c a soupe|c a s|cuil a soupe|cuillere a soupe|cuilleres a soupe|cuilleree a "
     "soupe|cas|el|essloffel|cucchiaio|cucchiai|cucharada|cucharadas",
     "metric tbsp"},
    {"c a cafe|c a c|c a the|cuil a cafe|cuillere a cafe|cuilleres a "
     "cafe|cac|tl|teeloffel|cucchiaino|cucchiaini|cucharadita|cucharaditas",
     "metric tsp"},
});

// Things that are counted; the first word is the one that the pantry has for it.
constexpr auto pieces = std::to_array<std::string_view>({
    "packet|packets|pkg|pkgs|pkt|pkts|pk|pack|packs|package|packages|pckg|packchen|pck|packerl|"
    "beutel|bustina|bustine|sobre|sobres",
    "sachet|sachets|bag|bags",
    "envelope|envelopes|env",
    "cake|cakes|yeastcake|yeastcakes",
    "cube|cubes|wurfel",
    "stick|sticks|stk|stks",
    "pat|pats",
    "can|cans|cn|tin|tins",
    "container|containers|ct|carton|cartons|tub|tubs",
    "slice|slices|sl",
    "clove|cloves",
    "jar|jars",
    "bottle|bottles",
    "block|blocks",
    "bar|bars",
    "sprig|sprigs",
    "bunch|bunches",
    "leaf|leaves",
    "stalk|stalks",
    "knob|knobs|lump|lumps",
    "quartern|quarterns",
    "peck|pecks",
    "drachm|drachms|dram|drams",
});

constexpr std::string_view fillers =
    "about|abt|approximately|approx|around|roughly|circa|ca|cirka|etwa|ungefahr|environ|noin|nearly|almost|"
    "level|even|short|"
    "leveled|levelled|full|whole|good|"
    "generous|well|filled|at|least|up|another|additional|extra|further|just|exactly|some|more|a|measured|"
    "standard|tall|"
    "firmly|lightly|loosely|tightly|unsifted|ea";

constexpr std::string_view preparations =
    "just|broken|little|bit|clarified|luke|warm|lukewarm|hot|cold|cool|cooled|tepid|boiling|boiled|kochendes|"
    "kochende|heisses|kaltes|ice|iced|"
    "icy|"
    "chilled|"
    "scalded|"
    "warmed|"
    "heated|room|"
    "temperature|sifted|sieved|unsifted|melted|softened|soft|packed|firmly|lightly|loosely|chopped|finely|"
    "coarsely|pounded|tightly|additional|"
    "roughly|"
    "thinly|grated|minced|crushed|ground|freshly|fresh|dry|beaten|well|slightly|gently|divided|optional|cut|"
    "into|"
    "pieces|cubes|cubed|diced|sliced|halved|quartered|peeled|cored|pitted|seeded|stoned|seedless|toasted|"
    "roasted|"
    "drained|rinsed|washed|soaked|thawed|strained|mashed|cooked|uncooked|raw|organic|good|best|whitest|"
    "finest|quality|pure|"
    "plain|"
    "natural|local|stoneground|stone|milled|fine|coarse|medium|large|small|extra|jumbo|heaping|heaped|"
    "rounded|"
    "old|fashioned|fancy|flake|flaked|mou|molle|doux|tendre|etwas|poco|wenig|peu|po|abgeriebene|"
    "geriebene|geriebener|lauwarm|lauwarme|lauwarmer|lauwarmes|weiche|weicher|gemahlen|gemahlene|gemahlener|"
    "gehackt|gehackte|gehackter|geschmolzen|geschmolzene|zimmerwarme|derretida|derretido|rallado|rallada|"
    "molida|molido|picada|picado|fondu|hache|fuso|sciolto|grattugiato|grattugiata|"
    "tiepida|tiepido|tiede|tibia|tibio|"
    "forte|"
    "scant|level|generous|new|unbleached|bleached|enriched|granulated|quick|rising|the|of|a|an|very|"
    "about|approximately|approx|each|total|more|less|needed|necessary|required|desired|taste|as|to|your|"
    "choice|"
    "preferably|lean|free|range|ripe|sized|size|any|some|all|your|favourite|favorite|good|homemade|store|"
    "bought|"
    "tap|filtered|bottled|spring|de|d|du|von|di|del|el|la|le|in|and|blood|not|too|at|premium|leveled|"
    "levelled|"
    "shredded|crumbled|separated|lightly|whisked|unmelted|cultured|separately|stirred|"
    "skimmed|rich|thick|thin|big|sharp|shelled|baked|flat|softened|dissolved|crumbled|"
    "blanched|slivered|flaked|kneaded|clean|tepid|luke|blood-warm|milk-warm|milkwarm|bloodwarm|"
    "hand|mealy|boil|floury|tart|cooking|dairy|whipped|squeezed|"
    "ea|x|whole|untreated|unwaxed|unsprayed|facultative|chunky|"
    "regular|ordinary|usual|granular|creamed|granulated|powdered|yellow|stewed|"
    "unsalted|salted|solid|liquid|other|brushed|patted|reserved|leftover|day|days|previous";

constexpr std::string_view clauses =
    "for|until|till|poured|plumped|steeped|moistened|thinned|brought|added|at|in|"
    "with|over|made|from|if|when|because|which|that|so|dissolved|"
    "mixed|about|plus|to|or|as|like|such|see|note|"
    "depending|more|on|per|fur|zum|zur|pour|para|then|enough|sufficient|according|taken|cut|using|minus|"
    "instead|less|each|i|e|eg|ie|nach|q|use|may|can|should|"
    "will|is|are|was|but|softened|melted|beaten|scalded|sifted|divided|"
    "optional|cooled|warmed|heated|separated|"
    "chopped|sliced|diced|grated|crumbled|stirred|reserved|lukewarm|warm|"
    "drained|soaked|peeled|packed|toasted";

constexpr auto numbers = std::to_array<std::pair<std::string_view, double>>({
    {"one", 1},      {"two", 2},     {"three", 3},   {"four", 4},   {"five", 5},    {"six", 6},
    {"seven", 7},    {"eight", 8},   {"nine", 9},    {"ten", 10},   {"eleven", 11}, {"twelve", 12},
    {"fifteen", 15}, {"twenty", 20}, {"thirty", 30}, {"forty", 40}, {"fifty", 50},  {"sixty", 60},
    {"dozen", 12},   {"doz", 12},    {"couple", 2},  {"ein", 1},    {"eine", 1},    {"einen", 1},
    {"zwei", 2},     {"drei", 3},    {"vier", 4},    {"un", 1},     {"une", 1},     {"una", 1},
    {"deux", 2},     {"trois", 3},   {"quatre", 4},  {"tre", 3},    {"quattro", 4}, {"tres", 3},
});

constexpr auto purposes = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"brushing", "brushing|brush|gild|gilding|glaze|glazing|eggwash|egg wash|wash|coating|basting|baste|"
                 "bestreichen|glasur|spennellare|glassa|dorer|dorure|glacage|pincelar|glaseado"},
    {"greasing",
     "greasing|grease|greased|oiling|griddle|skillet|rings|tray|trays|pan|pans|tin|tins|"
     "buttering|bowl|baking sheet|baking sheets|sheet|sheets|mold|mould|einfetten|form|blech|teglia|moule|"
     "plaque|molde|engrasar"},
    {"dusting",
     "dusting|dust|kneading|rolling|roll|shaping|stretching|flouring|couche|banneton|basket|cloth|parchment|"
     "stone|board|surface|surfaces|bench|worktop|peel|baskets|bannetons|cloths|boards|"
     "counter|handling|bestauben|spolverare|fariner|enharinar|espolvorear"},
    {"filling",
     "filling|fill|stuffing|spreading|middle|centre|center|fullung|ripieno|garniture|farce|relleno"},
    {"topping",
     "topping|toppings|top|tops|bottom|cross|crosses|paste|sprinkling|sprinkle|garnish|decoration|decorating|"
     "decorate|finishing|finish|serving|"
     "serve|icing|ice|frosting|frost|streusel|crumb|crumble|sauce|syrup|drizzling|drizzle|belag|"
     "bestreuen|decorar|"
     "copertura|condire|condimento|"
     "cobertura"},
    {"feeding", "feeding|feed|feedings"},
    {"bath", "bath|poaching|frying|fry|deep frying|poach|pot|simmering|boiling|boil|water bath"},
});

template <class Rows, class Row>
std::vector<std::string_view> texts_of(const Rows& rows, std::string_view Row::*text) {
    std::vector<std::string_view> texts;
    for (const Row& row : rows) {
        texts.push_back(row.*text);
    }
    return texts;
}

Measure of_unit(const Unit& unit) {
    Measure measure;
    measure.name = unit.name;
    measure.is_formula_unit = true;
    measure.is_metric = unit.is_power_of_ten;
    if (unit.dimension == Dimension::mass) {
        measure.kind = Measure::Kind::mass;
        measure.mass = kilograms(unit.factor);
    } else {
        measure.kind = Measure::Kind::volume;
        measure.volume = cubic_metres(unit.factor);
    }
    return measure;
}

std::optional<Measure> unit_named(std::string_view folded) {
    const Unit* unit = find_unit(folded);
    const bool fits =
        unit != nullptr && (unit->dimension == Dimension::mass || unit->dimension == Dimension::volume);
    return fits ? std::optional(of_unit(*unit)) : std::nullopt;
}

} // namespace

std::span<const KitchenMeasure> kitchen_measures() {
    return measures;
}

std::optional<Measure> measure_named(std::string_view written, std::string_view folded) {
    if (written == "T" || written == "t" || written == "Tbs" || written == "Ts") {
        return unit_named(written == "t" ? "tsp" : "tbsp");
    }
    static const WordRows spelling_words(texts_of(recipe_spellings, &RecipeSpelling::words));
    static const WordRows kitchen_words(texts_of(measures, &KitchenMeasure::spellings));
    static const WordRows piece_words(pieces);
    if (const auto row = spelling_words.row_of(folded)) {
        return unit_named(recipe_spellings[*row].unit);
    }
    if (auto unit = unit_named(folded)) {
        return unit;
    }
    if (const auto row = kitchen_words.row_of(folded)) {
        const KitchenMeasure& kitchen = measures[*row];
        Measure measure;
        measure.kind = Measure::Kind::volume;
        measure.name = kitchen.spellings.substr(0, kitchen.spellings.find('|'));
        measure.volume = litres(kitchen.volume_ml / 1000.0);
        measure.least = kitchen.least;
        measure.most = kitchen.most;
        measure.is_doubtful = kitchen.is_doubtful;
        return measure;
    }
    if (const auto row = piece_words.row_of(folded)) {
        Measure measure;
        measure.name = pieces[*row].substr(0, pieces[*row].find('|'));
        measure.is_formula_unit = true;
        return measure;
    }
    return std::nullopt;
}

std::string_view size_named(std::string_view folded) {
    constexpr auto sizes = std::to_array<std::string_view>({"small", "medium", "large", "jumbo"});
    for (const std::string_view size : sizes) {
        if (folded == size || (folded.starts_with(size) && folded.substr(size.size()) == " sized")) {
            return size;
        }
    }
    constexpr auto short_sizes =
        std::to_array<std::pair<std::string_view, std::string_view>>({{"sm", "small"},
                                                                      {"sml", "small"},
                                                                      {"md", "medium"},
                                                                      {"med", "medium"},
                                                                      {"lg", "large"},
                                                                      {"lge", "large"},
                                                                      {"lrg", "large"}});
    for (const auto& [word, size] : short_sizes) {
        if (folded == word) {
            return size;
        }
    }
    return folded == "extra large" || folded == "xl" ? "extra large" : std::string_view();
}

bool is_filler_word(std::string_view folded) {
    static const WordSet words(fillers);
    return words.has(folded);
}

std::optional<Fullness> fullness_named(std::string_view folded) {
    static const WordSet scant("scant|scanty|skimpy|shy|small|bare");
    static const WordSet heaped("heaping|heaped|rounded|rounding|heapg|overflowing|big|large");
    if (scant.has(folded)) {
        return Fullness{.likely = 0.9, .least = 0.8, .most = 1.0};
    }
    if (heaped.has(folded)) {
        return Fullness{
            .likely = 1.25, .least = 1.0, .most = 2.0}; // rounding was two level ones in old books
    }
    return std::nullopt;
}

bool is_preparation_word(std::string_view folded) {
    static const WordSet words(preparations);
    return words.has(folded);
}

bool says_little(std::string_view folded) {
    static const WordSet words("little|bit|wenig|peu|po|poco");
    return words.has(folded);
}

bool is_clause_word(std::string_view folded) {
    static const WordSet words(clauses);
    return words.has(folded);
}

double number_named(std::string_view folded) {
    for (const auto& [word, value] : numbers) {
        if (word == folded) {
            return value;
        }
    }
    return 0.0;
}

double fraction_named(std::string_view folded) {
    constexpr auto fractions = std::to_array<std::pair<std::string_view, double>>({
        {"half|halves", 0.5},
        {"third|thirds", 1.0 / 3.0},
        {"quarter|quarters|fourth|fourths", 0.25},
        {"eighth|eighths", 0.125},
    });
    static const WordRows words(texts_of(fractions, &std::pair<std::string_view, double>::first));
    const auto row = words.row_of(folded);
    return row ? fractions[*row].second : 0.0;
}

std::string_view purpose_named(std::string_view folded) {
    static const WordRows words(texts_of(purposes, &std::pair<std::string_view, std::string_view>::second));
    const auto row = words.row_of(folded);
    return row ? purposes[*row].first : std::string_view();
}

std::string_view cut_word(std::string_view folded) {
    constexpr auto words = std::to_array<std::pair<std::string_view, std::string_view>>({
        {"flr|fl|flo|flou", "flour"},
        {"sug|sgr", "sugar"},
        {"yst", "yeast"},
        {"br|brn", "brown"},
        {"lt", "light"},
        {"dk", "dark"},
        {"syr", "syrup"},
        {"sc|scld|scald", "scalded"},
        {"wm", "warm"},
        {"lukewm|lukew", "lukewarm"},
        {"mlk", "milk"},
        {"crm", "cream"},
        {"mltd", "melted"},
        {"sw", "sweet"},
        {"short|shrt|shortng", "shortening"},
        {"butt|btr", "butter"},
        {"cinn|cinnam", "cinnamon"},
        {"mol|molas", "molasses"},
        {"ww|w w", "whole wheat"},
        {"wh", "white"},
        {"powd|pwd|pwdr", "powdered"},
        {"conf", "confectioners"},
        {"evap", "evaporated"},
        {"h2o|wtr|wat", "water"},
        {"all purp|all purp flour|ap", "all purpose"},
        {"choc", "chocolate"},
        {"van", "vanilla"},
        {"nutm", "nutmeg"},
        {"gran", "granulated"},
        {"rais", "raisins"},
        {"marg|marge", "margarine"},
        {"act", "active"},
    });
    static const WordRows cuts(texts_of(words, &std::pair<std::string_view, std::string_view>::first));
    const auto row = cuts.row_of(folded);
    return row ? words[*row].second : std::string_view();
}

} // namespace leavenwright
