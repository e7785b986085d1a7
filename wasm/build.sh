#!/usr/bin/env bash
# Builds the npm package into wasm/pkg and packs it. Tools come from the registries and are kept in a cache.
set -euo pipefail
cd "$(dirname "$0")"
tools=${RIMEWISE_TOOLS:-$HOME/.cache/rimewise}
target=${CARGO_TARGET_DIR:-$PWD/../target}
jobs=${RIMEWISE_JOBS:-2}
mkdir -p "$tools"

say() { printf 'wasm: %s\n' "$*"; }

apt_install() {
  say "installing $*"
  apt-get -o DPkg::Lock::Timeout=600 install -y --no-remove --no-install-recommends "$@" > /dev/null 2>&1 || {
    apt-get -o DPkg::Lock::Timeout=600 update > /dev/null
    apt-get -o DPkg::Lock::Timeout=600 install -y --no-remove --no-install-recommends "$@" > /dev/null
  }
}

# The compiled module. Every byte is loaded over a phone's network, so the standard library is built with it: small,
# and with panics that stop instead of formatting a message nobody would see. That takes a compiler with the source
# of its standard library, which Debian has. RIMEWISE_WASM=rustup builds with rustup's wasm32 target instead: quicker
# and about 20 kB larger, for working on the library and for machines without Debian's packages.
export CARGO_PROFILE_RELEASE_OPT_LEVEL=z
has_debian() {
  [ -x /usr/bin/rustc ] && command -v wasm-ld-22 > /dev/null &&
    [ -d "$(/usr/bin/rustc --print sysroot)/lib/rustlib/src/rust/library" ]
}
way=${RIMEWISE_WASM:-debian}
if [ "$way" = debian ] && ! has_debian; then
  if command -v apt-get > /dev/null; then apt_install rustc-web rust-web-src lld-22; else way=rustup; fi
fi
if [ "$way" = debian ]; then
  say "compiling with Debian's $(/usr/bin/rustc --version | cut -d' ' -f1,2) and its standard library"
  RUSTC=/usr/bin/rustc RUSTDOC=/usr/bin/rustdoc RUSTC_BOOTSTRAP=1 CARGO_TARGET_DIR=$target/small \
    CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=wasm-ld-22 CARGO_PROFILE_RELEASE_PANIC=immediate-abort \
    cargo build -q -j"$jobs" --release -p rimewise-wasm --target wasm32-unknown-unknown \
    -Zpanic-immediate-abort -Zbuild-std=std,panic_abort -Zbuild-std-features=optimize_for_size
  compiled=$target/small/wasm32-unknown-unknown/release/rimewise_wasm.wasm
else
  rustup target list --installed | grep -qx wasm32-unknown-unknown || rustup target add wasm32-unknown-unknown
  say "compiling with rustup's wasm32 target"
  cargo build -q -j"$jobs" --release -p rimewise-wasm --target wasm32-unknown-unknown
  compiled=$target/wasm32-unknown-unknown/release/rimewise_wasm.wasm
fi

# The glue, by a generator of exactly the version in the library's manifest.
locked=$(sed -n 's/^wasm-bindgen = "=\(.*\)"/\1/p' Cargo.toml)
grep -q "wasm-bindgen-cli-support = \"=$locked\"" bindgen/Cargo.toml ||
  { echo "wasm: bindgen/Cargo.toml must ask for wasm-bindgen-cli-support $locked" >&2; exit 1; }
generator=$tools/bindgen-$locked-$(cksum < bindgen/src/main.rs | cut -d' ' -f1)/release/rimewise-bindgen
if [ ! -x "$generator" ]; then
  say "building the glue generator (once)"
  (cd bindgen && CARGO_TARGET_DIR=${generator%/release/*} cargo build -q --release -j"$jobs")
fi
rm -rf js/glue pkg
"$generator" "$compiled" js/glue rimewise

# The JavaScript tools.
if [ ! -x node_modules/.bin/wasm-opt ] || [ package-lock.json -nt node_modules/.package-lock.json ]; then
  say "installing the JavaScript tools"
  npm ci --silent
fi
# What counts is how well it packs: functions that stay apart pack better than those inlined, and what is computed
# twice packs better than what is kept in one more local.
node_modules/.bin/wasm-opt -O3 --converge --one-caller-inline-max-function-size=20 \
  --flexible-inline-max-function-size=1 --skip-pass=local-cse --enable-bulk-memory --enable-bulk-memory-opt \
  --enable-sign-ext --enable-mutable-globals --enable-nontrapping-float-to-int --enable-multivalue \
  --enable-reference-types --enable-call-indirect-overlong --skip-pass=memory-packing --strip-debug --strip-producers \
  js/glue/rimewise_bg.wasm -o js/glue/rimewise_bg.wasm

say "compiling the package"
# Types carry the documentation; the code, which pages load, goes without comments and without white space.
node_modules/.bin/tsc -p js --emitDeclarationOnly
node_modules/.bin/tsc -p js --declaration false --removeComments
rm -f pkg/types.js
mkdir -p pkg/glue
cp js/glue/rimewise_bg.wasm pkg/glue/rimewise.wasm
cp js/glue/rimewise.js pkg/glue/
node js/minify.mjs pkg/*.js pkg/glue/rimewise.js
cp js/package.json README.md pkg/
for licence in ../LICENSE-MIT ../LICENSE-APACHE; do [ ! -f "$licence" ] || cp "$licence" pkg/; done
(cd pkg && npm pack --silent > /dev/null)

# The gate: the tarball, which npm gzips, with every refrigerant. What is allowed, and what was wanted, stands in size.json.
limit=$(sed -n 's/.*"limit": \([0-9]*\).*/\1/p' size.json)
wanted=$(sed -n 's/.*"wanted": \([0-9]*\).*/\1/p' size.json)
packed=$(stat -c %s pkg/rimewise-*.tgz)
say "package: $packed bytes gzipped (limit $limit, wanted $wanted), module: $(stat -c %s js/glue/rimewise_bg.wasm) bytes unpacked"
if [ "$packed" -gt "$limit" ]; then
  # The limit is for what is published, which is the small build.
  [ "$way" = debian ] || { say "over the limit, as the quick build may be"; exit 0; }
  echo "wasm: the package is over its limit" >&2
  exit 1
fi
