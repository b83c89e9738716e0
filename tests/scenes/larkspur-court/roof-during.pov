// Roof during work: a strip of new underlayment between the tiles.
#declare Amb = 0.02;
#include "lc.inc"
camera { location <0.15,2.75,-2.25> right x*4/3 up y angle 70 look_at <0.12,1.35,1.9> }
sky_sphere { SkyDay }
light_source { <-45,38,-16> color rgb <1,0.91,0.78>*1.05 parallel point_at <0,0,0> }
Mountains(420,75,4.1,color srgb <0.52,0.53,0.64>)
#declare RS = seed(21);
#macro Strip(X0,X1,Z0,Z1) #local X=X0; #while (X<X1-0.01) #local Z=Z0; #while (Z<Z1) object { ClayT[floor(rand(RS)*5.99)] rotate y*(rand(RS)*2-1) translate <X,0,Z> } #local Z=Z+0.37; #end #local X=X+0.25; #end #end
union {
  // deck and tiles to either side
  box { <-7,-0.14,-1.0>,<7,-0.02,6.3> texture { T_PineH } }
  box { <-7,-0.02,-0.9>,<-0.95,-0.006,6.2> texture { T_Clay } } box { <1.35,-0.02,-0.9>,<7,-0.006,6.2> texture { T_Clay } }
  Strip(-6.88,-0.87,-0.9,6.0) Strip(1.37,7,-0.9,6.0)
  // a first course laid back at the eave and the top courses still in place
  Strip(-0.88,1.37,5.2,6.0)
  Strip(-0.88,0.40,-0.9,-0.6)
  // new felt in lapped courses
  #declare I=0; #while (I<7) box { <-0.98,-0.018,-0.95+I*0.90>,<1.30,-0.010+I*0.0004,0.05+I*0.90> rotate x*0 texture { pigment { granite color_map { [0 color srgb <0.26,0.26,0.27>][0.5 color srgb <0.34,0.34,0.35>][1 color srgb <0.40,0.40,0.41>] } scale 0.12 } normal { wrinkles 0.35 scale 0.3 } finish { F_Matte } } translate y*0.004*I*0 }
    box { <-0.97,-0.0085+I*0.0004,-0.87+I*0.90>,<1.29,-0.0072+I*0.0004,-0.855+I*0.90> Paint(color srgb 0.72) } box { <-0.97,-0.0085+I*0.0004,-0.93+I*0.90>,<1.29,-0.0065+I*0.0004,-0.925+I*0.90> Paint(color srgb 0.30) }
    #declare I=I+1; #end
  // battens
  #declare I=0; #while (I<14) #if (I != 5) box { <-0.92,-0.008,-0.62+I*0.37>,<1.24+0.04*mod(I,3),0.022,-0.58+I*0.37> texture { T_PineH translate <I,I*0.3,0> } } #declare K=0; #while (K<4) cylinder { <-0.7+K*0.6,0.02,-0.6+I*0.37>,<-0.7+K*0.6,0.0245,-0.6+I*0.37>,0.007 texture { T_Galv } } #declare K=K+1; #end #end #declare I=I+1; #end
  // tiles laid on again on the right of the strip
  Strip(1.12,1.37,-0.9,2.3)
  // stacks of old tiles waiting on the roof
  #macro Stack(X,Z,N,A) #local I=0; #while (I<N) object { ClayT[floor(rand(RS)*5.99)] rotate x*-3 rotate y*(A+rand(RS)*5-2.5) translate <X,0.02+I*0.030,Z> } #local I=I+1; #end #end
  Stack(-1.45,0.4,6,0) Stack(-1.72,0.42,5,0) Stack(-1.99,0.38,6,0) Stack(1.95,1.5,6,0) Stack(2.22,1.52,4,0) Stack(-1.6,2.6,5,0) Stack(-1.87,2.6,6,0)
  // roll of felt held by a batten
  cylinder { <-0.55,0.145,2.50>,<0.5,0.145,2.50>,0.12 texture { pigment { granite color_map { [0 color srgb <0.34,0.35,0.38>][1 color srgb <0.46,0.47,0.50>] } scale 0.15 } finish { F_Matte } } } cylinder { <-0.552,0.145,2.50>,<0.502,0.145,2.50>,0.05 texture { pigment { color srgb <0.62,0.50,0.36> } } } 
  // hammer and a bar
  union { cylinder { <0,0.02,0>,<0,0.02,0.30>,0.015 texture { T_PineZ } } cylinder { <0,0.02,-0.0>,<0,0.02,0.11>,0.019 Satin(color srgb <0.70,0.20,0.14>) } cylinder { <-0.05,0.025,0.31>,<0.06,0.025,0.31>,0.014 } cylinder { <0.05,0.025,0.31>,<0.075,0.025,0.31>,0.019 } cone { <-0.05,0.025,0.31>,0.014,<-0.11,0.02,0.32>,0.004 } texture { T_Nickel } scale 1.15 rotate y*-58 translate <0.22,0.015,0.10> }
  // vent pipe with lead flashing
  union { cylinder { <0.80,-0.1,3.4>,<0.80,0.42,3.25>,0.045 texture { T_Iron } } cone { <0.80,-0.01,3.4>,0.12,<0.80,0.14,3.36>,0.05 texture { T_Galv } } box { <0.58,-0.01,3.15>,<1.02,0.0,3.65> texture { T_Galv } } }
  rotate x*-20 translate y*0.6 }
object { RidgeCaps(16,9) rotate y*90 translate <-8,2.69,5.93> }
// neighbours over the ridge do not show; trees and roofs to the sides
object { Palm(7.0,5) translate <-7.8,-0.5,9.5> } object { Palm(6.0,15) translate <9.5,-0.5,12> }
plane { y,-2.8 texture { T_Gravel } }
union { box { <-40,-2.8,14>,<-18,0.6,26> texture { T_Stucco } } object { RoofSlope(22,6,14) rotate x*-20 translate <-40.5,0.6,13.4> } }
union { box { <19,-2.8,16>,<40,0.6,26> texture { T_Trim } } object { RoofSlope(22,6,24) rotate x*-20 translate <18.5,0.6,15.4> } }
