#!/bin/sh
# Builds the release preset and prints the benchmarks.
set -eu
cd "$(dirname "$0")/../.."
sh examples/install-packages.sh libsundials-dev
cmake --preset release -DLEAVENWRIGHT_BENCH=ON >/dev/null
cmake --build --preset release --target leavenwright-command leavenwright-pdf bench_bare_parse bench_plain_parse \
    bench_process bench_many bench_long_lines bench_fermentation
tests=build/release/tests/bench
echo "against a bare parse, statically linked as the compiler does it"
"$tests/bench_process" "$tests/bench_plain_parse" build/release/leavenwright tests/bench/forty-lines.yaml
echo "against the same, linked with our own savings"
"$tests/bench_process" "$tests/bench_bare_parse" build/release/leavenwright tests/bench/forty-lines.yaml
"$tests/bench_many" tests/bench/forty-lines.yaml
echo "recipes of one long line: the time grows with the length"
"$tests/bench_long_lines"
sh tests/bench/pdf_cards.sh build/release
"$tests/bench_fermentation" build/release/leavenwright tests/bench/forty-lines.yaml
