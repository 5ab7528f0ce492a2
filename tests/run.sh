#!/bin/sh
# From a fresh Debian 12 machine to tested: installs what build and tests need, builds, and
# runs every test. The last line counts them: "N passed, N failed".
#
#     sh tests/run.sh [PRESET]        release by default; asan, dev and coverage work too
set -eu
cd "$(dirname "$0")/.."
preset=${1:-release}

# shellcheck disable=SC2046 # one word a package
sh examples/install-packages.sh $(cat examples/build-packages.txt) doctest-dev units

cmake --preset "$preset" -DLEAVENWRIGHT_TESTS=ON
cmake --build --preset "$preset"
results=build/$preset/test-results.xml
rm -f "$results"
status=0
ctest --test-dir "build/$preset" --output-on-failure --parallel 2 --output-junit test-results.xml || status=$?

total=$(sed -n 's/.*[ \t]tests="\([0-9]*\)".*/\1/p' "$results" | head -n 1)
failed=$(sed -n 's/.*[ \t]failures="\([0-9]*\)".*/\1/p' "$results" | head -n 1)
disabled=$(sed -n 's/.*[ \t]skipped="\([0-9]*\)".*/\1/p' "$results" | head -n 1)
passed=$((${total:-0} - ${failed:-0} - ${disabled:-0}))
if [ "$passed" -eq 0 ] || { [ "$status" -ne 0 ] && [ "${failed:-0}" -eq 0 ]; }; then
    echo "The tests did not run to their end (ctest ended with $status)." >&2
    failed=$((${failed:-0} + 1))
fi
echo "$passed passed, ${failed:-0} failed"
[ "${failed:-0}" -eq 0 ]
