#!/bin/sh
# Runs the fuzz targets and fails if one finds something; findings are listed again at the end.
# Builds nothing: cmake --preset fuzz && cmake --build --preset fuzz
#
#     run_fuzz.sh                         a fixed number of inputs, about 30 s a target, the same on
#                                         every machine, so that a change is judged by what it changed
#     run_fuzz.sh SECONDS [TARGET...]     a hunt: other inputs each time; SEED=n names the seed
#
# LEAVENWRIGHT_FUZZ_BUILD names another build folder than build/fuzz.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=${LEAVENWRIGHT_FUZZ_BUILD:-$here/../../build/fuzz}
seconds=
if [ $# -gt 0 ]; then
    seconds=$1
    shift
fi
[ $# -gt 0 ] || set -- document formula quantity transcribe

inputs_of() {
    case $1 in
    document) echo 50000 ;;
    formula) echo 10000 ;;
    quantity) echo 1300 ;;
    transcribe) echo 7000 ;;
    esac
}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0
for target in "$@"; do
    corpus=$work/$target
    mkdir -p "$corpus"
    cp "$here/corpus/$target/"* "$corpus/"
    if [ "$target" = document ] || [ "$target" = formula ]; then
        cp "$here/../../formulas/"*.yaml "$corpus/"
    fi
    # What the comparisons of a run tell the fuzzer holds addresses, which differ from run to run:
    # without them (-use_cmp=0) the same seed gives the same inputs.
    if [ -n "$seconds" ]; then
        limits="-max_total_time=$seconds -seed=${SEED:-0}"
    else
        limits="-runs=$(inputs_of "$target") -seed=20261125 -use_cmp=0 -reload=0"
    fi
    echo "fuzz_$target $limits"
    # shellcheck disable=SC2086 # the limits are several words
    "$build/tests/fuzz/fuzz_$target" $limits -verbosity=0 -print_funcs=0 -max_len=4096 -timeout=10 \
        -rss_limit_mb=2048 -dict="$here/formula.dict" -artifact_prefix="./finding-$target-" "$corpus" \
        >"$work/$target.log" 2>&1 || status=1
    grep -v -e 'NEW_FUNC' -e 'Uses:' -e 'ecommended dictionary' "$work/$target.log" | tail -n 60
done
if [ "$status" -ne 0 ]; then
    echo "findings, in base64; each is kept in a file finding-TARGET-... here:"
    grep -H -e 'what()' -e 'SUMMARY' -e 'Base64' "$work"/*.log | sed "s|^$work/||"
fi
exit $status
