// Front of the house from the street, morning light, after the repairs.
#declare Amb = 0.02;
#include "lc.inc"
camera { location <-2.2,1.6,-14.2> right x*4/3 up y angle 68 look_at <1.35,1.85,0> }
sky_sphere { SkyDay }
light_source { <-45,42,-60> color rgb <1,0.90,0.76>*1.05 parallel point_at <0,0,0> }
Mountains(420,75,1.3,color srgb <0.52,0.53,0.64>)
plane { y,-0.05 texture { T_Gravel } }
// street, kerb, walk, drive
box { <-80,-0.2,-40>,<80,-0.045,-11.6> texture { pigment { granite color_map { [0 color srgb 0.36][1 color srgb 0.48] } scale 0.2 } normal { granite 0.3 scale 0.03 } finish { F_Matte } } }
box { <-80,-0.1,-11.6>,<80,0.06,-11.35> texture { T_Concrete } }
box { <-80,-0.1,-11.35>,<80,0.055,-9.9> texture { T_Concrete } }
#declare I=0; #while (I<26) box { <-20+I*1.5,0.05,-11.35>,<-19.98+I*1.5,0.0565,-9.9> Paint(color srgb 0.45) } #declare I=I+1; #end
difference { box { <3.3,-0.1,-11.5>,<8.9,0.05,-4.0> } box { <6.09,0.03,-12>,<6.11,0.1,-3> } box { <3,0.03,-7.01>,<9,0.1,-6.99> } texture { T_Concrete } }
box { <0.3,-0.1,-2.8>,<1.9,0.045,1.0> texture { T_Concrete } } box { <1.5,-0.1,-4.3>,<3.4,0.045,-2.7> texture { T_Concrete } } box { <0.3,-0.1,-4.3>,<1.9,0.045,-2.7> texture { T_Concrete } }
// walls
difference {
  union { box { <-8.6,-0.1,0>,<9.3,2.75,10> } box { <3.0,-0.1,-4>,<9.3,2.75,1> } }
  box { <-6.6,0.75,-0.2>,<-4.1,2.2,0.3> } box { <-2.5,0.9,-0.2>,<-0.9,2.2,0.3> }
  box { <3.7,-0.2,-4.2>,<8.6,2.2,-3.75> }
  box { <0.2,0.03,-0.3>,<2.2,2.2,1.3> } cylinder { <1.2,2.0,-0.3>,<1.2,2.0,1.3>,1 scale <1,1,1> }
  texture { T_Stucco } }
prism { linear_sweep linear_spline 0,0.3,4, <2.95,2.7>,<9.35,2.7>,<6.15,3.85>,<2.95,2.7> rotate x*-90 translate z*-3.7 texture { T_Stucco } }
box { <-8.65,-0.06,-0.03>,<3.0,0.28,0.1> texture { T_Trim } } box { <2.96,-0.06,-4.03>,<3.68,0.28,-3.9> texture { T_Trim } } box { <8.62,-0.06,-4.03>,<9.34,0.28,-3.9> texture { T_Trim } }
// windows
object { WinUnit(2.5,1.45,1) translate <-5.35,0.75,0.12> } object { WinUnit(1.6,1.3,1) translate <-1.7,0.9,0.12> }
box { <-6.58,0.77,0.22>,<-4.12,2.18,0.23> Paint(color srgb <0.62,0.60,0.55>) } box { <-2.48,0.92,0.22>,<-0.92,2.18,0.23> Paint(color srgb <0.62,0.60,0.55>) }
box { <-6.58,0.77,0.145>,<-4.12,2.18,0.147> texture { pigment { color rgbt <0.1,0.14,0.18,0.35> } finish { ambient 0 diffuse 0.3 reflection { 0.12,0.7 } } } }
box { <-2.48,0.92,0.145>,<-0.92,2.18,0.147> texture { pigment { color rgbt <0.1,0.14,0.18,0.35> } finish { ambient 0 diffuse 0.3 reflection { 0.12,0.7 } } } }
difference { union { box { <-6.78,0.57,-0.05>,<-3.92,2.38,0.1> } box { <-2.68,0.72,-0.05>,<-0.72,2.38,0.1> } } box { <-6.6,0.75,-0.2>,<-4.1,2.2,0.3> } box { <-2.5,0.9,-0.2>,<-0.9,2.2,0.3> } texture { T_Trim } }
// entry arch, porch and door
box { <0.2,-0.05,0>,<2.2,0.035,1.35> texture { pigment { checker color srgb <0.62,0.40,0.30>, color srgb <0.66,0.44,0.33> scale 0.3 } finish { F_Satin } } }
union { box { <0.65,0.04,1.25>,<1.75,2.15,1.3> texture { T_Trim } } object { RB(<0.73,0.05,1.20>,<1.67,2.08,1.27>,0.01) Satin(color srgb <0.36,0.45,0.43>) }
  #declare I=0; #while (I<6) object { RB(<0.83+mod(I,2)*0.39,0.22+floor(I/2)*0.62,1.185>,<1.18+mod(I,2)*0.39,0.72+floor(I/2)*0.62,1.21>,0.01) Satin(color srgb <0.33,0.42,0.40>) } #declare I=I+1; #end
  sphere { <0.80,1.02,1.15>,0.04 texture { T_Nickel } } }
