// An HTML page: its JSON-LD, and its text as a reader sees it. The only user of gumbo.
#include "transcribe/recipe_text.hpp"

#include "source/unicode.hpp"

#include <gumbo.h>

#include <algorithm>
#include <iterator>
#include <memory>

namespace leavenwright {
namespace {

bool is_block(GumboTag tag) {
    switch (tag) {
    case GUMBO_TAG_P:
    case GUMBO_TAG_DIV:
    case GUMBO_TAG_LI:
    case GUMBO_TAG_UL:
    case GUMBO_TAG_OL:
    case GUMBO_TAG_BR:
    case GUMBO_TAG_TR:
    case GUMBO_TAG_H1:
    case GUMBO_TAG_H2:
    case GUMBO_TAG_H3:
    case GUMBO_TAG_H4:
    case GUMBO_TAG_H5:
    case GUMBO_TAG_H6:
    case GUMBO_TAG_SECTION:
    case GUMBO_TAG_ARTICLE:
    case GUMBO_TAG_PRE:
        return true;
    default:
        return false;
    }
}

// Elements that hold nothing, and those that the next of their kind closes.
bool is_never_deep(std::string_view name) {
    for (const std::string_view word :
         {"br",    "img", "input", "meta", "link", "hr", "source", "area", "base", "col",   "embed",
          "track", "wbr", "p",     "li",   "td",   "th", "tr",     "dt",   "dd",   "option"}) {
        if (name == word) {
            return true;
        }
    }
    return false;
}

// Whether elements nest deeper, or one has more attributes, than any real page: the parser's time grows with
// their square, and it frees its tree by recursion.
class TangleFinder {
public:
    explicit TangleFinder(std::string_view html) : html_(html) {}

    bool find() {
        for (std::size_t at = html_.find('<'); at != std::string_view::npos; at = html_.find('<', at + 1)) {
            const bool closes = html_.substr(at + 1).starts_with('/');
            const std::string name = name_at(at + (closes ? 2 : 1));
            if (name.empty()) {
                continue;
            }
            if (closes) {
                close(name);
                continue;
            }
            at = end_of_tag(at);
            if (most_attributes_seen_ || open(name)) {
                return true;
            }
            if (name == "script" || name == "style") {
                const std::size_t end = html_.find("</", at);
                at = end == std::string_view::npos ? html_.size() : end - 1;
            }
        }
        return false;
    }

private:
    static constexpr std::size_t deepest = 400;
    static constexpr std::size_t most_attributes = 500;

    std::string name_at(std::size_t at) const {
        std::string name;
        while (at < html_.size() && name.size() < 20) {
            const char byte = html_[at++];
            const char lower = byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : byte;
            const bool belongs =
                (lower >= 'a' && lower <= 'z') || (lower >= '0' && lower <= '9' && !name.empty());
            if (!belongs) {
                break;
            }
            name += lower;
        }
        return name;
    }

    std::size_t end_of_tag(std::size_t at) {
        std::size_t gaps = 0;
        char quote = '\0';
        for (; at < html_.size(); ++at) {
            const char byte = html_[at];
            if (quote != '\0') {
                quote = byte == quote ? '\0' : quote;
            } else if (byte == '"' || byte == '\'') {
                quote = byte;
                ++gaps; // attributes may follow a quoted value without a space
            } else if (byte == '>') {
                break;
            }
            gaps += quote == '\0' && (byte == ' ' || byte == '\n' || byte == '\t' || byte == '/' ||
                                      byte == '\f' || byte == '\r');
        }
        most_attributes_seen_ = most_attributes_seen_ || gaps > most_attributes;
        return std::min(at, html_.size() - 1);
    }

    bool open(const std::string& name) {
        if (!is_never_deep(name)) {
            open_.push_back(name);
        }
        return open_.size() > deepest;
    }

    // Only the element itself: what is open within it may be opened again behind it.
    void close(const std::string& name) {
        const auto found = std::find(open_.rbegin(), open_.rend(), name);
        if (found != open_.rend()) {
            open_.erase(std::next(found).base());
        }
    }

    std::string_view html_;
    std::vector<std::string> open_;
    bool most_attributes_seen_ = false;
};

class PageReader {
public:
    PageText read(const GumboNode& root) {
        // A stack of our own: pages may nest deeper than the machine's.
        std::vector<Step> open{{&root, false}};
        while (!open.empty()) {
            const Step step = open.back();
            open.pop_back();
            visit(step, open);
        }
        return std::move(page_);
    }

private:
    struct Step {
        const GumboNode* node;
        bool is_end; // the block has been read
    };

    void visit(const Step& step, std::vector<Step>& open) {
        const GumboNode& node = *step.node;
        if (step.is_end) {
            page_.text += '\n';
            return;
        }
        const bool is_text = node.type == GUMBO_NODE_TEXT || node.type == GUMBO_NODE_WHITESPACE;
        if (is_text) {
            add_text(node.v.text.text);
            return;
        }
        if (node.type != GUMBO_NODE_ELEMENT) {
            return;
        }
        const GumboTag tag = node.v.element.tag;
        if (tag == GUMBO_TAG_SCRIPT) {
            take_script(node);
            return;
        }
        if (tag == GUMBO_TAG_STYLE || tag == GUMBO_TAG_HEAD) {
            push_children(node, open, tag == GUMBO_TAG_HEAD); // scripts stand in the head too
            return;
        }
        if (is_block(tag)) {
            page_.text += '\n';
            open.push_back({&node, true});
        }
        push_children(node, open, false);
    }

    static void push_children(const GumboNode& node, std::vector<Step>& open, bool scripts_only) {
        const GumboVector& children = node.v.element.children;
        for (unsigned i = children.length; i-- > 0;) {
            const auto* child = static_cast<const GumboNode*>(children.data[i]);
            const bool is_script =
                child->type == GUMBO_NODE_ELEMENT && child->v.element.tag == GUMBO_TAG_SCRIPT;
            if (!scripts_only || is_script) {
                open.push_back({child, false});
            }
        }
    }

    void take_script(const GumboNode& node) {
        const GumboAttribute* type = gumbo_get_attribute(&node.v.element.attributes, "type");
        const bool is_json_ld = type != nullptr && fold_name(type->value).starts_with("application/ld+json");
        if (is_json_ld && node.v.element.children.length > 0) {
            const auto* text = static_cast<const GumboNode*>(node.v.element.children.data[0]);
            page_.json.emplace_back(text->v.text.text);
        }
    }

    // Runs of space are one; line ends of the source are none.
    void add_text(std::string_view text) {
        for (const char byte : text) {
            const bool is_space = byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
            const bool is_after_space =
                page_.text.empty() || page_.text.back() == ' ' || page_.text.back() == '\n';
            if (!is_space) {
                page_.text += byte;
            } else if (!is_after_space) {
                page_.text += ' ';
            }
        }
    }

    PageText page_;
};

} // namespace

PageText read_page(std::string_view html) {
    if (TangleFinder(html).find()) {
        return {.json = {}, .text = {}, .is_tangled = true};
    }
    GumboOptions options = kGumboDefaultOptions;
    const auto release = [&](GumboOutput* output) { gumbo_destroy_output(&options, output); };
    const std::unique_ptr<GumboOutput, decltype(release)> output(
        gumbo_parse_with_options(&options, html.data(), html.size()), release);
    return PageReader().read(*output->root);
}

} // namespace leavenwright
