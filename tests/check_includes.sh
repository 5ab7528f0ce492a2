#!/bin/sh
# The order of the folders: an include goes down the list only. And the heavy headers: each
# in its own file only. Prints what breaks the rule; ends with 1 if anything does.
set -eu
cd "$(dirname "$0")/.."

# folder: the folders that it may include beside itself
rules='
source:
diagnostic: source
quantity: diagnostic source
ferment: quantity diagnostic source
document: quantity diagnostic source
pantry: document quantity diagnostic source
formula: pantry document quantity diagnostic source
convert: formula pantry document quantity diagnostic source
culture: ferment quantity diagnostic source
schedule: culture ferment formula pantry document quantity diagnostic source
card: culture schedule ferment convert formula pantry quantity diagnostic source
transcribe: formula pantry document quantity diagnostic source
render: transcribe card culture schedule ferment convert formula pantry quantity diagnostic source
'
faults=0
complain() {
    echo "$1"
    faults=$((faults + 1))
}

for folder in lib/*/; do
    name=$(basename "$folder")
    [ "$name" != package ] || continue # templates for installed packages, no code
    allowed=$(printf '%s\n' "$rules" | sed -n "s/^$name:/ $name/p")
    if [ -z "$allowed" ]; then
        complain "lib/$name is not in the list of tests/check_includes.sh"
        continue
    fi
    includes=$(grep -rnE '^#include "[a-z]+/' "$folder" || true)
    while IFS= read -r line; do
        [ -n "$line" ] || continue
        to=$(printf '%s\n' "$line" | sed 's/.*#include "\([a-z]*\)\/.*/\1/')
        case " $allowed " in
        *" $to "*) ;;
        *) complain "$line: lib/$name may not include $to" ;;
        esac
    done <<LINES
$includes
LINES
done

# header pattern: the files that may include it
only_in() {
    pattern=$1
    shift
    found=$(grep -rlE "#include <$pattern" lib cli || true)
    for file in $found; do
        case " $* " in
        *" $file "*) ;;
        *) complain "$file includes <$pattern...>, which belongs to: $*" ;;
        esac
    done
}
only_in 'yaml-cpp/' lib/document/yaml_reader.cpp
only_in 'boost/units/' lib/quantity/quantity.hpp
only_in 'boost/math/' lib/ferment/simulate.cpp
only_in 'boost/numeric/odeint'
only_in 'CLI/' cli/options.cpp
only_in 'kainjow/' lib/render/card_html.cpp
only_in 'pango/' cli/pdf/page.cpp
only_in 'cairo' cli/pdf/page.cpp
only_in 'nlohmann/' lib/render/json.cpp lib/transcribe/read_json_recipe.cpp cli/pdf/read_card.cpp
only_in 'gumbo' lib/transcribe/read_page.cpp
only_in 'utf8proc' lib/source/unicode.cpp
only_in 'iostream' lib/pantry/embed_pantry.cpp
only_in 'fmt/format.h' lib/diagnostic/render_diagnostic.cpp lib/pantry/embed_pantry.cpp

# Bare Approx hides a fixed slack of 1; tests state both tolerances with near().
if grep -rnw 'Approx' tests --include='*.cpp' --include='*.hpp'; then
    complain "bare Approx in a test: use near() of tests/support/near.hpp"
fi
if [ "$faults" -gt 0 ]; then
    exit 1
fi
echo "Includes keep to the order of the folders."
