#!/usr/bin/env bash
# Builds the npm package and its page, and tests both the way their consumers have them. Installs what is missing.
set -euo pipefail
cd "$(dirname "$0")"

say() { printf 'wasm: %s\n' "$*"; }

say "building the Rust examples that the answers are held against"
cargo build -q --release -p rimewise --examples

./build.sh

say "installing the package from its tarball"
npm install --no-save --no-package-lock --silent ./pkg/rimewise-*.tgz

say "building the page"
node_modules/.bin/tsc -p page
(cd page && ../node_modules/.bin/vite build --logLevel error)

chromium=${CHROMIUM:-/usr/bin/chromium}
if [ ! -x "$chromium" ]; then
  say "installing chromium"
  apt-get -o DPkg::Lock::Timeout=600 install -y --no-remove --no-install-recommends chromium fonts-dejavu-core > /dev/null 2>&1 || {
    apt-get -o DPkg::Lock::Timeout=600 update > /dev/null
    apt-get -o DPkg::Lock::Timeout=600 install -y --no-remove --no-install-recommends chromium fonts-dejavu-core > /dev/null
  }
fi

node --test --test-concurrency=1 --test-reporter=spec tests/*.test.mjs
