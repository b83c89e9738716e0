// Garden side with pool and covered patio, late afternoon, after the repairs.
#include "pool.inc"
camera { location <-4.9,1.6,-3.7> right x*4/3 up y angle 72 look_at <0.2,0.98,3.6> }
light_source { <-60,42,-38> color rgb <1,0.88,0.72>*1.05 parallel point_at <0,0,0> }
Pool(-3.6,2.2,-1.2,2.6)
// house
difference {
  box { <-9,-0.1,8>,<14,2.85,16> }
  box { <-3.2,0.02,7.8>,<0.4,2.15,8.2> } box { <2.2,0.85,7.8>,<4.2,2.15,8.2> } box { <-7.4,0.9,7.8>,<-5.8,2.1,8.2> } box { <8.0,0.9,7.8>,<9.6,2.1,8.2> }
  texture { T_Stucco } }
box { <-9.03,-0.06,7.97>,<14,0.25,8.1> texture { T_Trim } translate z*0 }
#macro DarkWin(X0,X1,Y0,Y1) union { object { WinUnit(X1-X0,Y1-Y0,1) translate <(X0+X1)/2,Y0,8.08> } box { <X0,Y0,8.11>,<X1,Y1,8.115> texture { T_GlassDark } } } #end
DarkWin(2.2,4.2,0.85,2.15) DarkWin(-7.4,-5.8,0.9,2.1) DarkWin(8.0,9.6,0.9,2.1)
union { box { <-3.2,0,8.05>,<-3.13,2.15,8.15> } box { <0.33,0,8.05>,<0.4,2.15,8.15> } box { <-3.2,2.08,8.05>,<0.4,2.15,8.15> } box { <-1.44,0,8.05>,<-1.36,2.1,8.15> } box { <-3.2,0,8.05>,<0.4,0.08,8.15> } texture { T_White } }
box { <-3.15,0.05,8.1>,<0.35,2.1,8.11> texture { pigment { color rgbt <0.15,0.18,0.2,0.45> } finish { ambient 0 diffuse 0.3 reflection { 0.1,0.6 } } } }
union { object { Curtain(0.5,2.1,color srgb <0.85,0.83,0.77>,3) translate <-3.1,0.03,8.19> } object { Curtain(0.5,2.1,color srgb <0.85,0.83,0.77>,4) translate <-0.15,0.03,8.19> } }
// covered patio: posts, beam, boarded ceiling, tiled roof running on from the house
#declare I=0; #while (I<3) union { box { <-0.2,-0.05,-0.2>,<0.2,2.45,0.2> texture { T_Stucco } } box { <-0.25,-0.05,-0.25>,<0.25,0.3,0.25> texture { T_Trim } } box { <-0.25,2.3,-0.25>,<0.25,2.45,0.25> texture { T_Trim } } translate <-4.6+I*5.0,0,5.2> } #declare I=I+1; #end
box { <-5.0,2.45,5.0>,<5.8,2.75,5.4> texture { T_Stucco } } box { <-5.0,2.45,5.0>,<-4.7,2.75,8> texture { T_Stucco } } box { <5.5,2.45,5.0>,<5.8,2.75,8> texture { T_Stucco } }
box { <-4.8,2.66,5.2>,<5.7,2.7,8> texture { T_PineH } }
object { RoofSlope(11.8,3.7,3) rotate x*-9 translate <-5.5,2.83,4.55> }
object { RoofSlope(24,4.6,5) rotate x*-20 translate <-9.5,2.90,7.45> } object { RidgeCaps(24,9) rotate y*90 translate <-9.5,4.5,11.8> }
object { CeilingFan(0.62,T_WalH,T_BlackM,15) translate <0.4,2.66,6.6> }
// pool barrier between the patio and the pool
object { VFence(-8.9,11.4,3.95,-1.9) }
// patio furniture
object { PatioTable() translate <2.4,-0.02,6.4> } object { PatioChair(color srgb <0.82,0.76,0.66>) rotate y*180 translate <1.9,-0.02,5.75> } object { PatioChair(color srgb <0.82,0.76,0.66>) rotate y*176 translate <2.9,-0.02,5.75> } object { PatioChair(color srgb <0.82,0.76,0.66>) translate <1.9,-0.02,7.1> } object { PatioChair(color srgb <0.82,0.76,0.66>) translate <2.9,-0.02,7.1> }
object { PatioChair(color srgb <0.36,0.47,0.50>) rotate y*150 translate <-3.6,-0.02,6.6> } object { PatioChair(color srgb <0.36,0.47,0.50>) rotate y*205 translate <-2.3,-0.02,6.6> }
union { cylinder { <0,-0.02,0>,<0,0.42,0>,0.03 } cylinder { <0,0.42,0>,<0,0.45,0>,0.26 } cylinder { <0,-0.02,0>,<0,0.01,0>,0.2 } texture { T_BlackM } translate <-2.95,0,6.2> }
object { Lounger(color srgb <0.90,0.87,0.80>) rotate y*-78 translate <5.9,-0.02,0.2> } object { Lounger(color srgb <0.90,0.87,0.80>) rotate y*-84 translate <5.9,-0.02,1.6> }
union { cylinder { <0,0,0>,<0,0.36,0>,0.22 Satin(color srgb <0.62,0.38,0.28>) } object { Agave(0.75,5) translate y*0.36 } translate <-5.6,0,6.4> }
union { cylinder { <0,0,0>,<0,0.40,0>,0.24 Satin(color srgb <0.36,0.47,0.50>) } object { Bush(0.36,0.6,500,0.05,G1,G2,0.2,BP,5) translate y*0.36 } translate <6.6,0,6.2> }
// foreground: towel on the deck, sandals, ring on the water
object { RB(<-3.4,-0.018,-2.25>,<-2.0,0.004,-1.62>,0.006) texture { pigment { gradient x color_map { [0 color srgb <0.90,0.86,0.78>][0.6 color srgb <0.90,0.86,0.78>][0.6 color srgb <0.80,0.48,0.34>][1 color srgb <0.80,0.48,0.34>] } scale 0.2 } normal { bumps 0.5 scale 0.004 } finish { F_Matte } } rotate y*3 }
torus { 0.36,0.13 scale <1,0.85,1> translate <0.4,-0.06,0.5> texture { pigment { radial frequency 6 color_map { [0 color srgb <0.92,0.90,0.86>][0.5 color srgb <0.92,0.90,0.86>][0.5 color srgb <0.88,0.45,0.30>][1 color srgb <0.88,0.45,0.30>] } translate <0.4,0,0.5> } finish { F_Gloss } } }
union { cylinder { <0,0,0>,<0,0.38,0>,0.23 Satin(color srgb <0.36,0.47,0.50>) } object { Bush(0.34,0.55,500,0.05,G1,G2,0.22,BP,25) translate y*0.34 } translate <-4.75,-0.02,1.3> }
// boundary and planting
box { <11.5,-0.2,-30>,<11.7,1.75,8> texture { T_Block } } box { <11.47,1.75,-30>,<11.73,1.83,8> texture { T_Trim } }
BlockRun(-30,-9,9) BlockRun(-30,30,-13)
object { Palm(3.8,4) translate <8.9,-0.05,5.3> } object { Palm(5.2,7) translate <10.3,-0.05,2.4> }
object { Bush(0.8,1.5,1000,0.08,G1,G2,0.28,BP,6) translate <10.4,-0.05,5.6> } object { Bush(0.7,1.2,900,0.07,G3,G4,0.05,BP,7) translate <10.5,-0.05,0.5> } object { Bush(0.7,1.3,900,0.07,G1,G2,0.25,BP,8) translate <-7.7,-0.05,7.0> } object { Bush(0.5,0.8,700,0.06,G3,G4,0,G1,18) translate <-6.4,-0.05,7.2> }
object { Rock scale <0.5,0.4,0.4> translate <9.4,0,3.2> } object { Rock scale <0.35,0.3,0.3> rotate y*60 translate <9.9,0,3.7> }
Mountains(400,60,2.1,color srgb <0.54,0.54,0.64>)
