#version 3.7;
// Worn metal label on the side of the old furnace, close. Two digits cannot be read.
#include "common.inc"
#declare EXPO = 0.36;
Settings_Inside(1.0)
#include "interior.inc"
Phone(<0.12,0.02,-1.05>,<0.02,0.0,0>,0,54)
// sheet metal side of the furnace, painted, with rust
box{<-3,-3,0.02>,<3,3,0.3>
  texture{ pigment{ bozo scale 0.9 turbulence 0.6 color_map{[0 C(74,88,82)][1 C(92,106,98)]} } normal{ bumps 0.12 scale 0.06 } finish{ diffuse 0.75 specular 0.25 roughness 0.05 } }
  texture{ pigment{ granite scale 1.1 translate 3 color_map{[0 rgbt <0.09,0.035,0.015,0.05>][0.2 rgbt <0.14,0.055,0.02,0.2>][0.3 rgbt <0.18,0.08,0.03,0.85>][0.36 rgbt 1][1 rgbt 1]} } finish{ diffuse 0.75 } } }
// seam with screws to the right, folded edge
union{ RBx(0.66,-3,-0.035,0.74,3,0.05,0.015) texture{ pigment{ bozo scale 0.4 color_map{[0 C(70,82,76)][1 C(84,98,90)]} } finish{ diffuse 0.75 specular 0.25 roughness 0.05 } } }
#declare LW = 0.5; #declare LH = 0.29;
// plate
difference{
  object{ Round_Box_Union(<-LW,-LH,0>,<LW,LH,0.04>,0.008) }
  texture{ pigment{ average pigment_map{[1 bozo scale <0.5,0.2,0.2> turbulence 0.8 color_map{[0 C(146,143,134)][0.6 C(172,169,160)][1 C(186,184,176)]}][0.5 granite scale 0.3 color_map{[0 C(96,88,74)][0.4 C(170,166,156)][1 C(184,181,174)]}]} }
    normal{ average normal_map{[1 bumps 0.1 scale <0.3,0.01,0.01>][0.6 bumps 0.25 scale 0.15]} } finish{ diffuse 0.6 specular 0.3 roughness 0.06 metallic reflection{0.04} } }
  texture{ pigment{ granite scale 0.5 translate 7 color_map{[0 rgbt <0.22,0.1,0.04,0.2>][0.16 rgbt <0.3,0.15,0.06,0.6>][0.26 rgbt 1][1 rgbt 1]} } finish{ diffuse 0.7 } } }
union{ #declare K=0; #while (K<4)
  sphere{0,1 scale <0.024,0.024,0.014> translate <(mod(K,2)-0.5)*2*(LW-0.045),(int(K/2)-0.5)*2*(LH-0.045),0>} #declare K=K+1; #end
  texture{ pigment{ granite scale 0.05 color_map{[0 C(90,60,40)][1 C(150,140,126)]} } finish{ diffuse 0.6 specular 0.4 roughness 0.04 metallic } } }
// printed frame and the fields: black ink, mostly rubbed away
#declare T_Ink = texture{ pigment{ granite scale 0.22 translate 2 color_map{[0 rgbt <0.02,0.02,0.02,0.85>][0.22 rgbt <0.02,0.02,0.02,0.7>][0.36 rgbt <0.015,0.015,0.015,0.05>][1 rgbt <0.01,0.01,0.01,0>]} } finish{ diffuse 0.7 } }
#declare T_Ghost = texture{ pigment{ granite scale 0.12 translate 5 color_map{[0 rgbt <0.05,0.05,0.05,1>][0.5 rgbt <0.05,0.05,0.05,0.95>][0.7 rgbt <0.05,0.05,0.05,0.55>][1 rgbt <0.05,0.05,0.05,0.3>]} } finish{ diffuse 0.7 } }
union{ Bx(-0.44,0.225,-0.001,0.44,0.231,0) Bx(-0.44,-0.231,-0.001,0.44,-0.225,0) Bx(-0.44,-0.231,-0.001,-0.434,0.231,0) Bx(0.434,-0.231,-0.001,0.44,0.231,0) Bx(-0.44,0.094,-0.001,0.44,0.098,0) Bx(-0.44,-0.076,-0.001,0.44,-0.072,0) texture{ T_Ink } }
// rows that are no longer legible
#declare R = seed(12);
#macro Word(Txt,S,X,Y,T) text{ ttf "cyrvetic.ttf" Txt 0.02,0 scale <S,S,0.1> translate <X,Y,-0.0018> texture{ T } } #end
#declare T_Gone = texture{ pigment{ granite scale 0.1 translate 5 color_map{[0 rgbt <0.05,0.05,0.05,1>][0.45 rgbt <0.05,0.05,0.05,0.97>][0.6 rgbt <0.05,0.05,0.05,0.7>][1 rgbt <0.05,0.05,0.05,0.45>]} } finish{ diffuse 0.7 } }
#declare J=0; #while (J<4)
  #declare XX=-0.41; #declare YY=select(J-1.5,0.165-J*0.052,-0.13-(J-2)*0.058);
  #while (XX<0.37)
    #if (rand(R)>0.22) Word(chr(65+int(rand(R)*25.9)),0.042,XX,YY,T_Gone) #end
    #declare XX=XX+0.034; #end
#declare J=J+1; #end
Word("SERIAL",0.088,-0.405,-0.02,T_Ink)
Word("09",0.096,-0.02,-0.022,T_Ink)
Word("86",0.096,0.088,-0.022,T_Gone)
Word("4471",0.096,0.198,-0.022,T_Ink)
// scratches, the deepest across the two lost digits
union{
  #declare K=0; #while (K<64)
    #declare PX=(K<36 ? 0.085+0.1*rand(R) : -0.44+0.88*rand(R)); #declare PY=(K<36 ? -0.055+0.13*rand(R) : -0.24+0.48*rand(R));
    #declare LL=(K<36 ? 0.05+0.07*rand(R) : 0.06+0.3*rand(R)); #declare AA=(K<36 ? 20+rand(R)*50 : rand(R)*180);
    object{ cone{<-LL/2,0,0>,0.0007+0.0022*rand(R)*(K<36),<LL/2,0,0>,0.0006} scale <1,1,0.4> rotate z*AA translate <PX,PY,-0.002> }
  #declare K=K+1; #end
  texture{ pigment{ C(206,204,198) } finish{ diffuse 0.6 specular 0.5 roughness 0.03 metallic } } }
// room behind the viewer for soft light
union{ Bx(-8,-4,-9,8,6,-8.9) texture{ Matte(190,184,168) } }
Lamp_Light(<0.9,2.6,-2.2>,0.4,3.0,Warm,2.2)
Win_Light(<-3.0,1.0,-2.6>,<1,-0.3,0.9>,1.6,1.2,z,2.6,Day)
