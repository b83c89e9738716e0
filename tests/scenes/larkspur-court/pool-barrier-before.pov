#declare After = 0;
#include "barrier.inc"
