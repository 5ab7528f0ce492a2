#!/bin/sh
# Outside check: LibreOffice Calc adds up again what the command says of every shipped formula.
# The last line counts the numbers that were compared: "N passed, N failed".
#
#     sh tests/calc/run.sh [BUILD_DIR] [FORMULA...]   build/release and all of formulas/ by default;
#                                                     must have been built, without sanitizers
set -u
cd "$(dirname "$0")/../.." || exit 1
build=${1:-build/release}
[ $# -eq 0 ] || shift
[ $# -gt 0 ] || set -- formulas/*.yaml

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
give_up() {
    echo "$1" >&2
    echo "0 passed, 1 failed"
    exit 1
}
sh examples/install-packages.sh libreoffice-calc g++ nlohmann-json3-dev ||
    give_up "LibreOffice Calc could not be installed."

g++ -std=c++20 -O1 -Wall -Wextra -I lib tests/calc/write_workbook.cpp -o "$work/write_workbook" \
    "$build/lib/libleavenwright.a" -lyaml-cpp -lutf8proc || give_up "write_workbook does not build."
g++ -std=c++20 -O1 -Wall -Wextra tests/calc/compare_workbook.cpp -o "$work/compare_workbook" ||
    give_up "compare_workbook does not build."

# Each formula under several requests; a request that does not fit is left out, but the first must.
convert_all() {
    number=0
    for options in "" "--prefermented-flour 8% --levain-hydration 60%" \
        "--levain-on-total-flour 15% --dry-milk" "--levain-on-dough-flour 12% --levain-hydration 125%"; do
        number=$((number + 1))
        for formula in "$@"; do
            json=$work/json/$(basename "$formula" .yaml)-$number
            # shellcheck disable=SC2086 # a list of words is meant
            if "$build/leavenwright" convert "$formula" $options --format json >"$json" 2>"$work/errors"; then
                printf '%s\n%s\n' "$formula" "$json"
            elif [ "$number" -eq 1 ]; then
                cat "$work/errors" >&2
                return 1
            fi
        done
    done
}
mkdir "$work/json" "$work/computed"
convert_all "$@" >"$work/pairs" || give_up "A formula does not convert."
xargs -d '\n' "$work/write_workbook" <"$work/pairs" >"$work/workbook.fods" ||
    give_up "The workbook could not be written."

# A profile of its own, so that no setting of the user takes part.
soffice -env:UserInstallation="file://$work/profile" --headless --convert-to fods \
    --outdir "$work/computed" "$work/workbook.fods" >"$work/log" 2>&1
[ -s "$work/computed/workbook.fods" ] || { cat "$work/log" >&2; give_up "LibreOffice gave no workbook."; }

echo "$(($(wc -l <"$work/pairs") / 2)) conversions of $# formulas, computed by" \
    "$(soffice -env:UserInstallation="file://$work/profile" --version | head -n 1)"
"$work/compare_workbook" "$work/computed/workbook.fods"
