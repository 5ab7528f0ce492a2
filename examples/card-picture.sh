#!/bin/sh
# Makes the picture of a card that the README shows. The command has to be built:
# sh examples/first-bake.sh does that.
set -eu
cd "$(dirname "$0")/.."
sh examples/install-packages.sh poppler-utils
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
build/release/leavenwright card formulas/ferry-pier-tin-loaf.yaml --side-by-side -o "$work/card.pdf"
pdftoppm -r 72 -gray -png -singlefile "$work/card.pdf" examples/card
echo "examples/card.png"
