#version 3.7;
// Back of the house with the detached garage, after the work.
#declare NEW = 1;
#include "common.inc"
#declare EXPO = 0.42;
#include "interior.inc"
#include "exterior.inc"
Phone(<9.5,5.2,70>,<25.0,8.2,30>,0,70)
Sky(1)
Sun(<-40,62,75>,2.1,1.05)
Ground()
Lawn(-12,38,22,64)
House()
Garage()
Surroundings(9)
// gravel path from the stoop to the garage door
union{ Bx(23.9,-0.05,36,36.6,0.16,39.4) Bx(33.4,-0.05,30.6,36.6,0.16,39) texture{ pigment{ granite scale 0.2 color_map{[0 C(140,132,120)][1 C(196,188,174)]} } normal{ granite 0.6 scale 0.08 } finish{ diffuse 0.8 } } }
// raised beds
#declare R0 = seed(16);
#declare K=0; #while (K<2)
  union{ difference{ Bx(16,0,46+K*6,26,1.0,50+K*6) Bx(16.15,0.5,46.15+K*6,25.85,2,49.85+K*6) } texture{ T_PineX } }
  union{ Bx(16.1,0.4,46.1+K*6,25.9,0.85,49.9+K*6) texture{ Matte(64,46,34) } }
  #declare J=0; #while (J<14) object{ Shrub(70+J+K*20,0.45,0.55,84+40*rand(R0),130+30*rand(R0),58) translate <16.8+mod(J,7)*1.4,0.85,46.9+K*6+2.1*int(J/7)> } #declare J=J+1; #end
#declare K=K+1; #end
// garden table and two chairs
union{ Rod(<7,2.35,40>,<7,2.45,40>,1.7) Rod(<7,0,40>,<7,2.35,40>,0.12) Rod(<7,0,40>,<7,0.1,40>,0.8) texture{ Satin(214,210,200) } }
#macro Garden_Chair() union{ #local K=0; #while (K<5) RBx(-0.8+K*0.33,1.35,-0.7,-0.8+K*0.33+0.28,1.43,0.9,0.02) object{ RBx(-0.8+K*0.33,0,-0.04,-0.8+K*0.33+0.28,2.2+0.2*(2-abs(K-2)),0.04,0.03) rotate x*18 translate <0,1.35,0.85> } #local K=K+1; #end
  Bx(-0.9,0,-0.7,-0.75,2.1,-0.5) Bx(0.75,0,-0.7,0.9,2.1,-0.5) Bx(-0.9,0,0.9,-0.75,2.1,1.05) Bx(0.75,0,0.9,0.9,2.1,1.05) RBx(-1.05,2.1,-0.8,-0.65,2.2,1.2,0.03) RBx(0.65,2.1,-0.8,1.05,2.2,1.2,0.03) texture{ Satin(178,98,50) } } #end
object{ Garden_Chair() rotate y*115 translate <10.2,0,39.6> } object{ Garden_Chair() rotate y*-120 translate <3.9,0,39.2> }
union{ Rod(<6.8,2.45,39.9>,<6.8,3.0,39.9>,0.16) texture{ Satin(90,120,130) } }
#declare K=0; #while (K<4) object{ Shrub(90+K,1.0,1.0,84,116,56) translate <9.2+K*1.4,0,23.2> } #declare K=K+1; #end
object{ Shrub(97,1.1,1.2,84,120,58) translate <16,0,31.8> } object{ Shrub(98,1.0,1.0,96,128,58) translate <19,0,31.7> } object{ Shrub(99,0.9,0.9,104,132,62) translate <21.5,0,31.6> }
union{ #declare K=0; #while (K<26) sphere{<15.4+6.6*rand(R0),0.8+0.6*rand(R0),32.6+0.3*rand(R0)>,0.12 texture{ pigment{ C(206,110,140) } finish{ diffuse 0.85 } } } #declare K=K+1; #end }
// rain barrel
union{ Rod(<37.0,0,44.6>,<37.0,3.2,44.6>,0.85) texture{ Satin(86,92,90) } }
object{ Tree(71,20,1) translate <-9,0,37> }
