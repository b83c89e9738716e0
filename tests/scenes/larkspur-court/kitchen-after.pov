#declare After = 1;
#include "kitchen.inc"
