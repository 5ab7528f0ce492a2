#!/bin/sh
# Do the documents tell the truth? Compares --help, the man page, the completions and the pages of
# the verbs; runs the sessions in the documents; looks for the files that they name. The last line
# counts: "N passed, N failed".
#
#     sh tests/documents/run.sh [BUILD_FOLDER]      build/release by default
set -u
cd "$(dirname "$0")/../.." || exit 1
root=$PWD
build=${1:-build/release}
case $build in
/*) ;;
*) build=$root/$build ;;
esac
described=$build/cli/described
export LC_ALL=C.UTF-8 NO_COLOR=1 PATH="$build:$PATH"
unset MANPAGER MANOPT MANROFFSEQ
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM
passed=0
failed=0

pass() {
    echo "ok    $1"
    passed=$((passed + 1))
}

# NAME [DETAILS]
fail() {
    echo "FAIL  $1"
    [ -z "${2:-}" ] || printf '%s\n' "$2" | sed 's/^/        /'
    failed=$((failed + 1))
}

# Passes if there is nothing to complain of: NAME COMPLAINT
no_complaint() {
    if [ -z "$2" ]; then pass "$1"; else fail "$1" "$2"; fi
}

# Two lists, a word a line: NAME EXPECTED ACTUAL
same_words() {
    printf '%s\n' "$2" | sed '/^$/d' | sort -u >"$work/expected"
    printf '%s\n' "$3" | sed '/^$/d' | sort -u >"$work/actual"
    lacking=$(comm -23 "$work/expected" "$work/actual" | tr '\n' ' ')
    surplus=$(comm -13 "$work/expected" "$work/actual" | tr '\n' ' ')
    no_complaint "$1" "${lacking:+it lacks: $lacking}${lacking:+${surplus:+; }}${surplus:+it has, and should not: $surplus}"
}

finish() {
    echo "$passed passed, $failed failed"
    [ "$failed" -eq 0 ]
    exit
}

for file in "$build/leavenwright" "$described/leavenwright.1" "$described/leavenwright.bash" \
    "$described/_leavenwright" "$described/leavenwright.fish"; do
    [ -f "$file" ] || fail "$file is built"
done
[ "$failed" -eq 0 ] || finish

# ---- options and verbs, as each document has them; one a line ----

# Of the lines that describe an option: - or -- and a word, at the beginning.
help_options() { # [VERB]
    leavenwright "$@" --help | grep -oE '^ {1,4}(-[a-z], ?)?--[a-z-]+' | grep -oE -- '--?[a-z][a-z-]*'
}

help_verbs() {
    leavenwright --help | sed -n 's/^  \([a-z][a-z]*\)  .*/\1/p'
}

# The headings of the entries between two lines of the page: HEADING_PATTERN
man_headings() {
    awk -v heading="$1" '
        /^\.S[HS] / { inside = ($0 ~ heading) }
        inside && after_tp { print }
        { after_tp = /^\.TP/ }' "$described/leavenwright.1" |
        sed 's/\\f[BIR]//g; s/\\-/-/g' | grep -oE -- '^(-[a-z], )?--[a-z-]+' |
        grep -oE -- '--?[a-z][a-z-]*'
}

man_options() { # VERB
    man_headings '^[.]SH OPTIONS' | grep -vx -- --version
    man_headings "^[.]SS $1\$"
}

