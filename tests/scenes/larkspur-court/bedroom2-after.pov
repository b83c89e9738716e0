// Bedroom 2, repaired: vinyl plank floor.
#include "lc.inc"
camera { location <-1.75,1.5,-2.1> right x*4/3 up y angle 70 look_at <0.42,0.92,1.2> }
#declare H = 2.45;
#declare Cut = union { box { <-1.05,0.85,1.8>,<0.75,2.1,2.7> } }
#declare WallC = color srgb <0.80,0.84,0.84>;
RoomShell(<-1.95,0,-2.5>,<2.0,H,2.0>,Cut,WallC,0)
object { WinUnit(1.8,1.25,1) translate <-0.15,0.85,2.1> } box { <-1.1,0.82,1.96>,<0.8,0.85,2.12> texture { T_White } }
object { MiniBlind(1.76,1.25,0.45,20) translate <-0.15,0.85,2.08> }
Planks(-1.95,2.0,-2.5,2.0,0.178,1.22,0.0012,0,color srgb <0.74,0.69,0.62>,color srgb <0.67,0.61,0.54>,color srgb <0.54,0.48,0.41>,color srgb <0.38,0.33,0.28>,F_Satin,31)
union { box { <-1.95,0,1.985>,<2,0.11,2> } box { <1.985,0,-2.5>,<2,0.11,2> } box { <-1.95,0,-2.5>,<-1.935,0.11,2> } texture { T_White } }
// bed, head against the right wall
union {
  object { RB(<1.86,0.1,-0.55>,<1.95,1.15,1.05>,0.02) texture { T_WalV } }
  box { <0.0,0.14,-0.48>,<1.88,0.32,0.98> texture { T_WalH } }
  #declare I=0; #while (I<2) box { <0.03,0,-0.45+I*1.35>,<0.09,0.16,-0.39+I*1.35> texture { T_WalV } } #declare I=I+1; #end
  object { RB(<0.02,0.30,-0.46>,<1.86,0.52,0.96>,0.07) Fabric(color srgb <0.90,0.89,0.86>,color srgb <0.96,0.95,0.93>) }
  object { RB(<-0.02,0.24,-0.53>,<1.25,0.575,1.03>,0.06) texture { pigment { color srgb <0.85,0.84,0.79> } normal { average normal_map { [1 bumps 0.5 scale 0.006][1.2 wrinkles 0.6 scale 0.45] } } finish { F_Matte } } }
  object { RB(<1.05,0.25,-0.535>,<1.30,0.595,1.035>,0.05) Fabric(color srgb <0.93,0.92,0.88>,color srgb <0.97,0.96,0.94>) }
  object { RB(<-0.035,0.23,-0.545>,<0.40,0.59,1.045>,0.06) texture { pigment { gradient z color_map { [0 color srgb <0.36,0.47,0.50>][0.8 color srgb <0.36,0.47,0.50>][0.8 color srgb <0.80,0.78,0.70>][1 color srgb <0.80,0.78,0.70>] } scale 0.18 } normal { bumps 0.8 scale 0.008 } finish { F_Matte } } }
  object { Pillow(color srgb <0.93,0.92,0.89>,color srgb <0.98,0.97,0.95>) scale <1.35,1.05,1.2> rotate x*24 rotate y*90 translate <1.70,0.73,-0.13> } object { Pillow(color srgb <0.93,0.92,0.89>,color srgb <0.98,0.97,0.95>) scale <1.35,1.05,1.2> rotate x*24 rotate y*90 translate <1.70,0.73,0.62> }
  object { Pillow(color srgb <0.80,0.55,0.38>,color srgb <0.88,0.64,0.46>) scale <1.1,0.8,1> rotate x*26 rotate y*90 translate <1.48,0.71,0.24> }
}
// bedside table and lamp
union { object { RB(<1.5,0.12,1.28>,<1.95,0.58,1.75>,0.008) texture { T_WalH } } object { RB(<1.488,0.37,1.30>,<1.505,0.56,1.73>,0.004) texture { T_WalH translate 0.3 } } object { RB(<1.488,0.15,1.30>,<1.505,0.35,1.73>,0.004) texture { T_WalH translate 0.6 } } sphere { <1.475,0.465,1.515>,0.013 } sphere { <1.475,0.25,1.515>,0.013 } cylinder { <1.54,0,1.33>,<1.54,0.13,1.33>,0.018 } cylinder { <1.54,0,1.7>,<1.54,0.13,1.7>,0.018 } cylinder { <1.9,0,1.33>,<1.9,0.13,1.33>,0.018 } texture { T_Nickel } }
object { TableLamp(color srgb <0.42,0.54,0.55>) scale 0.9 translate <1.74,0.58,1.55> } object { Books(2,9) scale 0.7 rotate y*80 translate <1.58,0.58,1.42> }
light_source { <1.74,1.06,1.55> color srgb <1,0.82,0.6>*0.10 fade_distance 0.6 fade_power 2 }
object { Art(0.85,0.6,0,2.1) rotate y*90 translate <1.995,1.4,0.25> }
object { RB(<-1.35,0,-0.95>,<0.25,0.014,1.2>,0.006) texture { pigment { boxed color_map { [0 color srgb <0.50,0.57,0.58>][0.1 color srgb <0.50,0.57,0.58>][0.1 color srgb <0.85,0.82,0.75>][0.2 color srgb <0.85,0.82,0.75>][0.2 color srgb <0.73,0.76,0.73>][1 color srgb <0.80,0.81,0.77>] } scale <0.8,5,1.075> translate <-0.55,0,0.125> } normal { bumps 0.9 scale 0.012 } finish { F_Matte } } }
// small armchair in the corner under the window
object { Sofa(0.85,color srgb <0.76,0.70,0.60>,color srgb <0.86,0.80,0.70>,3) scale <0.95,0.95,0.8> rotate y*-28 translate <-1.25,0,0.95> }
object { Pillow(color srgb <0.36,0.47,0.50>,color srgb <0.46,0.57,0.60>) scale 0.85 rotate x*20 rotate y*-28 translate <-1.42,0.62,1.28> }
object { Curtain(0.36,2.2,color srgb <0.88,0.87,0.82>,5) translate <-1.5,0.02,1.91> } object { Curtain(0.36,2.2,color srgb <0.88,0.87,0.82>,6) translate <0.80,0.02,1.91> }
union { cylinder { <-1.6,2.23,1.91>,<1.3,2.23,1.91>,0.012 } sphere { <-1.6,2.23,1.91>,0.022 } sphere { <1.3,2.23,1.91>,0.022 } texture { T_Nickel } }
object { Outlet(1) translate <1.3,0.35,1.995> }
object { CeilingFan(0.55,T_White,T_White,8) translate <0.0,H,0.35> }
WinLight(<-0.15,1.4,1.86>,x*1.7,y*1.1,color rgb <0.97,1,1.03>*0.50,1.5)
light_source { <0,H-0.1,-0.6> color srgb <1,0.95,0.88>*0.18 area_light x*2,z*2,3,3 adaptive 0 jitter fade_distance 2 fade_power 2 }
light_source { <-1.2,1.8,-2.3> color rgb <1,0.97,0.93>*0.09 shadowless }
sky_sphere { SkyDay }
light_source { <-50,60,20> color rgb <1,0.93,0.82>*0.9 parallel point_at <0,0,6> }
Outdoors(6.5,1)
object { PaloVerde(0.8,13) translate <-0.9,-0.15,5.3> } object { Bush(0.6,1.2,900,0.06,G1,G2,0.14,color srgb <0.85,0.3,0.2>,6) translate <0.9,-0.15,5.6> } object { Agave(1,9) translate <0.1,-0.15,4.6> }
