#declare After = 0;
#include "kitchen.inc"
