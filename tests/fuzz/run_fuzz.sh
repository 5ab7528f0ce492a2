#!/bin/sh
# Runs each fuzz target for SECONDS and fails if one finds something. Builds nothing:
#     cmake --preset fuzz && cmake --build --preset fuzz && tests/fuzz/run_fuzz.sh 300
# LEAVENWRIGHT_FUZZ_BUILD names another build folder than build/fuzz. The seed is fixed, so that a
# change is judged by what it changed; SEED=0 draws a new one, for a long hunt.
set -eu
seconds=${1:?usage: run_fuzz.sh SECONDS [TARGET...]}
shift
here=$(cd "$(dirname "$0")" && pwd)
build=${LEAVENWRIGHT_FUZZ_BUILD:-$here/../../build/fuzz}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0
[ $# -gt 0 ] || set -- document formula quantity transcribe
for target in "$@"; do
    corpus=$work/$target
    mkdir -p "$corpus"
    cp "$here/corpus/$target/"* "$corpus/"
    if [ "$target" = document ] || [ "$target" = formula ]; then
        cp "$here/../../formulas/"*.yaml "$corpus/"
    fi
    # A finding is printed in base64 and kept in the folder where this was started.
    "$build/tests/fuzz/fuzz_$target" -seed="${SEED:-20261125}" -verbosity=0 \
        -max_total_time="$seconds" -max_len=4096 -timeout=10 -rss_limit_mb=2048 \
        -dict="$here/formula.dict" -artifact_prefix="./finding-$target-" -print_final_stats=1 "$corpus" || status=1
done
exit $status
