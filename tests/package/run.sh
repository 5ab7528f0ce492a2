#!/bin/sh
# shellcheck disable=SC2317 # the functions are called through check
# Installs a build into a new prefix and uses it from there as another project does: through CMake
# and through pkg-config. The last line counts the checks: "N passed, N failed".
#
#     sh tests/package/run.sh [BUILD_DIR]        build/release by default; must have been built
set -u
# The generator that the project itself is built with: make may not be there.
export CMAKE_GENERATOR=Ninja
cd "$(dirname "$0")/../.." || exit 1
root=$(pwd)
build=${1:-build/release}
consumer=$root/tests/package/consumer
sh examples/install-packages.sh pkg-config || exit 1

passed=0
failed=0
# check WHAT COMMAND...: counts; shows the output of what failed
check() {
    what=$1
    shift
    if "$@" >"$work/output" 2>&1; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "FAILED: $what"
        sed 's/^/    /' "$work/output"
    fi
}
finish() {
    echo "$passed passed, $failed failed"
    [ "$failed" -eq 0 ]
    exit
}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
staged=$work/staged
prefix=$work/prefix
check "cmake --install" cmake --install "$build" --prefix "$staged"
[ "$failed" -eq 0 ] || finish
# What is installed must not depend on where: everything below happens after a move.
mv "$staged" "$prefix"

no_line_with() { # PATTERN FILE...
    pattern=$1
    shift
    ! grep -nE "$pattern" "$@"
}
all_formulas_there() {
    for formula in formulas/*.yaml; do
        cmp "$formula" "$prefix/share/leavenwright/$formula" || return 1
    done
}
archive=$(find "$prefix" -name libleavenwright.a)
config=$(dirname "$(find "$prefix" -name leavenwrightConfig.cmake)")
pc_dir=$(dirname "$(find "$prefix" -name leavenwright.pc)")
include=$prefix/include/leavenwright

# Paths of the machine that built it: ours, the new prefix, and those of system libraries.
# shellcheck disable=SC2046 # one word a file
check "no path of this machine in the exported files" \
    no_line_with "$root|$work|/usr/|/tmp/" $(find "$config" "$pc_dir" -type f)
check "the archive holds the reader's objects" sh -c "ar t '$archive' | grep -qx yaml_reader.cpp.o"
check "the archive holds each object once" sh -c "test -z \"\$(ar t '$archive' | sort | uniq -d)\""
check "all formulas are installed as they are" all_formulas_there

# Headers: all but the private ones; each compiles alone, from std, Boost and our own.
compiles_alone() { # HEADER
    g++ -std=c++20 -Wall -Wextra -Werror -fsyntax-only -I "$include" -x c++ - <<SOURCE
#include "$1"
#include "$1"
SOURCE
}
includes_only_ours() { # HEADER, below the include folder
    others=$(grep -hE '^ *# *include' "$include/$1" |
        grep -vE '^#include (<[a-z_]+>|<boost/[a-z_/]+\.hpp>|"[a-z]+/[a-z_]+\.hpp")$')
    [ -z "$others" ] || { echo "$others"; return 1; }
}
for header in $(cd lib && find . -name '*.hpp' | sed 's|^\./||' | sort); do
    if grep -qiE '^// .*private to the' "lib/$header"; then
        check "$header is private and not installed" test ! -e "$include/$header"
    else
        check "$header is installed" test -f "$include/$header"
        check "$header compiles alone" compiles_alone "$header"
        check "$header includes only std, Boost and our own" includes_only_ours "$header"
    fi
done
nothing_else() {
    others=$(find "$prefix/include" -type f ! -name '*.hpp')
    empty=$(find "$prefix/include" -type d -empty)
    [ -z "$others$empty" ] || { echo "$others$empty"; return 1; }
}
check "the include folder holds headers alone" nothing_else

# Through CMake, and through pkg-config with the compiler alone.
through_cmake() {
    cmake -S "$consumer" -B "$work/consumer" -DCMAKE_PREFIX_PATH="$prefix" -DCMAKE_BUILD_TYPE=Release &&
        cmake --build "$work/consumer" -j 1
}
through_pkg_config() {
    flags=$(PKG_CONFIG_PATH=$pc_dir pkg-config --cflags --libs leavenwright) || return 1
    # shellcheck disable=SC2086 # a list of words is meant
    g++ -std=c++20 -O2 "$consumer/consumer.cpp" -o "$work/by-pkg-config" $flags
}
into_shared_library() { # the archive must be of position-independent code
    flags=$(PKG_CONFIG_PATH=$pc_dir pkg-config --cflags --libs leavenwright) || return 1
    # shellcheck disable=SC2086
    g++ -std=c++20 -fPIC -shared "$consumer/consumer.cpp" -o "$work/plugin.so" $flags
}
too_new() {
    sed 's/find_package(leavenwright 0.1/find_package(leavenwright 99/' "$consumer/CMakeLists.txt" \
        >"$work/too-new/CMakeLists.txt"
    cp "$consumer/consumer.cpp" "$work/too-new/"
    ! cmake -S "$work/too-new" -B "$work/too-new/build" -DCMAKE_PREFIX_PATH="$prefix"
}
# 1000 g of flour, 20 % of it in a levain at 100 %: 200 + 200 g; 650 g of water stay.
cat >"$work/expected" <<'FIGURES'
total flour 1000.000 g
levain 400.000 g
hydration 65.000 %
FIGURES
prints_expected() { # PROGRAM
    "$1" >"$work/printed" && diff "$work/expected" "$work/printed"
}
mkdir "$work/too-new"
check "a project finds the package and builds" through_cmake
check "its program prints the figures" prints_expected "$work/consumer/consumer"
check "the same program builds through pkg-config" through_pkg_config
check "and prints the same" prints_expected "$work/by-pkg-config"
check "the archive goes into a shared library" into_shared_library
check "a version that is not there is refused" too_new
version=$(sed -n 's/^project(leavenwright VERSION \([0-9.]*\).*/\1/p' CMakeLists.txt)
check "pkg-config knows the version" \
    test "$(PKG_CONFIG_PATH=$pc_dir pkg-config --modversion leavenwright)" = "$version"

# The installed command, from a folder of its own, on an installed formula.
converts() {
    (cd "$work" && env -i PATH=/usr/bin:/bin "$prefix/bin/leavenwright" convert \
        "$prefix/share/leavenwright/formulas/lighthouse-lean-loaf.yaml" --format json) |
        grep -q '"prefermented_flour": 0.2'
}
check "the installed command says its version" \
    sh -c "'$prefix/bin/leavenwright' --version | grep -qF '$version'"
check "the installed command converts an installed formula" converts
makes_pdf() {
    env -i PATH=/usr/bin:/bin "$prefix/bin/leavenwright" card \
        "$prefix/share/leavenwright/formulas/lighthouse-lean-loaf.yaml" --format pdf | head -c 5 | grep -q '%PDF-'
}
check "the installed command makes a PDF" makes_pdf
finish
