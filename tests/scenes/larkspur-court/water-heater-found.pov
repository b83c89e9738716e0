// Gas storage water heater in the garage corner, as found.
#include "lc.inc"
camera { location <-0.60,1.5,-1.85> right x*3/4 up y angle 58 look_at <0.14,1.16,0.6> }
#declare H = 2.75;
#declare T_Drywall = texture { pigment { bozo turbulence 0.4 color_map { [0 color srgb <0.78,0.76,0.71>][1 color srgb <0.83,0.81,0.77>] } scale 0.7 } normal { bumps 0.06 scale 0.01 } finish { F_Matte } }
box { <-3,0,1.0>,<1.0,H,1.2> texture { T_Drywall } } box { <0.95,0,-4>,<1.2,H,1.2> texture { T_Drywall } } box { <-3,H,-4>,<1.2,H+0.2,1.2> Paint(color srgb <0.84,0.83,0.80>) }
box { <-3.2,0,-4>,<-3,H,1.2> texture { T_Drywall } }
// taped joints
union { box { <-0.95,0,0.996>,<-0.80,H,1.001> } box { <-3,1.18,0.996>,<1,1.29,1.001> } box { <0.948,1.18,-4>,<0.952,1.29,1> } box { <0.948,0,-0.45>,<0.952,H,-0.30> } Paint(color srgb <0.87,0.86,0.83>) }
box { <-4,-0.1,-5>,<1.2,0,1.2> texture { pigment { average pigment_map { [1 granite color_map { [0 color srgb <0.50,0.49,0.47>][1 color srgb <0.66,0.64,0.61>] } scale 0.9] [1 bozo turbulence 0.7 color_map { [0 color srgb <0.46,0.44,0.42>][0.4 color srgb <0.62,0.60,0.57>][1 color srgb <0.66,0.64,0.61>] } scale 0.6] } } normal { granite 0.1 scale 0.05 } finish { ambient 0 emission Amb diffuse 0.75 specular 0.1 roughness 0.05 reflection { 0.01, 0.12 } } } }
box { <-3,0,0.985>,<1,0.09,1.0> Paint(color srgb <0.62,0.58,0.52>) }
// stand of lumber and plywood
union { box { <-0.02,0.40,0.28>,<0.80,0.45,0.98> texture { T_PineH } } box { <0.0,0,0.30>,<0.09,0.40,0.39> texture { T_PineV } } box { <0.69,0,0.30>,<0.78,0.40,0.39> texture { T_PineV translate 0.4 } } box { <0.0,0,0.88>,<0.09,0.40,0.97> texture { T_PineV } } box { <0.69,0,0.88>,<0.78,0.40,0.97> texture { T_PineV } } box { <0,0.31,0.285>,<0.78,0.40,0.32> texture { T_PineH translate 0.7 } } }
// drain pan
difference { cylinder { <0.39,0.45,0.63>,<0.39,0.51,0.63>,0.33 } cylinder { <0.39,0.455,0.63>,<0.39,0.6,0.63>,0.322 } texture { T_Galv } }
// tank
#declare C=<0.39,0.47,0.63>;
union {
  cylinder { <0,0.02,0>,<0,1.30,0>,0.265 } cylinder { <0,1.30,0>,<0,1.335,0>,0.255 } cylinder { <0,0,0>,<0,0.03,0>,0.24 texture { T_BlackM } }
  torus { 0.262,0.009 translate y*1.30 } torus { 0.263,0.007 translate y*0.06 } torus { 0.2645,0.003 translate y*0.30 Satin(color srgb 0.55) }
  // burner cover, gas valve
  intersection { cylinder { <0,0.07,0>,<0,0.20,0>,0.275 } box { <-0.16,0,-0.4>,<0.16,0.3,0> } texture { T_Galv } }
  RB(<-0.075,0.23,-0.375>,<0.075,0.36,-0.26>,0.012) cylinder { <0,0.295,-0.40>,<0,0.295,-0.37>,0.042 Satin(color srgb <0.70,0.16,0.12>) } box { <-0.004,0.295,-0.408>,<0.004,0.337,-0.39> texture { T_White } }
  // blank paper label and yellow guide, lines only
  intersection { cylinder { <0,0.62,0>,<0,0.98,0>,0.2665 } box { <-0.20,0.6,-0.4>,<-0.02,1.0,0> } Paint(color srgb <0.90,0.80,0.36>) }
  intersection { cylinder { <0,0.66,0>,<0,0.94,0>,0.2668 } box { <0.03,0.6,-0.4>,<0.19,1.0,0> } Paint(color srgb <0.92,0.92,0.90>) }
  #declare I=0; #while (I<7) intersection { cylinder { <0,0.92-I*0.035,0>,<0,0.928-I*0.035,0>,0.2672 } box { <0.045,0.6,-0.4>,<0.11+0.06*mod(I*3,4)/4,1.0,0> } Paint(color srgb 0.45) } #declare I=I+1; #end
  #declare I=0; #while (I<5) intersection { cylinder { <0,0.93-I*0.06,0>,<0,0.94-I*0.06,0>,0.2670 } box { <-0.185,0.6,-0.4>,<-0.06-0.05*mod(I,2),1.0,0> } Paint(color srgb 0.25) } #declare I=I+1; #end
  // draft hood and flue
  #declare I=0; #while (I<4) box { <0.085,1.335,-0.006>,<0.095,1.41,0.006> rotate y*(45+90*I) texture { T_Galv } } #declare I=I+1; #end
  cone { <0,1.40,0>,0.115,<0,1.49,0>,0.055 texture { T_Galv } } cylinder { <0,1.335,0>,<0,1.345,0>,0.06 texture { T_BlackM } }
  texture { pigment { granite color_map { [0 color srgb <0.80,0.79,0.75>][0.3 color srgb <0.88,0.87,0.84>][1 color srgb <0.89,0.88,0.85>] } scale 0.8 } finish { ambient 0 emission Amb diffuse 0.78 specular 0.3 roughness 0.01 reflection { 0.01,0.12 } } }
  translate C }
