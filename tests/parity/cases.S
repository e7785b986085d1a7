/* The cases, as they lie in the file that CASES names. */
    .section .rodata
    .balign 8
    .globl cases_start, cases_end
cases_start:
    .incbin CASES
cases_end:
#if defined(__linux__)
    .section .note.GNU-stack, "", %progbits
#endif
