/* Start-up of an RV32 image on QEMU's virt board: stack, memory, then main; output through the serial port.
 *
 * On real hardware the vendor's start-up stands in its place. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

extern uint32_t stack_top, bss_start, bss_end;

int main(void);
void start_c(void);

__attribute__((naked, section(".vectors"), used)) void _start(void)
{
    __asm volatile("la sp, stack_top\n"
                   "la t0, fault\n"
                   "csrw mtvec, t0\n"
                   "j start_c\n"
                   ".balign 4\n"
                   "fault: li a0, 99\n"
                   "j _exit\n");
}

static int put(char letter, FILE *file)
{
    (void)file;
    *(volatile uint8_t *)0x10000000u = (uint8_t)letter;
    return letter;
}

static FILE serial = FDEV_SETUP_STREAM(put, NULL, NULL, _FDEV_SETUP_WRITE);
FILE *const stdout = &serial;
FILE *const stderr = &serial;
FILE *const stdin = &serial;

/* The board's test device ends the emulation: 0x5555 for success, the code above 0x3333 for failure. */
__attribute__((noreturn)) void _exit(int code)
{
    *(volatile uint32_t *)0x00100000u = code == 0 ? 0x5555u : ((uint32_t)code << 16 | 0x3333u);
    for (;;)
        ;
}

void start_c(void)
{
    for (uint32_t *to = &bss_start; to < &bss_end;)
        *to++ = 0;
    _exit(main());
}
