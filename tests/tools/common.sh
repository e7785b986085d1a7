# What the test scripts share: where tools are kept, how they are installed, how a library is built for a target.
# Sourced from the top of the checkout.

TOOLS=${RIMEWISE_TOOLS:-$HOME/.cache/rimewise}
SKIPPED_FILE="$TOOLS/skipped.$$"
export RIMEWISE_TOOLS=$TOOLS SKIPPED_FILE=${RIMEWISE_SKIPPED_FILE:-$SKIPPED_FILE}
export RIMEWISE_SKIPPED_FILE=$SKIPPED_FILE
export PATH="$TOOLS/bin:$PATH"
export CARGO_TERM_COLOR=${CARGO_TERM_COLOR:-never}
# A fresh clone finds the dependencies that the last one built.
if [[ ${CI-} == true ]]; then
    export CARGO_TARGET_DIR=${CARGO_TARGET_DIR:-$TOOLS/target}
else
    export CARGO_TARGET_DIR=${CARGO_TARGET_DIR:-$PWD/target}
fi

# Prints a line about what is being done.
say() {
    printf '   %s\n' "$*"
}

# Says that a tool cannot be had: a failure in CI, a skip elsewhere.
unavailable() {
    if [[ ${CI-} == true ]]; then
        say "not available: $*"
        return 1
    fi
    printf '%s\n' "$*" >>"$SKIPPED_FILE"
    say "skipped, not available: $*"
}

# Whether all the commands are there.
have() {
    local name
    for name in "$@"; do
        command -v "$name" >/dev/null 2>&1 || return 1
    done
}

# Runs apt-get as root, if that can be had.
apt_get() {
    local sudo=()
    [[ $(id -u) == 0 ]] || sudo=(sudo -n)
    DEBIAN_FRONTEND=noninteractive "${sudo[@]}" apt-get -q -o DPkg::Lock::Timeout=300 "$@"
}

# Installs Debian packages where any of their commands is missing: apt_need "COMMAND..." "PACKAGE..."
apt_need() {
    # shellcheck disable=SC2086
    have $1 && return
    have apt-get || return 0
    say "installing $2"
    if [[ ! -e $TOOLS/apt-updated ]]; then
        apt_get update >"$TOOLS/apt.log" 2>&1 || true
        touch "$TOOLS/apt-updated"
    fi
    # shellcheck disable=SC2086
    apt_get install -y --no-remove --no-install-recommends $2 >>"$TOOLS/apt.log" 2>&1 || tail -5 "$TOOLS/apt.log"
}

# QEMU for Arm and RISC-V. Debian 12's own would remove newer QEMU tools that may be there, so its backports come
# first, through a source list that only this installation uses.
need_qemu() {
    have qemu-system-arm qemu-system-riscv32 && return
    have apt-get || return 0
    local codename list mirror
    codename=$(. /etc/os-release && echo "${VERSION_CODENAME-}")
    # The same mirror that this machine's own packages come from.
    mirror=$(apt-cache policy | awk -v suite="$codename/main" '$3 == suite && !found { print $2; found = 1 }')
    if [[ $codename == bookworm && -n $mirror ]]; then
        say "installing QEMU from $codename-backports"
        list="$TOOLS/backports.list"
        echo "deb $mirror $codename-backports main" >"$list"
        apt_get update -o Dir::Etc::sourcelist="$list" -o Dir::Etc::sourceparts=- -o APT::Get::List-Cleanup=0 \
            >>"$TOOLS/apt.log" 2>&1 || true
        apt_get install -y --no-remove --no-install-recommends -t "$codename-backports" \
            qemu-system-arm qemu-system-misc >>"$TOOLS/apt.log" 2>&1 || true
    fi
    apt_need "qemu-system-arm qemu-system-riscv32" "qemu-system-arm qemu-system-misc"
}