union { cylinder { <2.0,0.04,0.5>,<2.0,0.4,0.5>,0.18 Satin(color srgb <0.60,0.36,0.26>) } object { Barrel(0.6) translate <2.0,0.38,0.5> } }
union { RB(<-0.08,1.75,-0.16>,<0.08,2.05,-0.02>,0.01) texture { T_BlackM } } box { <-0.06,1.79,-0.165>,<0.06,2.0,-0.15> texture { T_Lamp } }
// garage door, 4 x 4 panels
box { <3.65,0,-3.8>,<8.65,2.25,-3.7> Satin(color srgb <0.72,0.62,0.52>) }
#declare J=0; #while (J<4)
  box { <3.7,0.03+J*0.545,-3.82>,<8.6,0.565+J*0.545,-3.78> Satin(color srgb <0.80,0.72,0.62>) }
  #declare I=0; #while (I<8) object { RB(<3.78+I*0.605,0.11+J*0.545,-3.832>,<4.31+I*0.605,0.485+J*0.545,-3.8>,0.011) Satin(color srgb <0.82,0.74,0.64>) } #declare I=I+1; #end
  #declare J=J+1; #end
difference { box { <3.5,0.05,-4.06>,<8.8,2.42,-3.9> } box { <3.7,-1,-5>,<8.6,2.2,-3> } texture { T_Trim } }
#declare I=0; #while (I<2) union { object { RB(<-0.09,1.72,-0.16>,<0.09,2.06,-0.02>,0.01) texture { T_BlackM } } box { <-0.065,1.77,-0.168>,<0.065,2.0,-0.15> texture { T_Lamp } } translate <3.3+I*5.72,0.1,-4.0> } #declare I=I+1; #end
// roofs
#declare PA = 20;
object { RoofSlope(18.9,6.3,3) rotate x*-PA translate <-9.1,2.80,-0.55> }
object { RidgeCaps(18.9,8) rotate y*90 translate <-9.1,4.94,5.35> }
object { RoofSlope(7.4,3.8,5) rotate x*-PA rotate y*90 translate <2.55,2.78,3.0> }
object { RoofSlope(7.4,3.8,7) rotate x*-PA rotate y*-90 translate <9.75,2.78,-4.4> }
object { RidgeCaps(7.3,9) translate <6.15,4.09,-4.42> }
union { box { <2.5,-0.18,0>,<6.33,-0.02,0.05> rotate z*0 } texture { T_Trim } translate y*-50 }
// barge boards on the garage gable
union { box { <0,-0.26,0>,<3.85,-0.08,0.06> rotate z*PA translate <2.52,2.80,-4.42> } box { <-3.85,-0.26,0>,<0,-0.08,0.06> rotate z*-PA translate <9.78,2.80,-4.42> } Satin(color srgb <0.50,0.40,0.32>) }
// vent in the gable
union { cylinder { <6.15,3.28,-4.03>,<6.15,3.28,-3.6>,0.24 texture { T_Trim } } #declare I=0; #while (I<3) cylinder { <6.15+(I-1)*0.2,3.22+mod(I,2)*0.1,-4.06>,<6.15+(I-1)*0.2,3.22+mod(I,2)*0.1,-3.6>,0.075 texture { T_Clay } } #declare I=I+1; #end }
// side wall and gate of block
box { <-30,-0.1,3>,<-8.6,1.7,3.2> texture { T_Block } } box { <-30,1.7,2.97>,<-8.6,1.78,3.23> texture { T_Trim } } box { <9.3,-0.1,3>,<30,1.7,3.2> texture { T_Block } }
// neighbour
union { box { <-34,-0.1,2>,<-16,2.7,12> texture { T_Trim } } object { RoofSlope(19,5.5,14) rotate x*-PA translate <-34.5,2.75,1.4> } }
union { box { <18,-0.1,1>,<34,2.7,12> texture { T_Stucco } } object { RoofSlope(17,5.5,15) rotate x*-PA translate <17.5,2.75,0.4> } }
// planting
object { PaloVerde(1.35,17) translate <-4.4,-0.05,-4.4> }
object { Saguaro(2.5) rotate y*55 translate <2.35,-0.05,-1.5> }
object { Agave(1.05,3) translate <-2.3,0.0,-4.6> } object { Agave(0.8,4) translate <-5.9,0,-6.8> } object { Agave(0.85,8) translate <2.3,0,-6.3> }
object { Barrel(1.0) translate <-1.3,-0.05,-5.9> } object { Barrel(0.8) translate <-0.75,-0.05,-5.4> } object { Barrel(0.9) translate <-0.5,-0.05,-6.2> }
object { Rock scale <0.65,0.5,0.5> translate <-3.1,0.05,-6.1> } object { Rock scale <0.4,0.35,0.4> rotate y*70 translate <-3.9,0.0,-6.5> } object { Rock scale <0.45,0.32,0.35> rotate y*130 translate <1.9,0.0,-7.0> }
#declare BP = color srgb <0.80,0.22,0.48>;
object { Bush(0.65,1.05,900,0.07,G1,G2,0.25,BP,2) translate <-3.3,-0.05,-0.8> } object { Bush(0.55,0.8,800,0.06,G3,G4,0.05,color srgb <0.60,0.45,0.72>,4) translate <-6.7,-0.05,-0.9> } object { Bush(0.5,0.75,800,0.06,G3,G4,0.05,color srgb <0.60,0.45,0.72>,5) translate <-5.2,-0.05,-0.8> } object { Bush(0.5,0.9,800,0.06,G1,G2,0.25,BP,6) translate <-0.5,-0.05,-0.7> }
object { Bush(0.7,1.2,900,0.07,G1,G2,0.2,BP,9) translate <10.1,-0.05,-2.2> }
object { Palm(5.0,6) translate <-10.8,-0.05,6.5> } object { Palm(6.0,16) translate <11.9,-0.05,13> }
