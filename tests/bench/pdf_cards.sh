#!/bin/sh
# The time of PDF cards, start of both programs included: of one, and of each in a batch.
#
#     sh tests/bench/pdf_cards.sh BUILD_FOLDER
set -eu
cd "$(dirname "$0")/../.."
command=$1/leavenwright
formula=formulas/ferry-pier-tin-loaf.yaml
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Median of the wall time in microseconds of making a file of so many cards: CARDS RUNS
time_of() {
    formulas=""
    count=0
    while [ "$count" -lt "$1" ]; do
        formulas="$formulas $formula"
        count=$((count + 1))
    done
    run=0
    while [ "$run" -lt "$2" ]; do
        begin=$(date +%s%N)
        # shellcheck disable=SC2086 # a list of files is meant
        "$command" card $formulas --force -o "$work/cards.pdf"
        end=$(date +%s%N)
        echo $(((end - begin) / 1000))
        run=$((run + 1))
    done | sort -n | sed -n "$((($2 + 1) / 2))p"
}
echo "PDF cards, wall time, median"
"$command" card "$formula" --force -o "$work/cards.pdf" # fills the font cache
one=$(time_of 1 21)
fifty=$(time_of 50 5)
hundred=$(time_of 100 5)
echo "  1 card       $((one / 1000)) ms"
echo "  50 cards     $((fifty / 1000)) ms, $((fifty / 50)) us a card"
echo "  100 cards    $((hundred / 1000)) ms, $((hundred / 100)) us a card"
