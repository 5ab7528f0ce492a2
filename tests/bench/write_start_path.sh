#!/bin/sh
# Writes cli/start_path.ld: which functions a conversion and a check run, so that the linker puts
# them side by side. Run it again when the figures of tests/bench/run.sh have grown; a name that no
# longer exists does no harm.
set -eu
cd "$(dirname "$0")/../.."
sh examples/install-packages.sh valgrind gawk
cmake --preset release >/dev/null
cmake --build --preset release --target leavenwright-command
command=build/release/leavenwright
formula=tests/bench/forty-lines.yaml
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

record() {
    name=$1
    shift
    valgrind --tool=callgrind --dump-instr=yes --callgrind-out-file="$folder/$name.calls" \
        "$command" "$@" >/dev/null 2>&1
}
record brief convert "$formula" --brief
record json convert "$formula" --format json
record formula convert "$formula" --format formula
record check check "$formula" "$formula"

# The addresses of the instructions that ran: "+N", "-N" and "*" count from the line before.
gawk '/^calls=/ { after_call = 1; next }
     /^(0x|[+*-])/ {
         place = $1
         if (place ~ /^0x/) { at = strtonum(place) }
         else if (place ~ /^[+-]/) { at += place + 0 }
         if (!after_call) { print at }
         after_call = 0
     }' "$folder"/*.calls | sort -n -u >"$folder/ran"

# The linker's map gives each section of the input its address, size and file; a long name stands
# alone on the line before.
gawk '/^Linker script and memory map/ { placed = 1 }
     placed && /^ \.text[^ ]*$/ { section = $1; next }
     placed && /^ \.text[^ ]* +0x/ { print strtonum($2), strtonum($3), $1, $4 }
     placed && section != "" && /^ +0x/ { print strtonum($1), strtonum($2), section, $3 }
     { section = "" }' "$command.map" | sort -n >"$folder/sections"

{
    cat <<'HEAD'
/* Written by tests/bench/write_start_path.sh: what a conversion runs lies side by side, as each
   stretch of 64 kB that a start touches is mapped on its own. */
SECTIONS
{
  .text.start_path :
  {
    /* The loader's part that a recording does not see, as it runs without the kernel's vDSO. */
    *libc.a:dl-lookup.o(.text)
    *libc.a:dl-object.o(.text)
HEAD
    gawk 'NR == FNR { ran[NR] = $1; count = NR; next }
         {
             while (next_ran < count && ran[next_ran + 1] < $1) { ++next_ran }
             if (next_ran >= count || ran[next_ran + 1] >= $1 + $2) { next }
             if ($4 ~ /lib(c|m-[0-9.]+|yaml-cpp|gcc_eh|gcc)\.a\(/) {
                 archive = $4
                 sub(/.*\//, "", archive)
                 split(archive, part, /[()]/)
                 print "    *" part[1] ":" part[2] "(" $3 ")"
                 # The same functions for processors other than the one that was recorded.
                 if (part[2] ~ /^(mem|str|wcs|wmem)[a-z]*-/) {
                     sub(/-.*/, "", part[2])
                     print "    *" part[1] ":" part[2] "-avx*.o(.text .text.*)"
                     print "    *" part[1] ":" part[2] "-evex*.o(.text .text.*)"
                 }
             } else if ($3 != ".text") {
                 print "    *(" $3 ")"
             }
         }' "$folder/ran" "$folder/sections" | LC_ALL=C sort -u
    cat <<'TAIL'
  }
}
INSERT BEFORE .text;
TAIL
} >cli/start_path.ld
echo "cli/start_path.ld: $(grep -c '^    \*' cli/start_path.ld) names"
