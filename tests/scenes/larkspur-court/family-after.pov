// Family room addition of 2004, repaired: wood-look porcelain planks, ceiling fan.
#include "lc.inc"
camera { location <-2.3,1.5,-2.9> right x*4/3 up y angle 72 look_at <0.55,1.08,1.4> }
#declare H = 2.75;
#declare Cut = union { box { <-1.3,0,2.6>,<1.3,2.1,3.6> } box { <2.8,0.85,-1.1>,<3.6,2.1,0.9> } }
#declare WallC = color srgb <0.89,0.86,0.79>;
RoomShell(<-3.0,0,-3.4>,<3.0,H,2.8>,Cut,WallC,0)
// sliding glass door to the patio
union {
  box { <-1.3,0,2.86>,<-1.23,2.1,2.94> } box { <1.23,0,2.86>,<1.3,2.1,2.94> } box { <-1.3,2.03,2.86>,<1.3,2.1,2.94> } box { <-1.3,0,2.86>,<1.3,0.06,2.94> }
  box { <-0.07,0.05,2.86>,<0.0,2.05,2.90> } box { <-0.03,0.05,2.90>,<0.04,2.05,2.94> } box { <-0.06,0.9,2.83>,<-0.04,1.15,2.86> texture { T_BlackM } }
  box { <-1.25,0.05,2.90>,<1.25,2.05,2.904> texture { T_Glass } }
  texture { T_White } }