union { cylinder { C+y*1.48,<0.39,H,0.63>,0.055 } torus { 0.056,0.005 translate C+y*1.60 } torus { 0.056,0.005 translate C+y*2.05 } cylinder { <0.39,H-0.02,0.63>,<0.39,H,0.63>,0.12 } texture { T_Galv } }
// water lines: corrugated connectors and copper into the wall
#macro Flex(X,XW,Y,Col) sphere_sweep { cubic_spline 6, C+<X,1.2,0.02>,0.013,C+<X,1.36,0.02>,0.013,C+<X,1.52,0.03>,0.013,C+<(X+XW)/2,1.66,0.14>,0.013,C+<XW,Y,0.30>,0.013,C+<XW,Y+0.2,0.36>,0.013 texture { T_Copper normal { gradient y 0.7 scale 0.012 } } } cylinder { C+<X,1.33,0.02>,C+<X,1.39,0.02>,0.02 texture { T_Brass } } cylinder { C+<XW,Y-0.02,0.32>,C+<XW,Y+0.35,0.335>,0.011 texture { T_Copper } } #end
Flex(-0.16,-0.20,1.76,0) Flex(0.16,0.20,1.76,0)
cylinder { C+<-0.20,2.10,0.335>,C+<-0.20,2.3,0.335>,0.011 texture { T_Copper } } cylinder { C+<0.20,2.10,0.335>,C+<0.20,2.3,0.335>,0.011 texture { T_Copper } }
union { cylinder { C+<-0.20,1.92,0.30>,C+<-0.20,1.92,0.25>,0.014 } cylinder { C+<-0.20,1.89,0.33>,C+<-0.20,1.95,0.33>,0.018 } cylinder { C+<-0.27,1.92,0.25>,C+<-0.13,1.92,0.25>,0.008 } texture { T_Brass } }
// relief valve with its pipe down the side
union { cylinder { C+<-0.26,1.18,-0.05>,C+<-0.33,1.18,-0.07>,0.018 } cylinder { C+<-0.325,1.15,-0.07>,C+<-0.325,1.23,-0.07>,0.018 } cylinder { C+<-0.325,1.24,-0.07>,C+<-0.28,1.25,-0.07>,0.006 } texture { T_Brass } }
cylinder { C+<-0.325,1.15,-0.07>,<0.065,0.15,0.56>,0.011 texture { T_Copper } }
// gas: black pipe with a sediment trap and a yellow-handled valve
union { cylinder { <0.955,1.05,0.30>,<0.80,1.05,0.30>,0.013 } cylinder { <0.935,1.05,0.30>,<0.96,1.05,0.30>,0.036 } cylinder { <0.80,1.08,0.30>,<0.80,0.60,0.30>,0.013 } cylinder { <0.80,0.76,0.30>,<0.455,0.76,0.30>,0.013 } sphere { <0.80,1.05,0.30>,0.02 } cylinder { <0.80,0.73,0.30>,<0.80,0.79,0.30>,0.019 } cylinder { <0.80,0.58,0.30>,<0.80,0.63,0.30>,0.019 } texture { T_Iron } }
union { sphere { <0.80,0.93,0.30>,0.024 texture { T_Brass } } box { <0.793,0.86,0.262>,<0.807,0.95,0.272> Satin(color srgb <0.90,0.74,0.15>) } }
// straps
union { torus { 0.268,0.004 scale <1,4,1> translate C+y*0.42 } torus { 0.268,0.004 scale <1,4,1> translate C+y*1.08 } texture { T_Galv } }
// rust trail and water mark
object { cylinder { <0.05,0.001,0.52>,<0.05,0.002,0.52>,0.26 } texture { pigment { spherical turbulence 0.35 color_map { [0 color rgbt <0.3,0.2,0.1,1>][0.4 color rgbt <0.32,0.2,0.1,0.55>][1 color rgbt <0.25,0.15,0.08,0.35>] } scale 0.26 translate <0.05,0,0.52> } finish { F_Matte } } no_shadow }
// steel post in front
union { cylinder { <-0.22,0,0.05>,<-0.22,0.95,0.05>,0.055 } sphere { <-0.22,0.95,0.05>,0.055 } cylinder { <-0.22,0,0.05>,<-0.22,0.012,0.05>,0.11 } texture { pigment { gradient y color_map { [0 color srgb <0.86,0.70,0.16>][0.5 color srgb <0.86,0.70,0.16>][0.5 color srgb <0.16,0.16,0.16>][0.7 color srgb <0.16,0.16,0.16>][0.7 color srgb <0.86,0.70,0.16>][1 color srgb <0.86,0.70,0.16>] } scale 0.75 } finish { F_Satin } } }
// shelves on the left with boxes and paint tins
union { #declare I=0; #while (I<4) box { <-1.75,0.20+I*0.52,0.52>,<-0.62,0.235+I*0.52,0.97> texture { T_PineH translate I } } #declare I=I+1; #end
  #declare I=0; #while (I<4) box { <-1.75+mod(I,2)*1.09,0,0.52+floor(I/2)*0.40>,<-1.71+mod(I,2)*1.09,1.95,0.57+floor(I/2)*0.40> texture { T_PineV translate I } } #declare I=I+1; #end }
#declare CB = color srgb <0.70,0.54,0.37>;
union { RB(<-1.62,0.237,0.58>,<-1.15,0.60,0.92>,0.004) RB(<-1.08,0.237,0.60>,<-0.72,0.52,0.92>,0.004) RB(<-1.25,1.277,0.58>,<-0.78,1.58,0.92>,0.004) RB(<-1.66,1.797,0.58>,<-1.20,2.10,0.92>,0.004) Paint(CB) }
union { box { <-1.40,0.601,0.585>,<-1.36,0.603,0.92> } box { <-0.92,0.521,0.6>,<-0.88,0.523,0.92> } box { <-1.03,1.35,0.5785>,<-0.99,1.58,0.5805> } box { <-0.92,0.40,0.5985>,<-0.88,0.521,0.6005> } box { <-1.40,0.48,0.5785>,<-1.36,0.60,0.5805> } Satin(color srgb <0.78,0.66,0.48>) }
#macro Tin(X,Y,C2) union { cylinder { <X,Y,0.68>,<X,Y+0.19,0.68>,0.085 texture { T_Galv } } cylinder { <X,Y+0.02,0.68>,<X,Y+0.17,0.68>,0.0865 Satin(C2) } torus { 0.08,0.006 translate <X,Y+0.19,0.68> texture { T_Galv } } cylinder { <X,Y+0.185,0.68>,<X,Y+0.192,0.68>,0.075 texture { T_Galv } } } #end
Tin(-1.58,0.757,color srgb <0.86,0.84,0.80>) Tin(-1.38,0.757,color srgb <0.40,0.50,0.55>) Tin(-1.18,0.757,color srgb <0.82,0.70,0.52>) Tin(-0.85,0.757,color srgb <0.86,0.84,0.80>) Tin(-0.85,0.955,color srgb <0.62,0.36,0.28>) Tin(-1.50,1.277,color srgb <0.86,0.84,0.80>)
union { RB(<-1.05,1.797,0.62>,<-0.75,2.0,0.9>,0.03) Satin(color srgb <0.30,0.42,0.52>) }
// broom by the wall
union { cylinder { <-0.50,0.28,0.80>,<-0.40,1.55,0.97>,0.012 texture { T_PineV } } cone { <-0.50,0.30,0.80>,0.03,<-0.52,0.0,0.77>,0.14 scale <1,1,1> texture { pigment { bozo color_map { [0 color srgb <0.72,0.58,0.33>][1 color srgb <0.58,0.44,0.23>] } scale <0.006,0.3,0.006> } finish { F_Matte } } } }
object { Outlet(1) rotate y*90 translate <0.945,1.2,-0.7> }
// ceiling strip light and daylight from the open garage door behind
union { RB(<-0.9,H-0.09,-0.75>,<-0.75,H-0.001,0.55>,0.01) texture { T_White } }
WinLight(<-0.82,H-0.12,-0.1>,x*0.1,z*1.2,color srgb <0.95,1,0.95>*0.42,1.8)
light_source { <-2.0,1.6,-4.2> color rgb <1,0.97,0.92>*0.42 area_light x*2.0,y*1.6,4,4 adaptive 0 jitter }
sky_sphere { pigment { color rgb 0.35 } }
