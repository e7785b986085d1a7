/* Reads a file of the machine that emulates: through semihosting, which has the same calls on Arm and RISC-V (Arm,
 * "Semihosting for AArch32 and AArch64"; RISC-V International, "RISC-V Semihosting"; both from memory). */
#ifndef FILE_H
#define FILE_H

#include <stdint.h>
#include <string.h>

#if defined(__linux__)
#include <stdio.h>

static FILE *opened;
static inline int open_file(const char *name)
{
    opened = fopen(name, "rb");
    return opened != NULL;
}
static inline uint32_t read_file(void *to, uint32_t bytes)
{
    return (uint32_t)fread(to, 1, bytes, opened);
}
#else

#define SYS_OPEN 1u
#define SYS_READ 6u

#if defined(__riscv)
static inline uint32_t semihosting(uint32_t call, const uint32_t *with)
{
    register uint32_t a0 __asm("a0") = call;
    register const uint32_t *a1 __asm("a1") = with;
    /* All three in one page. */
    __asm volatile(".option push\n.option norvc\n.balign 16\n"
                   "slli x0, x0, 0x1f\nebreak\nsrai x0, x0, 7\n"
                   ".option pop"
                   : "+r"(a0)
                   : "r"(a1)
                   : "memory");
    return a0;
}
#else
static inline uint32_t semihosting(uint32_t call, const uint32_t *with)
{
    register uint32_t r0 __asm("r0") = call;
    register const uint32_t *r1 __asm("r1") = with;
    __asm volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
}
#endif

static uint32_t opened;
static inline int open_file(const char *name)
{
    /* Mode 1 is "rb". */
    const uint32_t with[3] = { (uint32_t)(uintptr_t)name, 1u, (uint32_t)strlen(name) };
    opened = semihosting(SYS_OPEN, with);
    return opened != 0xFFFFFFFFu;
}
static inline uint32_t read_file(void *to, uint32_t bytes)
{
    /* The answer is how many bytes were not read. */
    const uint32_t with[3] = { opened, (uint32_t)(uintptr_t)to, bytes };
    return bytes - semihosting(SYS_READ, with);
}
#endif

#endif
