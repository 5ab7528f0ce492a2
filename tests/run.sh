#!/bin/sh
# From a fresh Debian 12 machine to tested: installs what build and tests need, builds, and
# runs every test. The last line counts them: "N passed, N failed".
#
#     sh tests/run.sh [PRESET]    release by default, with the tests of documents, schema, recipes and
#                                 package; asan, dev and coverage run the rest
set -eu
cd "$(dirname "$0")/.."
preset=${1:-release}
build=build/$preset
passed=0
failed=0

packages="$(cat examples/build-packages.txt) doctest-dev libsundials-dev units"
[ "$preset" != release ] || packages="$packages man-db groff pkg-config"
# shellcheck disable=SC2086 # a list of words is meant
sh examples/install-packages.sh $packages

cmake --preset "$preset" -DLEAVENWRIGHT_TESTS=ON
cmake --build --preset "$preset"

# Runs ctest and adds its counts.
run_ctest() {
    results=$build/test-results.xml
    rm -f "$results"
    status=0
    ctest --test-dir "$build" --output-on-failure --parallel 2 --output-junit test-results.xml || status=$?
    count() { sed -n "s/.*[[:space:]]$1=\"\([0-9]*\)\".*/\1/p" "$results" | head -n 1; }
    total=$(count tests)
    bad=$(count failures)
    disabled=$(count skipped)
    good=$((${total:-0} - ${bad:-0} - ${disabled:-0}))
    if [ "$good" -eq 0 ] || { [ "$status" -ne 0 ] && [ "${bad:-0}" -eq 0 ]; }; then
        echo "The tests did not run to their end (ctest ended with $status)." >&2
        bad=$((${bad:-0} + 1))
    fi
    passed=$((passed + good))
    failed=$((failed + ${bad:-0}))
}

# Runs a script that ends in a line "N passed, N failed", and adds its counts.
run_script() {
    echo "--- $*"
    log=$build/script.log
    status=0
    sh "$@" >"$log" 2>&1 || status=$?
    line=$(grep -E '^[0-9]+ passed, [0-9]+ failed$' "$log" | tail -n 1)
    good=${line%% *}
    bad=${line#*, }
    bad=${bad%% *}
    if [ "$status" -ne 0 ] && [ "${bad:-0}" -eq 0 ]; then
        bad=1
    fi
    if [ "${bad:-1}" -ne 0 ]; then
        cat "$log"
    else
        tail -n 1 "$log"
    fi
    passed=$((passed + ${good:-0}))
    failed=$((failed + ${bad:-1}))
}

run_ctest
if [ "$preset" = release ]; then
    run_script tests/documents/run.sh "$build"
    run_script tests/schema/run.sh "$build/leavenwright"
    run_script tests/transcribe/run.sh "$build/leavenwright"
    run_script tests/package/run.sh "$build"
fi
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
