/* The image that sizes are counted from: start-up alone. */
extern volatile unsigned chosen;
volatile unsigned chosen;

int main(void)
{
    return (int)chosen;
}
