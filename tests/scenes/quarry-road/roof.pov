#version 3.7;
// The street slope of the roof from a ladder at the eave.
#declare NEW = 1;
#include "common.inc"
#declare EXPO = 0.42;
#include "interior.inc"
#include "exterior.inc"
Phone(<31.0,13.4,-4.2>,<23.2,13.9,5.5>,0,70)
Sky(1)
Sun(<30,62,-70>,2.1,1.05)
Ground()
House()
Garage()
Surroundings(4)
// ladder leaning on the gutter
union{
  #declare K=0; #while (K<2) object{ Bx(-0.06,-9,-0.14,0.06,3.2,0.14) rotate x*15 translate <29.0+K*1.5,10.0,-1.72> } #declare K=K+1; #end
  texture{ pigment{ C(190,192,194) } finish{ diffuse 0.6 specular 0.4 roughness 0.03 metallic } } }
union{ #declare K=0; #while (K<12) object{ Rod(<0,2.7-K*1.0,0>,<1.5,2.7-K*1.0,0>,0.07) rotate x*15 translate <29.0,10,-1.72> } #declare K=K+1; #end texture{ pigment{ C(176,178,180) } finish{ diffuse 0.6 specular 0.4 roughness 0.03 metallic } } }
// a few leaves and twigs in the gutter, vent pipe with collar
union{ Rod(<28.6,16.5,6.9>,<28.6,18.3,6.9>,0.16) texture{ Satin(200,200,196) } }
union{ cone{<28.6,16.0,6.9>,0.55,<28.6,17.0,6.9>,0.19} texture{ T_Galv } }