# What bash offers behind these words, the last of which is being typed.
bash_offers() {
    # shellcheck disable=SC2016 # bash expands it
    bash -uc 'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _leavenwright
        [ ${#COMPREPLY[@]} -eq 0 ] || printf "%s\n" "${COMPREPLY[@]}"' \
        bash "$described/leavenwright.bash" "$@" 2>&1
}

zsh_options() { # VERB
    awk -v verb="$1)" '$1 == verb { inside = 1 } inside && /;;/ { exit } inside' \
        "$described/_leavenwright" | grep -oE -- "--?[a-z][a-z-]*[=+]?\[" | tr -d '=+['
}

fish_options() { # VERB
    grep -E "seen_subcommand_from $1'|^complete -c leavenwright -s h " "$described/leavenwright.fish" |
        sed "s/ -d '.*//" | grep -oE -- ' -[ls] [a-z-]+' | sed 's/^ -l /--/; s/^ -s /-/'
}

# The text of a document without its fenced blocks.
prose() {
    awk '/^ *```/ { inside = !inside; next } !inside' "$1"
}

# Long options, and the short ones that its --help has too.
page_options() { # VERB
    prose "cli/verbs/$1.md" | grep -oE -- '(^|[^a-z-])--[a-z][a-z-]*' | grep -oE -- '--.*'
    help_options "$1" | grep -xE -- '-[a-z]' | while IFS= read -r short; do
        prose "cli/verbs/$1.md" | grep -qE -- "(^|[^a-z-])$short([^a-z-]|\$)" && echo "$short"
    done
}

verbs=$(help_verbs)
[ -n "$verbs" ] || fail "leavenwright --help lists verbs"

for verb in $verbs; do
    options=$(help_options "$verb")
    same_words "man page: options of $verb" "$options" "$(man_options "$verb")"
    same_words "bash completion: options of $verb" "$options" "$(bash_offers leavenwright "$verb" -)"
    same_words "zsh completion: options of $verb" "$options" "$(zsh_options "$verb")"
    same_words "fish completion: options of $verb" "$options" "$(fish_options "$verb")"
    if [ -f "cli/verbs/$verb.md" ]; then
        same_words "cli/verbs/$verb.md: options" "$(printf '%s\n' "$options" | grep -vx -- -h)" \
            "$(page_options "$verb")"
    else
        fail "cli/verbs/$verb.md is there"
    fi
done
same_words "man page: options without a verb" "$(help_options)" "$(man_headings '^[.]SH OPTIONS')"
same_words "bash completion: options without a verb" "$(help_options)" "$(bash_offers leavenwright -)"
same_words "man page: verbs" "$verbs" "$(sed -n 's/^\.SS //p' "$described/leavenwright.1")"
same_words "bash completion: verbs" "$verbs" "$(bash_offers leavenwright '' | grep -v '^-')"
same_words "zsh completion: verbs" "$verbs" \
    "$(sed -n "s/^ *'\([a-z]*\):[A-Z].*/\1/p" "$described/_leavenwright")"
same_words "fish completion: verbs" "$verbs" \
    "$(sed -n 's/.*__fish_use_subcommand -a \([a-z]*\) .*/\1/p' "$described/leavenwright.fish")"
# shellcheck disable=SC2016 # backquotes of the document
same_words "README.md: table of verbs" "$verbs" "$(sed -n 's/^| `\([a-z]*\)[ `].*/\1/p' README.md)"
same_words "cli/verbs: a page for each verb" "$verbs" \
    "$(for page in cli/verbs/*.md; do basename "$page" .md; done)"

# ---- help ----

for verb in "" $verbs; do
    name="leavenwright${verb:+ $verb} --help"
    # shellcheck disable=SC2086 # no word where there is no verb
    if leavenwright $verb --help >"$work/help" 2>"$work/complaint" && [ ! -s "$work/complaint" ] &&
        [ -s "$work/help" ]; then
        pass "$name"
    else
        fail "$name" "$(cat "$work/complaint")"
    fi
    no_complaint "$name: within 80 columns" "$(grep -E '^.{81}' "$work/help")"
done

# ---- sessions ----

# Every command of the blocks marked console, in a fresh folder for each document.
run_sessions() { # DOCUMENT
    rm -rf "$work/sessions" "$work/folder"
    mkdir "$work/sessions" "$work/folder"
    awk -v to="$work/sessions/" '
        /^```console *$/ { inside = 1; next }
        /^```/ { inside = 0; next }
        inside && /^\$ / {
            count++
            print substr($0, 3) > (to count ".command")
            print FNR > (to count ".line")
            printf "" > (to count ".expected")
            close(to count ".command"); close(to count ".line")
            next
        }
        inside && count { print > (to count ".expected") }' "$1"
    ln -s "$root/formulas" "$work/folder/formulas"
    cp "$root"/tests/documents/fixtures/* "$work/folder"
    number=1
    while [ -f "$work/sessions/$number.command" ]; do
        session=$work/sessions/$number
        (cd "$work/folder" && timeout 60 sh "$session.command" >"$session.actual" 2>&1 </dev/null)
        name="$1:$(cat "$session.line"): $(cat "$session.command")"
        no_complaint "$name" "$(diff "$session.expected" "$session.actual")"
        number=$((number + 1))
    done
}

for document in README.md cli/verbs/*.md formulas/README.md tests/golden/README.md; do
    [ ! -f "$document" ] || run_sessions "$document"
done

# ---- links and files ----

# Does a document mean a file of the project by this word, and is it not there? WORD FOLDER ALONE
is_lost() {
    case $1 in
    -* | /* | *[!A-Za-z0-9_./-]*) return 1 ;;                  # options, places outside, patterns
    build/* | share/* | examples/out* | leavenwright/*) return 1 ;; # made by build or install; schemas
    *README.md | *DEVELOPERS.md) ;;
    *[A-Z][A-Z]*) return 1 ;; # stands for any name
    esac
    case $1 in
    *[a-z]/* | .*/*) [ ! -e "$1" ] && [ ! -e "$2/$1" ] ;;
    .*) return 1 ;; # an ending
    *.md | *.cpp | *.hpp | *.yaml | *.sh | *.txt | *.test | *.csv)
        [ "$3" = alone ] && [ -z "$(find . \( -name build -o -name .git -o -name node_modules \) -prune -o -name "$1" -print)" ]
        ;;
    *) return 1 ;;
    esac
}

