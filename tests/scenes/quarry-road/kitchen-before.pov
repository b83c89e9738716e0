#version 3.7;
#declare AFTER = 0;
#include "kitchen.inc"
