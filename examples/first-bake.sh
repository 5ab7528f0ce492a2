#!/bin/sh
# From a fresh Debian 12 machine to a first bake: installs what the build needs, builds the
# command, converts a shipped formula, and makes the card to bake from.
# Running it again does only what is missing.
set -eu
cd "$(dirname "$0")/.."

# shellcheck disable=SC2046 # one word a package
sh examples/install-packages.sh $(cat examples/build-packages.txt)

if [ ! -f build/release/build.ninja ]; then
    cmake --preset release -DLEAVENWRIGHT_TESTS=OFF -DLEAVENWRIGHT_BENCH=OFF
fi
cmake --build --preset release --target leavenwright-command leavenwright-pdf

formula=formulas/ferry-pier-tin-loaf.yaml
mkdir -p examples/out
build/release/leavenwright convert "$formula" --force -o examples/out/ferry-pier-tin-loaf-levain.yaml
for ending in txt html pdf; do
    build/release/leavenwright card "$formula" --force -o "examples/out/ferry-pier-tin-loaf-card.$ending"
done
cat examples/out/ferry-pier-tin-loaf-card.txt
echo
echo "The converted formula: examples/out/ferry-pier-tin-loaf-levain.yaml"
echo "The card, as above:    examples/out/ferry-pier-tin-loaf-card.txt"
echo "To print or to a phone: the same with .pdf and .html"
echo "Next, one of your own: build/release/leavenwright card FORMULA.yaml -o card.pdf"
