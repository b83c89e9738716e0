#version 3.7;
// Half bath in the upper half storey, under the slope of the roof.
#include "common.inc"
#declare EXPO = 0.2;
Settings_Inside(1.0)
#include "interior.inc"
Phone(<3.1,4.9,-3.3>,<2.55,3.15,4.0>,1,76)
#declare T_Wall = texture{ Paint(226,217,198) }
#declare T_Low = texture{ Satin(128,148,142) }
#declare T_Ceil = texture{ Paint(240,239,233) }
#declare T_Trim = texture{ Satin(240,238,231) }
Outside_View(1,-11)
Back_Trees(1,-13,41)
Win_Light(<3.5,5.1,5.1>,<0,-0.4,-1>,1.5,2.2,x,5.2,Day)
Lamp_Light(<3,6.9,-1>,0.8,1.9,Warm,3)
Lamp_Light(<2.6,6.0,-3.6>,1.4,1.1,Day,3)
// x 0..5, z -4..5.2; slope rises from the left knee wall
difference{ Bx(-0.5,0,5.2,5.5,8.5,5.7) Bx(2.75,3.9,5,4.25,6.5,6) texture{ T_Wall } }
object{ union{ Window(1.5,2.6,T_Trim) } translate <3.5,3.9,5.2> }
union{ Bx(-0.4,0,-4,0,4.7,5.2) Bx(5,0,-4,5.4,8,5.2) Bx(-0.5,0,-4.5,5.5,8.5,-4) texture{ T_Wall } }
union{ triangle{<0,4.6,-4>,<0,4.6,5.2>,<2.9,7.5,-4>} triangle{<2.9,7.5,-4>,<0,4.6,5.2>,<2.9,7.5,5.2>} Bx(2.9,7.5,-4,5.2,7.8,5.2) texture{ T_Ceil } }
// boarded wainscot
#macro Boards(W) union{ #local K=0; #while (K*0.27<W) RBx(K*0.27,0,-0.05,min(W,K*0.27+0.262),3.2,0.02,0.012) #local K=K+1; #end Bx(0,3.18,-0.12,W,3.28,0.02) Bx(0,3.05,-0.07,W,3.2,0.02) Bx(0,0,-0.08,W,0.5,0.02) texture{ T_Low } } #end
object{ Boards(5) translate z*5.2 }
object{ Boards(9.2) rotate -y*90 translate <0,0,-4> }
object{ Boards(9.2) rotate y*90 translate <5,0,5.2> }
// floor: square tiles light and grey
#declare R1 = seed(5);
union{ Bx(0,-0.2,-4,5,-0.006,5.2) texture{ Matte(150,148,142) } }
union{ #declare I=0; #while (I<14) #declare J=0; #while (J<8) #declare V=0.95+0.1*rand(R1);
  box{<J*0.66+0.008,-0.05,-4+I*0.66+0.008>,<J*0.66+0.652,0,-4+I*0.66+0.652>
   #if (mod(I+J,2)) texture{ Satin(214*V,210*V,200*V) } #else texture{ Satin(126*V,138*V,136*V) } #end }
  #declare J=J+1; #end #declare I=I+1; #end }
object{ union{ Toilet(texture{ T_Porcelain },texture{ T_Porcelain }) } translate <1.45,0,5.1> }
// wall-hung basin on the right wall, bowl towards the room
union{
  difference{ RBx(3.25,2.62,0.9,4.96,2.9,3.1,0.08) sphere{0,1 scale <0.62,0.42,0.8> translate <4.0,2.95,2.0>} }
  difference{ sphere{0,1 scale <0.75,0.62,0.95> translate <4.1,2.72,2.0>} Bx(3,2.7,0.5,5,4,3.5) sphere{0,1 scale <0.62,0.42,0.8> translate <4.0,2.95,2.0>} }
  RBx(4.75,2.8,0.9,4.98,3.1,3.1,0.05)
  texture{ T_Porcelain } }
object{ union{ Faucet(T_Chrome,0.75) } scale 0.85 rotate y*90 translate <4.72,2.9,2.0> }
union{ Rod(<4.2,2.2,2.0>,<4.2,1.5,2.0>,0.06) torus{0.14,0.055 rotate x*90 translate <4.34,1.5,2.0>} Rod(<4.48,1.5,2.0>,<4.48,1.75,2.0>,0.055) Rod(<4.48,1.75,2.0>,<5,1.75,2.0>,0.055) Rod(<4.2,2.54,2>,<4.2,2.55,2>,0.08)
  Rod(<4.6,2.6,1.6>,<4.8,1.3,1.6>,0.022) Rod(<4.6,2.6,2.4>,<4.8,1.3,2.4>,0.022) Rod(<4.75,1.3,1.6>,<5,1.3,1.6>,0.03) Rod(<4.75,1.3,2.4>,<5,1.3,2.4>,0.03) texture{ T_Chrome } }
// mirror and lamp on the right wall
union{ RBx(4.9,3.9,1.0,5,6.3,3.0,0.03) texture{ T_OakY } } union{ Bx(4.885,4.0,1.1,4.95,6.2,2.9) texture{ T_Mirror } }
union{ Rod(<5,6.7,2>,<4.9,6.7,2>,0.18) Rod(<4.95,6.7,2>,<4.6,6.75,2>,0.03) texture{ T_Brass } }
union{ sphere{<4.5,6.75,2>,0.22} texture{ pigment{ rgb <1,0.95,0.85> } finish{ diffuse 0.4 emission 0.7 } } no_shadow }
light_source{ <4.2,6.7,2> Warm*0.5*EXPO fade_distance 2.5 fade_power 2 area_light y*0.3,z*0.3,3,3 adaptive 1 jitter }
// paper, towel, plant, soap, basket
union{ Rod(<0.05,2.4,3.0>,<0.05,2.4,3.04>,0.03) Rod(<0.0,2.35,2.75>,<0.3,2.35,2.75>,0.025) Rod(<0.28,2.35,2.75>,<0.28,2.35,3.35>,0.025) texture{ T_Brass } }
union{ Rod(<0.28,2.35,2.85>,<0.28,2.35,3.25>,0.18) texture{ Matte(243,241,236) } }
object{ union{ Towel(0.95,1.5,texture{ Cloth(196,124,88) }) } scale <0.9,1,0.8> rotate y*90 translate <4.82,2.75,4.1> }
object{ union{ Plant_Pot(17,0.55,texture{ Satin(228,222,208) }) } scale 0.8 translate <3.5,3.9,5.2> }
union{ RBx(4.5,2.92,1.05,4.72,3.28,1.25,0.05) Rod(<4.61,3.28,1.15>,<4.61,3.38,1.15>,0.025) Bx(4.48,3.36,1.13,4.63,3.4,1.17) texture{ Satin(96,120,118) } }
difference{ cone{<0.55,0,1.7>,0.36,<0.55,0.85,1.7>,0.44} cone{<0.55,0.05,1.7>,0.33,<0.55,1,1.7>,0.41} texture{ pigment{ gradient y scale 0.09 color_map{[0 C(136,98,58)][0.5 C(190,150,98)][1 C(136,98,58)]} } normal{ radial 0.5 frequency 40 } finish{ diffuse 0.8 } } }
union{ sphere{<0.5,0.75,1.65>,0.25} sphere{<0.68,0.78,1.85>,0.2} texture{ Cloth(226,216,196) } }
union{ RBx(1.2,0,0.2,3.4,0.04,2.6,0.015) texture{ Cloth(214,204,184) } }
// picture on the knee wall side
union{ Bx(1.15,4.1,5.13,2.15,5.3,5.2) texture{ T_OakY } } union{ Bx(1.22,4.17,5.12,2.08,5.23,5.15) texture{ Satin(238,234,224) } }
union{ Bx(1.4,4.4,5.112,1.9,5.0,5.13) texture{ pigment{ gradient y scale 0.7 translate y*4.35 turbulence 0.3 color_map{[0 C(96,116,92)][0.5 C(168,172,132)][0.55 C(214,206,186)][1 C(160,186,200)]} } } }
object{ union{ Globe_Lamp(0.36,0.5) } translate <3.9,7.5,0.5> }
