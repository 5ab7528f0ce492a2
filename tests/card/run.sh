#!/bin/sh
# Checks the bake card from outside: valid and accessible HTML, one printed page, sound PDF files, the
# same figures in every form. Installs Chromium, Java, Poppler, qpdf and the npm packages of
# package-lock.json. The last line counts: "N passed, N failed".
#
#     sh tests/card/run.sh [BUILD_FOLDER [--accept]]     build/release; --accept replaces the pictures
set -u
cd "$(dirname "$0")/../.." || exit 1
root=$PWD
build=$(realpath "${1:-build/release}")
accept=${2:-}
passed=0
failed=0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM

finish() {
    echo "$passed passed, $failed failed"
    [ "$failed" -eq 0 ]
    exit
}

# NAME COMPLAINT: passes if there is nothing to complain of.
no_complaint() {
    if [ -z "$2" ]; then
        passed=$((passed + 1))
    else
        echo "FAIL  $1"
        printf '%s\n' "$2" | head -n 20 | sed 's/^/        /'
        failed=$((failed + 1))
    fi
}

# A script that ends in a line of counts.
run_counted() {
    log=$work/log
    "$@" >"$log" 2>&1
    line=$(grep -E '^[0-9]+ passed, [0-9]+ failed$' "$log" | tail -n 1)
    if [ -z "$line" ]; then
        no_complaint "$*" "$(tail -n 5 "$log")"
        return
    fi
    grep -v "^$line\$" "$log"
    passed=$((passed + ${line%% *}))
    bad=${line#*, }
    failed=$((failed + ${bad%% *}))
}

sh examples/install-packages.sh chromium default-jre-headless nodejs poppler-utils qpdf fonts-dejavu-core \
    fonts-noto-core fonts-noto-cjk || failed=1
command -v npm >/dev/null 2>&1 || sh examples/install-packages.sh npm || failed=1
(cd tests/card && npm ci --ignore-scripts --no-audit --no-fund >/dev/null) || failed=1
for program in leavenwright leavenwright-pdf tests/render_samples; do
    [ -x "$build/$program" ] || {
        echo "$build/$program is not there; build it first."
        failed=1
    }
done
[ "$failed" -eq 0 ] || finish

# ---- the cards ----

make_card() { # NAME FORMULA...
    name=$1
    shift
    complaint=$(for form in txt html json pdf; do
        format=$form
        [ "$form" != txt ] || format=text
        "$build/leavenwright" card "$@" --format "$format" -o "$work/$name.$form" 2>&1
    done)
    no_complaint "cards of $name" "$complaint"
}
shipped="ferry-pier-tin-loaf harbour-masters-brioche lighthouse-scalded-rye net-loft-raisin-loaf
    quayside-half-levain ferry-galley-cinnamon-buns"
for name in $shipped; do
    make_card "$name" "formulas/$name.yaml"
done
make_card scripts tests/card/scripts.yaml
make_card hostile tests/card/hostile.yaml
make_card batch formulas/ferry-pier-tin-loaf.yaml formulas/slipway-bagels.yaml
no_complaint "cards with a curve" "$("$build/tests/render_samples" "$work" 2>&1)"
for name in forecast beside long; do
    no_complaint "PDF of $name" "$("$build/leavenwright-pdf" <"$work/$name.json" 2>&1 >"$work/$name.pdf")"
done

# ---- PDF ----

pages_of() { pdfinfo "$1" | sed -n 's/^Pages: *//p'; }
for pdf in "$work"/*.pdf; do
    name=$(basename "$pdf" .pdf)
    no_complaint "$name.pdf: qpdf finds no fault" "$(qpdf --check "$pdf" >"$work/log" 2>&1 || cat "$work/log")"
    no_complaint "$name.pdf: its fonts are embedded, as subsets" \
        "$(pdffonts "$pdf" 2>&1 | tail -n +3 | grep -vE ' yes +yes +(yes|no) +[0-9]+ +[0-9]+$')"
    no_complaint "$name.pdf has text" "$(pdffonts "$pdf" | tail -n +3 | grep -q . || echo 'no fonts')"
    pdftotext -raw "$pdf" "$work/$name.pdf.txt"
done
for name in $shipped scripts forecast beside; do
    no_complaint "$name.pdf: one page" "$(pages_of "$work/$name.pdf" | grep -vx 1)"
done
no_complaint "batch.pdf: a page for each" "$(pages_of "$work/batch.pdf" | grep -vx 2)"
"$build/leavenwright" card formulas/ferry-pier-tin-loaf.yaml -o "$work/again.pdf"
no_complaint "the same bytes for the same formula" "$(cmp "$work/ferry-pier-tin-loaf.pdf" "$work/again.pdf" 2>&1)"
"$build/leavenwright" card formulas/ferry-pier-tin-loaf.yaml --paper letter -o "$work/letter.pdf"
no_complaint "letter paper" "$(pdfinfo "$work/letter.pdf" | grep '^Page size' | grep -v '612 x 792')"
rm -f "$work/again.pdf" "$work/letter.pdf"

# ---- HTML ----

no_complaint "HTML: the Nu validator finds no errors" \
    "$(java -jar tests/card/node_modules/vnu-jar/build/dist/vnu.jar --errors-only "$work"/*.html 2>&1)"
run_counted node tests/card/check_pages.mjs "$work"
run_counted node tests/card/check_figures.mjs "$work"

# ---- pictures ----

for name in ferry-pier-tin-loaf forecast; do
    pdftoppm -r 40 -gray -png -singlefile "$work/$name.pdf" "$work/$name"
done
run_counted node tests/card/check_pictures.mjs "$work" ${accept:+"$accept"}
cd "$root" || exit 1
finish
