#version 3.7;
#declare NEW = 1;
#include "porch-steps.inc"