# Recipes that tests read are not documents: what they link to was never theirs to bring along.
find . \( -name build -o -name .git -o -name node_modules -o -path ./examples/out -o -path './tests/published/recipes*' \) -prune -o -name '*.md' -print |
    sed 's/^\.\///' | sort >"$work/documents"
while IFS= read -r document; do
    folder=$(dirname "$document")
    lost=$(prose "$document" | grep -oE '\]\([^)]+\)' | sed 's/^](//; s/[#)].*//' |
        while IFS= read -r link; do
            case $link in
            '' | *://* | mailto:*) ;;
            *) [ -e "$folder/$link" ] || echo "$link is not there" ;;
            esac
        done)
    no_complaint "$document: links" "$lost"
    # shellcheck disable=SC2016 # backquotes of the document
    lost=$(prose "$document" | grep -oE '`[^`]+`' | tr -d '`' | sort -u |
        while IFS= read -r span; do
            alone=alone
            case $span in *' '*) alone= ;; esac
            printf '%s\n' "$span" | tr ' ' '\n' | sed 's/[.,;]$//' | while IFS= read -r word; do
                ! is_lost "$word" "$folder" "$alone" || echo "$word is not there"
            done
        done)
    no_complaint "$document: files that it names" "$lost"
done <"$work/documents"

# ---- completions ----

no_complaint "bash completion: syntax" "$(bash -n "$described/leavenwright.bash" 2>&1)"
mkdir "$work/files"
touch "$work/files/ferry.yaml" "$work/files/ferry card.json" "$work/files/pier.yaml"
cd "$work/files" || exit 1
# EXPECTED (words or lines), then the words typed
offers() {
    expected=$1
    shift
    same_words "bash completion of '$*'" "$expected" "$(bash_offers "$@")"
}
lines() { printf '%s\n' "$@"; }
offers "convert" leavenwright con
offers "$(lines check)" leavenwright ch
offers "$(lines text json formula card)" leavenwright convert ferry.yaml --format ''
offers "$(lines text json)" leavenwright check --format =
offers "json" leavenwright check --format = j
offers "us" leavenwright scale --by 2 --units u
offers "$(lines --pan-volume --pan-area --pantry)" leavenwright scale --pan
offers "$(lines ferry.yaml 'ferry card.json')" leavenwright convert fer
offers "$(lines ferry.yaml 'ferry card.json')" leavenwright convert pier.yaml -o fer
offers "$(lines ferry.yaml 'ferry card.json')" leavenwright pantry butter --pantry fer
offers "pier.yaml" leavenwright check ferry.yaml pi
offers "" leavenwright convert --levain-hydration ''
offers "" leavenwright explain ''
offers "" leavenwright knead ''
offers "" leavenwright knead --
cd "$root" || exit 1
for shell in zsh fish; do
    file=$described/_leavenwright
    [ "$shell" = zsh ] || file=$described/leavenwright.fish
    if command -v "$shell" >/dev/null 2>&1; then
        no_complaint "$shell completion: syntax" "$("$shell" -n "$file" 2>&1)"
    else
        echo "      $shell completion: syntax not checked, $shell is not installed"
    fi
done

# ---- man page ----

command -v man >/dev/null 2>&1 && command -v groff >/dev/null 2>&1 ||
    sh examples/install-packages.sh man-db groff >"$work/installing" 2>&1 || cat "$work/installing"
page=$described/leavenwright.1
no_complaint "man page: groff has no warnings" "$(groff -man -Tutf8 -ww -z "$page" 2>&1)"
no_complaint "man page: man has no warnings" "$(MANWIDTH=80 man --warnings -l "$page" 2>&1 >"$work/page")"
no_complaint "man page: within 80 columns" "$(grep -E '^.{81}' "$work/page")"
if grep -q 'baker.s percentages' "$work/page"; then pass "man page: can be read"; else
    fail "man page: can be read" "$(head -n 5 "$work/page")"
fi
mkdir "$work/again"
if "$build/cli/describe_command" "$work/again" && diff -r "$described" "$work/again" >"$work/difference"; then
    pass "man page and completions: the same bytes each time"
else
    fail "man page and completions: the same bytes each time" "$(head -n 5 "$work/difference")"
fi
finish
