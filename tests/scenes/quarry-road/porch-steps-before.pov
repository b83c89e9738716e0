#version 3.7;
#declare NEW = 0;
#include "porch-steps.inc"
