#version 3.7;
// Front of the house after the work.
#declare NEW = 1;
#include "common.inc"
#declare EXPO = 0.42;
#include "interior.inc"
#include "exterior.inc"
Phone(<27,5.2,-35>,<21.5,8.9,2>,0,68)
Sky(1)
Sun(<-55,62,-70>,2.1,1.05)
Ground()
Lawn(-21,39,-33,0)
Lawn(49.4,64.4,-24,30)
House()
Garage()
Surroundings(4)
// planting along the foundation
#declare R0 = seed(6);
#declare K=0; #while (K<7) object{ Shrub(20+K,1.0+0.3*rand(R0),1.0+0.4*rand(R0),78+30*rand(R0),112+20*rand(R0),54) translate <18.8+K*2.25,0,-1.7-0.5*rand(R0)> } #declare K=K+1; #end
object{ Shrub(41,1.3,1.5,92,124,60) translate <2.2,0,-2> } object{ Shrub(42,1.0,0.9,110,136,64) translate <5.4,0,-8.4> } object{ Shrub(43,0.9,0.8,112,138,66) translate <15.8,0,-8.4> }
union{ #declare K=0; #while (K<70) sphere{<18.4+15*rand(R0),0.5+0.5*rand(R0),-3.1-0.7*rand(R0)>,0.11 texture{ pigment{ #if (rand(R0)>0.5) C(216,128,150) #else C(236,206,96) #end } finish{ diffuse 0.85 } } } #declare K=K+1; #end }
union{ Bx(17.8,0,-4.2,34,0.1,-0.1) texture{ pigment{ bozo scale 0.2 color_map{[0 C(70,48,34)][1 C(104,76,54)]} } normal{ bumps 0.8 scale 0.12 } finish{ diffuse 0.8 } } }
object{ Tree(61,22,1) translate <-10,0,3> }
