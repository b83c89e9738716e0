#declare After = 1;
#include "barrier.inc"