# Everything that Debian packages: C compilers, emulators, checkers.
need_apt_tools() {
    apt_need "gcc g++ make" "gcc g++ make libc6-dev"
    apt_need "valgrind" "valgrind libc6-dbg"
    apt_need "cmake pkg-config" "cmake pkg-config"
    apt_need "node npm" "nodejs npm"
    apt_need "arm-none-eabi-gcc" "gcc-arm-none-eabi libnewlib-arm-none-eabi"
    apt_need "riscv64-unknown-elf-gcc" "gcc-riscv64-unknown-elf picolibc-riscv64-unknown-elf"
    apt_need "chromium" "chromium"
    need_qemu
    local missing=() name
    for name in gcc g++ make valgrind cmake pkg-config node npm arm-none-eabi-gcc riscv64-unknown-elf-gcc chromium \
        qemu-system-arm qemu-system-riscv32; do
        have "$name" || missing+=("$name")
    done
    [[ ${#missing[@]} == 0 ]] || unavailable "${missing[*]}"
}

RUST_TARGETS=(thumbv7em-none-eabihf thumbv6m-none-eabi riscv32imc-unknown-none-elf wasm32-unknown-unknown)

# Whether rustup's own toolchain has a target; RIMEWISE_DEBIAN_RUST=1 says no, to try the other way.
has_target() {
    [[ -z ${RIMEWISE_DEBIAN_RUST-} ]] || return 1
    rustup target list --installed 2>/dev/null | grep -qx "$1"
}

# The targets that a meter and a page need: rustup's where they are there or can be added; otherwise Debian's
# compiler with its own source of the standard library.
need_rust_targets() {
    local target missing=()
    for target in "${RUST_TARGETS[@]}"; do
        has_target "$target" && continue
        timeout 300 rustup target add "$target" >/dev/null 2>&1 && has_target "$target" && continue
        missing+=("$target")
    done
    [[ ${#missing[@]} == 0 ]] && return
    say "rustup has no ${missing[*]}: building the standard library from Debian's source"
    have /usr/bin/rustc wasm-ld-22 && [[ -d /usr/lib/rustlib/src ]] && return
    if have apt-get; then
        apt_get update >"$TOOLS/apt.log" 2>&1 || true
        apt_get install -y --no-remove --no-install-recommends rustc-web rust-web-src lld-22 \
            >>"$TOOLS/apt.log" 2>&1 || tail -5 "$TOOLS/apt.log"
    fi
    have /usr/bin/rustc wasm-ld-22 || unavailable "the Rust targets ${missing[*]}"
}

# Runs cargo for a target: cross_cargo TARGET SUBCOMMAND ARGUMENT...
# What is built lies in $(cross_target_dir TARGET)/TARGET/.
cross_cargo() {
    local target=$1 subcommand=$2
    shift 2
    if has_target "$target"; then
        cargo "$subcommand" --target "$target" "$@"
        return
    fi
    local std=core
    [[ $target == wasm32* ]] && std=std,panic_abort
    RUSTC=/usr/bin/rustc RUSTDOC=/usr/bin/rustdoc RUSTC_BOOTSTRAP=1 \
        CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=wasm-ld-22 CARGO_TARGET_DIR="$(cross_target_dir "$target")" \
        cargo "$subcommand" --target "$target" -Zbuild-std="$std" "$@"
}

cross_target_dir() {
    if has_target "$1"; then
        echo "$CARGO_TARGET_DIR"
    else
        echo "$CARGO_TARGET_DIR/debian"
    fi
}

# Builds the C library for a target without an operating system and prints the path of the archive.
build_meter_library() {
    local target=$1
    # Standard output carries the path alone.
    cross_cargo "$target" rustc -q -p rimewise-ffi --lib --profile meter --crate-type staticlib >&2
    echo "$(cross_target_dir "$target")/$target/meter/librimewise_ffi.a"
}

# Builds the C library for this machine, static and shared, and prints the directory it lies in.
build_host_library() {
    cargo rustc -q -p rimewise-ffi --lib --release --crate-type staticlib >&2
    cargo rustc -q -p rimewise-ffi --lib --release --crate-type cdylib >&2
    echo "$CARGO_TARGET_DIR/release"
}

COOLPROP_VERSION=8.0.0

# A Python of our own with the independent property library. PYTHON is its interpreter.
PYTHON=$TOOLS/python/bin/python
export PYTHON
need_python() {
    "$PYTHON" -c "import CoolProp; assert CoolProp.__version__ == '$COOLPROP_VERSION'" 2>/dev/null && return
    have python3 || apt_need python3 "python3 python3-venv"
    say "installing CoolProp $COOLPROP_VERSION"
    rm -rf "$TOOLS/python"
    python3 -m venv "$TOOLS/python" && "$PYTHON" -m pip install -q "coolprop==$COOLPROP_VERSION" numpy ||
        unavailable "CoolProp $COOLPROP_VERSION from PyPI"
}

CARGO_C_VERSION=0.10.24+cargo-0.98.0
CARGO_DENY_VERSION=0.19.0

# A cargo subcommand built once and kept: need_cargo_tool COMMAND CRATE VERSION
need_cargo_tool() {
    have "$1" && return
    say "building $2 $3 (minutes, once)"
    CARGO_TARGET_DIR="$TOOLS/build" nice cargo install -q --locked --root "$TOOLS" "$2@$3" >"$TOOLS/$2.log" 2>&1 ||
        { tail -5 "$TOOLS/$2.log"; unavailable "$2 $3"; }
    rm -rf "$TOOLS/build"
}

need_cargo_c() {
    # It links OpenSSL, whose headers no command stands for.
    [[ -e /usr/include/openssl/ssl.h ]] || apt_need "no-command-of-openssl-headers" "libssl-dev pkg-config"
    need_cargo_tool cargo-cinstall cargo-c "$CARGO_C_VERSION"
}

need_cargo_deny() {
    need_cargo_tool cargo-deny cargo-deny "$CARGO_DENY_VERSION"
}
