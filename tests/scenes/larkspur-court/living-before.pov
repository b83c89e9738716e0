#declare After = 0;
#include "living.inc"
