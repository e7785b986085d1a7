#!/usr/bin/env bash
# How many hand-written product files name a reading, a cause and an observation; more than so many is a failure.
#
# Left out: what is generated (its first lines say so), tests, the tools and simulators of `tests`, recorded data.
set -euo pipefail
cd "$(dirname "$0")/../.."

count() {
    local limit=$1 pattern=$2
    local files=()
    while IFS= read -r file; do
        head -5 "$file" | grep -qiE 'written (from .* )?by `|generated' && continue
        files+=("$file")
    done < <(git grep -lE "$pattern" -- 'core/src/*.rs' 'ffi/src/*.rs' 'ffi/header/src/*.rs' 'wasm/src/*.rs' 'wasm/js/*.ts' \
        'wasm/page/src/*.ts' 'wasm/page/*.html' | sort)
    printf '%-24s %s files, at most %s\n' "$pattern" "${#files[@]}" "$limit"
    printf '    %s\n' "${files[@]}"
    [[ ${#files[@]} -le $limit ]] || missed=1
}

missed=0
count 3 power_w
count 5 'flood_back|FloodBack'
count 3 coil_iced
exit $missed
