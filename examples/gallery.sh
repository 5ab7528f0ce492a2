#!/bin/sh
# Makes the cards of six shipped formulas, one of each kind, in every form. The command has to be
# built: sh examples/first-bake.sh does that.
set -eu
cd "$(dirname "$0")/.."
command=build/release/leavenwright
out=examples/out/gallery
mkdir -p "$out"
for name in ferry-pier-tin-loaf harbour-masters-brioche lighthouse-scalded-rye net-loft-raisin-loaf \
    quayside-half-levain ferry-galley-cinnamon-buns; do
    for ending in txt html pdf; do
        "$command" card "formulas/$name.yaml" --force -o "$out/$name.$ending"
    done
    echo "$out/$name.pdf, .html, .txt"
done
