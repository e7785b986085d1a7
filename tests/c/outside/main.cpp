// The same from C++.
#include <rimewise.h>

#include <cstdio>

int main()
{
    float dew_c = 0.0f;
    if (rimewise_dew_temperature(&rimewise_r134a, 200.0f, &dew_c) != RIMEWISE_OK)
        return 1;
    std::printf("superheat %.1f K\n", 4.0 - static_cast<double>(dew_c));
    return 0;
}
