#declare After = 1;
#include "bath.inc"
