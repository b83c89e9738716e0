// Heat pump on its pad beside the house, as found.
#declare Amb = 0.02;
#include "lc.inc"
#include "unit.inc"
camera { location <-0.75,1.35,-1.75> right x*4/3 up y angle 66 look_at <0.16,0.56,0.3> }
sky_sphere { SkyDay }
light_source { <-40,48,-34> color rgb <1,0.92,0.80>*1.05 parallel point_at <0,0,0> area_light <1.2,0,0>,<0,1.2,0>,3,3 adaptive 1 }
plane { y,-0.1 texture { T_Gravel scale 0.5 } }
// loose stones
#declare RS=seed(5); #declare I=0; #while (I<5200) sphere { 0,0.007+0.017*pow(rand(RS),2) scale <1.2,0.7,1> rotate y*rand(RS)*360 translate <-2.2+4.6*rand(RS),-0.094,-1.7+2.7*rand(RS)> #declare CK=rand(RS); Paint(color srgb <0.56+0.26*CK,0.47+0.25*CK,0.38+0.24*CK>) } #declare I=I+1; #end
object { RB(<-0.62,-0.12,-0.60>,<0.62,0.0,0.60>,0.012) texture { T_Concrete } }
object { Unit() rotate y*4 translate <0,0,0> }
// wall of the house with a weep line and base coat
box { <-6,-0.3,0.95>,<6,3.2,1.2> texture { T_Stucco } } box { <-6,-0.3,0.93>,<6,0.14,1.2> texture { T_Trim } }
box { <-6,0.14,0.935>,<6,0.16,0.96> texture { T_Galv } }
// disconnect box, conduit and whip
union { RB(<0.78,1.0,0.85>,<0.98,1.28,0.955>,0.008) RB(<0.77,1.12,0.835>,<0.99,1.29,0.86>,0.006) texture { T_Galv } }
cylinder { <0.88,1.28,0.91>,<0.88,3.0,0.91>,0.014 texture { T_Galv } } union { box { <0.85,1.7,0.90>,<0.91,1.73,0.95> } box { <0.85,2.3,0.90>,<0.91,2.33,0.95> } texture { T_Galv } }
sphere_sweep { cubic_spline 7, <0.88,1.2,0.9>,0.016,<0.86,1.0,0.89>,0.016,<0.84,0.6,0.82>,0.016,<0.74,0.30,0.62>,0.016,<0.56,0.24,0.50>,0.016,<0.40,0.32,0.40>,0.016,<0.3,0.4,0.3>,0.016 texture { pigment { color srgb 0.45 } normal { gradient y 0.5 scale 0.008 } finish { F_Satin } } }
// line set: insulated suction line and bare liquid line into the wall
#macro Line(D,Rd) sphere_sweep { cubic_spline 7, <-0.2,0.25,0.2>,Rd,<-0.25+D,0.22,0.40>,Rd,<-0.32+D,0.20,0.60>,Rd,<-0.60+D,0.20,0.80>,Rd,<-0.74+D,0.36,0.88>,Rd,<-0.76+D,0.52,0.97>,Rd,<-0.76+D,0.6,1.1>,Rd #end
object { Line(0,0.028) Satin(color srgb 0.14) } } object { Line(0.085,0.010) texture { T_Copper } } }
object { RB(<-0.84,0.44,0.925>,<-0.60,0.62,0.955>,0.006) texture { T_Trim } }
// hose bib and hose
union { cylinder { <-1.55,0.55,0.96>,<-1.55,0.55,0.86>,0.014 } cylinder { <-1.55,0.57,0.87>,<-1.55,0.49,0.84>,0.016 } torus { 0.03,0.006 rotate x*90 translate <-1.55,0.60,0.88> } texture { T_Brass } }
#declare I=0; #while (I<5) torus { 0.24-0.012*mod(I,2),0.017 translate <-1.62+0.01*I,-0.075+I*0.033,0.5> Satin(color srgb <0.22,0.40,0.27>) } #declare I=I+1; #end
// window above, eave shadow
difference { box { <-2.9,1.45,0.90>,<-1.3,2.75,0.97> } box { <-2.75,1.6,0.8>,<-1.45,2.6,1.1> } texture { T_Trim } } box { <-2.75,1.6,0.945>,<-1.45,2.6,0.947> texture { T_GlassDark } } object { WinUnit(1.3,1.0,1) translate <-2.1,1.6,0.90> }
object { RoofSlope(12,2.2,3) rotate x*-20 translate <-6,2.9,0.3> }
box { <2.6,-0.2,-6>,<2.8,1.75,0.95> texture { T_Block } } box { <2.57,1.75,-6>,<2.83,1.83,0.95> texture { T_Trim } }
object { Bush(0.45,0.8,800,0.05,G3,G4,0.05,color srgb <0.60,0.45,0.72>,4) translate <1.95,-0.1,0.35> }
object { Agave(0.55,4) translate <1.75,-0.1,-0.55> }
object { Rock scale <0.22,0.18,0.18> translate <1.35,-0.06,-0.75> }
// a few dry leaves on the pad
#declare I=0; #while (I<26) sphere { 0,1 scale <0.03,0.003,0.013> rotate y*rand(RS)*360 translate <-0.6+1.2*rand(RS),0.004,-0.58+0.16*rand(RS)> Paint(color srgb <0.55,0.42,0.22>) } #declare I=I+1; #end
