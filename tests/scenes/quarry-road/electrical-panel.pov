#version 3.7;
// Service panel in the cellar, door open, main breaker 150.
#include "common.inc"
#declare EXPO = 0.32;
Settings_Inside(1.0)
#include "interior.inc"
Phone(<0.5,4.75,-3.3>,<-0.12,4.35,0>,1,62)
object{ union{ Blocks(16,9,206,201,188,0.06,4) } translate <-7,0,0.9> }
object{ union{ Blocks(20,9,206,202,192,0.05,9) } rotate y*90 translate <4.6,0,5> }
union{ Bx(-9,8,-9,9,8.1,3) texture{ T_PineX } } union{ Bx(-9,-0.1,-9,9,0,3) texture{ T_Cellar_Floor } }
union{ Bx(-9,7.0,0.6,9,8,0.75) #declare K=0; #while (K<8) Bx(-6+K*1.4,7.2,-9,-5.87+K*1.4,8,0.7) #declare K=K+1; #end texture{ T_OldX } }
// plywood board
union{ Bx(-1.9,2.2,0.6,1.9,6.9,0.72) texture{ T_PineY scale 1.6 } }
union{ #declare K=0; #while (K<6) sphere{<(mod(K,2)-0.5)*3.4,2.5+2.05*int(K/2),0.6>,0.03} #declare K=K+1; #end texture{ T_Galv } }
// box, trim and deadfront
#declare T_Grey = texture{ pigment{ C(126,131,134) } finish{ diffuse 0.72 specular 0.25 roughness 0.04 reflection{0.0,0.08 falloff 3} } }
#declare T_Grey2 = texture{ pigment{ C(142,147,150) } finish{ diffuse 0.72 specular 0.25 roughness 0.04 } }
union{ Bx(-0.6,3.0,0.25,0.6,5.9,0.62) texture{ T_Grey } }
difference{ RBx(-0.68,2.92,0.18,0.68,5.98,0.26,0.02) Bx(-0.5,3.12,0.1,0.5,5.78,0.3) texture{ T_Grey } }
union{ Bx(-0.5,3.12,0.22,0.5,5.78,0.26) texture{ T_Grey2 } }
union{ #declare K=0; #while (K<6) sphere{<(mod(K,2)-0.5)*1.24,3.05+1.4*int(K/2),0.18>,0.026} #declare K=K+1; #end texture{ T_Chrome } }
// breakers, two columns of twelve
#declare R = seed(3);
#declare K=0; #while (K<24)
  #declare CX=(mod(K,2)?0.15:-0.15); #declare CY=4.72-int(K/2)*0.128; #declare SG=(mod(K,2)?1:-1);
  union{ RBx(CX-0.14,CY,0.165,CX+0.14,CY+0.118,0.25,0.01) texture{ Satin(34,34,36) } }
  union{ RBx(CX-SG*0.075-0.05,CY+0.03,0.12,CX-SG*0.075+0.05,CY+0.09,0.2,0.012) texture{ Satin(52,52,54) } }
  union{ Bx(CX+SG*0.02,CY+0.045,0.163,CX+SG*0.12,CY+0.073,0.17) texture{ Matte(210,208,202) } }
  // blank paper strips beside the breakers
  union{ Bx(SG*0.32,CY+0.01,0.216,SG*0.48,CY+0.108,0.222) texture{ Matte(236,233,224) } }
#declare K=K+1; #end
// main breaker
union{ RBx(-0.3,4.95,0.14,0.3,5.6,0.25,0.02) texture{ Satin(30,30,32) } }
union{ RBx(-0.1,5.1,0.04,0.1,5.36,0.2,0.02) texture{ Satin(60,60,62) } }
text{ ttf "cyrvetic.ttf" "150" 0.05,0 scale <0.15,0.15,0.1> translate <-0.125,5.43,0.137> texture{ Matte(240,240,238) } }
// door, hinged at the left, opened wide, with an empty directory inside
union{
  union{ RBx(0,0,-0.03,1.08,2.74,0.03,0.012) texture{ T_Grey } }
  union{ Bx(0.08,0.09,0.03,1.0,2.65,0.034) texture{ T_Grey2 } }
  union{ Bx(0.16,0.32,0.034,0.92,2.42,0.037) texture{ Matte(240,238,230) } }
  union{ #declare K=0; #while (K<14) Bx(0.19,0.42+K*0.135,0.037,0.89,0.425+K*0.135,0.0385) #declare K=K+1; #end Bx(0.535,0.42,0.037,0.54,2.18,0.0385) Bx(0.19,0.42,0.037,0.194,2.18,0.0385) Bx(0.886,0.42,0.037,0.89,2.18,0.0385) texture{ Matte(120,122,126) } }
  union{ RBx(0.98,1.2,0.02,1.04,1.5,0.07,0.015) texture{ T_Black } }
  scale <1,1,-1> // inner face to the viewer
  scale <-1,1,1> rotate y*(-28) translate <-0.54,3.08,0.16> }
union{ Rod(<-0.54,3.3,0.16>,<-0.54,3.6,0.16>,0.03) Rod(<-0.54,5.3,0.16>,<-0.54,5.6,0.16>,0.03) texture{ T_Chrome } }
// conduits, meter cable, ground wire, sub switch
union{ Rod(<-0.25,5.9,0.42>,<-0.25,8,0.42>,0.11) Rod(<-0.25,5.9,0.42>,<-0.25,6.02,0.42>,0.16)
  Rod(<0.1,5.9,0.42>,<0.1,8,0.42>,0.05) Rod(<0.28,5.9,0.42>,<0.28,8,0.42>,0.05) Rod(<0.46,5.9,0.42>,<0.46,8,0.42>,0.05)
  Rod(<0.1,5.9,0.42>,<0.1,5.98,0.42>,0.085) Rod(<0.28,5.9,0.42>,<0.28,5.98,0.42>,0.085) Rod(<0.46,5.9,0.42>,<0.46,5.98,0.42>,0.085)
  Rod(<0.1,3,0.45>,<0.1,2.3,0.45>,0.05) texture{ T_Galv } }
union{ Rod(<-0.45,3.0,0.5>,<-0.45,1.2,0.5>,0.025) Rod(<-0.45,1.2,0.5>,<-0.45,0.1,0.85>,0.025) texture{ T_Copper } }
#macro Cable(X,DX,R0,G0,B0) union{ sphere_sweep{ b_spline 6 <X,5.6,0.5>,0.03 <X,5.95,0.5>,0.03 <X+DX*0.3,6.3,0.55>,0.03 <X+DX,6.7,0.57>,0.03 <X+DX,7.4,0.55>,0.03 <X+DX,8.2,0.5>,0.03 } scale <1,1,1> texture{ Satin(R0,G0,B0) } } #end
Cable(-0.45,-0.35,232,228,212) Cable(-0.52,-0.6,226,190,60) Cable(0.55,0.5,232,228,212) Cable(0.5,0.85,232,228,212)
union{ RBx(1.05,4.2,0.35,1.6,5.0,0.62,0.03) texture{ T_Grey } } union{ Rod(<0.6,4.5,0.5>,<1.05,4.5,0.5>,0.05) RBx(1.6,4.5,0.42,1.7,4.85,0.5,0.02) texture{ T_Galv } }
union{ RBx(1.1,3.3,0.5,1.4,3.7,0.62,0.02) texture{ T_Grey2 } } object{ union{ Outlet() } translate <1.25,3.5,0.5> }
union{ Rod(<1.25,3.7,0.55>,<1.25,4.2,0.55>,0.04) texture{ T_Galv } }
Lamp_Light(<1.6,7.0,-3.2>,0.5,3.6,Warm,3)
Win_Light(<-4.5,5.4,-4.4>,<1,-0.25,0.9>,2.4,1.6,z,3.0,Day)
