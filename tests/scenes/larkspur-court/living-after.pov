#declare After = 1;
#include "living.inc"
