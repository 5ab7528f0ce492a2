#!/bin/sh
# Rewrites what the golden sessions expect with what the command prints now. Never run by CI.
# accept.sh BUILD_FOLDER [SESSION...]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
build=${1:?usage: accept.sh BUILD_FOLDER [SESSION...]}
shift
export NO_COLOR=1 LEAVENWRIGHT_SOURCE_DIR="${here%/tests/golden}"
if [ $# -eq 0 ]; then
  set -- "$here"/*.test "$here"/*/*.test
fi
for session; do
  "$build/tests/golden_runner" --accept "$build/leavenwright" "$session"
done
