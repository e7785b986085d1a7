/* Counts instructions and stack on an emulated meter.
 *
 * The emulator gives every instruction the same virtual time, so that a timer counts instructions exactly. */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdint.h>

#if defined(__riscv)
static inline uint32_t ticks(void)
{
    uint32_t count;
    __asm volatile("csrr %0, instret" : "=r"(count));
    return count;
}
static inline void start_clock(void) {}
static inline double instructions(uint32_t n)
{
    return (double)n;
}
#else
extern volatile uint32_t systick_wraps;
#define SYST_CSR (*(volatile uint32_t *)0xE000E010u)
#define SYST_RVR (*(volatile uint32_t *)0xE000E014u)
#define SYST_CVR (*(volatile uint32_t *)0xE000E018u)

static inline void start_clock(void)
{
    SYST_RVR = 0xFFFFFFu;
    SYST_CVR = 0;
    SYST_CSR = 7u; /* processor clock, interrupt, enabled */
}
static inline uint32_t ticks(void)
{
    uint32_t wraps, now;
    do {
        wraps = systick_wraps;
        now = 0xFFFFFFu - SYST_CVR;
    } while (wraps != systick_wraps);
    return wraps << 24 | now;
}
static inline double instructions(uint32_t n)
{
    /* 64 ns an instruction: 1.6 ticks of 25 MHz, 1.024 ticks of 16 MHz. */
#if defined(__ARM_FP)
    return n / 1.6;
#else
    return n / 1.024;
#endif
}
#endif

/* The deepest that a call goes below this function's frame, in bytes. */
static uint32_t __attribute__((noinline, unused)) stack_of(void (*call)(void), uint32_t room)
{
    /* Volatile, because the painted memory lies below the stack pointer and belongs to nobody. */
    volatile uint8_t *top = (volatile uint8_t *)__builtin_frame_address(0) - 64;
    for (uint32_t i = 1; i <= room; i++)
        top[-(int32_t)i] = 0xC3;
    call();
    uint32_t deepest = room;
    while (deepest > 0 && top[-(int32_t)deepest] == 0xC3)
        deepest--;
    return deepest + 64;
}

#endif
