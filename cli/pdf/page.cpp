#include "pdf/page.hpp"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include <cmath>
#include <cstdlib>
#include <ctime>
#include <stdexcept>

namespace leavenwright {
namespace {

constexpr const char* font_families = "DejaVu Sans, Noto Sans, Noto Sans CJK SC";
// The same file each time: no clock goes in but the one that builds are given.
constexpr std::time_t usual_date = 946684800; // 2000-01-01

template <class Object, void (*release)(Object*)>
struct Release {
    void operator()(Object* object) const { release(object); }
};
void release_layout(PangoLayout* layout) {
    g_object_unref(layout);
}
using Layout = std::unique_ptr<PangoLayout, Release<PangoLayout, release_layout>>;

std::string creation_date() {
    const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
    const std::time_t time = epoch == nullptr ? usual_date : std::strtoll(epoch, nullptr, 10);
    std::tm parts{};
    ::gmtime_r(&time, &parts);
    char text[32];
    return {text, std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts)};
}

cairo_status_t collect(void* closure, const unsigned char* bytes, unsigned int length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(bytes), length);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace

struct PdfDocument::State {
    double width = 0.0;
    double height = 0.0;
    std::string bytes;
    cairo_surface_t* surface = nullptr;
    cairo_t* cairo = nullptr;
    PangoFontMap* fonts = nullptr;
    PangoContext* context = nullptr;
    std::vector<std::string> without_font;

    Layout layout(std::string_view text, const Lettering& style, double text_width) {
        Layout made(pango_layout_new(context));
        pango_layout_set_text(made.get(), text.data(), static_cast<int>(text.size()));
        PangoFontDescription* font = pango_font_description_from_string(font_families);
        pango_font_description_set_absolute_size(font, style.size * PANGO_SCALE);
        pango_font_description_set_weight(font, style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
        pango_layout_set_font_description(made.get(), font);
        pango_font_description_free(font);
        // A right-to-left name stands where a name stands, at the left.
        pango_layout_set_auto_dir(made.get(), FALSE);
        if (text_width > 0.0) {
            pango_layout_set_width(made.get(), static_cast<int>(text_width * PANGO_SCALE));
            pango_layout_set_wrap(made.get(), PANGO_WRAP_WORD_CHAR);
        }
        if (style.bold_bytes > 0) {
            PangoAttrList* attributes = pango_attr_list_new();
            PangoAttribute* weight = pango_attr_weight_new(PANGO_WEIGHT_BOLD);
            weight->start_index = 0;
            weight->end_index = static_cast<guint>(style.bold_bytes);
            pango_attr_list_insert(attributes, weight);
            pango_layout_set_attributes(made.get(), attributes);
            pango_attr_list_unref(attributes);
        }
        pango_layout_set_alignment(made.get(), style.align == Align::right    ? PANGO_ALIGN_RIGHT
                                               : style.align == Align::middle ? PANGO_ALIGN_CENTER
                                                                              : PANGO_ALIGN_LEFT);
        if (pango_layout_get_unknown_glyphs_count(made.get()) > 0) {
            without_font.emplace_back(text);
        }
        return made;
    }

    void trace(const std::vector<Point>& points) const {
        for (std::size_t i = 0; i < points.size(); ++i) {
            (i == 0 ? cairo_move_to : cairo_line_to)(cairo, points[i].x, points[i].y);
        }
    }

    void set_grey(double grey) const { cairo_set_source_rgb(cairo, grey, grey, grey); }
};

PdfDocument::PdfDocument(Paper paper, const std::string& title) : state_(std::make_unique<State>()) {
    State& state = *state_;
    state.width = paper == Paper::letter ? 612.0 : 595.276;
    state.height = paper == Paper::letter ? 792.0 : 841.89;
    state.surface = cairo_pdf_surface_create_for_stream(collect, &state.bytes, state.width, state.height);
    cairo_pdf_surface_set_metadata(state.surface, CAIRO_PDF_METADATA_CREATE_DATE, creation_date().c_str());
    cairo_pdf_surface_set_metadata(state.surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
    state.cairo = cairo_create(state.surface);
    state.fonts = pango_cairo_font_map_new();
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(state.fonts), 72.0);
    state.context = pango_font_map_create_context(state.fonts);
    pango_context_set_base_dir(state.context, PANGO_DIRECTION_LTR);
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(state.context, options);
    cairo_font_options_destroy(options);
}

PdfDocument::~PdfDocument() {
    if (state_->cairo != nullptr) {
        cairo_destroy(state_->cairo);
        cairo_surface_destroy(state_->surface);
    }
    g_object_unref(state_->context);
    g_object_unref(state_->fonts);
}

double PdfDocument::width() const {
    return state_->width;
}
double PdfDocument::height() const {
    return state_->height;
}

double PdfDocument::text_height(std::string_view text, const Lettering& style, double width) {
    int height = 0;
    pango_layout_get_size(state_->layout(text, style, width).get(), nullptr, &height);
    return static_cast<double>(height) / PANGO_SCALE;
}

double PdfDocument::text_width(std::string_view text, const Lettering& style) {
    int width = 0;
    pango_layout_get_size(state_->layout(text, style, 0.0).get(), &width, nullptr);
    return static_cast<double>(width) / PANGO_SCALE;
}

void PdfDocument::draw_text(Point at, double width, std::string_view text, const Lettering& style) {
    const Layout layout = state_->layout(text, style, width);
    state_->set_grey(style.grey);
    cairo_move_to(state_->cairo, at.x, at.y);
    pango_cairo_show_layout(state_->cairo, layout.get());
}

void PdfDocument::draw_label(Point at, std::string_view text, const Lettering& style) {
    const double width = text_width(text, style);
    const double share = style.align == Align::right ? 1.0 : style.align == Align::middle ? 0.5 : 0.0;
    const Layout layout = state_->layout(text, style, 0.0);
    const double baseline = static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE;
    state_->set_grey(style.grey);
    cairo_move_to(state_->cairo, at.x - share * width, at.y - baseline);
    pango_cairo_show_layout(state_->cairo, layout.get());
}

void PdfDocument::draw_line(const std::vector<Point>& points, const Stroke& stroke) {
    const double dashes[] = {4.0, 3.0};
    cairo_set_dash(state_->cairo, dashes, stroke.is_broken ? 2 : 0, 0.0);
    cairo_set_line_width(state_->cairo, stroke.width);
    cairo_set_line_join(state_->cairo, CAIRO_LINE_JOIN_ROUND);
    state_->set_grey(stroke.grey);
    state_->trace(points);
    cairo_stroke(state_->cairo);
}

void PdfDocument::fill(const std::vector<Point>& corners, double grey) {
    state_->set_grey(grey);
    state_->trace(corners);
    cairo_close_path(state_->cairo);
    cairo_fill(state_->cairo);
}

void PdfDocument::end_page() {
    cairo_show_page(state_->cairo);
}

const std::vector<std::string>& PdfDocument::texts_without_font() const {
    return state_->without_font;
}

std::string PdfDocument::finish() {
    cairo_destroy(state_->cairo);
    state_->cairo = nullptr;
    cairo_surface_finish(state_->surface);
    const cairo_status_t status = cairo_surface_status(state_->surface);
    cairo_surface_destroy(state_->surface);
    if (status != CAIRO_STATUS_SUCCESS) {
        throw std::runtime_error(cairo_status_to_string(status));
    }
    return std::move(state_->bytes);
}

} // namespace leavenwright
