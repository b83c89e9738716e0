#version 3.7;
#declare AFTER = 1;
#include "cellar-stair.inc"