object { Curtain(0.42,2.42,color srgb <0.80,0.79,0.75>,5) translate <-1.75,0.02,2.68> } object { Curtain(0.42,2.42,color srgb <0.80,0.79,0.75>,6) translate <1.33,0.02,2.68> }
union { cylinder { <-1.85,2.46,2.68>,<1.85,2.46,2.68>,0.014 } sphere { <-1.85,2.46,2.68>,0.026 } sphere { <1.85,2.46,2.68>,0.026 } texture { T_BlackM } }
// right window
object { WinUnit(2.0,1.25,1) rotate y*90 translate <3.08,0.85,-0.1> } box { <2.95,0.82,-1.15>,<3.1,0.85,0.95> texture { T_White } }
object { MiniBlind(1.96,1.25,0.35,25) rotate y*90 translate <3.06,0.85,-0.1> }
Planks(-3,3,-3.4,2.85,0.20,1.2,0.004,0,color srgb <0.70,0.59,0.47>,color srgb <0.63,0.51,0.40>,color srgb <0.50,0.39,0.30>,color srgb <0.50,0.44,0.38>,F_Satin,15)
union { box { <-3,0,2.785>,<-1.3,0.13,2.8> } box { <1.3,0,2.785>,<3,0.13,2.8> } box { <2.985,0,-3.4>,<3,0.13,2.8> } box { <-3,0,-3.4>,<-2.985,0.13,2.8> } texture { T_White } }
object { CeilingFan(0.68,T_WalH,T_BlackM,20) translate <0.35,H,0.55> }
// furniture
object { Sofa(2.2,color srgb <0.72,0.66,0.57>,color srgb <0.82,0.76,0.67>,3) rotate y*90 translate <1.98,0,-0.15> }
object { Pillow(color srgb <0.32,0.44,0.48>,color srgb <0.42,0.54,0.58>) rotate x*22 rotate y*90 rotate x*6 translate <2.42,0.68,0.55> }
object { Pillow(color srgb <0.79,0.52,0.35>,color srgb <0.87,0.61,0.44>) rotate x*22 rotate y*90 translate <2.40,0.68,-0.85> }
object { RB(<-0.75,0,-1.35>,<1.95,0.013,1.25>,0.006) texture { pigment { radial frequency 0 color_map { [0 color srgb <0.62,0.60,0.56>][1 color srgb <0.62,0.60,0.56>] } } normal { bumps 0.9 scale 0.012 } finish { F_Matte } } }
object { RB(<-0.62,0.002,-1.22>,<1.82,0.0145,1.12>,0.006) texture { pigment { boxed color_map { [0 color srgb <0.84,0.80,0.72>][0.2 color srgb <0.84,0.80,0.72>][0.2 color srgb <0.72,0.53,0.42>][0.27 color srgb <0.72,0.53,0.42>][0.27 color srgb <0.84,0.80,0.72>][1 color srgb <0.80,0.76,0.68>] } scale <1.22,5,1.17> translate <0.6,0,-0.05> } normal { bumps 0.9 scale 0.012 } finish { F_Matte } } }
object { CoffeeTable(0.65,1.15,T_WalV,T_WalH) translate <0.75,0.013,-0.1> }
object { Books(3,5) translate <0.78,0.433,-0.35> }
union { lathe { linear_spline 5 <0.0,0>,<0.06,0.0>,<0.12,0.07>,<0.115,0.07>,<0,0.012> } Gloss(color srgb <0.76,0.50,0.36>) translate <0.72,0.433,0.2> }
// low cabinet with a dark screen on the left
union { RB(<-2.98,0.12,-0.6>,<-2.55,0.58,1.3>,0.01) texture { T_WalH rotate y*90 } }
#declare I=0; #while (I<3) union { box { <-2.55,0.15,-0.56+I*0.615>,<-2.535,0.55,0.04+I*0.615> texture { T_WalV translate I } } sphere { <-2.515,0.36,-0.02+I*0.615>,0.014 texture { T_Nickel } } } #declare I=I+1; #end
#declare I=0; #while (I<4) cylinder { <-2.92+mod(I,2)*0.3,0,-0.5+floor(I/2)*1.7>,<-2.92+mod(I,2)*0.3,0.13,-0.5+floor(I/2)*1.7>,0.02 texture { T_BlackM } } #declare I=I+1; #end
object { RB(<-2.82,0.68,-0.25>,<-2.78,1.36,0.95>,0.008) texture { T_Black } } box { <-2.85,0.58,0.2>,<-2.72,0.60,0.5> texture { T_BlackM } } box { <-2.81,0.6,0.32>,<-2.79,0.7,0.38> texture { T_BlackM } }
object { Leafy(20,0.34,1.05,color srgb <0.28,0.44,0.24>,12) translate <-2.55,0,2.25> }
object { Art(0.75,0.75,1,2.3) translate <2.32,1.25,2.795> }
union { #declare I=0; #while (I<4) cylinder { <2.14+mod(I,2)*0.44,0,2.19+floor(I/2)*0.42>,<2.14+mod(I,2)*0.44,0.51,2.19+floor(I/2)*0.42>,0.016 } #declare I=I+1; #end RB(<2.1,0.50,2.15>,<2.62,0.545,2.65>,0.01) texture { T_WalV } }
object { TableLamp(color srgb <0.86,0.80,0.70>) translate <2.36,0.545,2.4> }
object { Outlet(1) translate <1.95,0.35,2.795> } object { Outlet(0) translate <1.95,1.2,2.795> }
// light
WinLight(<0,1.1,2.6>,x*2.3,y*1.9,color rgb <0.98,1,1.02>*0.50,1.9)
WinLight(<2.9,1.5,-0.1>,z*1.8,y*1.1,color rgb <0.97,1,1.03>*0.30,1.7)
light_source { <0.2,H-0.12,-0.8> color srgb <1,0.94,0.85>*0.2 area_light x*2.5,z*2.5,3,3 adaptive 0 jitter fade_distance 2.3 fade_power 2 }
light_source { <-1.6,1.9,-3.2> color rgb <1,0.97,0.93>*0.08 shadowless }
// patio and pool outside
sky_sphere { SkyDay }
light_source { <-35,60,50> color rgb <1,0.93,0.82>*0.85 parallel point_at <0,0,6> }
plane { y,-0.16 texture { T_Gravel } }
box { <-8,-0.2,2.95>,<9,-0.05,9> texture { T_Concrete } }
box { <-6,-0.06,5.8>,<6,-0.045,8.6> texture { pigment { color srgb <0.22,0.58,0.68> } normal { ripples 0.25 scale 0.4 turbulence 0.5 } finish { ambient 0 emission Amb diffuse 0.6 specular 0.4 reflection { 0.05,0.5 } } } }
box { <-6.25,-0.06,5.55>,<6.25,-0.035,5.8> Paint(color srgb <0.80,0.74,0.66>) } box { <-6.25,-0.06,8.6>,<6.25,-0.035,8.85> Paint(color srgb <0.80,0.74,0.66>) }
object { VFence(-8,8.9,5.05,0.6) translate y*-0.05 }
box { <-30,-0.2,11>,<30,1.7,11.2> texture { T_Block } } box { <-30,1.7,10.97>,<30,1.78,11.23> texture { T_Trim } }
object { Palm(3.4,4) translate <-0.9,-0.1,10.2> } object { Bush(0.6,1.1,800,0.07,G1,G2,0.15,color srgb <0.85,0.25,0.5>,6) translate <0.9,-0.15,10.1> } object { Bush(0.7,1.3,800,0.07,G1,G2,0.0,G1,9) translate <2.9,-0.15,10.2> } object { Agave(1,7) translate <-2.3,-0.12,9.7> }
box { <9,-0.2,-30>,<9.2,1.7,30> texture { T_Block } } object { Bush(0.8,1.6,800,0.08,G1,G2,0.0,G1,19) translate <6.2,-0.15,-0.3> } object { Bush(0.8,1.5,800,0.08,G3,G4,0.0,G1,29) translate <7,-0.15,1.6> }
