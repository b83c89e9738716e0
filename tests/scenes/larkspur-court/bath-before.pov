#declare After = 0;
#include "bath.inc"
