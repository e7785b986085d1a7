/* What every C test shares: a check that counts and a closing line. */
#ifndef RIMEWISE_TEST_CHECK_H
#define RIMEWISE_TEST_CHECK_H

#include <stdio.h>

static unsigned checks_done, checks_failed;

#define CHECK(condition)                                                              \
    do {                                                                              \
        checks_done++;                                                                \
        if (!(condition)) {                                                           \
            checks_failed++;                                                          \
            printf("%s:%d: does not hold: %s\n", __FILE__, __LINE__, #condition);     \
        }                                                                             \
    } while (0)

/* Prints how the program went and gives its exit code; a program that checked nothing failed. */
static int checks_close(const char *name)
{
    printf("%s: %u checks, %u failed\n", name, checks_done, checks_failed);
    return checks_failed != 0 || checks_done == 0;
}

#endif
