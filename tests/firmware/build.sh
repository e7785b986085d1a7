# Builds and runs one image: sourced by the firmware scripts, from the top of the checkout.
#
#   image BOARD OUT SOURCE... [-- COMPILER OPTION...]
#   emulate BOARD IMAGE
#
# Boards: m4f (Cortex-M4F), m0 (Cortex-M0), rv32 (RV32IMC); and programs of Linux on other processors: arm64, rv64.

BARE=ffi/examples/bare_metal
WARNINGS="-std=c99 -Wall -Wextra -Werror"
# No fused multiply-add: the same input gives the same output on every target.
COMMON="-O2 -g -ffp-contract=off -ffunction-sections -fdata-sections -Iffi/include -Wl,--gc-sections -Wl,--no-warn-rwx-segments -Wl,-z,noexecstack"

rust_target() {
    case $1 in
    m4f) echo thumbv7em-none-eabihf ;;
    m0) echo thumbv6m-none-eabi ;;
    rv32) echo riscv32imc-unknown-none-elf ;;
    # Without an operating system: that needs no more than core, and links to a program of Linux all the same.
    arm64) echo aarch64-unknown-none ;;
    rv64) echo riscv64gc-unknown-none-elf ;;
    esac
}

# The board's library, built once in a run.
library() {
    build_meter_library "$(rust_target "$1")"
}

image() {
    local board=$1 out=$2
    shift 2
    local sources=() options=()
    while [[ $# -gt 0 && $1 != -- ]]; do sources+=("$1"); shift; done
    [[ $# -gt 0 ]] && shift
    options=("$@")
    local archive
    archive=$(library "$board")
    # shellcheck disable=SC2086
    case $board in
    m4f)
        arm-none-eabi-gcc -mcpu=cortex-m4 -mthumb -mfloat-abi=hard -mfpu=fpv4-sp-d16 $WARNINGS $COMMON \
            --specs=nano.specs --specs=rdimon.specs -u _printf_float -nostartfiles -T $BARE/mps2.ld \
            $BARE/start_arm.c "${sources[@]}" "$archive" "${options[@]}" -lm -o "$out"
        ;;
    m0)
        arm-none-eabi-gcc -mcpu=cortex-m0 -mthumb -mfloat-abi=soft $WARNINGS $COMMON \
            --specs=nano.specs --specs=rdimon.specs -u _printf_float -nostartfiles -T $BARE/microbit.ld \
            $BARE/start_arm.c "${sources[@]}" "$archive" "${options[@]}" -lm -o "$out"
        ;;
    rv32)
        riscv64-unknown-elf-gcc -march=rv32imc -mabi=ilp32 -misa-spec=2.2 $WARNINGS $COMMON \
            --specs=picolibc.specs -nostartfiles -T $BARE/virt.ld \
            $BARE/start_rv32.c "${sources[@]}" "$archive" "${options[@]}" -lm -o "$out"
        ;;
    arm64)
        aarch64-linux-gnu-gcc $WARNINGS $COMMON -static "${sources[@]}" "$archive" "${options[@]}" -lm -o "$out"
        ;;
    rv64)
        riscv64-linux-gnu-gcc $WARNINGS $COMMON -static "${sources[@]}" "$archive" "${options[@]}" -lm -o "$out"
        ;;
    esac
}

emulate() {
    case $1 in
    m4f)
        timeout 600 qemu-system-arm -M mps2-an386 -nographic -monitor none -serial null \
            -semihosting-config enable=on,target=native -icount shift=6 -kernel "$2"
        ;;
    m0)
        timeout 600 qemu-system-arm -M microbit -global nrf51-soc.sram-size=65536 -global nrf51-soc.flash-size=524288 -nographic -monitor none -serial null \
            -semihosting-config enable=on,target=native -icount shift=6 -kernel "$2"
        ;;
    rv32)
        timeout 600 qemu-system-riscv32 -M virt -bios none -nographic -monitor none -serial stdio \
            -semihosting-config enable=on,target=native -icount shift=6 -kernel "$2"
        ;;
    arm64) timeout 600 qemu-aarch64 "$2" ;;
    rv64) timeout 600 qemu-riscv64 "$2" ;;
    esac
}
