/* Start-up of a Cortex-M image: vectors, memory, floating-point unit, then main.
 *
 * Works for the emulated boards of the tests; on real hardware the vendor's start-up stands in its place. Output goes
 * through semihosting, which newlib's rdimon provides. */
#include <stdint.h>
#include <stdlib.h>

extern uint32_t stack_top, data_load, data_start, data_end, bss_start, bss_end;

int main(void);
void initialise_monitor_handles(void);
void reset_handler(void);

/* SysTick wraps every 2^24 ticks; counting the wraps makes a long clock of it. */
volatile uint32_t systick_wraps;

static void systick_handler(void)
{
    systick_wraps++;
}

/* A fault ends the program with an error instead of hanging the emulator. */
static void fault_handler(void)
{
    _Exit(99);
}

__attribute__((section(".vectors"), used)) static const void *const vectors[16] = {
    &stack_top,    reset_handler, fault_handler, fault_handler, fault_handler, fault_handler,
    fault_handler, 0,             0,             0,             0,             fault_handler,
    fault_handler, 0,             fault_handler, systick_handler,
};

void reset_handler(void)
{
#if defined(__ARM_FP)
    /* CPACR: full access to coprocessors 10 and 11, the floating-point unit. */
    *(volatile uint32_t *)0xE000ED88u |= 0xFu << 20;
    __asm volatile("dsb\n isb");
#endif
    const uint32_t *from = &data_load;
    for (uint32_t *to = &data_start; to < &data_end;)
        *to++ = *from++;
    for (uint32_t *to = &bss_start; to < &bss_end;)
        *to++ = 0;
#ifndef RIMEWISE_NO_MONITOR
    initialise_monitor_handles();
#endif
    exit(main());
}
