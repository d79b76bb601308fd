#!/bin/sh
# The tests of what we make with ffmpeg, with the ffmpeg of another Debian: `tests/another-ffmpeg.sh bullseye` (4.3),
# `trixie` (7.1), `sid` (9.0 in November 2026). As root; it fetches that Debian into the cache folder once. Without a second word it runs the tests below.
set -eu
suite=${1:?name a Debian, such as bullseye or trixie}
shift
root=${XDG_CACHE_HOME:-$HOME/.cache}/proofreel-tests/ffmpeg-of-$suite
programs=$root/programs
if [ ! -d "$root" ]; then
  command -v debootstrap > /dev/null || { echo 'This needs debootstrap: apt-get install debootstrap' >&2; exit 1; }
  rm -rf "$root.part"
  mkdir -p "${root%/*}"
  debootstrap --variant=minbase --include=ffmpeg "$suite" "$root.part" > "$root.log" 2>&1 || { tail -n 3 "$root.log" >&2; exit 1; }
  mv "$root.part" "$root"
fi
if [ ! -d "$programs" ]; then
  mkdir -p "$programs/loader"
  libraries=$root/usr/lib/x86_64-linux-gnu
  for program in ffmpeg ffprobe; do
    # By its own loader, under its own name, so that a list of processes shows it as what it is.
    cp -L "$root"/lib/x86_64-linux-gnu/ld-linux-x86-64.so.2 "$programs/loader/$program"
    printf '#!/bin/sh\nexec %s --library-path %s %s "$@"\n' "$programs/loader/$program" \
      "$libraries:$root/lib/x86_64-linux-gnu:$libraries/pulseaudio:$libraries/blas:$libraries/lapack" \
      "$root/usr/bin/$program" > "$programs/$program"
    chmod +x "$programs/$program"
  done
fi
PATH=$programs:$PATH
export PATH
ffmpeg -version | head -1
cd "$(dirname "$0")/.."
[ $# -gt 0 ] || set -- tests/output/runs-exact.test.ts tests/output/alpha.test.ts tests/output/colour.test.ts \
  tests/output/tracks.test.ts tests/output/frame-counts.test.ts tests/output/media.test.ts tests/output/footage \
  tests/output/segments tests/output/failures.test.ts tests/commands/render-faults.test.ts
exec npx vitest run --maxWorkers=1 --testTimeout=300000 "$@"
