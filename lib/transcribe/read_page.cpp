// An HTML page: its JSON-LD, and its text as a reader sees it. The only user of gumbo.
#include "transcribe/recipe_text.hpp"

#include "source/unicode.hpp"

#include <gumbo.h>

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
    GumboOptions options = kGumboDefaultOptions;
    const auto release = [&](GumboOutput* output) { gumbo_destroy_output(&options, output); };
    const std::unique_ptr<GumboOutput, decltype(release)> output(
        gumbo_parse_with_options(&options, html.data(), html.size()), release);
    return PageReader().read(*output->root);
}

} // namespace leavenwright
